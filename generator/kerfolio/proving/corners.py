"""Checks of inside corners that a round cutter leaves round and a sheet must fill."""

from __future__ import annotations

from collections.abc import Iterator
from math import dist

from kerfolio.assembly.ends import end_of, pieces_of
from kerfolio.basis.finding import Beside, Finding, Severity, error, note, warning
from kerfolio.basis.measures import precise, reading
from kerfolio.basis.place import NOWHERE, Place
from kerfolio.basis.said import Text, enumerated, named, said, stated_name
from kerfolio.basis.tolerance import SAME
from kerfolio.geometry.arc import reversed_contour
from kerfolio.geometry.contour import Point
from kerfolio.geometry.measure import contours_of
from kerfolio.geometry.relief import DOG_BONE, SIDEWAYS, contour_corners
from kerfolio.model.stock import CutterStock
from kerfolio.proving.marks import about, spots_mark
from kerfolio.proving.meeting import too_short
from kerfolio.proving.rule import COMMON_PRACTICE, ROUND_CUTTER, after
from kerfolio.proving.shapes import run_together
from kerfolio.settling.relief import SIDEWAYS_OTHER
from kerfolio.settling.settled import (
    MovedRelief,
    Operation,
    SettledFeature,
    SettledPart,
    SettledPlan,
)

_LEFT = 2**0.5 - 1
"""Of the cutter's radius is left on the diagonal of a square inside corner (plane geometry)."""


@after(
    "corner-needs-relief",
    reason="A round cutter leaves inside corners round, and a sheet's corners are square.",
    source=ROUND_CUTTER,
    severity=Severity.WARNING,
)
def corners_relieved(settled: SettledPlan) -> Iterator[Finding]:
    """Look for square inside corners that take a square edge and have no relief.

    Corners count that belong to a feature which takes a sheet or is named in a joint.
    """
    joined = _joined(settled)
    for part in settled.parts:
        if settled.sheet(part.sheet).diameter is None:
            continue  # what is no cutter cuts them square
        sharp = tuple(_sharp(part))
        for feature in part.features:
            if not feature.takes and (part.name, feature.name) not in joined:
                continue
            spots = [at for at in sharp if any(dist(at, own) < SAME for own in _own(feature))]
            if spots:
                yield _unrelieved(settled, part, feature, spots)


def _unrelieved(
    settled: SettledPlan, part: SettledPart, feature: SettledFeature, spots: list[Point]
) -> Finding:
    name = f"{part.name}.{feature.name}"
    message = said("{} {} has no relief in its corners", feature.kind.name, named(name))
    radius = settled.sheet(part.sheet).cut_width / 2
    takes = "" if feature.takes else " and say which sheet it `takes`"
    advice = said(
        "The cutter leaves {} in each: write `relief: dog-bone`{}, or square them with a chisel.",
        reading("left", _LEFT * radius),
        takes,
    )
    mark, subject = spots_mark(settled, part, spots), stated_name(name)
    place = feature.place
    return warning("corner-needs-relief", message, place, advice, mark=mark, subject=subject)


@after(
    "relief-eats-wall",
    reason="A wall that bears needs a flat for its mate to lie against.",
    source=COMMON_PRACTICE,
)
def walls_left(settled: SettledPlan) -> Iterator[Finding]:
    """Look for reliefs of which no style leaves a third of every wall that bears.

    Of an opening that is too short for its tab, or runs into another, that is told.
    """
    short = too_short(settled)
    for part, moved in _moved(settled):
        if not run_together(part).isdisjoint(moved.features):
            continue
        sheet = settled.sheet(part.sheet)
        if moved.widest >= sheet.relief.diameter:
            continue
        if all((part.name, each) in short for each in moved.features):
            continue
        names = enumerated([named(each) for each in _names(moved, part)])
        sizes = precise("left", moved.left), precise("wall", moved.wall)
        message = said("relief leaves {} of a wall of {} at {}", *sizes, names)
        most = moved.widest - (sheet.relief.diameter - sheet.cut_width)
        advice = said(
            "A wall that bears keeps a third: take {}, square the corners by hand "
            "(`relief: none`), or make the wall longer.",
            _smaller(settled, sheet.cutter, most),
        )
        place = _place(moved, part)
        yield error("relief-eats-wall", message, place, advice, **_about(settled, part, moved))


