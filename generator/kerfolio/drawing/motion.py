"""How pieces come home: guide lines between what meets, and an arrow for each way of moving."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import dist, fsum, hypot, inf

from kerfolio.assembly.assembled import Move
from kerfolio.drawing.anchors import flat_on_paper
from kerfolio.drawing.arrow import open_path
from kerfolio.drawing.cheapest import cheapest
from kerfolio.drawing.count_plate import TURN_SIZE, count_plate, plate_size, turn_plate
from kerfolio.drawing.extent import apart, box_of, box_of_spots, contains, middle_of
from kerfolio.drawing.lettering import Box
from kerfolio.drawing.lots import alike_lots
from kerfolio.drawing.paper_seat import PaperSeat
from kerfolio.drawing.scene import Scene
from kerfolio.drawing.vocabulary import Ink, Label, Stroke
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.hidden_lines import Seen
from kerfolio.geometry.occupied import Occupied
from kerfolio.geometry.packing import Flat
from kerfolio.geometry.rigid import Vector

Line = tuple[Point, Point]

_GUIDE_WIDTH = 0.2
_DASH = (1.4, 0.9)
_LEAST_GUIDE = 0.8
_ASIDE = 3.0
"""Guides nearer together than this on paper, mm, tell the reader nothing more."""

_SHORTEST, _LONGEST = 7.0, 15.0
_SHAFT, _HEAD_WIDE, _HEAD_LONG = 1.9, 5.2, 4.0
_HALO = 0.5
_END_ON = 0.05
"""A way of which less than this share is seen points at the eye; an arrow would not show it."""

_FORESHORTENED = 0.25
"""A line of which less than this share is seen says little of its way."""

_ALONG = (0.0, 4.0, -4.0, 8.0, -8.0, 14.0, -14.0, 20.0, -20.0)
_SIDES = (*_ALONG, 6.0, -6.0, 11.0, -11.0, 17.0, -17.0, 26.0, -26.0, 34.0, -34.0, 44.0, -44.0)
_PER_STRANGE, _PER_OWN, _PER_CROSSED, _PER_FAR, _PER_AWAY = 0.8, 0.25, 6.0, 0.15, 0.5
"""What an arrow's place costs: a mm over what does not move, and over what does; a guide crossed; a
mm from the middle of the guides, and from what moves."""
_BROAD, _SIDE = 4.0, 1.8
"""How broad an arrow is in the mean, and how far from its middle its sides are looked at, mm."""
_SMALL = 10.0
"""What is smaller than this on paper, mm, has no plate over it."""
_HIDES = 40.0
"""What it costs to hide all that is seen of what moves: a small piece has its arrow beside it."""


def guide_strokes(seen: Seen, seat: PaperSeat) -> tuple[Stroke, ...]:
    """Return the seen stretches of the guide lines, thinned out where they crowd."""
    kept: list[tuple[int, Point, Point]] = []
    for number, a, b in seen.extra:
        start, end = seat.flat(a), seat.flat(b)
        crowded = any(other != number and _beside((start, end), (c, d)) for other, c, d in kept)
        if dist(start, end) >= _LEAST_GUIDE and not crowded:
            kept.append((number, start, end))
    return tuple(
        Stroke(contour=open_path(a, b), ink=Ink.NEW_LINE, width=_GUIDE_WIDTH, dash=_DASH)
        for _, a, b in kept
    )


def line_of(stroke: Stroke) -> Line:
    """Return a straight stroke as the line between its ends."""
    a, b = stroke.contour.vertices[0], stroke.contour.vertices[-1]
    return (a[0], a[1]), (b[0], b[1])


def _beside(one: tuple[Point, Point], other: tuple[Point, Point]) -> bool:
    """Tell whether a line runs close beside another for most of its way."""
    (a, b), (c, d) = one, other
    size = dist(c, d)
    if size == 0:
        return False
    way = ((d[0] - c[0]) / size, (d[1] - c[1]) / size)
    off = [abs((p[0] - c[0]) * way[1] - (p[1] - c[1]) * way[0]) for p in (a, b)]
    along = sorted((p[0] - c[0]) * way[0] + (p[1] - c[1]) * way[1] for p in (a, b))
    shared = min(along[1], size) - max(along[0], 0.0)
    return max(off) < _ASIDE and shared > 0.5 * dist(a, b)


def arrow_strokes(
    scene: Scene,
    moves: Sequence[Move],
    seen: Seen,
    seat: PaperSeat,
    room: Box,
    guides: Sequence[Line],
    kept_clear: Sequence[Box],
    shut: Sequence[Line] = (),
) -> Iterator[Arrow]:
    """Yield an arrow for each way in which something moves, at what moves.

    None touches a box ``kept_clear`` or a line ``shut``; they cross as few ``guides`` as can be.
    """
    boxes = list(kept_clear)
    for group in _alike(moves):
        way = seat.way(group[0].direction)
        size = hypot(*way)
        if size < _END_ON * seat.scale:
            continue
        unit = (way[0] / size, way[1] / size)
        travel = max(move.travel for move in group) * size
        long = min(_LONGEST, max(_SHORTEST, 0.6 * travel))
        labels = {label for move in group for label in move.pieces}
        mine, others = _parted(scene, labels, seen, seat)
        middles = [_middle(scene, labels, seat), *_centre(mine)]
        places = [
            place
            for middle in middles
            for place in _places(middle, unit, long)
            if all(_within(spot, room) for spot in place)
            and not any(_touches(place, box) for box in boxes)
            and not any(_near(place, line) for line in shut)
        ]
        place = _least_covering(places, (mine, others), guides, middles[0])
        if place:
            stroke, count = arrow_stroke(*place), alike_lots(scene, labels)
            clear = [*boxes, *_small(mine)]
            turned = _turn_at(place, unit, group[0].turn, room, clear)
            taken = [*clear, *(box_of(each) for each in turned)]
            items = (*turned, *_count_at(place, unit, count, room, taken))
            yield Arrow(stroke, count, items)
            boxes += [box_of(stroke), *(box_of(each) for each in items)]


def _small(areas: Sequence[Flat]) -> Iterator[Box]:
    """Yield the boxes of what a plate would hide, or half hide."""
    for each in areas:
        box = box_of_spots(each.outer)
        if max(box[2] - box[0], box[3] - box[1]) < _SMALL:
            yield box


@dataclass(frozen=True, slots=True)
class Arrow:
    """An arrow, and how many lots alike it speaks for.

    ``items`` tell that where there are more, and its turn where it comes after others or before.
    """

    stroke: Stroke
    count: int
    items: tuple[Stroke | Label, ...] = ()

    @property
    def outline(self) -> tuple[Line, ...]:
        """Its sides."""
        spots = [(x, y) for x, y, _ in self.stroke.contour.vertices]
        return tuple(pairwise([*spots, spots[0]]))

    @property
    def boxes(self) -> tuple[Box, ...]:
        """The boxes round what stands beside it."""
        return tuple(box_of(each) for each in self.items)


def lots_moved(scene: Scene, moves: Sequence[Move]) -> list[int]:
    """Return for each way in which something moves how many lots alike do."""
    return [
        alike_lots(scene, {label for move in group for label in move.pieces})
        for group in _alike(moves)
    ]


def _count_at(
    place: Line, unit: Point, count: int, room: Box, boxes: Sequence[Box]
) -> tuple[Stroke | Label, ...]:
    """Return how many an arrow stands for, on a plate behind its tail, else at its side."""
    if count < 2:
        return ()
    at = _beside_arrow(place, unit, plate_size(count), room, boxes)
    return count_plate(count, at) if at else ()


def _turn_at(
    place: Line, unit: Point, turn: int, room: Box, boxes: Sequence[Box]
) -> tuple[Stroke | Label, ...]:
    """Return the turn of an arrow, on a disc as ``_count_at``."""
    if not turn:
        return ()
    at = _beside_arrow(place, unit, (TURN_SIZE, TURN_SIZE), room, boxes)
    return turn_plate(turn, at or place[0])


def _beside_arrow(
    place: Line, unit: Point, size: tuple[float, float], room: Box, boxes: Sequence[Box]
) -> Point | None:
    """Return the middle of a free place for something behind an arrow, else at its side."""
    (wide, high), (tail, tip) = size, place
    behind = abs(unit[0]) * wide / 2 + abs(unit[1]) * high / 2 + 0.6
    aside = abs(unit[1]) * wide / 2 + abs(unit[0]) * high / 2 + _HEAD_WIDE / 2 + 0.4
    middle = _mean(place)
    for (x, y), along, across in (
        (tail, -behind, 0.0),
        (middle, 0.0, aside),
        (middle, 0.0, -aside),
        (tip, behind, 0.0),
    ):
        at = (x + along * unit[0] - across * unit[1], y + along * unit[1] + across * unit[0])
        box = (at[0] - wide / 2, at[1] - high / 2, at[0] + wide / 2, at[1] + high / 2)
        if contains(room, box) and all(apart(box, each) for each in boxes):
            return at
    return None


def _alike(moves: Sequence[Move]) -> list[list[Move]]:
    """Group moves that run the same way in one turn; one arrow speaks for all of them."""
    groups: list[list[Move]] = []
    for move in moves:
        for group in groups:
            first = group[0]
            if first.turn == move.turn and dist(first.direction, move.direction) < 1e-6:
                group.append(move)
                break
        else:
            groups.append([move])
    return groups


def _middle(scene: Scene, labels: Collection[str], seat: PaperSeat) -> Point:
    """Return the middle of the guide lines of some pieces on paper, or of the pieces."""
    ends = [
        end
        for each in scene.open_joints()
        if (each.joint.a in labels) != (each.joint.b in labels)
        for end in each.ends
    ]
    return middle_of(box_of_spots(seat.spot(at) for at in ends or scene.corners(labels)))


def _places(middle: Point, unit: Point, long: float) -> list[tuple[Point, Point]]:
    """Return arrows from tail to tip about a spot, the nearest first."""
    offsets = sorted(
        ((along, side) for along in _ALONG for side in _SIDES),
        key=lambda each: (hypot(*each), each),
    )
    found = []
    for along, side in offsets:
        x = middle[0] + along * unit[0] - side * unit[1]
        y = middle[1] + along * unit[1] + side * unit[0]
        dx, dy = unit[0] * long / 2, unit[1] * long / 2
        found.append(((x - dx, y - dy), (x + dx, y + dy)))
    return found


def _parted(
    scene: Scene, labels: Collection[str], seen: Seen, seat: PaperSeat
) -> tuple[tuple[Flat, ...], tuple[Flat, ...]]:
    """Return on paper what is seen of some pieces, and of the rest."""
    moved = {number for number, each in enumerate(scene.pieces) if each.label in labels}
    mine = [each.shape for each in seen.areas if each.solid in moved]
    others = [each.shape for each in seen.areas if each.solid not in moved]
    flat = [tuple(flat_on_paper(each, seat) for each in group) for group in (mine, others)]
    return flat[0], flat[1]


def _centre(areas: Sequence[Flat]) -> Iterator[Point]:
    """Yield the middle of the box around areas, nothing where there is none."""
    spots = [spot for each in areas for spot in each.outer]
    if spots:
        yield middle_of(box_of_spots(spots))


def _least_covering(
    places: Sequence[Line],
    areas: tuple[Sequence[Flat], Sequence[Flat]],
    lines: Sequence[Line],
    middle: Point,
) -> Line | None:
    """Return the place that lies best: ``areas`` are those of what moves, and of the rest."""
    if not places:
        return None
    mine, others = (Occupied(each) for each in areas)
    away = mine.clearances([_mean(place) for place in places])
    shown = max(fsum(each.area for each in areas[0]), _SHAFT)
    costs = []
    for place, gap in zip(places, away, strict=True):
        crowd = sum(_near(place, line) for line in lines)
        cost = _PER_CROSSED * crowd + _PER_FAR * dist(_mean(place), middle)
        costs.append(cost + (_PER_AWAY * gap if gap < inf else 0.0))

    def covering(some: Sequence[int]) -> list[float]:
        chosen = [places[each] for each in some]
        hidden = zip(_covered(mine, chosen), others.along(chosen), strict=True)
        return [
            _PER_STRANGE * strange + _PER_OWN * own + _HIDES * min(1.0, own * _BROAD / shown)
            for own, strange in hidden
        ]

    return places[cheapest(costs, covering)]


def _covered(areas: Occupied, places: Sequence[Line]) -> list[float]:
    """Return how far arrows run over areas, in the mean of their middles and their two sides."""
    sides = [[_aside(place, by) for place in places] for by in (0.0, _SIDE, -_SIDE)]
    return [fsum(each) / 3 for each in zip(*(areas.along(side) for side in sides), strict=True)]


def _aside(place: Line, by: float) -> Line:
    (a, b), (c, d) = place
    size = dist((a, b), (c, d))
    x, y = -(d - b) / size * by, (c - a) / size * by
    return (a + x, b + y), (c + x, d + y)


def _mean(place: tuple[Point, Point]) -> Point:
    (a, b), (c, d) = place
    return (a + c) / 2, (b + d) / 2


def _touches(place: tuple[Point, Point], box: Box) -> bool:
    """Tell whether the box around an arrow touches another box."""
    (a, b), (c, d) = place
    rim = _HEAD_WIDE / 2 + 0.5
    low, high = (min(a, c) - rim, min(b, d) - rim), (max(a, c) + rim, max(b, d) + rim)
    return low[0] < box[2] and box[0] < high[0] and low[1] < box[3] and box[1] < high[1]


def _within(spot: Point, room: Box) -> bool:
    rim = _HEAD_WIDE / 2
    x, y = spot
    return room[0] + rim <= x <= room[2] - rim and room[1] + rim <= y <= room[3] - rim


def _near(place: tuple[Point, Point], line: tuple[Point, Point]) -> bool:
    """Tell whether an arrow would run over a line, tried at a few spots along it."""
    (a, b), (c, d) = place, line
    size = dist(c, d)
    if size == 0:
        return False
    way = ((d[0] - c[0]) / size, (d[1] - c[1]) / size)
    for share in (0.0, 0.25, 0.5, 0.75, 1.0):
        x, y = a[0] + share * (b[0] - a[0]) - c[0], a[1] + share * (b[1] - a[1]) - c[1]
        on = x * way[0] + y * way[1]
        if -1.0 < on < size + 1.0 and abs(x * way[1] - y * way[0]) < _HEAD_WIDE / 2 + 0.3:
            return True
    return False


def arrow_along(
    seat: PaperSeat, at: Vector, way: Vector, reach: tuple[float, float]
) -> Iterator[Stroke]:
    """Yield an arrow on the line through a point along a way (unit), none if that is end-on.

    It goes from the first of ``reach`` to the second, mm on paper along the way.
    """
    across, up = seat.way(way)
    size = hypot(across, up)
    if size > _FORESHORTENED * seat.scale:
        x, y = seat.spot(at)
        tail, tip = ((x + far * across / size, y + far * up / size) for far in reach)
        yield arrow_stroke(tail, tip)


def arrow_stroke(tail: Point, tip: Point) -> Stroke:
    """Return a broad arrow on paper, in the accent."""
    size = dist(tail, tip)
    unit = ((tip[0] - tail[0]) / size, (tip[1] - tail[1]) / size)
    across = (-unit[1], unit[0])

    def at(along: float, side: float) -> tuple[float, float, float]:
        return (
            tail[0] + along * unit[0] + side * across[0],
            tail[1] + along * unit[1] + side * across[1],
            0.0,
        )

    long = size
    neck = long - _HEAD_LONG
    shape = [
        *(at(0.0, -_SHAFT / 2), at(neck, -_SHAFT / 2), at(neck, -_HEAD_WIDE / 2), at(long, 0.0)),
        *(at(neck, _HEAD_WIDE / 2), at(neck, _SHAFT / 2), at(0.0, _SHAFT / 2)),
    ]
    return Stroke(contour=Contour(tuple(shape)), ink=Ink.PAPER, width=_HALO, fill=Ink.ACCENT)
