"""The face of a part as it is shown: wood, openings, pockets, engraving."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.drawing.seat import Seat
from kerfolio.drawing.vocabulary import Ink, Stroke
from kerfolio.geometry.contour import Contour
from kerfolio.model.feature_kind import BORE
from kerfolio.settling.settled import Cut, Operation, SettledPart

OUTLINE = 0.35
FINE = 0.18
"""Line widths in mm: visible edges, and what is secondary to them (ISO 128 series, memory)."""
HIDDEN = (1.6, 0.9)
"""Dashes of hidden edges, mm on paper (ISO 128 series, memory)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Look:
    """How strongly a face is drawn: widths of its outline and of what lies inside, in mm."""

    outline: float = OUTLINE
    inside: float = FINE
    layer: str = ""


def face_strokes(part: SettledPart, seat: Seat, look: Look | None = None) -> tuple[Stroke, ...]:
    """Return the routed shape filled as wood, its openings left free, its recesses darker."""
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
        _recess(seat.contour(contour), look)
        for cut in sorted(part.cuts, key=_depth)
        if cut.depth is not None and cut.operation in (Operation.POCKET, Operation.HOLE)
        for contour in cut.contours
    )
    return (wood, *recesses, *_engraving(part, seat, look))


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


def _recess(contour: Contour, look: Look) -> Stroke:
    return Stroke(contour=contour, layer=look.layer, width=look.inside, fill=Ink.WOOD_DARK)


def _engraving(part: SettledPart, seat: Seat, look: Look) -> tuple[Stroke, ...]:
    return tuple(
        Stroke(contour=seat.contour(contour), layer=look.layer, ink=Ink.SOFT, width=look.inside)
        for cut in part.cuts
        if cut.operation is Operation.ENGRAVE
        for contour in cut.contours
    )
