"""What is sanded of a piece: its edges, a side, a face or a feature's walls, as patches."""

from __future__ import annotations

from collections.abc import Callable

from kerfolio.assembly.assembled import PosedPiece
from kerfolio.geometry.contact import faces_of
from kerfolio.geometry.edge_runs import path_of
from kerfolio.geometry.facing import PosedPanel
from kerfolio.geometry.on_lines import Lines
from kerfolio.geometry.patch import Patch
from kerfolio.geometry.rigid import HERE
from kerfolio.model.edge_treatment import EASE, ROUND_OVER, SHOW_FACE
from kerfolio.settling.fastened import OUTWARD
from kerfolio.settling.settled import SettledPart
from kerfolio.settling.worked import Worked

_LOOKS = 0.9
_LEVEL = 1e-6


def sanded_patches(piece: PosedPiece, worked: Worked) -> tuple[Patch, ...]:
    """Return what is sanded of a piece, in the world.

    Of a whole piece these are the edges that the plan eases or rounds over; where it says nothing
    of edges, all of the outline but for the walls of features. A side leaves these out, too.
    """
    faces, chosen = faces_of(PosedPanel(piece.panel, HERE)), _chosen(worked, piece)
    return tuple(each.posed(piece.pose) for each in faces if chosen(each))


def _chosen(worked: Worked, piece: PosedPiece) -> Callable[[Patch], bool]:
    part = worked.part
    if worked.face:
        level = piece.panel.thickness if worked.face == SHOW_FACE else 0.0
        up = 1.0 if worked.face == SHOW_FACE else -1.0
        return lambda each: (
            each.normal[2] * up > _LOOKS and abs(each.loops[0][0][2] - level) < _LEVEL
        )
    cut = Lines(shape for feature in part.features for shape in feature.shape)
    if worked.features:
        own = Lines(shape for feature in worked.features for shape in feature.shape)
        return lambda each: _is_wall(each) and _is_on(each, own)
    rim = Lines([part.plain.outer])
    if worked.side:
        way = OUTWARD[worked.side]
        return lambda each: (
            _is_wall(each)
            and each.normal[0] * way[0] + each.normal[1] * way[1] > _LOOKS
            and _is_on(each, rim)
            and not _is_on(each, cut)
        )
    eased = _eased(part)
    if eased is not None:
        return lambda each: _is_wall(each) and _is_on(each, eased)
    return lambda each: _is_wall(each) and _is_on(each, rim) and not _is_on(each, cut)


def _eased(part: SettledPart) -> Lines | None:
    """Return the edges that are eased or rounded over, None where nothing is said of edges."""
    runs = [run for each in part.edges if each.kind in (EASE, ROUND_OVER) for run in each.runs]
    return Lines(path_of(run) for run in runs) if runs else None


def _is_wall(face: Patch) -> bool:
    return abs(face.normal[2]) < _LEVEL


def _is_on(wall: Patch, lines: Lines) -> bool:
    return lines.hold([(at[0], at[1]) for at in wall.loops[0]])
