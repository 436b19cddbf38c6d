"""The plan's sheets at one variant's thicknesses."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.finding import Finding
from kerfolio.basis.measures import chosen
from kerfolio.basis.said import ByUnit, said
from kerfolio.basis.tolerance import NOISE
from kerfolio.model.plan import Plan, SheetUse
from kerfolio.model.statement import Amount, Named
from kerfolio.model.stock import SHAPED, CutterStock, SheetStock, Stock
from kerfolio.settling.relief import NO_RELIEF
from kerfolio.settling.scope import Scope, SettlingError, unknown, unsettled
from kerfolio.settling.settled import (
    FitVariant,
    Relieving,
    SettledClamp,
    SettledOffcut,
    SettledSheet,
)
from kerfolio.settling.variant import coupon_step, published_range

DEFAULT_FIT = 0.1
DEFAULT_MARGIN = 10.0
GAP_BEYOND_CUTTER = 2.0
DEFAULT_CUTTER = "compression-6"
"""Common practice, no single source: a tenth a side slides by hand; a centimetre for clamps."""

DEFAULT_EXTRA = 0.1
"""By how much the arcs of reliefs are larger across than the cutter, mm.

Many toolpath programs drop an inside arc of exactly the cutter's radius (common practice, no
single source).
"""


def settled_sheets(
    plan: Plan, stock: Stock, variant: FitVariant
) -> tuple[dict[str, SettledSheet], tuple[Finding, ...]]:
    """Return the sheets by name, and findings for those that cannot be settled."""
    found: dict[str, SettledSheet] = {}
    findings: list[Finding] = []
    for use in plan.sheets:
        try:
            found[use.name] = _sheet(use, plan, stock, variant)
        except SettlingError as trouble:
            findings.append(trouble.about(use.name))
    return found, tuple(findings)


def _sheet(use: SheetUse, plan: Plan, stock: Stock, variant: FitVariant) -> SettledSheet:
    material = stock.sheet(use.stock.name)
    if material is None:
        raise unknown("stock", use.stock, (each.name for each in stock.sheets), "sheet stock")
    scope = Scope(unit=plan.units)
    cutter = _cutter(use, plan, stock)
    fit, fits = _fit(use, scope)
    diameter = dict(variant.cutter).get(use.name, cutter.diameter)
    return SettledSheet(
        name=use.name,
        stock=material,
        thickness=dict(variant.thickness)[use.name],
        published=published_range(use, material, plan.units),
        step=coupon_step(use, plan.units),
        fit=dict(variant.fit).get(use.name, fit),
        fits=fits,
        size=_size(use, material, scope),
        margin=scope.not_negative(use.margin, "margin") if use.margin else DEFAULT_MARGIN,
        gap=scope.not_negative(use.gap, "gap") if use.gap else cutter.diameter + GAP_BEYOND_CUTTER,
        cutter=cutter,
        diameter=diameter,
        relief=_relieving(plan, diameter, scope),
        cut=dict(variant.cut).get(use.name, 0.0),
        datum=use.datum,
        also=tuple(_both(each, scope) for each in use.also),
        offcuts=tuple(
            SettledOffcut(size=_both(each.size, scope), count=each.count) for each in use.offcuts
        ),
        clamps=tuple(_clamps(use, scope)),
        place=use.place,
    )


def _fit(use: SheetUse, scope: Scope) -> tuple[float, tuple[float, float] | None]:
    """Return the plan's own fit, and between what a reader may choose it; mm."""
    if use.fit is None:
        return DEFAULT_FIT, None
    fit, reader = scope.not_negative(use.fit.value, "fit"), use.fit.reader
    if reader is None:
        return fit, None
    least, most = (scope.not_negative(each, "fit") for each in (reader.least, reader.most))
    if not least - NOISE <= fit <= most + NOISE:
        ends = chosen("least", least), chosen("most", most)
        message = said("a fit of {} is not within {} to {}", chosen("fit", fit), *ends)
        advice = "Let `reader` reach from less than `value` to more."
        raise unsettled("fit-outside-choice", message, reader.place, advice)
    return fit, (least, most)


def _relieving(plan: Plan, diameter: float | None, scope: Scope) -> Relieving:
    stated = plan.relief.extra
    extra = scope.not_negative(stated, "extra") if stated else DEFAULT_EXTRA
    if diameter is None:  # what is no cutter leaves no corner round
        return Relieving(style=NO_RELIEF, diameter=0.0)
    return Relieving(style=plan.relief.style, diameter=diameter + extra)


def _size(use: SheetUse, material: SheetStock, scope: Scope) -> tuple[float, float]:
    if use.size:
        return _both(use.size, scope)
    if not material.sizes:
        advice = said("Write {}, say.", ByUnit("`size: 2440 x 1220`", "`size: 96 x 48`"))
        raise unsettled("no-sheet-size", f"no size for sheet `{use.name}`", use.place, advice)
    return material.sizes[0]


def _both(size: tuple[Amount, Amount], scope: Scope) -> tuple[float, float]:
    return scope.positive(size[0], "size"), scope.positive(size[1], "size")


def _clamps(use: SheetUse, scope: Scope) -> Iterator[SettledClamp]:
    for clamp in use.clamps:
        for at in clamp.at:
            yield SettledClamp(
                edge=clamp.edge,
                at=scope.not_negative(at, "at"),
                width=scope.positive(clamp.width, "width"),
                depth=scope.positive(clamp.depth, "depth"),
            )


def _cutter(use: SheetUse, plan: Plan, stock: Stock) -> CutterStock:
    named = next(_cutters_named(use, plan, stock))
    found = stock.cutter(named.name)
    if found is None:
        raise unknown("cutter", named, (each.name for each in stock.cutters))
    return found


def _cutters_named(use: SheetUse, plan: Plan, stock: Stock) -> Iterator[Named]:
    """Yield who names a sheet's cutter, the first one counts: relief, its cuts, the default.

    What is only for engraving cuts no outline.
    """
    if plan.relief.cutter is not None:
        yield plan.relief.cutter
    engrave = {each.name for each in stock.cutters if each.kind in SHAPED}
    own = (cut.cutter for cut in plan.cuts if cut.sheet.name == use.name)
    yield from (each for each in own if each.name not in engrave)
    yield Named(DEFAULT_CUTTER, use.place)
