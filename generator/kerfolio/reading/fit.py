"""The form of a sheet's fit: a length alone, or one with what readers may choose."""

from __future__ import annotations

import re
from dataclasses import dataclass

from kerfolio.basis.complaint import quoted
from kerfolio.basis.said import Text, written
from kerfolio.model.plan import Choice, Fit
from kerfolio.reading.amounts import FIT as LENGTH
from kerfolio.reading.desk import Desk
from kerfolio.reading.forms import Book, Form, Schema
from kerfolio.reading.nodes import Node, Scalar
from kerfolio.reading.record import Key, Record
from kerfolio.reading.values import SCALAR

_ENDS = re.compile(r"(.+?)\s+to\s+(.+)")


_ADVICE = written("0.05 to 0.2", "0.002 to 0.008", "Write the least and the most: `{}`.")


@dataclass(frozen=True, slots=True, kw_only=True)
class ChoiceForm(Form[Choice]):
    """``0.05 to 0.2``: the least and the most that a reader may choose."""

    noun: str = "two fits"
    advice: Text = _ADVICE

    def read(self, node: Node, desk: Desk) -> Choice | None:
        """Return both ends."""
        if not isinstance(node, Scalar) or not node.text.strip():
            self.refuse(node, desk)
            return None
        text = " ".join(node.text.split())
        ends = _ENDS.fullmatch(text)
        if ends is None:
            message = f"{quoted(text)} is no range of fits"
            desk.refuse("wrong-value", message, node.place, self.advice)
            return None
        least, most = (LENGTH.amount(each, node.place, desk) for each in ends.groups())
        if least is None or most is None:
            return None
        return Choice(least=least, most=most, place=node.place)

    def schema(self, book: Book) -> Schema:  # noqa: ARG002 - nothing of it is named
        """Return the schema of a text."""
        return {"type": "string", "pattern": " to "}


@dataclass(frozen=True, slots=True, kw_only=True)
class _PlainForm(Form[Fit]):
    """A length alone: readers have the same fit."""

    noun: str = LENGTH.noun
    advice: Text = LENGTH.advice

    def read(self, node: Node, desk: Desk) -> Fit | None:
        """Return the fit."""
        value = LENGTH.read(node, desk)
        return None if value is None else Fit(value=value, place=node.place)

    def schema(self, book: Book) -> Schema:  # noqa: ARG002 - nothing of it is named
        """Return the schema of a number or a text."""
        return dict(SCALAR)


FIT: Record[Fit] = Record(
    name="fit",
    noun="a fit",
    keys=(
        Key(name="value", form=LENGTH, says="The plan's own.", required=True),
        Key(name="reader", form=ChoiceForm(), says="Between what a reader may choose it."),
    ),
    make=Fit,
    advice=written(
        "0.1` or `{value: 0.1, reader: 0.05 to 0.2}",
        "0.004` or `{value: 0.004, reader: 0.002 to 0.008}",
    ),
    short=_PlainForm(),
)
