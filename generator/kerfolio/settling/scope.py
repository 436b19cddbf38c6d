"""Works stated amounts out: the names, thicknesses and fits that expressions may use."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace

from kerfolio.basis.budgets import Budget
from kerfolio.basis.expression import Expression, ExpressionError, parse
from kerfolio.basis.finding import Finding, Sketch, error
from kerfolio.basis.lengths import MM_PER_UNIT
from kerfolio.basis.measures import length, number, reading
from kerfolio.basis.names import did_you_mean
from kerfolio.basis.place import Place
from kerfolio.basis.said import Text, Words, said
from kerfolio.geometry.contour import Point
from kerfolio.geometry.shape_error import ShapeError
from kerfolio.model.statement import Amount, Named, Spot

_FARTHEST = 100_000.0
"""The longest length, mm."""

_MOST = 1e9
"""The largest count or angle."""

FOLLOWS = "follows"
"""The rule of a finding that only follows from another one; it is never shown."""


class SettlingError(Exception):
    """A statement that cannot be settled; carries the finding that says why."""

    def __init__(self, finding: Finding) -> None:
        super().__init__(finding.message)
        self.finding = finding

    def about(self, subject: str) -> Finding:
        """Return the finding, about a thing of the plan unless it names one itself."""
        return replace(self.finding, subject=self.finding.subject or subject)


def unsettled(
    rule: str,
    words: Text,
    place: Place,
    advice: Text = "",
    subject: str = "",
    sketch: Sketch | None = None,
) -> SettlingError:
    """Return the exception for an error in a maker's file."""
    return SettlingError(error(rule, words, place, advice, subject=subject, sketch=sketch))


def within(budget: Budget, count: int, rule: str, place: Place) -> None:
    """Raise SettlingError where a count is beyond its budget."""
    fault = budget.fault(count)
    if fault is not None:
        raise unsettled(rule, str(fault), place, fault.advice)


def unknown(kind: str, named: Named, known: Iterable[str], what: str = "") -> SettlingError:
    """Return the exception for a name that is not there; ``what`` says what it would be."""
    message, advice = f"no {what or kind} `{named.name}`", did_you_mean(named.name, known)
    return unsettled(f"unknown-{kind}", message, named.place, advice, named.name)


def misshapen(what: Text, fault: ShapeError, place: Place) -> SettlingError:
    """Return the exception for a shape that cannot be made as asked."""
    if fault.pieces is not None:
        pieces = f"falls into {fault.pieces} pieces" if fault.pieces else "is cut away"
        advice = "Leave material between what cuts it; tabs must touch it."
        return unsettled("falls-apart", said("{} {}", what, pieces), place, advice)
    limit = fault.limit
    fits: Text = "" if limit is None else said("At most {} fits.", reading("most", limit))
    return unsettled("no-such-shape", said("{}: {}", what, str(fault)), place, fits)


def _comes_to(what: str, amount: Amount, mm: float) -> Words:
    return said("{} `{}` comes to {}", what, amount.text, length(what, mm))


@dataclass(frozen=True, slots=True, kw_only=True)
class Scope:
    """What expressions may use, all in the plan's ``unit``; results are handed on in mm.

    Alone with its unit it knows numbers and lengths, no names.
    """

    unit: str
    names: Mapping[str, float] = field(default_factory=dict)
    thickness: Mapping[str, float] = field(default_factory=dict)
    fit: Mapping[str, float] = field(default_factory=dict)

    @property
    def mm_per_unit(self) -> float:
        """Millimetres in one of the plan's units."""
        return float(MM_PER_UNIT[self.unit])

    def value(self, amount: Amount) -> float:
        """Return an amount in the plan's unit. Raises SettlingError.

        An amount that needs a size or a sheet without a value only follows from what is wrong with
        that one.
        """
        expression = parse(amount.text, self.unit)
        if not isinstance(expression, Expression):
            raise unsettled("bad-expression", str(expression), amount.place)
        if not self._knows(expression):
            raise unsettled(FOLLOWS, f"`{amount.text}` has no value", amount.place)
        try:
            return expression.evaluate(self.names, self.thickness, self.fit)
        except ExpressionError as fault:
            message = f"`{amount.text}`: {fault}"
            raise unsettled("no-value", message, amount.place, fault.advice) from fault

    def _knows(self, expression: Expression) -> bool:
        sheets = all(each in self.thickness and each in self.fit for each in expression.sheets)
        return sheets and all(each in self.names for each in expression.names)

    def mm(self, amount: Amount) -> float:
        """Return a length in mm, at most 100 m either way. Raises SettlingError."""
        mm = self.value(amount) * self.mm_per_unit
        if abs(mm) > _FARTHEST:
            message = f"`{amount.text}` comes to more than 100 m"
            advice = "No plan is longer than 100 m: is the unit the one you mean?"
            raise unsettled("out-of-range", message, amount.place, advice)
        return mm

    def positive(self, amount: Amount, what: str) -> float:
        """Return a length above 0 in mm. Raises SettlingError."""
        mm = self.mm(amount)
        if mm <= 0:
            message = _comes_to(what, amount, mm)
            raise unsettled("not-positive", message, amount.place, "It must be above 0.")
        return mm

    def plain(self, amount: Amount | None, default: float = 0.0) -> float:
        """Return a plain number, such as an angle in degrees. Raises SettlingError."""
        if amount is None:
            return default
        expression = parse(amount.text, self.unit)
        if isinstance(expression, Expression) and expression.has_unit:
            message = f"`{amount.text}` carries a unit of length"
            raise unsettled("not-a-length", message, amount.place, "Write a plain number.")
        value = self.value(amount)
        if abs(value) > _MOST:
            message = f"`{amount.text}`: the result is too large"
            raise unsettled("no-value", message, amount.place)
        return value

    def count(self, amount: Amount, least: int = 1) -> int:
        """Return a whole number of at least ``least``. Raises SettlingError."""
        value = self.plain(amount)
        if abs(value - round(value)) > 1e-9 or round(value) < least:
            message = said("`{}` comes to {}", amount.text, number("count", value))
            advice = f"Write a whole number of at least {least}."
            raise unsettled("not-a-count", message, amount.place, advice)
        return round(value)

    def not_negative(self, amount: Amount, what: str) -> float:
        """Return a length of 0 or more in mm. Raises SettlingError."""
        mm = self.mm(amount)
        if mm < 0:
            message = _comes_to(what, amount, mm)
            raise unsettled("negative", message, amount.place, "It must be 0 or more.")
        return mm

    def point(self, spot: Spot) -> Point:
        """Return a stated point in mm. Raises SettlingError."""
        return self.mm(spot.x), self.mm(spot.y)
