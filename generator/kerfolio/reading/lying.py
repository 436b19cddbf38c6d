"""The form of how the work lies: ``{worktop: face down}``."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.model.lying import LIES, Lying
from kerfolio.reading.desk import Desk
from kerfolio.reading.forms import Book, Form, Schema
from kerfolio.reading.nodes import Mapping, Node
from kerfolio.reading.values import LABEL, choice

_WAY = choice("how a piece lies", *LIES)


@dataclass(frozen=True, slots=True, kw_only=True)
class LyingForm(Form[Lying]):
    """One piece and how it lies; what is joined to it lies with it."""

    noun: str = "a piece and how it lies"
    advice: str = "Write `{worktop: face down}`: one piece, and what is joined to it lies with it."

    def read(self, node: Node, desk: Desk) -> Lying | None:
        """Return how the work lies."""
        if not isinstance(node, Mapping) or len(node.entries) != 1:
            self.refuse(node, desk)
            return None
        (entry,) = node.entries
        piece, way = LABEL.read(entry.key, desk), _WAY.read(entry.value, desk)
        return Lying(piece=piece, way=way, place=node.place) if piece and way else None

    def schema(self, book: Book) -> Schema:
        """Return the schema of a mapping with one entry."""
        way = _WAY.schema(book)
        return {
            "type": "object",
            "additionalProperties": way,
            "minProperties": 1,
            "maxProperties": 1,
        }
