"""The shapes of a fit coupon: a plate of two stepped slots, and the tab that is tried with it.

The plate is an angle. Along its lower arm runs the slot whose widths lie in y, along its left arm
the one whose widths lie in x; both grow away from the corner that is cut off. Beside each step is a
notch in the plate's edge, a deeper one beside every fifth. The tab has an arm to the right and one
upwards, with a round dip between any two steps; a tongue to try in the stepped slots; and, where
the plan has halvings, a notch from its left. Marks are as wide as the plan's cutter needs.

The long slot and the roots of the arms are relieved like the plan's slots and tabs, and measured:
where a drive has play, a wall comes out otherwise when the cutter returns to it from a relief.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise

from kerfolio.geometry.boolean import difference
from kerfolio.geometry.canonical import tidy
from kerfolio.geometry.contour import Contour, Point, Region, Vertex
from kerfolio.geometry.shapes import circle, polygon, slot
from kerfolio.model.feature_kind import NOTCH, SLOT, TAB, FeatureKind
from kerfolio.settling.face_feature import slot_corners
from kerfolio.settling.fitted import of_sheet, taking
from kerfolio.settling.part import assembled, pieces_of
from kerfolio.settling.settled import SettledFeature, SettledPart, SettledSheet, Sized
from kerfolio.settling.shape import shape_of
from kerfolio.settling.shaped import Mating, Shaped

_BEYOND = 0.5  # mm a mark is wider than the cutter, so that a program lets the cutter in
_LAND = 5.0  # mm between two marks
_WALL = 12.0  # mm between a slot and an edge or the next slot
_OFF_MARK = 8.0  # mm between a mark and a slot
_SHORT, _DEEPER = 2.0, 4.0  # mm a mark runs in beyond its round end, and every fifth further
_FIFTH = 5
_FREE = 3.0  # mm a step is longer than the tongue is wide
_ROOT = 10.0  # mm the last step of an arm is longer, for the jaws of a calliper
_RELIEVED = 0.75  # of the cutter: so far a relief may reach along an arm
_CORNER = 8.0
_BESIDE = 12.0  # mm beside the root of an arm
_REACH = 12.0  # mm the tongue reaches beyond the plate
_X: Point = (1.0, 0.0)
_Y: Point = (0.0, 1.0)

Spots = tuple[Point, Point]
"""Where a step lies whose width is in x, and where the one whose width is in y."""


def mark_width(sheet: SettledSheet) -> float:
    """Return how wide a notch is that is counted, mm."""
    return sheet.cutter.diameter + _BEYOND


def _pitch(sheet: SettledSheet) -> float:
    return max(mark_width(sheet) + _LAND, 10.0)


def arm_width(sheet: SettledSheet, widest: float) -> float:
    """Return how wide the plate's arms are: mark, slot and what is left beside them, mm."""
    return _base(sheet) + widest + _WALL


def _base(sheet: SettledSheet) -> float:
    return _deep(sheet, _FIFTH) + _OFF_MARK


