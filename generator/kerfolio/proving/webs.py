"""Checks of how much wood is left: beside openings, in necks and in tongues."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from kerfolio.basis.finding import Finding, Severity, warning
from kerfolio.basis.measures import length, point
from kerfolio.basis.place import NOWHERE
from kerfolio.basis.said import Text, named, said, stated_name
from kerfolio.geometry.contour import Point
from kerfolio.geometry.measure import contours_of
from kerfolio.geometry.near import Lines
from kerfolio.geometry.thin import ThinPlace, thin_places
from kerfolio.model.feature_kind import HOLE
from kerfolio.proving.marks import spots_mark
from kerfolio.proving.rule import COMMON_PRACTICE, after
from kerfolio.settling.settled import SettledFeature, SettledPart, SettledPlan

BESIDE_OPENING = 0.75
NECK = 0.5
BESIDE_HOLE = 0.25
"""The least width left, in thicknesses of the sheet.

The trade keeps about one thickness between a slot and an edge, where a tab levers on what is left;
the rule speaks at three quarters. A neck of the outline carries less, a drilled hole is filled by
its bolt. Common practice, no single source.
"""

_ON = 0.1
"""A point this near a line, mm, lies on it."""

_Sides = tuple[SettledFeature | None, SettledFeature | None]
_SHARES = {BESIDE_OPENING: "three quarters", NECK: "half", BESIDE_HOLE: "a quarter"}


@dataclass(frozen=True, slots=True, kw_only=True)
class _Web:
    """A thin place with the features at its two ends (None: the part's own edge)."""

    place: ThinPlace
    sides: _Sides

    @property
    def share(self) -> float:
        """The least width asked for here, in thicknesses."""
        kinds = [side.kind for side in self.sides if side]
        if HOLE in kinds:
            return BESIDE_HOLE
        if self.place.tongue or not kinds:
            return NECK
        return BESIDE_OPENING


@after(
    "breaks-out",
    reason="Little wood splits off, short grain first: a part breaks where it is narrowest.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
    also=("thin-neck",),
)
def wood_left(settled: SettledPlan) -> Iterator[Finding]:
    """Look for little wood beside an opening, which breaks out, and for thin necks and tongues.

    Relief is cut, so the routed shape counts.
    """
    for part in settled.parts:
        places = thin_places(part.routed, BESIDE_OPENING * part.thickness)
        if not places:
            continue
        beside = _Edges(part, settled.sheet(part.sheet).relief.diameter / 2)
        for place, sides in zip(places, beside.sides(places), strict=True):
            web = _Web(place=place, sides=sides)
            if place.width < web.share * part.thickness:
                yield _told(web, settled, part)


def _told(web: _Web, settled: SettledPlan, part: SettledPart) -> Finding:
    first, second = web.sides
    wide, least = length("width", web.place.width), length("least", web.share * part.thickness)
    keep = said("{}, {} of the sheet", least, _SHARES[web.share])
    mark = spots_mark(settled, part, [web.place.at], web.place.width / 2)
    if first is None or web.place.tongue:
        what, at = "tongue" if web.place.tongue else "neck", point(*web.place.at)
        message = said("a {} of `{}` is {} wide at {}", what, part.name, wide, at)
        advice, subject = said("Make it {}, or more.", keep), part.name
        return warning("thin-neck", message, part.place, advice, mark=mark, subject=subject)
    pair = _called(first, part.name), _called(second)
    message = said("{} of wood between {} and {}", wide, *pair)
    place = part.place if first.place == NOWHERE else first.place
    advice, subject = said("Keep {}: move them apart.", keep), f"{part.name}.{first.name}"
    subject = stated_name(subject)
    return warning("breaks-out", message, place, advice, mark=mark, subject=subject)


class _Edges:
    """Finds the features that a thin place of a part lies between."""

    def __init__(self, part: SettledPart, radius: float) -> None:
        self._features, self._radius = part.features, radius
        self._plain = Lines(contours_of(part.plain))
        own = [
            (index, contour)
            for index, feature in enumerate(part.features)
            if feature.depth is None
            for contour in feature.shape
        ]
        self._owners = [index for index, _ in own]
        self._own = Lines([contour for _, contour in own])

    def sides(self, places: Sequence[ThinPlace]) -> Iterator[_Sides]:
        """Yield the features at a place's ends in the part's order, None (its edge) last."""
        features = (*self._features, None)
        numbers = iter(self._numbers([end for place in places for end in place.ends]))
        for one, other in zip(numbers, numbers, strict=True):
            yield features[min(one, other)], features[max(one, other)]

    def _numbers(self, spots: Sequence[Point]) -> list[int]:
        """Return the number of each point's feature, one beyond the last for the part's own edge.

        A point that is not on the plain shape lies on a relief, which reaches a radius out.
        """
        plain = self._plain.near(spots, [_ON] * len(spots))
        near = self._own.near(spots, [_ON if each else self._radius + _ON for each in plain])
        own = [[(away, self._owners[line]) for away, line in each] for each in near]
        return [min(each)[1] if each else len(self._features) for each in own]


def _called(feature: SettledFeature | None, part: str = "") -> Text:
    if feature is None:
        return "the edge"
    name = f"{part}.{feature.name}" if part else feature.name
    return said("{} {}", feature.kind.name, named(name))
