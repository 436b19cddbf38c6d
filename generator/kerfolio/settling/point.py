"""A point of a plan: any thickness, fit and cutter for each of its sheets."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from kerfolio.basis.digits import rounded
from kerfolio.basis.thickness import read_off
from kerfolio.settling.settled import FitVariant, SettledPlan
from kerfolio.settling.variant_name import labelled

_DECIMALS = 3
"""Of a fit and of a cutter's diameter, mm: what cutters are sold by (3.175 mm is 1/8 in)."""


def point(
    drawn: SettledPlan,
    thickness: Mapping[str, float],
    fit: Mapping[str, float] | None = None,
    cutter: Mapping[str, float | None] | None = None,
    cut: Mapping[str, float] | None = None,
) -> FitVariant:
    """Return the point at which sheets have these thicknesses, fits and cutters, all in mm.

    ``cut`` is by how much a cutter cuts wider than its name, where that is to be built in.

    ``drawn`` is the plan at the thickness it is drawn for, which sheets have that are not named;
    it knows the plan's own fits and cutters. A thickness is rounded to 0.01 mm, a fit and a cutter
    to 0.001 mm, before anything is made of them. A cutter of None is none. Raises KeyError for a
    sheet that the plan has not.
    """
    for name in (*thickness, *(fit or ()), *(cutter or ()), *(cut or ())):
        drawn.sheet(name)
    base = drawn.variant
    variant = FitVariant(
        label="",
        thickness=tuple((name, read_off(thickness.get(name, mm))) for name, mm in base.thickness),
        fit=tuple(_fits(drawn, fit or {})),
        cutter=tuple(_cutters(drawn, cutter or {})),
        cut=tuple(_cuts(drawn, cut or {})),
    )
    return labelled(variant, drawn.plan.units, drawn.sheets)


def _fits(drawn: SettledPlan, asked: Mapping[str, float]) -> Iterator[tuple[str, float]]:
    """Yield the fits that are not the plan's own, in the order of its sheets."""
    for sheet in drawn.sheets:
        fit = asked.get(sheet.name)
        if fit is not None and not _same(fit, sheet.fit):
            yield sheet.name, rounded(fit, _DECIMALS)


def _cutters(
    drawn: SettledPlan, asked: Mapping[str, float | None]
) -> Iterator[tuple[str, float | None]]:
    """Yield the cutters that are not the plan's own, in the order of its sheets."""
    for sheet in drawn.sheets:
        diameter = asked.get(sheet.name, sheet.cutter.diameter)
        if diameter is None:
            yield sheet.name, None
        elif not _same(diameter, sheet.cutter.diameter):
            yield sheet.name, rounded(diameter, _DECIMALS)


def _cuts(drawn: SettledPlan, asked: Mapping[str, float]) -> Iterator[tuple[str, float]]:
    """Yield what is built in, in the order of the plan's sheets."""
    for sheet in drawn.sheets:
        cut = rounded(asked.get(sheet.name, 0.0), _DECIMALS)
        if cut:
            yield sheet.name, cut


def _same(mm: float, other: float) -> bool:
    return rounded(mm, _DECIMALS) == rounded(other, _DECIMALS)
