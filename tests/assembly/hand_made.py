"""Small plans put together by hand, of panels square to the world: 18 mm thick, no clearance."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache

from kerfolio.assembly.assembled import Assembled, PosedJoint, PosedPiece
from kerfolio.geometry.packing import Flat
from kerfolio.geometry.panel import Panel
from kerfolio.geometry.rigid import Rigid, Vector, cross
from kerfolio.model.joint_kind import NOTCH_JOINT, TAB_JOINT, JointKind
from kerfolio.settling.settled import FitVariant

T = 18.0
RIGHT, BACK, UP = (1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0)
LEFT, FRONT, DOWN = (-1.0, 0.0, 0.0), (0.0, -1.0, 0.0), (0.0, 0.0, -1.0)

Ring = tuple[tuple[float, float], ...]


def box(x0: float, y0: float, x1: float, y1: float) -> Ring:
    return ((x0, y0), (x1, y0), (x1, y1), (x0, y1))


def level(label: str, z: float, outer: Ring, *openings: Ring) -> PosedPiece:
    """A panel lying flat from z to z + 18; its shape is in the world's x and y."""
    return _piece(label, Rigid((0.0, 0.0, z), RIGHT, BACK, UP), outer, openings)


def lengthwise(label: str, y: float, outer: Ring, *openings: Ring) -> PosedPiece:
    """A panel standing from y to y + 18; its shape is in the world's x and z."""
    return _piece(label, Rigid((0.0, y + T, 0.0), RIGHT, UP, FRONT), outer, openings)


def across(label: str, x: float, outer: Ring, *openings: Ring) -> PosedPiece:
    """A panel standing from x to x + 18; its shape is in the world's y and z."""
    return _piece(label, Rigid((x, 0.0, 0.0), BACK, UP, RIGHT), outer, openings)


def _piece(label: str, pose: Rigid, outer: Ring, openings: Sequence[Ring]) -> PosedPiece:
    panel = _panel(outer, tuple(openings))
    return PosedPiece(
        label=label,
        mark=label[:1].upper(),
        part=label.split(".")[0],
        sheet="ply",
        panel=panel,
        pose=pose,
        mass=panel.shape.area * T * 680e-9,  # 680 kg/m3: birch plywood, from memory
    )


@cache
def _panel(outer: Ring, openings: tuple[Ring, ...]) -> Panel:
    """Like pieces share one panel, as those of one part do."""
    return Panel(shape=Flat(outer, openings), thickness=T)


def joint(a: str, b: str, axis: Vector, kind: JointKind = TAB_JOINT) -> PosedJoint:
    x = BACK if axis in (RIGHT, LEFT) else RIGHT
    frame = Rigid((0.0, 0.0, 0.0), x, cross(axis, x), axis)
    return PosedJoint(kind=kind, a=a, b=b, ends=(f"{a}.x", f"{b}.y"), frame=frame, size=(60.0, T))


def plan(pieces: Sequence[PosedPiece], joints: Sequence[PosedJoint]) -> Assembled:
    return Assembled(
        variant=FitVariant(label="18mm", thickness=()), pieces=tuple(pieces), joints=tuple(joints)
    )


def stool() -> Assembled:
    """Two sides, a rail through both, a seat on the tabs of the sides."""
    side = (
        *((0.0, 0.0), (300.0, 0.0), (300.0, 400.0), (180.0, 400.0)),
        *((180.0, 418.0), (120.0, 418.0), (120.0, 400.0), (0.0, 400.0)),
    )
    slot = box(141, 300, 159, 360)
    return plan(
        [
            across("side.left", 0.0, side, slot),
            across("side.right", 282.0, side, slot),
            lengthwise("rail", 141.0, _railing(18, 282, 290, 370, 300, 360)),
            level(
                "seat", 400.0, box(-20, 0, 320, 300), box(0, 120, 18, 180), box(282, 120, 300, 180)
            ),
        ],
        [
            joint("rail", "side.left", LEFT),
            joint("rail", "side.right", RIGHT),
            joint("side.left", "seat", UP),
            joint("side.right", "seat", UP),
        ],
    )


def _railing(x0: float, x1: float, z0: float, z1: float, low: float, high: float) -> Ring:
    """A rail from x0 to x1 with an 18 mm tab at either end, between the heights low and high."""
    return (
        *((x0, z0), (x1, z0), (x1, low), (x1 + T, low), (x1 + T, high), (x1, high)),
        *((x1, z1), (x0, z1), (x0, high), (x0 - T, high), (x0 - T, low), (x0, low)),
    )


def crate(along: int = 2, over: int = 3) -> Assembled:
    """Runners ``low.n`` along x with notches open at the top, and ``high.n`` dropped over them."""
    lows = [100.0 * n for n in range(1, along + 1)]  # y of each runner
    highs = [100.0 * n for n in range(1, over + 1)]  # x of each divider
    pieces = [
        lengthwise(f"low.{n}", y, _comb(100.0 * (over + 1) + T, 80.0, highs, 40.0, 80.0))
        for n, y in enumerate(lows, 1)
    ]
    pieces += [
        across(f"high.{n}", x, _comb(100.0 * (along + 1) + T, 80.0, lows, 40.0, 0.0))
        for n, x in enumerate(highs, 1)
    ]
    joints = [
        joint(f"high.{h}", f"low.{n}", DOWN, NOTCH_JOINT)
        for h in range(1, over + 1)
        for n in range(1, along + 1)
    ]
    return plan(pieces, joints)


