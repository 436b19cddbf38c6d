"""The form of names that refer to something stated elsewhere."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.said import Text
from kerfolio.model.statement import Named
from kerfolio.reading.desk import Desk
from kerfolio.reading.forms import Book, Form, Schema
from kerfolio.reading.nodes import Node
from kerfolio.reading.values import NAMED


@dataclass(frozen=True, slots=True, kw_only=True)
class ReferenceForm(Form[Named]):
    """A name; what refers to something that could not be read cannot be read either.

    No finding is made of that: the mistake is told where it was made. Whether the name is known
    at all is left to the rules.
    """

    noun: str = NAMED.noun
    advice: Text = NAMED.advice

    def read(self, node: Node, desk: Desk) -> Named | None:
        """Return the name with its place."""
        named = NAMED.read(node, desk)
        return None if named is None or named.name in desk.unread else named

    def schema(self, book: Book) -> Schema:
        """Return the schema of a name."""
        return NAMED.schema(book)


REFERENCE = ReferenceForm()
