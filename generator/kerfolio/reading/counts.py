"""The form of counts by name."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.model.statement import Named
from kerfolio.reading.desk import Desk
from kerfolio.reading.forms import Book, Form, Schema
from kerfolio.reading.nodes import Mapping, Node
from kerfolio.reading.reference import REFERENCE
from kerfolio.reading.values import whole

Counts = tuple[tuple[Named, int], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CountsForm(Form[Counts]):
    """A mapping from a name to how many, ``most`` at most."""

    noun: str
    advice: str
    most: int = 10_000

    def read(self, node: Node, desk: Desk) -> Counts | None:
        """Return the counts that can be read."""
        if not isinstance(node, Mapping):
            self.refuse(node, desk)
            return None
        lines = []
        for entry in node.entries:
            name = REFERENCE.read(entry.key, desk)
            count = whole(1, self.most).read(entry.value, desk)
            if name is not None and count is not None:
                lines.append((Named(name.name, entry.key.place), count))
        return tuple(lines)

    def schema(self, book: Book) -> Schema:
        """Return the schema of a mapping from name to count."""
        return {"type": "object", "additionalProperties": whole(1, self.most).schema(book)}
