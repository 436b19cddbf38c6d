"""Boards in their place: solid timber that lies on a face or a side of a piece of the whole."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations
from math import dist

from kerfolio.assembly.assembled import Assembled, PosedPiece
from kerfolio.assembly.fastened import PosedFastening
from kerfolio.assembly.frames import side_line
from kerfolio.basis.place import Place
from kerfolio.geometry.contour import Point
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.packing import Flat
from kerfolio.geometry.panel import Panel
from kerfolio.geometry.rigid import Rigid, Vector, added, between, cross, dot, length, scaled
from kerfolio.model.fastening import Fastening
from kerfolio.settling.fastened import FACES, OUTWARD, SHOW, Seat
from kerfolio.settling.settled import SettledBoard, SettledPart, SettledPlace, SettledPlan

_APART = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class PosedBoard:
    """A board in its place; x to the right, y to the back, z up; mm.

    ``frame``: its origin is the middle of what touches the piece, x along the board, z away from
    the piece. ``panel`` is the board in that frame. ``number`` counts from 1 where there are
    several. ``step`` counts from 1 and adds it, 0 where that is the one in which its piece joins.
    ``place`` is where its place is stated.
    """

    board: SettledBoard
    number: int
    piece: str
    panel: Panel
    frame: Rigid
    step: int
    place: Place

    @property
    def label(self) -> str:
        """What it is called among pieces: ``post``, and of several ``post.2``."""
        name = self.board.use.name
        return f"{name}.{self.number}" if self.board.use.count > 1 else name

    def as_piece(self) -> PosedPiece:
        """Return it as a piece in its place, to be drawn among others; it weighs nothing there."""
        return PosedPiece(
            label=self.label,
            mark="",
            part=self.board.use.name,
            sheet="",
            panel=self.panel,
            pose=self.frame,
            mass=0.0,
        )

    @property
    def depth(self) -> float:
        """How far it reaches from the piece it lies on, mm."""
        return self.panel.thickness

    @property
    def corners(self) -> Iterator[Vector]:
        """Its eight corners in the world."""
        for x, y in self.panel.shape.outer:
            for z in (0.0, self.depth):
                yield self.frame.point((x, y, z))


def posed_boards(
    settled: SettledPlan, assembled: Assembled, fastenings: Sequence[PosedFastening]
) -> tuple[PosedBoard, ...]:
    """Return the boards whose place is known, in the order of the plan.

    That is stated, or follows from the fastenings that end in them, or whose heads bear on them:
    each statement of a set stands for one more of the boards. Then it lies on the face that the
    screws come out of, or go into, its middle on theirs, and runs as their holes do.
    """
    pieces = {each.label: each for each in assembled.pieces}
    titles = [each.title for each in settled.plan.steps]
    found: list[PosedBoard] = []
    for board in settled.boards:
        sets = _sets(board, fastenings)
        if board.places:
            steps = [each[0].step for each in sets]
            for number, place in enumerate(board.places):
                step = steps[number] if number < len(steps) else 0
                stated = place.stated.step
                if stated is not None and stated.name in titles:
                    step = titles.index(stated.name) + 1
                made = _stated(place, settled, pieces)
                if made is not None:
                    found.append(_posed(board, number, place.piece, made, step, place))
            continue
        for number, holes in enumerate(sets[: board.use.count]):
            heads = holes[0].settled.first.board is not None
            piece, frame = _under_heads(holes) if heads else _held(holes, pieces)
            found.append(_posed(board, number, piece, frame, holes[0].step, None))
    return tuple(found)


def _posed(
    board: SettledBoard,
    number: int,
    piece: str,
    frame: Rigid,
    step: int,
    place: SettledPlace | None,
) -> PosedBoard:
    on_edge = place is not None and place.stated.on_edge
    wide, deep = board.stock.width, board.stock.thickness
    if on_edge:
        wide, deep = deep, wide
    x, y = board.length / 2, wide / 2
    return PosedBoard(
        board=board,
        number=number + 1,
        piece=piece,
        panel=Panel(shape=Flat(((-x, -y), (x, -y), (x, y), (-x, y))), thickness=deep),
        frame=frame,
        step=step,
        place=place.stated.place if place else board.use.place,
    )


def _sets(
    board: SettledBoard, fastenings: Sequence[PosedFastening]
) -> list[tuple[PosedFastening, ...]]:
    """Return the fastenings that end in a board or whose heads bear on it, those of one statement
    together.
    """
    sets: dict[Fastening, list[PosedFastening]] = {}
    for each in fastenings:
        if any(seat.board is not None and seat.board.use is board.use for seat in _ends(each)):
            sets.setdefault(each.settled.stated, []).append(each)
    return [tuple(each) for each in sets.values()]


def _ends(each: PosedFastening) -> tuple[Seat, Seat]:
    return each.settled.first, each.settled.last


def _under_heads(holes: Sequence[PosedFastening]) -> tuple[str, Rigid]:
    """Return the piece that a board lies on whose screws come through it, and its frame there."""
    first = holes[0]
    seat = first.entries[0].seat
    spots = [each.entries[0].at for each in holes]
    low, high = max(combinations(spots, 2), key=_between, default=(spots[0], spots[0]))
    z, gone = scaled(first.direction, -1.0), dist(low, high)
    x = scaled(between(low, high), 1 / gone) if gone > _APART else first.frame.x
    middle = scaled(added(low, high), 0.5)
    return seat.piece, Rigid(middle, x, cross(z, x), z)


def _between(pair: tuple[Vector, Vector]) -> float:
    return round(dist(*pair), 6)


def _held(holes: Sequence[PosedFastening], pieces: Mapping[str, PosedPiece]) -> tuple[str, Rigid]:
    """Return the piece a board lies on by its screws, and its frame there."""
    first = holes[0]
    piece = pieces[first.settled.seats[-2].piece]
    level = piece.panel.thickness if dot(piece.pose.z, first.direction) > 0 else 0.0
    back = piece.pose.inverse
    spots = [back.point(each.frame.origin)[:2] for each in holes]
    low, high = max(combinations(spots, 2), key=_reach, default=(spots[0], spots[0]))
    gone = dist(low, high)
    run = ((high[0] - low[0]) / gone, (high[1] - low[1]) / gone) if gone > _APART else (1.0, 0.0)
    xs, ys = zip(*spots, strict=True)
    middle = ((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2)
    return piece.label, _on_face(piece, middle, run, level)


def _reach(pair: tuple[Point, Point]) -> float:
    return round(dist(*pair), 6)


def _stated(
    place: SettledPlace, settled: SettledPlan, pieces: Mapping[str, PosedPiece]
) -> Rigid | None:
    piece = pieces.get(place.piece)
    if piece is None:
        return None
    part = settled.part(piece.part)
    if place.face in FACES:
        run = (1.0, 0.0) if place.stated.along == "x" else (0.0, 1.0)
        level = part.thickness if place.face == SHOW else 0.0
        return _on_face(piece, place.at or _middle(part), run, level)
    if place.face in OUTWARD:
        return _on_side(piece, part, place)
    return None


def _on_face(piece: PosedPiece, at: Point, run: Point, level: float) -> Rigid:
    pose = piece.pose
    out = 1.0 if level > 0 else -1.0
    x, z = pose.vector((*run, 0.0)), pose.vector((0.0, 0.0, out))
    return Rigid(pose.point((*at, level)), x, cross(z, x), z)


def _on_side(piece: PosedPiece, part: SettledPart, place: SettledPlace) -> Rigid:
    middle, out, _ = side_line(part, place.face)
    upright = place.face in ("left", "right")
    run = (0.0, 1.0) if upright else (1.0, 0.0)
    level = part.thickness / 2
    if place.at is not None:
        along, level = place.at
        middle = (middle[0], along) if upright else (along, middle[1])
    x, z = piece.pose.vector((*run, 0.0)), piece.pose.vector((*out, 0.0))
    return Rigid(piece.pose.point((*middle, level)), x, cross(z, x), z)


def _middle(part: SettledPart) -> Point:
    box = bounds(part.plain.outer)
    return (box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2


def board_under(each: PosedFastening, boards: Sequence[PosedBoard]) -> PosedBoard | None:
    """Return the board that a fastening ends in, else the one its head bears on.

    It is the nearest of its name; None without a place.
    """
    wanted = each.settled.last.board or each.settled.first.board
    own = [one for one in boards if wanted is not None and one.board.use is wanted.use]
    return min(own, key=lambda one: round(_beside(each, one), 6), default=None)


def _beside(each: PosedFastening, board: PosedBoard) -> float:
    """Return how far the axis of a fastening meets a board's face from its middle, mm."""
    x, y, _ = met_at(each, board)
    return length((x, y, 0.0))


def met_at(each: PosedFastening, board: PosedBoard) -> Vector:
    """Return where the axis of a fastening meets the face a board lies with, in its frame."""
    inner = board.frame.inverse
    start, way = inner.point(each.frame.origin), inner.vector(each.direction)
    along = -start[2] / way[2] if abs(way[2]) > _APART else 0.0
    return added(start, scaled(way, along))
