"""How regular the places of features are: what tells a slip from what was meant.

Geometry often cannot tell which of two features that meet was moved: putting either right mends the
joints alike. A maker's numbers are round once the sheets' thicknesses are taken out of them, and
features lie in line with others, as their mirror images do, or in the middle. A slip breaks that,
and so does moving the innocent one after it. So the cure is preferred after which the plan is the
more regular (our own rule; common practice of drawing, no single source).
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from math import atan2, degrees

from kerfolio.assembly.frames import at_ends
from kerfolio.basis.lengths import MM_PER_UNIT
from kerfolio.geometry.contour import Point
from kerfolio.geometry.measure import bounds
from kerfolio.model.feature_kind import TAB
from kerfolio.settling.settle import settle
from kerfolio.settling.settled import SettledFeature, SettledPart, SettledPlan

_SAME = 0.02
"""Places within this, mm, lie in line."""

_THICKER = 0.1
"""By so much, mm, a sheet is made thicker to see what follows it."""

_ROUND = {
    "mm": (50.0, 10.0, 5.0, 1.0, 0.5, 0.1),
    "in": (1.0, 1 / 2, 1 / 4, 1 / 8, 1 / 16, 1 / 32),
}
"""What round numbers are multiples of, the roundest first."""

_ANGLES = (90.0, 45.0, 15.0, 5.0, 1.0)

_MOST_IN_LINE = 3
"""More features in line than this prove nothing more."""

Key = tuple[str, str]
"""A part's name and a feature's."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Regularity:
    """The figures of a plan: ``parts`` with their features, and what does not follow the sheets.

    ``free`` are places and depths of features, ``sizes`` those of parts without their tabs, both as
    they would be if sheets had no thickness; mm. ``unit`` is the plan's.
    """

    parts: Mapping[str, SettledPart]
    free: Mapping[Key, tuple[Point, float]]
    sizes: Mapping[str, Point]
    unit: str

    def of_move(self, part: str, names: Sequence[str], by: Point) -> int:
        """Return how much more regular features of a part are, once moved; mm in its face."""
        gained = 0
        for axis in (0, 1):
            if abs(by[axis]) > _SAME:
                gained += self._in_line(part, names, axis, by[axis])
                gained += self._rounder(part, names, axis, by[axis])
        return gained

    def of_length(self, part: str, axis: int, by: float) -> int:
        """Return how much more regular a part's size along an axis is, once it is longer."""
        size = self.sizes.get(part, (0.0, 0.0))[axis]
        now = body(self.parts[part])[axis]
        others = [side for name, each in self.parts.items() for side in body(each) if name != part]
        alike = _count(others, now + by) - _count(others, now)
        return self._roundness(size + by) - self._roundness(size) + _limited(alike)

    def of_depth(self, part: str, names: Sequence[str], by: float) -> int:
        """Return how much rounder the depth of features is, once they are deeper."""
        depths = [self.free[part, name][1] for name in names if (part, name) in self.free]
        if not depths:
            return 0
        return self._roundness(depths[0] + by) - self._roundness(depths[0])

    def of_turn(self, part: str, names: Sequence[str], by: float) -> int:
        """Return how much rounder the angle of features is, once turned; degrees."""
        found = next((f for f in self.parts[part].features if f.name in names), None)
        if found is None:
            return 0
        angle = degrees(atan2(found.direction[1], found.direction[0]))
        return _level(angle + by, _ANGLES) - _level(angle, _ANGLES)

    def _rounder(self, part: str, names: Sequence[str], axis: int, by: float) -> int:
        spots = [self.free[part, name][0][axis] for name in names if (part, name) in self.free]
        if not spots:
            return 0
        gains = [self._roundness(each + by) - self._roundness(each) for each in spots]
        return min(gains) if gains[0] < 0 else max(gains)

    def _roundness(self, mm: float) -> int:
        return _level(mm / float(MM_PER_UNIT[self.unit]), _ROUND[self.unit])

    def _in_line(self, part: str, names: Sequence[str], axis: int, by: float) -> int:
        """Return with how many more others features are in line, once moved."""
        mine = self.parts[part]
        spots = [f.at[axis] for f in mine.features if f.name in names]
        if not spots:
            return 0
        spots.append((spots[0] + spots[-1]) / 2)
        marks = list(self._marks(mine, names, axis))
        now = max(_count(marks, spot) for spot in spots)
        then = max(_count(marks, spot + by) for spot in spots)
        return min(then, _MOST_IN_LINE) - min(now, _MOST_IN_LINE)

    def _marks(self, mine: SettledPart, names: Sequence[str], axis: int) -> Iterator[float]:
        """Yield what places of a part along an axis may be in line with, mirrored as well."""
        size = mine.size[axis]
        yield size / 2
        for part in self.parts.values():
            if part is not mine and abs(part.size[axis] - size) > _SAME:
                continue
            for spot in _spots(part, names if part is mine else (), axis):
                yield spot
                if abs(2 * spot - size) > _SAME:
                    yield size - spot


