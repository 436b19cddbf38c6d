"""Forms of numbers that a plan may compute: lengths, angles, counts, points."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Any

from kerfolio.basis.complaint import Complaint, quoted
from kerfolio.basis.digits import digits
from kerfolio.basis.expression import RESERVED, Expression, ExpressionError, parse
from kerfolio.basis.lengths import MM_PER_UNIT
from kerfolio.basis.measures import length, precise
from kerfolio.basis.names import did_you_mean, name_of
from kerfolio.basis.place import Place
from kerfolio.basis.said import Text, said, written
from kerfolio.basis.slips import meant_length, slip_advice
from kerfolio.model.statement import Amount, Spot
from kerfolio.reading.desk import Desk
from kerfolio.reading.forms import Book, FixedList, Form, ListOf, Schema, too_many
from kerfolio.reading.nodes import Node, Scalar, Sequence
from kerfolio.reading.odd_blank import blank_finding, plain_blanks
from kerfolio.reading.values import SCALAR

_TOLD = 1e8
"""Millimetres beyond which a length is not told in digits."""

_SIZE_NAME = re.compile(r"[a-z][a-z0-9_]*")


@dataclass(frozen=True, slots=True, kw_only=True)
class AmountForm(Form[Amount]):
    """An expression over the plan's sizes, checked for form and names as it is read.

    ``plain`` refuses a unit (angles, counts). ``within`` holds the least and the most in mm of a
    length that a sheet states; it refuses sizes, since sizes may depend on the sheets. ``in_mm``
    says such a length with its unit, so that plans in any unit may take it over.
    """

    noun: str
    advice: Text
    plain: bool = False
    within: tuple[float, float] | None = None
    in_mm: bool = False

    def read(self, node: Node, desk: Desk) -> Amount | None:
        """Return the amount as written."""
        if not isinstance(node, Scalar) or not node.text.strip():
            self.refuse(node, desk)
            return None
        return self.amount(node.text.strip(), node.place, desk)

    def amount(self, text: str, place: Place, desk: Desk) -> Amount | None:
        """Check a text that stands alone or inside another one."""
        expression = parse(text, desk.unit)
        if isinstance(expression, Complaint):
            again = parse(plain_blanks(text), desk.unit)
            fault = again if isinstance(again, Complaint) else None
            odd = blank_finding(Scalar(text=text, place=place), fault)
            if odd is not None:
                desk.findings.append(odd)
            else:
                desk.complain("expression", expression, place)
            return None
        if not self._allowed(expression, place, desk):
            return None
        return Amount(_mm_text(expression) if self.in_mm else text, place)

    def _allowed(self, expression: Expression, place: Place, desk: Desk) -> bool:
        if self.plain and expression.has_unit:
            message = f"{quoted(expression.text)} has a unit"
            desk.refuse("expression", message, place, f"Write {self.noun} without a unit.")
            return False
        if self.within is not None:
            return self._is_within(expression, self.within, place, desk)
        return check_names(expression, place, desk)

    def _is_within(
        self, expression: Expression, within: tuple[float, float], place: Place, desk: Desk
    ) -> bool:
        shown = quoted(expression.text)
        if expression.names or expression.sheets:
            advice = "Write a number or a quantity here: sizes may depend on the sheets."
            desk.refuse("expression", f"{shown} uses sizes or sheets", place, advice)
            return False
        try:
            mm = constant_mm(expression)
        except ExpressionError as trouble:
            desk.refuse("expression", f"{shown}: {trouble}", place, self.advice)
            return False
        least, most = within
        if least <= mm <= most:
            return True
        ends = length("least", least), length("most", most)
        usual = said("{} to {} is usual: is the unit the one you mean?", *ends)
        inches = expression.unit == "in" and not expression.has_unit
        plain = re.fullmatch("[0-9.]+[ ]?[a-z]*", expression.text)
        meant = meant_length(mm, least, most, inches=inches) if plain and least > 0 else ""
        message: Text = f"{shown} is far too large"
        if abs(mm) <= _TOLD:
            message = said("{} comes to {}", shown, precise("value", mm))
        desk.refuse("out-of-range", message, place, slip_advice(meant, usual))
        return False

    def schema(self, book: Book) -> Schema:  # noqa: ARG002 - nothing of it is named
        """Return the schema of a number or a text."""
        return dict(SCALAR)


def _mm_text(expression: Expression) -> str:
    return f"{digits(constant_mm(expression))} mm"


def constant_mm(expression: Expression) -> float:
    """Return an expression without names in mm; raises ExpressionError when it has no value."""
    return expression.evaluate({}, {}, {}) * float(MM_PER_UNIT[expression.unit])


def check_names(expression: Expression, place: Place, desk: Desk) -> bool:
    """Tell whether all names of an expression are known and readable; refuse the unknown ones."""
    sound = _all_known("size", expression.names, desk.sizes, place, desk)
    sound = _all_known("sheet", expression.sheets, desk.sheets, place, desk) and sound
    return sound and not desk.unread.intersection((*expression.names, *expression.sheets))


def _all_known(
    kind: str, names: tuple[str, ...], known: frozenset[str] | None, place: Place, desk: Desk
) -> bool:
    if known is None:
        return not names
    unknown = [name for name in names if name not in known]
    for name in unknown:
        meant_sheet = kind == "size" and name in (desk.sheets or ())
        advice = _meant_sheet(name) if meant_sheet else did_you_mean(name, known)
        desk.refuse("unknown-name", f"unknown {kind} {quoted(name)}", place, advice)
    return not unknown


def _meant_sheet(name: str) -> str:
    return f"`{name}` is a sheet: write `thickness({name})`."


def size_name_fault(name: str) -> Complaint | None:
    """Return what is wrong with the name of a size or sheet, or None."""
    if name in RESERVED:
        advice = f"Call it `{name}_size`: functions and units keep their names."
        return Complaint(f"{quoted(name)} is a word of the expressions", advice)
    if _SIZE_NAME.fullmatch(name) and len(name) <= 40:
        return None
    fixed = name_of(name, "_")
    advice = "Use lower case letters, digits and `_`, a letter first."
    if _SIZE_NAME.fullmatch(fixed) and len(fixed) <= 40:
        advice = f"Write `{fixed}`: a hyphen would be a minus; letters are lower case."
    return Complaint(f"{quoted(name)} is no name of a size", advice)


ANY_AMOUNT = written(
    "18 mm",
    "3/4 in",
    "Write a number, a quantity such as `{}`, or an expression such as `seat/2`.",
)
LENGTH = AmountForm(noun="a length", advice=ANY_AMOUNT)
_QUANTITIES = written("10 mm", "3/8 in", "Write a number or a quantity such as `{}`.")
_EXTRAS = written("0.1 mm", "0.004 in", "Write a number or a quantity such as `{}`.")
THICKNESS = AmountForm(noun="a thickness", advice=_QUANTITIES, within=(1.0, 150.0))
SIDE = AmountForm(noun="a length", advice=_QUANTITIES, within=(50.0, 20_000.0))
STEP = AmountForm(noun="a step", advice=_QUANTITIES, within=(0.05, 50.0))
CLEARANCE = AmountForm(noun="a length", advice=_QUANTITIES, within=(0.0, 500.0))
FIT = AmountForm(noun="a fit", advice=_QUANTITIES, within=(0.0, 5.0))
PLAY_MM = AmountForm(noun="a play", advice=_EXTRAS, within=(0.0, 5.0), in_mm=True)
PASS_MM = AmountForm(noun="a depth", advice=_QUANTITIES, within=(0.0, 100.0), in_mm=True)
EXTRA = AmountForm(noun="an extra", advice=_EXTRAS, within=(0.0, 2.0))
EXTRA_MM = AmountForm(noun="an extra", advice=_EXTRAS, within=(0.0, 2.0), in_mm=True)
"""What sheets state; the bounds only catch slips of the unit (common practice, no source)."""
ANGLE = AmountForm(
    noun="an angle", advice="Write degrees as a number or an expression.", plain=True
)
COUNT = AmountForm(
    noun="a count", advice="Write a whole number or an expression that gives one.", plain=True
)
LENGTHS = ListOf(
    item=LENGTH,
    noun="a length or a list of lengths",
    advice=written("[60, 120]", "[2, 4]"),
    least=1,
    single=True,
)
SPOT: FixedList[Spot] = FixedList(
    items=(LENGTH, LENGTH),
    make=Spot,
    noun="a point [x, y]",
    advice=written("[30, seat/2]", "[1, seat/2]", "Write `{}`: x, then y."),
)


_DRAWN_LENGTH = AmountForm(noun="a length", advice=_QUANTITIES, within=(-100_000.0, 100_000.0))
DRAWN_SPOT: FixedList[Spot] = FixedList(
    items=(_DRAWN_LENGTH, _DRAWN_LENGTH),
    make=Spot,
    noun="a point [x, y] of the drawing",
    advice=written(
        "[120, 300]", "[5, 12]", "Write `{}`: x, then y upwards; of an SVG from its lower left."
    ),
)
"""A drawing stays as it is whatever the plan's sizes are."""


