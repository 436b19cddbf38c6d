"""Forms of the spans a plan wants reckoned."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from kerfolio.basis.complaint import Complaint, quoted
from kerfolio.basis.finding import Finding, error
from kerfolio.basis.names import NAME
from kerfolio.basis.said import Text, written
from kerfolio.model.span import SagLimit, Span, SpanLoad, Support, Under
from kerfolio.reading.amounts import LENGTH
from kerfolio.reading.desk import Desk
from kerfolio.reading.forms import Book, FixedList, Form, ListOf, ScalarForm, Schema
from kerfolio.reading.nodes import Node, Scalar
from kerfolio.reading.record import Entries, Fields, Key, Record
from kerfolio.reading.reference import REFERENCE
from kerfolio.reading.values import FLAG, SCALAR, choice, name_fault, whole

_EDGES = ("left", "right", "bottom", "top")
_KG_PER_LB = 0.45359237
_KG_PER_M_OF_LB_PER_FT = _KG_PER_LB / 0.3048
_SHARE = re.compile(r"span\s*/\s*([0-9]{1,5})")
_EXAMPLE = written("top: {part: worktop, load: {kg: 60}}", "top: {part: worktop, load: {lb: 130}}")
_A_LIMIT = written("3 mm", "1/8 in", "Write `span/300`, or a length such as `{}`.")


@dataclass(frozen=True, slots=True, kw_only=True)
class SupportForm(Form[Support]):
    """An edge of the part, or a distance."""

    noun: str = "an edge or a length"
    advice: str = "Write `left`, `right`, `bottom`, `top`, or a length from the part's 0,0."

    def read(self, node: Node, desk: Desk) -> Support | None:
        """Return the support; a word that names an edge is one."""
        if isinstance(node, Scalar) and node.text.strip() in _EDGES:
            return Support(edge=node.text.strip(), place=node.place)
        if not isinstance(node, Scalar):
            self.refuse(node, desk)
            return None
        amount = LENGTH.read(node, desk)
        return None if amount is None else Support(at=amount, place=node.place)

    def schema(self, book: Book) -> Schema:  # noqa: ARG002 - nothing of it is named
        """Return the schema of a number or a text."""
        return dict(SCALAR)


@dataclass(frozen=True, slots=True, kw_only=True)
class LimitForm(Form[SagLimit]):
    """``span/300``, or a length."""

    noun: str = "a limit of sag"
    advice: Text = _A_LIMIT

    def read(self, node: Node, desk: Desk) -> SagLimit | None:
        """Return the limit; ``span`` is the span itself, also where a size is called so."""
        if not isinstance(node, Scalar) or not node.text.strip():
            self.refuse(node, desk)
            return None
        share = _SHARE.fullmatch(node.text.strip())
        if share and int(share[1]) > 0:
            return SagLimit(share=float(share[1]), place=node.place)
        if share or node.text.strip().startswith("span"):
            message = f"{quoted(node.text)} is no limit of sag"
            desk.refuse("wrong-value", message, node.place, self.advice)
            return None
        amount = LENGTH.read(node, desk)
        return None if amount is None else SagLimit(length=amount, place=node.place)

    def schema(self, book: Book) -> Schema:  # noqa: ARG002 - nothing of it is named
        """Return the schema of a number or a text."""
        return dict(SCALAR)


def _above_zero(node: Scalar) -> float | Complaint:
    text = node.text.strip()
    if re.fullmatch(r"[0-9]{1,6}(?:\.[0-9]{1,3})?", text) and float(text) > 0:
        return float(text)
    return Complaint(f"{quoted(text)} is no number above 0")


_WEIGHT: ScalarForm[float] = ScalarForm(
    noun="a number above 0",
    advice="Write the number alone, such as `30` or `2.5`.",
    convert=_above_zero,
    json={"type": "number", "exclusiveMinimum": 0},
)


def _safety(node: Scalar) -> float | Complaint:
    value = _above_zero(node)
    if isinstance(value, float) and 1 <= value <= 20:
        return value
    return Complaint(f"{quoted(node.text)} is no safety factor")


_SAFETY: ScalarForm[float] = ScalarForm(
    noun="a safety factor",
    advice="Write a number from 1 to 20; 3 is usual.",
    convert=_safety,
    json={"type": "number", "minimum": 1, "maximum": 20},
)


def _make_load(where: str = "evenly", place: Any = None, **weights: float) -> SpanLoad:
    (unit, value), *_ = weights.items()
    factor = {"lb": _KG_PER_LB, "lb_per_ft": _KG_PER_M_OF_LB_PER_FT}.get(unit, 1.0)
    where = "even" if where == "evenly" else where
    return SpanLoad(kg=value * factor, per_metre="_per_" in unit, where=where, place=place)


def _load_faults(fields: Fields) -> tuple[Finding, ...]:
    per = any("_per_" in each for each in fields.values)
    if per and fields.values.get("where", "evenly") != "evenly":
        message = "a load a metre lies evenly"
        return (error("wrong-value", message, fields.place, "Write `kg:` for a load at one spot."),)
    return ()


_LOAD: Record[SpanLoad] = Record(
    name="span-load",
    noun="a load",
    keys=(
        Key(name="kg", form=_WEIGHT, says="All of it, in kg."),
        Key(name="kg-per-m", form=_WEIGHT, says="kg on each metre of the span."),
        Key(name="lb", form=_WEIGHT, says="All of it, in pounds."),
        Key(name="lb-per-ft", form=_WEIGHT, says="Pounds on each foot of the span."),
        Key(
            name="at",
            form=choice("a place on the span", "evenly", "middle", "end"),
            says="Where it lies: spread evenly, in the middle, at the end of an overhang.",
            field="where",
        ),
    ),
    make=_make_load,
    one_of=(("kg", "kg-per-m", "lb", "lb-per-ft"),),
    check=_load_faults,
    advice=written(
        "load: {kg: 30}` or `load: {kg-per-m: 30}", "load: {lb: 65}` or `load: {lb-per-ft: 20}"
    ),
)
_WITH = "Write `with: {part: rail, count: 2, joined: loose}`, or a list of such, from the top down."
_MEMBER: Record[Under] = Record(
    name="member-under",
    noun="a part under it",
    keys=(
        Key(name="part", form=REFERENCE, says="The part under it.", required=True),
        Key(name="count", form=whole(1, 20), says="How many of them."),
        Key(
            name="lies",
            form=choice("a way to lie", "edge", "flat"),
            says="`edge`: a web that stands upright; `flat`: a flange.",
        ),
        Key(
            name="joined",
            form=choice("a way of joining", "loose", "glued"),
            says="`glued` along the whole length to what is over it, or `loose`: only lying on it.",
        ),
    ),
    make=Under,
    advice=_WITH,
)
_UNDER: ListOf[Under] = ListOf(
    item=_MEMBER, noun="parts under it", advice=_WITH, least=1, single=True
)
_SUPPORTS: FixedList[tuple[Support, Support]] = FixedList(
    items=(SupportForm(), SupportForm()),
    make=lambda first, second, _: (first, second),
    noun="two supports",
    advice=written(
        "[60, body - 60]",
        "[2, body - 2]",
        "Write `[left, right]`, `[bottom, top]` or two lengths, such as `{}`.",
    ),
)


def _span_faults(fields: Fields) -> Iterable[Finding]:
    values = fields.values
    kind, load = values.get("kind", "shelf"), values["load"]
    if not _on_one_axis(values.get("supports", ()), values.get("along", "")):
        message = "the supports do not lie along one direction"
        place = values["supports"][0].place
        yield error("wrong-value", message, place, _SUPPORTS.advice)
    if load.where == "end" and kind != "overhang":
        message = f"a {kind} has no free end"
        yield error("wrong-value", message, load.place, "Write `at: middle`, or `as: overhang`.")
    if load.where == "middle" and kind == "overhang":
        message = "an overhang carries evenly or at its end"
        yield error("wrong-value", message, load.place, "Write `at: end`.")
    if "under" in values and (kind != "shelf" or "board" in values):
        message = "`with` is for a part that lies flat"
        yield error("wrong-value", message, values["under"][0].place, "Leave it out.")


def _on_one_axis(supports: Iterable[Support], along: str) -> bool:
    named = [each.edge for each in supports if each.edge]
    axes = {"x" if each in ("left", "right") else "y" for each in named} | ({along} - {""})
    return len(axes) <= 1 and len(set(named)) == len(named)


_SPAN: Record[Span] = Record(
    name="span",
    noun="a span",
    keys=(
        Key(name="part", form=REFERENCE, says="The part that carries."),
        Key(name="board", form=REFERENCE, says="The board that carries."),
        Key(
            name="as",
            form=choice("a way to carry", "shelf", "rail", "overhang", "leg"),
            says="`shelf` lies flat, `rail` stands on edge, `overhang` is held at its first "
            "support, `leg` is pressed lengthwise.",
            field="kind",
        ),
        Key(name="supports", form=_SUPPORTS, says="Where it is held: two edges or two lengths."),
        Key(name="along", form=choice("a direction", "x", "y"), says="Which way lengths count."),
        Key(name="load", form=_LOAD, says="What it has to carry.", required=True),
        Key(name="limit", form=LimitForm(), says="How far it may sag: `span/300`, or a length."),
        Key(name="safety", form=_SAFETY, says="What the strength is divided by; 3 if not stated."),
        Key(name="lasting", form=FLAG, says="Whether the load stays; `true` if not stated."),
        Key(
            name="held",
            form=choice("a way to be held", "lying", "fixed"),
            says="`lying`: nothing holds it down, as an overhang is taken to; or `fixed`.",
        ),
        Key(
            name="with",
            form=_UNDER,
            says="Parts under it along the span, from the top down.",
            field="under",
        ),
    ),
    make=Span,
    one_of=(("part", "board"),),
    check=_span_faults,
    advice=_EXAMPLE,
    named=True,
)
SPANS: Entries[Span] = Entries(
    record=_SPAN,
    noun="spans by name",
    advice=_EXAMPLE,
    fault=name_fault,
    pattern=NAME.pattern,
    spoils=lambda _name, _node: (),
)
"""Nothing refers to a span, so one that cannot be read spoils no name."""
