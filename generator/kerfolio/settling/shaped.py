"""One feature made into shapes: what it adds, takes away and cuts, before it joins its part."""

from __future__ import annotations

from dataclasses import dataclass, replace

from kerfolio.basis.tolerance import NOISE
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.transform import mirrored_x, mirrored_y, moved
from kerfolio.model.feature_kind import ENGRAVING
from kerfolio.settling.edge import EdgeFrame
from kerfolio.settling.settled import Cut, SettledFeature


@dataclass(frozen=True, slots=True, kw_only=True)
class Mating:
    """A corner that a mating part fills: where, and along which wall a sideways relief eats."""

    at: Point
    eaten: Point


@dataclass(frozen=True, slots=True, kw_only=True)
class Shaped:
    """A feature's shapes in the part's frame.

    ``added`` joins the part; ``taken`` is cut away through the sheet; ``cuts`` go to a depth.
    ``stands_on`` must lie inside the part and ``stands_out`` outside it, or the feature does not
    stand on its edge: ``edge`` is that edge, ``span`` where on it the feature begins and ends.
    ``mating`` are the corners of ``added`` and ``taken`` to relieve; those of
    ``cuts`` are in ``pocketed``.
    """

    feature: SettledFeature
    added: tuple[Contour, ...] = ()
    taken: tuple[Contour, ...] = ()
    cuts: tuple[Cut, ...] = ()
    mating: tuple[Mating, ...] = ()
    pocketed: tuple[Mating, ...] = ()
    stands_on: tuple[Contour, ...] = ()
    stands_out: tuple[Contour, ...] = ()
    edge: EdgeFrame | None = None
    span: tuple[Point, Point] | None = None

    @property
    def stretch(self) -> tuple[float, float] | None:
        """From where to where along its edge it stands, mm; None where it is beside that line."""
        if self.edge is None or self.span is None:
            return None
        (a, off), (b, _) = (self.edge.measured(each) for each in self.span)
        return None if abs(off) > NOISE else (min(a, b), max(a, b))


@dataclass(frozen=True, slots=True, kw_only=True)
class Shift:
    """A move by dx, dy in mm, then a mirroring at x or y (mm) where stated."""

    dx: float = 0.0
    dy: float = 0.0
    x: float | None = None
    y: float | None = None

    def point(self, point: Point) -> Point:
        """Return a point moved and mirrored."""
        x, y = point[0] + self.dx, point[1] + self.dy
        return (x if self.x is None else 2 * self.x - x, y if self.y is None else 2 * self.y - y)

    def direction(self, vector: Point) -> Point:
        """Return a direction mirrored."""
        x, y = vector
        return (x if self.x is None else 0.0 - x, y if self.y is None else 0.0 - y)

    def contour(self, contour: Contour) -> Contour:
        """Return a contour moved and mirrored."""
        made = moved(contour, self.dx, self.dy)
        made = made if self.x is None else mirrored_x(made, self.x)
        return made if self.y is None else mirrored_y(made, self.y)

    def lettering(self, contours: tuple[Contour, ...], at: Point) -> tuple[Contour, ...]:
        """Return contours that keep their reading: moved with their centre, never mirrored."""
        x, y = self.point(at)
        return tuple(moved(each, x - at[0], y - at[1]) for each in contours)


def shifted(shaped: Shaped, shift: Shift, name: str) -> Shaped:
    """Return a copy of a feature elsewhere, under a name of its own."""
    return Shaped(
        feature=_feature(shaped.feature, shift, name),
        added=tuple(map(shift.contour, shaped.added)),
        taken=tuple(map(shift.contour, shaped.taken)),
        cuts=tuple(_cut(each, shift, shaped.feature, name) for each in shaped.cuts),
        mating=tuple(_mating(each, shift) for each in shaped.mating),
        pocketed=tuple(_mating(each, shift) for each in shaped.pocketed),
        stands_on=tuple(map(shift.contour, shaped.stands_on)),
        stands_out=tuple(map(shift.contour, shaped.stands_out)),
        edge=shaped.edge,
        span=_span(shaped.span, shift),
    )


def _span(span: tuple[Point, Point] | None, shift: Shift) -> tuple[Point, Point] | None:
    return None if span is None else (shift.point(span[0]), shift.point(span[1]))


def _feature(feature: SettledFeature, shift: Shift, name: str) -> SettledFeature:
    engraved = feature.kind is ENGRAVING
    return replace(
        feature,
        name=name,
        at=shift.point(feature.at),
        direction=feature.direction if engraved else shift.direction(feature.direction),
        shape=_contours(feature.shape, shift, feature),
        ruler=feature.ruler if shift == Shift() else None,
    )


def _cut(cut: Cut, shift: Shift, feature: SettledFeature, name: str) -> Cut:
    return replace(cut, contours=_contours(cut.contours, shift, feature), feature=name)


def _contours(
    contours: tuple[Contour, ...], shift: Shift, feature: SettledFeature
) -> tuple[Contour, ...]:
    if feature.kind is ENGRAVING:
        return shift.lettering(contours, feature.at)
    return tuple(map(shift.contour, contours))


def _mating(mating: Mating, shift: Shift) -> Mating:
    return Mating(at=shift.point(mating.at), eaten=shift.direction(mating.eaten))
