"""The form of further sheets and beds that a plan is laid out for beforehand."""

from __future__ import annotations

import re
from dataclasses import dataclass

from kerfolio.basis.complaint import quoted
from kerfolio.basis.said import Text, written
from kerfolio.model.plan import AlsoFor
from kerfolio.reading.amounts import SIDE
from kerfolio.reading.desk import Desk
from kerfolio.reading.forms import Book, Form, ListOf, Schema
from kerfolio.reading.nodes import Node, Scalar
from kerfolio.reading.values import split_size

_EXAMPLE = written("1220 x 1220` or `600 x 900 bed", "48 x 48` or `24 x 36 bed", "Write `{}`.")
_BED = re.compile(r"(.*\S)\s+bed")


@dataclass(frozen=True, slots=True, kw_only=True)
class AlsoForm(Form[AlsoFor]):
    """``1525 x 1525``, a sheet with its side along the grain first, or ``600 x 900 bed``."""

    noun: str = "a sheet or a bed"
    advice: Text = _EXAMPLE

    def read(self, node: Node, desk: Desk) -> AlsoFor | None:
        """Return the sheet or the bed."""
        if not isinstance(node, Scalar) or not node.text.strip():
            self.refuse(node, desk)
            return None
        text = node.text.strip()
        bed = _BED.fullmatch(text)
        sides = split_size(bed[1] if bed else text)
        if sides is None:
            message = f"{quoted(text)} is no sheet and no bed"
            desk.refuse("wrong-value", message, node.place, self.advice)
            return None
        one, other = (SIDE.amount(side, node.place, desk) for side in sides)
        if one is None or other is None:
            return None
        return AlsoFor(size=(one, other), bed=bed is not None, place=node.place)

    def schema(self, book: Book) -> Schema:  # noqa: ARG002 - nothing of it is named
        """Return the schema of a text."""
        return {"type": "string", "pattern": "[xX×]"}


ALSO_FOR: ListOf[AlsoFor] = ListOf(
    item=AlsoForm(),
    noun="a list of sheets and beds",
    advice=written("[1220 x 1220, 600 x 900 bed]", "[48 x 48, 24 x 36 bed]", "Write `{}`."),
    single=True,
)
