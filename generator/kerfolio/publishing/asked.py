"""Words of a command line as a point: which thickness, fit and cutter its files are to be for."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping
from contextlib import suppress
from dataclasses import dataclass

from kerfolio.basis.complaint import quoted
from kerfolio.basis.expression import Expression, ExpressionError, parse
from kerfolio.basis.finding import Finding, error, in_unit
from kerfolio.basis.measures import chosen, precise, readings
from kerfolio.basis.names import did_you_mean
from kerfolio.basis.place import Place
from kerfolio.basis.said import said, written
from kerfolio.basis.thickness import read_off
from kerfolio.basis.tolerance import AS_LISTED
from kerfolio.model.plan import Plan
from kerfolio.model.stock import Stock
from kerfolio.proving.origin import named_with_file
from kerfolio.reading.amounts import constant_mm
from kerfolio.settling.built_in import MOST_CUT
from kerfolio.settling.point import point
from kerfolio.settling.settle import settle
from kerfolio.settling.settled import FitVariant, SettledPlan, SettledSheet
from kerfolio.settling.variant import drawn_variant

NO_CUTTER = "none"
MOST_FIT, LEAST_CUTTER, MOST_CUTTER = 5.0, 0.5, 50.0
"""mm; the bounds only catch slips of the unit (common practice, no single source)."""

_NAMED = re.compile(r"\s*([a-z][a-z0-9_-]*)\s*=\s*(.*)")


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What was typed behind ``--sheet``, ``--fit``, ``--cutter`` and ``--cut``: ``ply=17.63``.

    With ``from_log`` the log says what was not typed: of its newest batch, or of ``batch``.
    """

    sheets: tuple[str, ...] = ()
    fits: tuple[str, ...] = ()
    cutters: tuple[str, ...] = ()
    cuts: tuple[str, ...] = ()
    from_log: bool = False
    batch: str = ""


class AskedError(Exception):
    """What was asked cannot be had; carries the finding that says why."""

    def __init__(self, finding: Finding) -> None:
        super().__init__(finding.message)
        self.finding = finding


_Read = Callable[[str, SettledSheet, Place, str], float | None]


def point_asked(
    asked: Asked, plan: Plan, stock: Stock
) -> tuple[FitVariant | None, tuple[Finding, ...]]:
    """Return the point that was asked for, or what is wrong with the words.

    None without findings where the plan itself does not settle as drawn: proving tells why. A bare
    number is in the plan's unit; without a name it is for the only sheet, a fit or a cutter for all
    of them.
    """
    variant = drawn_variant(plan, stock)
    drawn = settle(plan, stock, variant)[0] if variant else None
    if drawn is None:
        return None, ()
    try:
        thickness = _values("--sheet", asked.sheets, drawn, _thickness)
        fit = _values("--fit", asked.fits, drawn, _fit)
        cutter = _values("--cutter", asked.cutters, drawn, _cutter)
        cut = _values("--cut", asked.cuts, drawn, _cut)
    except AskedError as trouble:
        return None, in_unit((trouble.finding,), plan.units)
    return point(drawn, _stated(thickness), _stated(fit), cutter, _stated(cut)), ()


def _stated(values: Mapping[str, float | None]) -> dict[str, float]:
    return {name: mm for name, mm in values.items() if mm is not None}


def _values(
    option: str, texts: Iterable[str], drawn: SettledPlan, read: _Read
) -> Mapping[str, float | None]:
    """Return a value for each sheet that is meant."""
    found: dict[str, float | None] = {}
    for text in texts:
        place = Place(f"{option} {text}")
        named = _NAMED.fullmatch(text)
        value = named[2] if named else text
        for sheet in _meant(option, named[1] if named else "", value, drawn, place):
            if sheet.name in found:
                message = f"`{sheet.name}` is named twice"
                raise AskedError(error("one-too-many", message, place, "Keep one of them."))
            found[sheet.name] = read(value, sheet, place, drawn.plan.units)
    return found


def _meant(
    option: str, name: str, value: str, drawn: SettledPlan, place: Place
) -> tuple[SettledSheet, ...]:
    names = [each.name for each in drawn.sheets]
    if name:
        if name in names:
            return (drawn.sheet(name),)
        message, advice = f"no sheet `{name}`", did_you_mean(name, names)
        raise AskedError(error("unknown-sheet", message, place, advice))
    if option == "--sheet" and len(names) > 1:
        message, advice = f"which sheet is {quoted(value)}?", f"Write `{names[0]}={value}`."
        raise AskedError(error("unknown-sheet", message, place, advice))
    return drawn.sheets


def length_asked(text: str, place: Place, unit: str) -> float:
    """Return a length that was typed, mm; a bare number is in ``unit``. Raises AskedError."""
    expression = parse(text.strip(), unit)
    with suppress(ExpressionError):
        if isinstance(expression, Expression) and not (expression.names or expression.sheets):
            return constant_mm(expression)
    advice = written("17.63", "0.694", "Write a number or a quantity such as `{}`.")
    raise AskedError(error("wrong-value", f"{quoted(text)} is no length", place, advice))


def _thickness(text: str, sheet: SettledSheet, place: Place, unit: str) -> float:
    """Return a thickness at which the stock is sold, or for which the plan is published."""
    mm = read_off(length_asked(text, place, unit))
    least = min(sheet.stock.least, sheet.published[0])
    most = max(sheet.stock.most, sheet.published[1])
    if least - AS_LISTED <= mm <= most + AS_LISTED:
        return mm
    message = said("`{}` is not made for {}", sheet.name, precise("thickness", mm))
    advice = said(
        "Ask for {}: what {} is sold at and the plan is published for.",
        readings(("least", least), ("most", most)),
        named_with_file(sheet.stock, "least"),
    )
    raise AskedError(error("outside-stock", message, place, advice, subject=sheet.name))


def _fit(text: str, _: SettledSheet, place: Place, unit: str) -> float:
    return within_asked(length_asked(text, place, unit), (0.0, MOST_FIT), "fit", place)


def _cutter(text: str, _: SettledSheet, place: Place, unit: str) -> float | None:
    if text.strip() == NO_CUTTER:
        return None
    return within_asked(
        length_asked(text, place, unit), (LEAST_CUTTER, MOST_CUTTER), "cutter", place
    )


def _cut(text: str, _: SettledSheet, place: Place, unit: str) -> float:
    return within_asked(length_asked(text, place, unit), (-MOST_CUT, MOST_CUT), "cut", place)


def within_asked(mm: float, ends: tuple[float, float], what: str, place: Place) -> float:
    """Return a length that lies within bounds, mm. Raises AskedError for any other."""
    if ends[0] <= mm <= ends[1]:
        return mm
    usual = said("{} to {} is usual", chosen("least", ends[0]), chosen("most", ends[1]))
    message = said("a {} of {}", what, chosen(what, mm))
    advice = usual + ": is the unit the one you mean?"
    raise AskedError(error("out-of-range", message, place, advice))
