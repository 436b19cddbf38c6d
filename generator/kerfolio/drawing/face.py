"""The face of a part as it is shown: wood, openings, pockets, engraving."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from kerfolio.drawing.seat import Seat
from kerfolio.drawing.vocabulary import Ink, Stroke
from kerfolio.geometry.boolean import contains
from kerfolio.geometry.contour import Contour, Region
from kerfolio.geometry.measure import bounds
from kerfolio.model.feature_kind import BORE
from kerfolio.settling.settled import Cut, Operation, SettledPart

OUTLINE = 0.35
FINE = 0.18
"""Line widths in mm: visible edges, and what is secondary to them (ISO 128 series, memory)."""
HIDDEN = (1.6, 0.9)
"""Dashes of hidden edges, mm on paper (ISO 128 series, memory)."""

NO_WIDTHS: Mapping[str, float] = MappingProxyType({})


@dataclass(frozen=True, slots=True, kw_only=True)
class Look:
    """How strongly a face is drawn: widths of its outline and of what lies inside, in mm."""

    outline: float = OUTLINE
    inside: float = FINE
    layer: str = ""


def face_strokes(
    part: SettledPart,
    seat: Seat,
    look: Look | None = None,
    engraved: Mapping[str, float] = NO_WIDTHS,
) -> tuple[Stroke, ...]:
    """Return the routed shape filled as wood, its openings left free, its recesses darker.

    ``engraved`` says how wide the strokes of engravings come out, mm, by the feature's name; they
    are shown so, yet never finer than other lines.
    """
    look = look or Look()
    shape = seat.region(part.routed)
    wood = Stroke(
        contour=shape.outer,
        holes=shape.openings,
        layer=look.layer,
        width=look.outline,
        fill=Ink.WOOD,
    )
    recesses = (
        _recess(contour, part, seat, look)
        for cut in sorted(part.cuts, key=_depth)
        if cut.depth is not None and cut.operation in (Operation.POCKET, Operation.HOLE)
        for contour in cut.contours
    )
    return (wood, *recesses, *_engraving(part, seat, look, engraved))


def hidden_strokes(part: SettledPart, seat: Seat) -> tuple[Stroke, ...]:
    """Return what lies inside the wood, bores into its edges, in dashes."""
    return tuple(
        Stroke(contour=seat.contour(contour), width=FINE, dash=HIDDEN)
        for each in part.features
        if each.kind is BORE
        for contour in each.shape
    )


def obstacles(part: SettledPart, seat: Seat) -> tuple[Contour, ...]:
    """Return the contours inside the outline that lettering should keep clear of."""
    return tuple(
        seat.contour(contour)
        for cut in part.cuts
        if cut.operation is not Operation.OUTLINE
        for contour in cut.contours
    ) + tuple(stroke.contour for stroke in hidden_strokes(part, seat))


def _depth(cut: Cut) -> float:
    return cut.depth or 0.0


def _recess(contour: Contour, part: SettledPart, seat: Seat, look: Look) -> Stroke:
    """Return a recess, the openings in its floor (the hole of a counterbore) left free."""
    box = bounds(contour)
    within = [
        each
        for each in part.routed.openings
        if (inner := bounds(each)).x0 > box.x0
        and inner.x1 < box.x1
        and inner.y0 > box.y0
        and inner.y1 < box.y1
        and contains(Region(contour), each)
    ]
    return Stroke(
        contour=seat.contour(contour),
        holes=tuple(map(seat.contour, within)),
        layer=look.layer,
        width=look.inside,
        fill=Ink.WOOD_DARK,
    )


def stroke_width(engraved: Mapping[str, float], feature: str, scale: float, least: float) -> float:
    """Return how wide the strokes of an engraving are on paper, mm, never finer than a line."""
    return max(least, engraved.get(feature, 0.0) * scale)


def _engraving(
    part: SettledPart, seat: Seat, look: Look, engraved: Mapping[str, float]
) -> tuple[Stroke, ...]:
    return tuple(
        Stroke(
            contour=seat.contour(contour),
            layer=look.layer,
            ink=Ink.SOFT,
            width=stroke_width(engraved, cut.feature, seat.scale, look.inside),
        )
        for cut in part.cuts
        if cut.operation is Operation.ENGRAVE
        for contour in cut.contours
    )
