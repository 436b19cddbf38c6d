"""Where every piece of the sample's plans stands, worked out on paper; mm, x right, y back, z up.

A pose states where a part's 0,0 lies on the *rear* of its sheet and where the part's x and y point;
the sheet lies along x cross y, and there its show face looks. These tables are the draughtsman's
own: they are not taken from the joints, so that the pictures are a second opinion on them.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from kerfolio.settling.settled import SettledPlan

Triple = tuple[float, float, float]
RIGHT, LEFT = (1.0, 0.0, 0.0), (-1.0, 0.0, 0.0)
BACK, FRONT = (0.0, 1.0, 0.0), (0.0, -1.0, 0.0)
UP, DOWN = (0.0, 0.0, 1.0), (0.0, 0.0, -1.0)
INCH = 25.4


@dataclass(frozen=True)
class Pose:
    """Where a part's 0,0 lies, and where its x and its y point."""

    origin: Triple
    x: Triple
    y: Triple


@dataclass(frozen=True)
class Scene:
    """How a plan is shown: poses by piece, the moves that bring pieces home, the eye's place.

    A piece that is in no move is set down.
    """

    poses: dict[str, Pose]
    moves: dict[str, Triple]
    azimuth: float = -35.0
    elevation: float = 26.0


def size(settled: SettledPlan, name: str) -> float:
    """Return a named size of the plan in mm."""
    return dict(settled.sizes)[name].value


def desk_rack(settled: SettledPlan) -> Scene:
    """Runners along x, dividers along y, the back behind the dividers."""
    t, depth, pitch = (size(settled, each) for each in ("t", "depth", "pitch"))
    poses = {
        "front": Pose((0, 20 + t / 2, 0), RIGHT, UP),
        "rear": Pose((0, depth - 40 + t / 2, 0), RIGHT, UP),
        "back": Pose((0, depth + t, 0), RIGHT, UP),
    }
    for number in range(4):
        poses[f"divider.{number + 1}"] = Pose((40 + number * pitch - t / 2, 0, 0), BACK, UP)
    dividers = [f"divider.{number}" for number in range(1, 5)]
    return Scene(
        poses,
        moves={**dict.fromkeys(dividers, (0, 0, 75)), "back": (0, 90, 0)},
        azimuth=-24,
        elevation=30,
    )


def harbour_stool(settled: SettledPlan) -> Scene:
    """The sides stand across x, each with its show face outward."""
    t, seat, deep, height = (size(settled, each) for each in ("t", "seat", "deep", "height"))
    span, over = size(settled, "span"), size(settled, "over")
    middle = seat / 2 + t / 2
    poses = {
        "side.left": Pose((t, seat, 0), FRONT, UP),
        "side.right": Pose((span - t, 0, 0), BACK, UP),
        "rail": Pose((t, middle, size(settled, "rail_z") - 50), RIGHT, UP),
        "stretcher": Pose((t, middle, size(settled, "stretcher_z") - 50), RIGHT, UP),
        "seat": Pose((-over, (seat - deep) / 2, height), RIGHT, BACK),
    }
    return Scene(
        poses,
        moves={
            "rail": (110, 0, 0),
            "stretcher": (110, 0, 0),
            "side.right": (130, 0, 0),
            "seat": (0, 0, 110),
        },
        azimuth=-38,
        elevation=24,
    )


