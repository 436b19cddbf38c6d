"""Checks of the thicknesses a plan is published for against those its sheet is sold at."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from kerfolio.basis.finding import Finding, Severity, note, warning
from kerfolio.basis.lengths import mm_number, mm_text
from kerfolio.model.plan import SheetUse
from kerfolio.model.stock import SheetStock
from kerfolio.proving.naming import taken_by
from kerfolio.proving.origin import named_with_file
from kerfolio.proving.rule import COMMON_PRACTICE, Stated, before
from kerfolio.settling.scope import Scope, SettlingError
from kerfolio.settling.sheet import DEFAULT_FIT
from kerfolio.settling.variant import rungs

RATTLES = 0.5
"""Play in mm beyond the fit that a hand feels as loose (common practice, no single source)."""

_LEAST_FIT = 0.02
_SAME = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class _Published:
    """A sheet that some part takes, its stock, the thicknesses published and the fit, mm."""

    use: SheetUse
    stock: SheetStock
    steps: tuple[float, ...]
    fit: float


@before(
    "thin-sheet-uncovered",
    reason="The reader with the thinnest sheet sold gets a rattling joint.",
    source="the stock's own least thickness; half a millimetre is common practice",
    severity=Severity.NOTE,
)
def thin_sheets_covered(stated: Stated) -> Iterator[Finding]:
    """Look for slots that the thinnest sheet sold rattles in."""
    for each in _published(stated):
        play = each.steps[0] - each.stock.least
        if play > RATTLES + _SAME:
            sold = mm_text(each.stock.least, 2)
            message = f"a sheet of {sold} has {mm_text(play)} more play than the fit"
            name = named_with_file(each.stock, "least")
            advice = f"{name} is sold from {sold}: begin `published-for` lower."
            yield note("thin-sheet-uncovered", message, each.use.place, advice)


@before(
    "thick-sheet-uncovered",
    reason="The reader with the thickest sheet sold cannot put it together.",
    source="the stock's own largest thickness",
    severity=Severity.NOTE,
)
def thick_sheets_covered(stated: Stated) -> Iterator[Finding]:
    """Look for slots that the thickest sheet sold does not go into."""
    for each in _published(stated):
        widest = each.steps[-1] + 2 * each.fit
        if each.stock.most > widest + _SAME:
            sold = mm_text(each.stock.most, 2)
            message = f"a sheet of {sold} goes into no published slot"
            advice = (
                f"{named_with_file(each.stock, 'most')} is sold up to {sold}, the widest slots are "
                f"{mm_text(widest, 2)}: let `published-for` end higher."
            )
            yield note("thick-sheet-uncovered", message, each.use.place, advice)


@before(
    "outside-stock",
    reason="A plan is published for thicknesses that can be bought.",
    source="the stock's own least and largest thickness",
    severity=Severity.WARNING,
)
def ladder_outside_stock(stated: Stated) -> Iterator[Finding]:
    """Look for plans published, or drawn, for no thickness that their sheet is sold at."""
    for each in _published(stated, taken=False):
        low, high = each.stock.least, each.stock.most
        name = named_with_file(each.stock, "least")
        sold = f"{name} is sold at {mm_number(low, 2)} to {mm_text(high, 2)}"
        if each.use.published_for and not low - RATTLES <= each.steps[-1]:
            yield _outside(each, f"up to {mm_text(each.steps[-1], 2)}", sold)
        elif each.use.published_for and not each.steps[0] <= high + RATTLES:
            yield _outside(each, f"from {mm_text(each.steps[0], 2)}", sold)
        drawn = _drawn(each.use, stated)
        if drawn is not None and not low - _SAME <= drawn <= high + _SAME:
            message = f"`{each.use.name}` is drawn for {mm_text(drawn, 2)}"
            yield warning("outside-stock", message, each.use.place, f"{sold}: measure again.")


def _outside(each: _Published, words: str, sold: str) -> Finding:
    message = f"`{each.use.name}` is published {words}"
    advice = f"{sold}: correct the ladder or name another stock."
    return warning("outside-stock", message, each.use.place, advice)


def _drawn(use: SheetUse, stated: Stated) -> float | None:
    scope = Scope(unit=stated.plan.units, names={}, thickness={}, fit={})
    try:
        return scope.mm(use.drawn_for) if use.drawn_for else None
    except SettlingError:
        return None


@before(
    "no-fit",
    reason="A sheet does not go into a slot of its own thickness.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def fit_stated(stated: Stated) -> Iterator[Finding]:
    """Look for slots as narrow as the sheet they take."""
    for each in _published(stated):
        if each.fit < _LEAST_FIT:
            message = f"`{each.use.name}` has no clearance in its slots"
            advice = "Write `fit: 0.1`, say: a tenth of a millimetre a side slides by hand."
            yield warning("no-fit", message, each.use.place, advice)


def _published(stated: Stated, *, taken: bool = True) -> Iterator[_Published]:
    """Yield the plan's sheets, only those that some feature takes unless told otherwise."""
    scope = Scope(unit=stated.plan.units, names={}, thickness={}, fit={})
    used = {name for part in stated.plan.parts for name in taken_by(part)}
    for use in stated.plan.sheets:
        stock = stated.stock.sheet(use.stock.name)
        if stock is None or (taken and use.name not in used):
            continue
        try:
            fit = scope.mm(use.fit) if use.fit else DEFAULT_FIT
            yield _Published(use=use, stock=stock, steps=rungs(use, stock, scope.unit), fit=fit)
        except SettlingError:
            continue  # settling says what is wrong with it