def coupon_plate(
    sheet: SettledSheet, widths: Sequence[float], opening: float
) -> tuple[SettledPart, tuple[Spots, ...]]:
    """Return the plate, and the middle of each step of its slots; ``opening`` is that of the long
    slot, which any step of the slot's thickness goes into; mm.
    """
    pitch, end, most = _pitch(sheet), sheet.cutter.diameter / 2 + 0.5, max(widths)
    base, arm = _base(sheet), arm_width(sheet, most)
    right = base + 2 * end + len(widths) * pitch + _WALL
    at = (right + opening / 2, base + most / 2)
    along = [base + end + (n + 0.5) * pitch for n in range(len(widths))]
    rising = [arm - base + each for each in along]
    wide, tall = right + opening + _WALL, rising[-1] + pitch / 2 + end + _WALL
    angle = polygon(
        [
            (_CORNER, 0.0, 0.0),
            (wide, 0.0, 4.0),
            (wide, arm, 4.0),
            (arm, arm, 6.0),
            (arm, tall, 4.0),
            (0.0, tall, 4.0),
            (0.0, _CORNER, 0.0),
        ]
    )
    marks = [
        mark
        for number, (x, y) in enumerate(zip(along, rising, strict=True), 1)
        for mark in (_upwards(x, sheet, number), _flipped(_upwards(y, sheet, number)))
    ]
    in_y = _stepped(along[0], base, widths, pitch, end)
    in_x = _flipped(_stepped(rising[0], base, widths, pitch, end))
    long_slot = slot(at, _X, opening, most)
    shapes = [
        _opening("slot.x", (base + most / 2, sum(rising) / len(rising)), _Y, in_x, widths[0]),
        _opening("slot.y", (sum(along) / len(along), base + most / 2), _X, in_y, widths[0]),
        _opening("long-slot", at, _X, long_slot, most, slot_corners(at, _X, opening, most)),
    ]
    spots = tuple(
        ((base + width / 2, y), (x, base + width / 2))
        for width, x, y in zip(widths, along, rising, strict=True)
    )
    return _made("fit-coupon", sheet, _without(angle, marks), shapes), spots


def coupon_tab(
    sheet: SettledSheet, widths: Sequence[float], halving: float
) -> tuple[SettledPart, tuple[Spots, ...]]:
    """Return the piece that is tried, and the middle of each step of its arms, from the tip.

    ``widths`` are those of the steps from the tip on, ``halving`` is how deep its notch is; mm.
    """
    high, root = mark_width(sheet) + _LAND + 1.0, max(widths)
    across = taking(sheet.thickness, of_sheet(sheet.fit)).value
    wide = max(root + 2 * _BESIDE, halving + 16.0)
    tall = max(root + 2 * _BESIDE, across + 32.0)
    tongue = (_pitch(sheet) - _FREE, sheet.thickness + _REACH)
    middle, level = wide / 2, tall / 2
    edges = [*(_ROOT + high * (len(widths) - n) for n in range(len(widths))), 0.0]
    rightward = list(_arm(widths, edges))
    outline = [
        (0.0, 0.0, 6.0),
        (middle - tongue[0] / 2, 0.0, 0.0),
        (middle - tongue[0] / 2, -tongue[1], 0.0),
        (middle + tongue[0] / 2, -tongue[1], 0.0),
        (middle + tongue[0] / 2, 0.0, 0.0),
        (wide, 0.0, 6.0),
        *((wide + x, level + y, 0.0) for x, y in rightward),
        (wide, tall, 6.0),
        *((middle - y, tall + x, 0.0) for x, y in rightward),
        (0.0, tall, 6.0),
    ]
    clear = (edges[-2] - mark_width(sheet) / 2 + _RELIEVED * sheet.cutter.diameter) / 2
    steps = [*((far + near) / 2 for far, near in pairwise(edges[:-1])), clear]
    dips = [
        circle(at, mark_width(sheet))
        for reach, width in zip(edges[1:-1], widths, strict=False)
        for at in ((wide + reach, level - width / 2), (middle + width / 2, tall + reach))
    ]
    shapes = [
        _arm_root("arm.y", (wide, level), _X, root),
        _arm_root("arm.x", (middle, tall), _Y, root),
        *([_halving((0.0, level), halving, across)] if halving else []),
    ]
    spots = tuple(((middle, tall + each), (wide + each, level)) for each in steps)
    return _made("fit-tab", sheet, _without(polygon(outline), dips), shapes), spots


def _arm(widths: Sequence[float], edges: Sequence[float]) -> Iterator[Point]:
    """Yield the corners of an arm that points to the right, from its root's lower end round.

    ``edges`` are where its steps begin and end, from the tip on.
    """
    ends = zip(pairwise(edges), widths, strict=True)
    lower = [(x, -width / 2) for between, width in ends for x in between]
    yield from reversed(lower)
    yield from ((x, -y) for x, y in lower)


