"""Things that are worked on, laid out side by side, each turned so that what is done shows."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from kerfolio.assembly.assembled import Assembled, PosedPiece
from kerfolio.assembly.handworked import Coated
from kerfolio.drawing.exploded_view import LOOK
from kerfolio.drawing.scene import HOME, Scene
from kerfolio.drawing.side_by_side import side_by_side
from kerfolio.drawing.work_page import ROOM, WorkPage
from kerfolio.geometry.patch import Patch
from kerfolio.geometry.rigid import HERE, Rigid
from kerfolio.geometry.view import View

_ENOUGH = 0.75
"""What of the most that any way of holding a thing shows is enough to hold it as it stands."""


def laid_out(
    assembled: Assembled, things: Sequence[Thing], new: Collection[str]
) -> tuple[WorkPage, tuple[PosedPiece, ...]]:
    """Return the page of things laid beside one another so that they are as large as can be.

    What is alike is shown once with the marks of all. ``new`` pieces are coloured. Returned too are
    the pieces that something is done to.
    """
    held = [each.turned(_held(each, LOOK)) for each in _alike(things)]
    page = _page(assembled, held, new, LOOK)
    return page, tuple(piece for each in held for piece in each.coated_pieces)


@dataclass(frozen=True, slots=True)
class Thing:
    """Pieces that hang together, with the patches of those of them that something is done to."""

    pieces: tuple[PosedPiece, ...]
    coats: tuple[Coated, ...]

    @property
    def coated_pieces(self) -> tuple[PosedPiece, ...]:
        """The pieces that something is done to."""
        return tuple(each.piece for each in self.coats)

    @property
    def patches(self) -> tuple[Patch, ...]:
        """All its patches."""
        return tuple(patch for each in self.coats for patch in each.patches)

    def turned(self, turn: Rigid) -> Thing:
        """Return it turned about the world's origin."""

        def posed(piece: PosedPiece) -> PosedPiece:
            return replace(piece, pose=turn.after(piece.pose))

        coats = (
            Coated(posed(c.piece), tuple(p.posed(turn) for p in c.patches)) for c in self.coats
        )
        return Thing(tuple(map(posed, self.pieces)), tuple(coats))


def _alike(things: Sequence[Thing]) -> Iterator[Thing]:
    """Yield things, single pieces of a part that are worked on alike as one with all marks."""
    for _, group in groupby(things, key=_likeness):
        first, *others = group
        if others:
            last = others[-1].pieces[0].mark
            mark = f"{first.pieces[0].mark}{', ' if len(others) == 1 else '–'}{last}"
            piece = replace(first.pieces[0], mark=mark)
            yield Thing((piece,), (Coated(piece, first.patches),))
        else:
            yield first


def _likeness(thing: Thing) -> tuple[object, ...]:
    if len(thing.pieces) > 1:
        return (id(thing),)
    piece = thing.pieces[0]
    back = piece.pose.inverse
    corners = sorted(
        tuple(round(x, 2) for x in back.point(at))
        for patch in thing.patches
        for at in patch.loops[0]
    )
    return (piece.part, tuple(corners))


def _held(thing: Thing, look: View) -> Rigid:
    """Return the turn that shows enough of the patches: none, else about the upright, else any."""
    turns = [*_SPINS]
    if len(thing.pieces) == 1:
        turns += [spin.after(tip) for tip in _TIPS for spin in _SPINS]
    shown = [
        sum(each.area * each.posed(turn).facing(look) for each in thing.patches) for turn in turns
    ]
    enough = _ENOUGH * max(shown)
    return next(turn for turn, area in zip(turns, shown, strict=True) if area >= enough)


_SPINS = (
    HERE,
    Rigid(x=(0.0, 1.0, 0.0), y=(-1.0, 0.0, 0.0)),
    Rigid(x=(0.0, -1.0, 0.0), y=(1.0, 0.0, 0.0)),
    Rigid(x=(-1.0, 0.0, 0.0), y=(0.0, -1.0, 0.0)),
)
"""Quarter turns about the upright."""
_TIPS = (
    Rigid(y=(0.0, 0.0, 1.0), z=(0.0, -1.0, 0.0)),
    Rigid(y=(0.0, 0.0, -1.0), z=(0.0, 1.0, 0.0)),
    Rigid(x=(0.0, 0.0, -1.0), z=(1.0, 0.0, 0.0)),
    Rigid(x=(0.0, 0.0, 1.0), z=(-1.0, 0.0, 0.0)),
)
"""Quarter turns about the level axes."""


def _page(
    assembled: Assembled, things: Sequence[Thing], new: Collection[str], look: View
) -> WorkPage:
    alone = []
    for each in things:
        still = {piece.label: HOME for piece in each.pieces}
        alone.append(Scene(assembled, each.pieces, still, frozenset()))
    moves = side_by_side(alone, look, ROOM)
    away = {p.label: by for each, by in zip(things, moves, strict=True) for p in each.pieces}
    pieces = tuple(piece for each in things for piece in each.pieces)
    patches = tuple(
        patch.moved(by) for each, by in zip(things, moves, strict=True) for patch in each.patches
    )
    scene = Scene(assembled, pieces, away, frozenset(new))
    marked = frozenset(piece.label for each in things for piece in each.coated_pieces)
    return WorkPage(scene=scene, look=look, patches=patches, marked=marked)
