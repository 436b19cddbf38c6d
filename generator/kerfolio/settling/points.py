"""The points at which a plan is proved for its whole range.

Lengths are linear in thickness and fit: what is a linear inequality holds on the range when it
holds at its corners. What is not (a thin web between curves, oblique pieces that go together) is
looked at in the corners, in the middle and at random points besides.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import product
from random import Random

from kerfolio.basis.thickness import read_off
from kerfolio.model.plan import Plan, SheetUse
from kerfolio.model.stock import SheetStock, Stock
from kerfolio.settling.settled import FitVariant, SettledPlan
from kerfolio.settling.sheet import settled_sheets
from kerfolio.settling.variant import drawn_thickness, listed, published_range
from kerfolio.settling.variant_name import labelled

MIXED = 3
"""Sheets up to which each corner of their ranges is looked at; beyond that all thinnest, all
thickest."""

RANDOM, RANDOM_OBLIQUE = 2, 4
"""Points by chance within the range, and how many more where pieces stand oblique."""

_SQUARE = 1e-6

_Thick = tuple[float, ...]
_Fits = tuple[tuple[str, float], ...]
_Ends = tuple[str, tuple[float, float]]


def proof_points(plan: Plan, stock: Stock) -> tuple[FitVariant, ...]:
    """Return the points of a plan's range to prove it at, the thinnest first, the thickest last.

    They are the corners of its sheets' ranges, the thickness it is drawn for, the middle, those
    that files are listed for as ready-made, a few by chance, and the ends of the fits that readers
    may choose. Raises SettlingError.
    """
    found = [(use, stock.sheet(use.stock.name)) for use in plan.sheets]
    sheets = [(use, material) for use, material in found if material is not None]
    ranges = [published_range(use, material, plan.units) for use, material in sheets]
    drawn = tuple(drawn_thickness(use, material, plan.units) for use, material in sheets)
    names = [use.name for use, _ in sheets]
    thick = (*corners(ranges), drawn, *_within(ranges, plan.name), *_ready(sheets, drawn, plan))
    own = settled_sheets(plan, stock, _point(names, drawn))[0].values()
    fits = [(sheet.name, sheet.fits) for sheet in own if sheet.fits is not None]
    most = tuple(last for _, last in ranges)
    points = [_point(names, each) for each in thick]
    if fits:
        points += [_point(names, *each) for each in _with_fits(drawn, most, fits)]
    # Not by their labels: two thicknesses that differ by 0.01 mm may share one of 0.001 in.
    known = dict.fromkeys(labelled(point, plan.units, own) for point in points)
    return tuple(sorted(known, key=in_order))


def in_order(point: FitVariant) -> tuple[_Thick, bool]:
    """Return a key that sorts points, the thinnest first; among equals the plan's own fit last."""
    return tuple(mm for _, mm in point.thickness), not point.fit


def more_points(drawn: SettledPlan) -> tuple[FitVariant, ...]:
    """Return further points by chance for a plan some of whose pieces stand oblique."""
    if not is_oblique(drawn):
        return ()
    ranges = [each.published for each in drawn.sheets]
    names = [each.name for each in drawn.sheets]
    thick = _by_chance(ranges, f"{drawn.plan.name}, oblique", RANDOM_OBLIQUE)
    points = (labelled(_point(names, each), drawn.plan.units) for each in thick)
    return tuple(dict.fromkeys(points))


def corners(ranges: Sequence[tuple[float, float]]) -> Iterator[_Thick]:
    """Yield the corners of ranges; of more than three all thinnest and all thickest alone."""
    if len(ranges) <= MIXED:
        yield from product(*ranges)
    else:
        yield from zip(*ranges, strict=True)


def _within(ranges: Sequence[tuple[float, float]], seed: str) -> Iterator[_Thick]:
    yield tuple(read_off((first + last) / 2) for first, last in ranges)
    yield from _by_chance(ranges, seed, RANDOM)


def _by_chance(ranges: Sequence[tuple[float, float]], seed: str, count: int) -> Iterator[_Thick]:
    luck = Random(seed)
    for _ in range(count):
        yield tuple(read_off(first + luck.random() * (last - first)) for first, last in ranges)


def _ready(
    sheets: Sequence[tuple[SheetUse, SheetStock]], drawn: _Thick, plan: Plan
) -> Iterator[_Thick]:
    for number, (use, material) in enumerate(sheets):
        for mm in listed(use, material, plan.units):
            yield (*drawn[:number], mm, *drawn[number + 1 :])


def _with_fits(
    drawn: _Thick, most: _Thick, fits: Sequence[_Ends]
) -> Iterator[tuple[_Thick, _Fits]]:
    """Yield the fits at both their ends as drawn, and the widest slots that there can be."""
    least = tuple((name, ends[0]) for name, ends in fits)
    widest = tuple((name, ends[1]) for name, ends in fits)
    yield from ((drawn, least), (drawn, widest), (most, widest))


def _point(names: Sequence[str], thick: _Thick, fit: _Fits = ()) -> FitVariant:
    return FitVariant(label="", thickness=tuple(zip(names, thick, strict=True)), fit=fit)


def is_oblique(drawn: SettledPlan) -> bool:
    """Tell whether a feature or a joint stands neither along nor across."""
    turned = any(each.turn % 90 for each in drawn.joints)
    features = (each for part in drawn.parts for each in part.features if each.takes)
    return turned or any(abs(each.direction[0] * each.direction[1]) > _SQUARE for each in features)