def _arm_root(name: str, at: Point, outward: Point, width: float) -> Shaped:
    """Return the root of an arm, its corners relieved as those of the plan's tabs."""
    along = (0.0 - outward[1], outward[0])
    feature = _feature(name, TAB, at, outward, width, 0.0)
    spots = [(at[0] + s * along[0], at[1] + s * along[1]) for s in (-width / 2, width / 2)]
    return Shaped(feature=feature, mating=tuple(Mating(at=s, eaten=along) for s in spots))


def _halving(at: Point, deep: float, across: float) -> Shaped:
    """Return a notch from the left edge, its bottom corners relieved."""
    (x, y), half = at, across / 2
    spots = [(x + deep, y - half), (x + deep, y + half)]
    shape = slot((x + deep / 2, y), _X, deep, across)
    feature = _feature("halving", NOTCH, (x + deep, y), (-1.0, 0.0), across, deep)
    mating = tuple(Mating(at=each, eaten=_X) for each in spots)
    return Shaped(feature=feature, taken=(shape,), mating=mating)


def _opening(
    name: str,
    at: Point,
    along: Point,
    shape: Contour,
    width: float,
    mating: tuple[Mating, ...] = (),
) -> Shaped:
    feature = _feature(name, SLOT, at, along, width, _reach(shape, along))
    return Shaped(feature=feature, taken=(shape,), mating=mating)


def _feature(
    name: str, kind: FeatureKind, at: Point, direction: Point, width: float, length: float
) -> SettledFeature:
    return SettledFeature(
        name=name,
        kind=kind,
        at=at,
        direction=direction,
        width=Sized(width),
        length=Sized(length),
    )


def _reach(shape: Contour, along: Point) -> float:
    spots = [x * along[0] + y * along[1] for x, y, _ in shape.vertices]
    return max(spots) - min(spots)


def _deep(sheet: SettledSheet, number: int) -> float:
    """Return how deep a mark is: every fifth is deeper."""
    return mark_width(sheet) / 2 + _SHORT + (0.0 if number % _FIFTH else _DEEPER)


def _upwards(x: float, sheet: SettledSheet, number: int) -> Contour:
    """Return a mark that runs up from y = 0, with a round end."""
    half = mark_width(sheet) / 2
    deep = _deep(sheet, number) - half
    return Contour(
        ((x - half, -1.0, 0.0), (x + half, -1.0, 0.0), (x + half, deep, 1.0), (x - half, deep, 0.0))
    )


def _stepped(
    first: float, base: float, widths: Sequence[float], pitch: float, end: float
) -> Contour:
    """Return a slot along x that grows in steps: one wall is straight, at y = ``base``.

    Its ends are longer by ``end``: what a round cutter leaves there is none of a step's.
    """
    edges = [first + (n - 0.5) * pitch for n in range(len(widths) + 1)]
    edges[0], edges[-1] = edges[0] - end, edges[-1] + end
    upper = [
        (x, base + width, 0.0) for n, width in enumerate(widths) for x in (edges[n], edges[n + 1])
    ]
    ends: list[Vertex] = [(edges[0], base, 0.0), (edges[-1], base, 0.0)]
    return tidy(Contour((*ends, *reversed(upper))))


def _flipped(contour: Contour) -> Contour:
    """Return a contour with x and y exchanged, its sense kept."""
    spots = contour.vertices
    bulges = [spots[index - 1][2] for index in range(len(spots))]
    back = [(y, x, bulge) for (x, y, _), bulge in zip(spots, bulges, strict=True)]
    return Contour(tuple(reversed(back)))


def _without(outline: Contour, marks: Iterable[Contour]) -> Contour:
    return difference(Region(outline), tuple(marks)).outer


def _made(
    name: str, sheet: SettledSheet, outline: Contour, shapes: Sequence[Shaped]
) -> SettledPart:
    shape = shape_of(outline, shapes, sheet)
    pieces = pieces_of(name, "", ())
    return assembled(name, "", sheet, pieces, "any", shape, shapes)