def _comb(long: float, tall: float, starts: Sequence[float], middle: float, open_at: float) -> Ring:
    """A strip notched from its upper edge (``open_at`` its height) or from its lower one (0)."""
    cut = [
        point
        for s in starts
        for point in ((s, open_at), (s, middle), (s + T, middle), (s + T, open_at))
    ]
    if open_at > 0:
        return ((0.0, 0.0), (long, 0.0), (long, tall), *reversed(cut), (0.0, tall))
    return ((0.0, 0.0), *cut, (long, 0.0), (long, tall), (0.0, tall))


def knot() -> Assembled:
    """Three panels that hold each other: B into A along z, A into C along y, C into B along x."""

    def tongued(far: float) -> Ring:
        """A plate 0..far by 0..100 with a tab 30..60 out of its upper edge."""
        return (
            *((0.0, 0.0), (far, 0.0), (far, 100.0), (60.0, 100.0), (60.0, 118.0)),
            *((30.0, 118.0), (30.0, 100.0), (0.0, 100.0)),
        )

    def turned(ring: Ring) -> Ring:
        return tuple((y, x) for x, y in reversed(ring))

    return plan(
        [
            level("a", 100.0, tongued(140), box(100, 30, 118, 60)),
            across("b", 100.0, tongued(140), box(100, 30, 118, 60)),
            lengthwise("c", 100.0, turned(tongued(140)), box(30, 100, 60, 118)),
        ],
        [joint("b", "a", UP), joint("a", "c", BACK), joint("c", "b", RIGHT)],
    )


def pair() -> Assembled:
    """A post into which two boards go along x, one of them held in the other along y."""
    tabbed = (
        *((18.0, 0.0), (200.0, 0.0), (200.0, 100.0), (18.0, 100.0), (18.0, 60.0), (0.0, 60.0)),
        *((0.0, 30.0), (18.0, 30.0)),
    )
    shelf = (
        *((18.0, 0.0), (200.0, 0.0), (200.0, 100.0), (140.0, 100.0), (140.0, 118.0)),
        *((90.0, 118.0), (90.0, 100.0), (18.0, 100.0), (18.0, 60.0), (0.0, 60.0)),
        *((0.0, 30.0), (18.0, 30.0)),
    )
    return plan(
        [
            across("post", 0.0, box(0, -50, 200, 200), box(100, 30, 118, 60), box(30, 70, 60, 88)),
            lengthwise("web", 100.0, tabbed, box(90, 70, 140, 88)),
            level("shelf", 70.0, shelf),
        ],
        [joint("web", "post", LEFT), joint("shelf", "post", LEFT), joint("shelf", "web", BACK)],
    )


def bench() -> Assembled:
    """A top on a rail and a shelf on a sling, both caught between two sides."""
    slots = [
        *(box(141, 300, 159, 340), box(100, 360, 200, 378)),
        *(box(141, 60, 159, 100), box(100, 120, 200, 138)),
    ]
    deck = (
        *((18.0, 50.0), (382.0, 50.0), (382.0, 100.0), (400.0, 100.0), (400.0, 200.0)),
        *((382.0, 200.0), (382.0, 250.0), (18.0, 250.0), (18.0, 200.0), (0.0, 200.0)),
        *((0.0, 100.0), (18.0, 100.0)),
    )
    held = box(150, 141, 250, 159)

    def beam(label: str, foot: float) -> PosedPiece:
        """A beam with a tab at either end and one upward, through the deck above it."""
        top = foot + 70
        return lengthwise(
            label,
            141.0,
            (
                *((18.0, foot), (382.0, foot), (382.0, foot + 10), (400.0, foot + 10)),
                *((400.0, foot + 50), (382.0, foot + 50), (382.0, top), (250.0, top)),
                *((250.0, top + T), (150.0, top + T), (150.0, top), (18.0, top)),
                *((18.0, foot + 50), (0.0, foot + 50), (0.0, foot + 10), (18.0, foot + 10)),
            ),
        )

    ends = [
        joint(piece, side, way)
        for piece in ("top", "rail", "shelf", "sling")
        for side, way in (("side.left", LEFT), ("side.right", RIGHT))
    ]
    return plan(
        [
            level("top", 360.0, deck, held),
            beam("rail", 290.0),
            level("shelf", 120.0, deck, held),
            beam("sling", 50.0),
            across("side.left", 0.0, box(0, 0, 300, 400), *slots),
            across("side.right", 382.0, box(0, 0, 300, 400), *slots),
        ],
        [joint("rail", "top", UP), joint("sling", "shelf", UP), *ends],
    )


def lidded() -> Assembled:
    """Two runners crossed by one board, and a lid that only lies on them."""
    crossed = crate(2, 1)
    return plan(
        [*crossed.pieces, level("lid", 80.0, box(0, 0, 218, 318))],
        crossed.joints,
    )
