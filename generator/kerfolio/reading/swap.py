"""The form of materials that a maker wants compared with the plan's own."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.model.statement import Named
from kerfolio.model.swap import Swap
from kerfolio.reading.desk import Desk
from kerfolio.reading.forms import Book, Form, ListOf, Schema
from kerfolio.reading.nodes import Mapping, Node, Scalar
from kerfolio.reading.reference import REFERENCE


@dataclass(frozen=True, slots=True, kw_only=True)
class SwapForm(Form[Swap]):
    """``mdf-18`` in place of the only sheet's stock, or ``{ply: mdf-18}``."""

    noun: str = "a sheet stock"
    advice: str = "Write `mdf-18`, or `{ply: mdf-18}` where the plan has several sheets."

    def read(self, node: Node, desk: Desk) -> Swap | None:
        """Return the swap, where every name of it can be read."""
        pairs: tuple[tuple[Named, Named], ...]
        if isinstance(node, Scalar):
            stock = REFERENCE.read(node, desk)
            pairs = ((Named("", node.place), stock),) if stock else ()
        elif isinstance(node, Mapping):
            read = [
                (REFERENCE.read(entry.key, desk), REFERENCE.read(entry.value, desk))
                for entry in node.entries
            ]
            pairs = tuple((sheet, stock) for sheet, stock in read if sheet and stock)
        else:
            self.refuse(node, desk)
            return None
        return Swap(stocks=pairs, place=node.place) if pairs else None

    def schema(self, book: Book) -> Schema:
        """Return the schema of a name, or of a mapping from sheet to stock."""
        name = REFERENCE.schema(book)
        return {"anyOf": [name, {"type": "object", "additionalProperties": name}]}


SWAPS: ListOf[Swap] = ListOf(
    item=SwapForm(),
    noun="a list of sheet stock",
    advice="Write `[mdf-18]`, or `[{ply: mdf-18}]` where the plan has several sheets.",
)
