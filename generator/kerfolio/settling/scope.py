"""Works stated amounts out: the names, thicknesses and fits that expressions may use."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from kerfolio.basis.expression import Expression, ExpressionError, parse
from kerfolio.basis.finding import Finding, error
from kerfolio.basis.lengths import MM_PER_UNIT
from kerfolio.basis.place import Place
from kerfolio.geometry.contour import Point
from kerfolio.geometry.shape_error import ShapeError
from kerfolio.model.statement import Amount, Spot

FOLLOWS = "follows"
"""The rule of a finding that only follows from another one; it is never shown."""


class SettlingError(Exception):
    """A statement that cannot be settled; carries the finding that says why."""

    def __init__(self, finding: Finding) -> None:
        super().__init__(finding.message)
        self.finding = finding


def unsettled(rule: str, message: str, place: Place, advice: str = "") -> SettlingError:
    """Return the exception for an error in a maker's file."""
    return SettlingError(error(rule, message, place, advice))


def misshapen(what: str, fault: ShapeError, place: Place) -> SettlingError:
    """Return the exception for a shape that cannot be made as asked."""
    if fault.pieces is not None:
        pieces = f"falls into {fault.pieces} pieces" if fault.pieces else "is cut away"
        advice = "Leave material between what cuts it; tabs must touch it."
        return unsettled("falls-apart", f"{what} {pieces}", place, advice)
    advice = "" if fault.limit is None else f"At most {fault.limit:.4g} mm fits."
    return unsettled("no-such-shape", f"{what}: {fault}", place, advice)


@dataclass(frozen=True, slots=True, kw_only=True)
class Scope:
    """What expressions may use, all in the plan's ``unit``; results are handed on in mm."""

    unit: str
    names: Mapping[str, float]
    thickness: Mapping[str, float]
    fit: Mapping[str, float]

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
            raise unsettled("no-value", f"`{amount.text}`: {fault}", amount.place) from fault

    def _knows(self, expression: Expression) -> bool:
        sheets = self.thickness.keys() & self.fit.keys()
        return self.names.keys() >= {*expression.names} and sheets >= {*expression.sheets}

    def mm(self, amount: Amount) -> float:
        """Return a length in mm. Raises SettlingError."""
        return self.value(amount) * self.mm_per_unit

    def positive(self, amount: Amount, what: str) -> float:
        """Return a length above 0 in mm. Raises SettlingError."""
        length = self.mm(amount)
        if length <= 0:
            message = f"{what} `{amount.text}` comes to {length:.4g} mm"
            raise unsettled("not-positive", message, amount.place, "It must be above 0.")
        return length

    def plain(self, amount: Amount | None, default: float = 0.0) -> float:
        """Return a plain number, such as an angle in degrees. Raises SettlingError."""
        if amount is None:
            return default
        expression = parse(amount.text, self.unit)
        if isinstance(expression, Expression) and expression.has_unit:
            message = f"`{amount.text}` carries a unit of length"
            raise unsettled("not-a-length", message, amount.place, "Write a plain number.")
        return self.value(amount)

    def count(self, amount: Amount, least: int = 1) -> int:
        """Return a whole number of at least ``least``. Raises SettlingError."""
        number = self.plain(amount)
        if abs(number - round(number)) > 1e-9 or round(number) < least:
            message = f"`{amount.text}` comes to {number:g}"
            advice = f"Write a whole number of at least {least}."
            raise unsettled("not-a-count", message, amount.place, advice)
        return round(number)

    def not_negative(self, amount: Amount, what: str) -> float:
        """Return a length of 0 or more in mm. Raises SettlingError."""
        length = self.mm(amount)
        if length < 0:
            message = f"{what} `{amount.text}` comes to {length:.4g} mm"
            raise unsettled("negative", message, amount.place, "It must be 0 or more.")
        return length

    def point(self, spot: Spot) -> Point:
        """Return a stated point in mm. Raises SettlingError."""
        return self.mm(spot.x), self.mm(spot.y)
