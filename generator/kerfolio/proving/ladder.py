"""Checks of the thicknesses a plan is published for against those its sheet is sold at."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from kerfolio.basis.finding import Finding, Severity, note, warning
from kerfolio.basis.measures import length, precise, readings
from kerfolio.basis.said import Text, Words, said
from kerfolio.basis.slips import meant_length, slip_advice
from kerfolio.basis.tolerance import AS_LISTED, NOISE
from kerfolio.model.plan import SheetUse
from kerfolio.model.stock import SheetStock
from kerfolio.proving.naming import taken_by
from kerfolio.proving.origin import named_with_file
from kerfolio.proving.rule import Stated, before
from kerfolio.settling.scope import Scope, SettlingError
from kerfolio.settling.sheet import DEFAULT_FIT
from kerfolio.settling.variant import published_range

RATTLES = 0.5
"""Play in mm beyond the fit that a hand feels as loose (common practice, no single source)."""

_FAR = 2.0
"""No sheet measures half or double of what it is sold as (common practice, no single source)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Published:
    """A sheet that some part takes, its stock, the published range and the fit, mm."""

    use: SheetUse
    stock: SheetStock
    first: float
    last: float
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
        play = each.first - each.stock.least
        if play > RATTLES + NOISE:
            sold, loose = precise("least-sold", each.stock.least), length("play", play)
            message = said("a sheet of {} has {} more play than the fit", sold, loose)
            name = named_with_file(each.stock, "least")
            advice = said("{} is sold from {}: begin `published-for` lower.", name, sold)
            subject = each.use.name
            yield note("thin-sheet-uncovered", message, each.use.place, advice, subject=subject)


@before(
    "thick-sheet-uncovered",
    reason="The reader with the thickest sheet sold cannot put it together.",
    source="the stock's own largest thickness",
    severity=Severity.NOTE,
)
def thick_sheets_covered(stated: Stated) -> Iterator[Finding]:
    """Look for slots that the thickest sheet sold does not go into."""
    for each in _published(stated):
        widest = each.last + 2 * each.fit
        if each.stock.most > widest + NOISE:
            sold = precise("most-sold", each.stock.most)
            message = said("a sheet of {} goes into no published slot", sold)
            advice = said(
                "{} is sold up to {}, slots with its own fit are {} at most: let "
                "`published-for` end higher.",
                named_with_file(each.stock, "most"),
                sold,
                precise("widest", widest),
            )
            subject = each.use.name
            yield note("thick-sheet-uncovered", message, each.use.place, advice, subject=subject)


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
        sold = said("{} is sold at {}", name, readings(("least-sold", low), ("most-sold", high)))
        first, last = each.first, each.last
        far = last > _FAR * high
        if each.use.published_for and (far or not low - RATTLES <= last):
            yield _outside(each, said("up to {}", precise("published", last)), sold, last)
        elif each.use.published_for and (first < low / _FAR or not first <= high + RATTLES):
            yield _outside(each, said("from {}", precise("published", first)), sold, first)
        drawn = _drawn(each.use, stated)
        if drawn is not None and not low - AS_LISTED <= drawn <= high + AS_LISTED:
            message = said("`{}` is drawn for {}", each.use.name, precise("drawn-for", drawn))
            advice, subject = _slip(each, drawn, said("{}: measure again.", sold)), each.use.name
            yield warning("outside-stock", message, each.use.place, advice, subject=subject)


def _outside(each: _Published, words: Words, sold: Words, mm: float) -> Finding:
    message = said("`{}` is published {}", each.use.name, words)
    advice = _slip(each, mm, said("{}: correct the range or name another stock.", sold))
    return warning("outside-stock", message, each.use.place, advice, subject=each.use.name)


def _slip(each: _Published, mm: float, otherwise: Text) -> Text:
    """Return the question after the thickness meant, where one cannot be this sheet's."""
    low, high = each.stock.least, each.stock.most
    far = not low / _FAR <= mm <= _FAR * high
    meant = meant_length(mm, low - RATTLES, high + RATTLES) if far else ""
    return slip_advice(meant, otherwise)


def _drawn(use: SheetUse, stated: Stated) -> float | None:
    scope = Scope(unit=stated.plan.units)
    try:
        return scope.mm(use.drawn_for) if use.drawn_for else None
    except SettlingError:
        return None


def _published(stated: Stated, *, taken: bool = True) -> Iterator[_Published]:
    """Yield the plan's sheets, only those that some feature takes unless told otherwise."""
    scope = Scope(unit=stated.plan.units)
    used = {name for part in stated.plan.parts for name in taken_by(part)}
    for use in stated.plan.sheets:
        stock = stated.stock.sheet(use.stock.name)
        if stock is None or (taken and use.name not in used):
            continue
        try:
            fit = scope.mm(use.fit.value) if use.fit else DEFAULT_FIT
            first, last = published_range(use, stock, scope.unit)
            yield _Published(use=use, stock=stock, first=first, last=last, fit=fit)
        except SettlingError:
            continue  # settling says what is wrong with it
