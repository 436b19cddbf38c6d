"""The mat that lying work rests on, under everything else of a picture."""

from __future__ import annotations

from kerfolio.assembly.extent import box_of
from kerfolio.drawing.extent import box_of_spots, union
from kerfolio.drawing.lettering import Box
from kerfolio.drawing.paper_seat import PaperSeat
from kerfolio.drawing.scene import Scene
from kerfolio.drawing.vocabulary import Ink, Stroke
from kerfolio.geometry.rigid import Vector, length
from kerfolio.geometry.view import View

_RIM = 0.06
"""How far a mat reaches past what lies on it, of the longest way across that."""


def mat_corners(scene: Scene) -> tuple[Vector, ...]:
    """Return the corners of a mat under the pieces of a scene that are at rest."""
    resting = {label for label, far in scene.away.items() if length(far) == 0}
    (x0, y0, ground), (x1, y1, _) = box_of(scene.corners(resting))
    rim = _RIM * length((x1 - x0, y1 - y0, 0.0))
    x0, y0, x1, y1 = x0 - rim, y0 - rim, x1 + rim, y1 + rim
    return (x0, y0, ground), (x1, y0, ground), (x1, y1, ground), (x0, y1, ground)


def with_mat(box: Box, corners: tuple[Vector, ...], view: View) -> Box:
    """Return a box of the picture plane grown to hold a mat."""
    return union((box, box_of_spots(map(view.spot, corners)))) if corners else box


def mat_stroke(corners: tuple[Vector, ...], seat: PaperSeat) -> Stroke:
    """Return the mat on paper; it lies lower than all else, so it is drawn before all else."""
    spots = [seat.view.spot(at) for at in corners]
    path = seat.path((*spots, spots[0]))
    return Stroke(contour=path, ink=Ink.FAINT, width=0.25, fill=Ink.WASTE)
