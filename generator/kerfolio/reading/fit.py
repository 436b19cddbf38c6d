"""Forms of fits: a sheet's, with what readers may choose; a joint's, by its purpose."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Any

from kerfolio.basis.complaint import quoted
from kerfolio.basis.finding import Finding, error
from kerfolio.basis.names import did_you_mean
from kerfolio.basis.said import Text, written
from kerfolio.model.joint import JointFit
from kerfolio.model.plan import Choice, Fit
from kerfolio.model.purpose import PURPOSES, Purpose
from kerfolio.reading.amounts import FIT as LENGTH
from kerfolio.reading.desk import Desk
from kerfolio.reading.forms import Book, Form, Schema
from kerfolio.reading.nodes import Node, Scalar
from kerfolio.reading.record import Fields, Key, Record
from kerfolio.reading.values import SCALAR, choice

_BY_NAME = {each.name: each for each in PURPOSES}
_MEANT = ", ".join(f"`{each}` {each.says}" for each in PURPOSES)
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
        if isinstance(node, Scalar) and node.text.strip() in _BY_NAME:
            message = f"{quoted(node.text)} is no fit of a sheet"
            word = node.text.strip()
            advice = f"Write a length here, and `fit: {word}` at a joint, or `joint-fit: {word}`."
            desk.refuse("wrong-value", message, node.place, advice)
            return None
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


_FIT_ADVICE = written(
    "fit: glued`, `fit: 0.15` or `fit: {purpose: glued, ends: 0.4}",
    "fit: glued`, `fit: 0.006` or `fit: {purpose: glued, ends: 0.015}",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class _WordForm(Form[JointFit]):
    """A purpose, or a length for all sides."""

    noun: str = "a fit"
    advice: Text = _FIT_ADVICE

    def read(self, node: Node, desk: Desk) -> JointFit | None:
        """Return the fit."""
        if not isinstance(node, Scalar) or not node.text.strip():
            self.refuse(node, desk)
            return None
        text = " ".join(node.text.split())
        if text in _BY_NAME:
            return JointFit(purpose=_BY_NAME[text], place=node.place)
        if re.fullmatch("[A-Za-z][A-Za-z -]*", text):
            message, advice = f"{quoted(text)} is no purpose", did_you_mean(text, _BY_NAME)
            desk.refuse("not-a-choice", message, node.place, advice)
            return None
        length = LENGTH.read(node, desk)
        return None if length is None else JointFit(width=length, ends=length, place=node.place)

    def schema(self, book: Book) -> Schema:  # noqa: ARG002 - nothing of it is named
        """Return the schema of a purpose, a number or a text."""
        return {"anyOf": [{"enum": [*_BY_NAME]}, dict(SCALAR)]}


def _make_joint_fit(purpose: str = "", **values: Any) -> JointFit:
    known: Purpose | None = _BY_NAME[purpose] if purpose else None
    return JointFit(purpose=known, **values)


def _says_something(fields: Fields) -> tuple[Finding, ...]:
    if fields.values:
        return ()
    return (error("missing-key", "`fit` says nothing", fields.place, _FIT_ADVICE),)


JOINT_FIT: Record[JointFit] = Record(
    name="joint-fit",
    noun="a fit",
    keys=(
        Key(
            name="purpose",
            form=choice("a purpose", *_BY_NAME),
            says=f"What it is for, which all that is not stated follows: {_MEANT}.",
        ),
        Key(name="width", form=LENGTH, says="Clearance on each side, between face and wall."),
        Key(name="ends", form=LENGTH, says="Clearance at either end, and at a notch's bottom."),
    ),
    make=_make_joint_fit,
    check=_says_something,
    advice=_FIT_ADVICE,
    short=_WordForm(),
)