@after(
    "relief-moved",
    reason="A wall that bears needs a flat for its mate to lie against.",
    source=COMMON_PRACTICE,
    severity=Severity.NOTE,
)
def reliefs_moved(settled: SettledPlan) -> Iterator[Finding]:
    """Look for reliefs of another style than asked for, which would eat a wall that bears."""
    for part, moved in _moved(settled):
        asked = settled.sheet(part.sheet).relief
        if moved.widest < asked.diameter:
            continue
        names = enumerated([named(each) for each in _names(moved, part)])
        sizes = precise("left", moved.left), precise("wall", moved.wall)
        message = said("`{}` would leave {} of a wall of {} at {}", asked.style, *sizes, names)
        advice = f"A wall that bears keeps a third: the reliefs {_INSTEAD[moved.style]} there."
        place = _place(moved, part)
        yield note("relief-moved", message, place, advice, **_about(settled, part, moved))


_INSTEAD = {
    DOG_BONE: "are dog-bones",
    SIDEWAYS: "lie sideways",
    SIDEWAYS_OTHER: "lie sideways in the other walls",
}


def _moved(settled: SettledPlan) -> Iterator[tuple[SettledPart, MovedRelief]]:
    return ((part, moved) for part in settled.parts for moved in part.moved)


def _names(moved: MovedRelief, part: SettledPart) -> tuple[str, ...]:
    """Return the names of the features as the plan states them."""
    return tuple(dict.fromkeys(stated_name(f"{part.name}.{each}") for each in moved.features))


def _place(moved: MovedRelief, part: SettledPart) -> Place:
    """Return where the first of the features is stated."""
    own = (each.place for each in part.features if each.name in moved.features)
    return next((each for each in own if each != NOWHERE), part.place)


def _about(settled: SettledPlan, part: SettledPart, moved: MovedRelief) -> Beside:
    return about(settled, part, *(each for each in part.features if each.name in moved.features))


def _smaller(settled: SettledPlan, cutter: CutterStock, most: float) -> Text:
    """Return which cutter leaves the walls enough: the largest one of its kind, or its diameter."""
    alike = (each for each in settled.stock.cutters if each.kind == cutter.kind)
    good = [each for each in alike if each.diameter <= most]
    if not good:
        return said("a cutter of at most {}", precise("most", most))
    best = max(good, key=lambda each: (each.diameter, each.name))
    return said("`{}`, {} wide", best.name, precise("cutter", best.diameter))


def _joined(settled: SettledPlan) -> set[tuple[str, str]]:
    """Return (part, feature) of what interlocking joints name."""
    pieces = pieces_of(settled)
    ends = [
        end_of(named.name, pieces)
        for joint in settled.plan.joints
        if joint.kind.interlocks
        for named in (joint.a, joint.b)
    ]
    return {
        (end.part.name, each.name)
        for end in ends
        if end
        for each in end.features
        if each.kind.takes
    }


def _sharp(part: SettledPart) -> Iterator[Point]:
    """Yield the sharp inside corners that are left after relief, pockets' included."""
    for contour in contours_of(part.routed):
        yield from (corner.at for corner in contour_corners(contour))
    for cut in part.cuts:
        if cut.operation is Operation.POCKET:
            for contour in cut.contours:
                yield from (each.at for each in contour_corners(reversed_contour(contour)))


def _own(feature: SettledFeature) -> Iterator[Point]:
    return ((x, y) for contour in feature.shape for x, y, _ in contour.vertices)
