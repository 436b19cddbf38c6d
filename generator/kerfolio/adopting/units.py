"""The unit of a drawing that states none: by the sheet's border, how wide its slots are, and by the
unit in which most of its lengths are round."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from kerfolio.adopting.shape import Shape
from kerfolio.adopting.unit_names import UNITS
from kerfolio.basis.lengths import INCH
from kerfolio.geometry.arc import edges
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.slot_fit import fitted_slot
from kerfolio.geometry.stretch import stretches

_NEAR = 0.35
_BORDER = 0.002
_ALIKE = 0.005
_LEAST, _MOST = 20.0, 4000.0
_GRIDS, _ON_GRID = (0.5, float(INCH) / 16), 0.012
"""Makers draw in halves of a mm or sixteenths of an inch; so near, mm, a length is round."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sold:
    """What can be bought: sheets' thicknesses (least, most) and sizes, mm."""

    thick: tuple[tuple[float, float], ...]
    sizes: tuple[tuple[float, float], ...]


def units_by_likelihood(closed: Sequence[Shape], sold: Sold) -> tuple[str, ...]:
    """Return the units that a drawing's numbers may be in, the likeliest first.

    ``closed`` are its shapes in its own numbers.
    """
    boxes = [bounds(each.contour) for each in closed]
    widths, lengths = list(_widths(closed)), _lengths(closed)
    scores = {}
    for name, mm in UNITS.items():
        largest = max((max(b.width, b.height) * mm for b in boxes), default=0.0)
        fits = _LEAST <= largest <= _MOST
        borders = sum(_is_sold(b.width * mm, b.height * mm, sold.sizes) for b in boxes)
        slots = sum(_is_thick(width * mm, sold.thick) for width in widths)
        share = slots / len(widths) if widths else 0.0
        scores[name] = (2.0 * bool(borders) + share + _round_share(lengths, mm) + 0.2) * fits
    order = list(UNITS)
    return tuple(sorted(UNITS, key=lambda name: (-round(scores[name], 6), order.index(name))))


def _widths(closed: Iterable[Shape]) -> Iterable[float]:
    """Return widths of slots and notches, and depths of tabs, those that come most often."""
    found: dict[float, int] = {}
    for each in closed:
        slot = fitted_slot(each.contour) if len(each.contour.vertices) <= 16 else None
        sizes = [slot.width] if slot else []
        sizes += [s.depth if s.tab else s.width for s in stretches(each.contour)]
        for size in sizes:
            near = next((k for k in found if abs(k - size) <= _ALIKE * k), size)
            found[near] = found.get(near, 0) + 1
    most = max(found.values(), default=0)
    return [size for size, count in found.items() if count >= max(1, most / 2)]


def _lengths(closed: Iterable[Shape]) -> tuple[float, ...]:
    """Return how far apart the ends of straight edges are, along x and along y."""
    found = []
    for each in closed:
        for edge in edges(each.contour):
            if not edge.bulge:
                sides = (edge.end[0] - edge.start[0], edge.end[1] - edge.start[1])
                found += [abs(side) for side in sides]
    return tuple(found)


def _round_share(lengths: Iterable[float], mm: float) -> float:
    """Return the share of lengths that are round in a unit, by the better of both grids."""
    known = [each * mm for each in lengths if each * mm > 1.0]
    counts = [sum(abs(s / g - round(s / g)) * g <= _ON_GRID for s in known) for g in _GRIDS]
    return max(counts) / len(known) if known else 0.0


def _is_sold(width: float, height: float, sizes: Iterable[tuple[float, float]]) -> bool:
    mine = sorted((width, height))
    return any(
        all(abs(a - b) <= _BORDER * b for a, b in zip(mine, sorted(size), strict=True))
        for size in sizes
    )


def _is_thick(width: float, thick: Iterable[tuple[float, float]]) -> bool:
    return any(least - _NEAR <= width <= most + _NEAR for least, most in thick)