def _spots(part: SettledPart, without: Sequence[str], axis: int) -> Iterator[float]:
    """Yield the places of a part's features, and the middle of each set; each place once."""
    sets: dict[str, list[SettledFeature]] = {}
    for each in part.features:
        if each.name not in without:
            sets.setdefault(each.name.partition(".")[0], []).append(each)
    found = {
        round(spot, 3)
        for features in sets.values()
        for spot in (
            *(each.at[axis] for each in features),
            (features[0].at[axis] + features[-1].at[axis]) / 2,
        )
    }
    yield from sorted(found)


def _count(marks: Sequence[float], spot: float) -> int:
    return sum(abs(each - spot) < _SAME for each in marks)


def _limited(count: int) -> int:
    return max(-_MOST_IN_LINE, min(_MOST_IN_LINE, count))


def _level(value: float, steps: Sequence[float]) -> int:
    """Return how round a number is: the more, the rounder; 0 where it is none of the steps'."""
    for index, step in enumerate(steps):
        if abs(value / step - round(value / step)) * step < _SAME / 4:
            return len(steps) - index
    return 0


def regularity_of(settled: SettledPlan) -> Regularity:
    """Return the figures of a plan, which is settled again with each sheet a little thicker."""
    parts = {part.name: part for part in settled.parts}
    slopes = list(_thicker(settled))
    free: dict[Key, tuple[Point, float]] = {}
    sizes: dict[str, Point] = {}
    for part in settled.parts:
        sizes[part.name] = _without(body(part), [(mm, body(p[part.name])) for mm, p in slopes])
        for feature in part.features:
            others = [(mm, _named(p[part.name], feature.name)) for mm, p in slopes]
            known = [(mm, each) for mm, each in others if each is not None]
            at = _without(feature.at, [(mm, each.at) for mm, each in known])
            deep = _deep(feature)
            depth = _without((deep, 0.0), [(mm, (_deep(each), 0.0)) for mm, each in known])[0]
            free[part.name, feature.name] = (at, depth)
    return Regularity(parts=parts, free=free, sizes=sizes, unit=settled.plan.units)


def body(part: SettledPart) -> Point:
    """Return how wide and high a part is without the tabs on its edges, as it is stated; mm."""
    (x0, y0), (x1, y1) = body_box(part)
    return x1 - x0, y1 - y0


def body_box(part: SettledPart) -> tuple[Point, Point]:
    """Return the lower left and the upper right corner of a part without its tabs, mm."""
    reach = {
        way: max((f.length.value for f in part.features if _is_tab(f, way)), default=0.0)
        for way in ((1, 0), (-1, 0), (0, 1), (0, -1))
    }
    box = bounds(part.plain.outer)
    return (
        (box.x0 + reach[-1, 0], box.y0 + reach[0, -1]),
        (box.x1 - reach[1, 0], box.y1 - reach[0, 1]),
    )


def _is_tab(feature: SettledFeature, way: tuple[int, int]) -> bool:
    """Tell whether a feature is a tab that looks a way along x or y."""
    (x, y), (dx, dy) = way, feature.direction
    return feature.kind is TAB and x * dx + y * dy > 1 - 1e-6


def _deep(feature: SettledFeature) -> float:
    """Return how deep a feature is drawn, before the fit deepened it; mm."""
    deep = feature.depth.value if feature.depth else feature.length.value
    return deep - at_ends(feature)


def _named(part: SettledPart, name: str) -> SettledFeature | None:
    return next((each for each in part.features if each.name == name), None)


def _thicker(settled: SettledPlan) -> Iterator[tuple[float, dict[str, SettledPart]]]:
    """Yield each sheet's thickness and the parts as they would be if it were thicker."""
    for name, mm in settled.variant.thickness:
        thickness = tuple(
            (each, size + _THICKER if each == name else size)
            for each, size in settled.variant.thickness
        )
        variant = replace(settled.variant, thickness=thickness)
        found, _ = settle(settled.plan, settled.stock, variant)
        if found is not None:
            yield mm, {part.name: part for part in found.parts}


def _without(here: Point, there: Sequence[tuple[float, Point]]) -> Point:
    """Return what a figure would be without the sheets' thicknesses."""
    x, y = here
    for mm, (u, v) in there:
        x -= (u - here[0]) / _THICKER * mm
        y -= (v - here[1]) / _THICKER * mm
    return x, y