_SPOTS = written("[30, 60]` or `[[30, 60], [90, 60]]", "[1, 2]` or `[[1, 2], [3, 2]]")


@dataclass(frozen=True, slots=True, kw_only=True)
class SpotsForm(Form[tuple[Spot, ...]]):
    """One point, or a list of points."""

    noun: str = "a point [x, y] or a list of points"
    advice: Text = _SPOTS

    def read(self, node: Node, desk: Desk) -> tuple[Spot, ...] | None:
        """Return the points."""
        if not isinstance(node, Sequence) or not node.items:
            self.refuse(node, desk)
            return None
        if too_many(node.items, node, desk):
            return None
        several = any(isinstance(each, Sequence) for each in node.items)
        spots = [SPOT.read(each, desk) for each in (node.items if several else (node,))]
        readable = tuple(each for each in spots if each is not None)
        return readable if len(readable) == len(spots) else None

    def schema(self, book: Book) -> Schema:
        """Return the schema of one point or several."""
        spot = SPOT.schema(book)
        return {"anyOf": [spot, {"type": "array", "items": spot, "minItems": 1}]}


SPOTS = SpotsForm()


def pair_of(make: Any, noun: str, advice: Text) -> FixedList[Any]:
    """Return the form of two lengths such as ``[width, height]``."""
    return FixedList(items=(LENGTH, LENGTH), make=make, noun=noun, advice=advice)
