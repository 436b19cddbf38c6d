"""Where a leader ends on a piece: in the roomiest spot of the largest part of it that is seen."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import replace

from kerfolio.drawing.balloons import Wanted
from kerfolio.drawing.extent import box_of_contours
from kerfolio.drawing.hand import HAND
from kerfolio.drawing.lettering import Box
from kerfolio.drawing.paper_seat import PaperSeat
from kerfolio.drawing.scene import Scene
from kerfolio.drawing.solid_strokes import on_paper
from kerfolio.geometry.contour import Contour, Region
from kerfolio.geometry.hidden_lines import Seen
from kerfolio.geometry.label_spot import label_spot
from kerfolio.geometry.packing import Flat
from kerfolio.geometry.spots_within import spots_within

_CLEAR = 1.2
"""How far a leader's further ends keep from the edges of what they lie on, mm."""


def piece_anchors(
    scene: Scene, found: Seen, seat: PaperSeat, labels: Collection[str]
) -> tuple[Wanted, ...]:
    """Return the mark of each piece named with its anchor on paper; hidden pieces have none."""
    wanted = []
    for number, piece in enumerate(scene.pieces):
        shown = [each.shape for each in found.areas if each.solid == number]
        if piece.label in labels and shown:
            largest = max(shown, key=lambda shape: shape.area)
            outer, *openings = on_paper(largest, seat)
            lines = [seat.path(run.points) for run in found.engraved if run.solid == number]
            spot, _ = label_spot(Region(outer, tuple(openings)), 1.0, lines)
            own = tuple(flat_on_paper(each, seat) for each in shown)
            others = spots_within(
                own, _CLEAR, [[each[:2] for each in line.vertices] for line in lines]
            )
            wanted.append(Wanted(piece.mark, spot, others, own))
    return tuple(wanted)


def held_anchors(
    scene: Scene, found: Seen, seat: PaperSeat, held: Collection[str]
) -> tuple[Wanted, ...]:
    """Return where somebody holds pieces, each with the mark of a hand."""
    return tuple(replace(each, mark=HAND) for each in piece_anchors(scene, found, seat, held))


def engraved_boxes(found: Seen, seat: PaperSeat) -> tuple[Box, ...]:
    """Return a box on paper round what is engraved on each piece: no mark stands there."""
    runs: dict[int, list[Contour]] = {}
    for run in found.engraved:
        runs.setdefault(run.solid, []).append(seat.path(run.points))
    return tuple(map(box_of_contours, runs.values()))


def flat_on_paper(shape: Flat, seat: PaperSeat) -> Flat:
    """Return a seen area on paper."""
    outer, *openings = (
        tuple(seat.flat(spot) for spot in ring) for ring in (shape.outer, *shape.openings)
    )
    return Flat(outer, tuple(openings))