def potting_bench(settled: SettledPlan) -> Scene:
    """The sides stand across x; the wall is behind the bench."""
    t, s = size(settled, "t"), size(settled, "s")
    wide, deep, body = (size(settled, each) for each in ("wide", "deep", "body"))
    top, low, shelf_z = (size(settled, each) for each in ("top", "low", "shelf_z"))
    rail_z = top - t - size(settled, "rail")
    sling_z = low - s - size(settled, "sling")
    shelf_y, splash_y = size(settled, "shelf_y"), size(settled, "splash_y")
    poses = {
        "side.left": Pose((0, 0, 0), BACK, UP),
        "side.right": Pose((wide - t, 0, 0), BACK, UP),
        "worktop": Pose((t, 0, top - t), RIGHT, BACK),
        "rail.front": Pose((t, 60 + t / 2, rail_z), RIGHT, UP),
        "rail.rear": Pose((t, deep - 60 + t / 2, rail_z), RIGHT, UP),
        "sling.front": Pose((t, 80 + t / 2, sling_z), RIGHT, UP),
        "sling.rear": Pose((t, deep - 80 + t / 2, sling_z), RIGHT, UP),
        "lower-shelf": Pose((t, 40, low - s), RIGHT, BACK),
        "upper-shelf": Pose((t + body, shelf_y, shelf_z + s), LEFT, BACK),
        "splashback": Pose((t, splash_y + s, top), RIGHT, UP),
        "lip": Pose((t + 0.5, 25 + s / 2, top), RIGHT, UP),
    }
    # The arms stand out to either side; their wedges lie flat and go in from the front.
    arm_z = size(settled, "arm_z") - 45
    poses["arm.left"] = Pose((0, 250 - t / 2, arm_z), LEFT, UP)
    poses["arm.right"] = Pose((wide, 250 + t / 2, arm_z), RIGHT, UP)
    poses["wedge.left"] = Pose((t, 305, arm_z + 45 + t / 2), RIGHT, FRONT)
    poses["wedge.right"] = Pose((wide - t, 305, arm_z + 45 - t / 2), LEFT, FRONT)
    for number in (1, 2, 3):
        poses[f"divider.{number}"] = Pose((t + body * number / 4 - s / 2, 340, top), BACK, UP)
    dividers = [f"divider.{number}" for number in (1, 2, 3)]
    moves: dict[str, Triple] = {
        **dict.fromkeys(("rail.front", "rail.rear"), (0, 0, -150)),
        **dict.fromkeys(("sling.front", "sling.rear"), (0, 0, -130)),
        **dict.fromkeys(dividers, (0, 0, 150)),
        "upper-shelf": (0, 0, 130),
        "splashback": (0, 220, 0),
        "side.left": (-260, 0, 0),
        "side.right": (260, 0, 0),
        "lip": (0, 0, 130),
        **{"arm.left": (-150, 0, 0), "arm.right": (150, 0, 0)},
        **dict.fromkeys(("wedge.left", "wedge.right"), (0, -150, 0)),
    }
    return Scene(
        poses,
        moves=moves,
        azimuth=-33,
        elevation=22,
    )


def tool_tote(settled: SettledPlan) -> Scene:
    """The sides run along x with their grooves inward; the waves of the ends look outward."""
    t, long, wide = (size(settled, each) for each in ("t", "long", "wide"))
    inside, grip = size(settled, "inside"), size(settled, "grip")
    floor, floor_top = size(settled, "floor"), size(settled, "floor_top")
    low, middle = 8 * INCH, wide / 2
    poses = {
        "end.left": Pose((t, wide, 0), FRONT, UP),
        "end.right": Pose((long - t, 0, 0), BACK, UP),
        "side.front": Pose((long, 0, 0), LEFT, UP),
        "side.rear": Pose((0, wide, 0), RIGHT, UP),
        "bottom": Pose((t, t, floor - t / 2), RIGHT, BACK),
        "divider": Pose((long / 2 - t / 2, t, floor_top), BACK, UP),
        "handle": Pose((t, middle + t / 2, low), RIGHT, UP),
        "pad.front": Pose(
            (t + inside / 2 - grip / 2, middle - t / 2, low + 1.25 * INCH), RIGHT, UP
        ),
        "pad.rear": Pose((t + inside / 2 + grip / 2, middle + t / 2, low + 1.25 * INCH), LEFT, UP),
    }
    return Scene(
        poses,
        moves={
            "pad.front": (0, -60, 0),
            "pad.rear": (0, 60, 0),
            "side.front": (0, -75, 0),
            "side.rear": (0, 75, 0),
            "divider": (0, 0, 110),
            "end.left": (-110, 0, 0),
            "end.right": (110, 0, 0),
        },
        azimuth=-34,
        elevation=30,
    )


def window_shelf(settled: SettledPlan) -> Scene:
    """Two feet 110 mm in from the ends of the board, which lies with its long side to the front."""
    t, foot, high, long, wide = (
        size(settled, each) for each in ("t", "foot", "high", "long", "wide")
    )
    poses = {"board": Pose((0, -wide / 2, high), RIGHT, BACK)}
    for number, left in ((1, 110.0), (2, long - 110.0 - foot)):
        poses[f"{number}/lower"] = Pose((left, t / 2, 0), RIGHT, UP)
        poses[f"{number}/upper"] = Pose((left + foot / 2 - t / 2, -foot / 2, 0), BACK, UP)
    return Scene(poses, moves={"board": (0, 0, 120)}, azimuth=-28, elevation=24)


SETS: dict[str, Callable[[SettledPlan], Scene]] = {"window-shelf": window_shelf}
"""Plans that make a set: all pieces of it, those of twins by their number."""

SCENES: dict[str, Callable[[SettledPlan], Scene]] = {
    "desk-rack": desk_rack,
    "harbour-stool": harbour_stool,
    "potting-bench": potting_bench,
    "tool-tote": tool_tote,
}
