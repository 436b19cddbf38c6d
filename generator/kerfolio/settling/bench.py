"""What features are made from, and the record each of them is made into."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.geometry.contour import Contour, Point
from kerfolio.model.feature import Feature
from kerfolio.model.outline import Drawing
from kerfolio.model.statement import Amount, Named
from kerfolio.model.stock import Stock
from kerfolio.settling.clearance import Clearance
from kerfolio.settling.fitted import Fitting, stated_as
from kerfolio.settling.settled import Cut, Operation, SettledFeature, Sized


@dataclass(frozen=True, slots=True, kw_only=True)
class Bench:
    """What a feature is made from besides its own statement."""

    fitting: Fitting
    outline: Contour
    stock: Stock
    drawings: tuple[Drawing, ...]

    def depth(self, stated: Amount) -> Sized:
        """Return a stated depth. Raises SettlingError."""
        return self.positive(stated, "depth")

    def positive(self, stated: Amount, what: str) -> Sized:
        """Return a stated length above 0. Raises SettlingError."""
        return Sized(self.fitting.scope.positive(stated, what), stated_as(stated))


def settled_feature(
    feature: Feature,
    at: Point,
    direction: Point,
    sides: tuple[Sized, Sized],
    shape: tuple[Contour, ...],
    depth: Sized | None = None,
    takes: Named | None = None,
    room: Clearance | None = None,
    ruler: tuple[Point, Point] | None = None,
) -> SettledFeature:
    """Return the record of a feature; ``sides`` are its width and its length."""
    return SettledFeature(
        name=feature.name,
        kind=feature.kind,
        at=at,
        direction=direction,
        width=sides[0],
        length=sides[1],
        depth=depth,
        takes=takes.name if takes else "",
        shape=shape,
        room=room,
        ruler=ruler,
        place=feature.place,
    )


def cut_to(operation: Operation, depth: float, feature: Feature, contour: Contour) -> Cut:
    """Return a cut of one contour to a depth in mm."""
    return Cut(operation=operation, depth=depth, contours=(contour,), feature=feature.name)
