"""Checks of bores by hand into edges: slim enough, and in the wood on all sides."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.assembly.bores import bores_of
from kerfolio.basis.finding import Axial, Beside, Finding, Measured, Severity, error, warning
from kerfolio.basis.measures import length, precise
from kerfolio.basis.said import Text, named, said
from kerfolio.basis.tolerance import SAME
from kerfolio.geometry.boolean import contains, intersects
from kerfolio.geometry.contour import Contour, Region
from kerfolio.geometry.shapes import polygon
from kerfolio.model.fastening import CROSS_NUT
from kerfolio.model.feature_kind import BORE, HOLE
from kerfolio.proving.in_place import Line, across, along
from kerfolio.proving.marks import about
from kerfolio.proving.rule import COMMON_PRACTICE, after
from kerfolio.settling.bored import bores_of_part
from kerfolio.settling.fastened import fastenings_of
from kerfolio.settling.settled import SettledFeature, SettledPart, SettledPlan

SHARE = 0.5
"""Of a sheet's thickness, how wide a bore into its edge is at most (a dowel maker's page)."""

WALL = 2.0
"""Wood beside a bore on every side, mm, at least (common practice, no single source)."""


@after(
    "bore-share",
    reason="A wide bore leaves an edge too little wood.",
    source="never over half of the thickness: a dowel maker's technical page",
    severity=Severity.WARNING,
)
def bores_slim(settled: SettledPlan) -> Iterator[Finding]:
    """Look for bores wider than a share of the sheet is thick."""
    for part, bore in _bores(settled):
        wide = bore.width.value
        if wide > SHARE * part.thickness + SAME:
            sizes = precise("width", wide), precise("thickness", part.thickness)
            called = named(f"{part.name}.{bore.name}")
            message = said("bore {} is {} wide in an edge of {}", called, *sizes)
            most = precise("most", SHARE * part.thickness)
            advice = said("Take a slimmer fastening, {} at most: half of the sheet.", most)
            what = _alone(settled, part, bore, across(0.0, wide, "wide"))
            yield warning("bore-share", message, bore.place, advice, **what)


@after(
    "bore-breaks-out",
    reason="A bore stays in the wood on all sides, whatever a hand is off.",
    source=COMMON_PRACTICE,
    also=("bore-meets-opening",),
)
def bores_stay_in(settled: SettledPlan) -> Iterator[Finding]:
    """Look for bores that come out at a face or at another edge, or run into an opening."""
    for part, bore in _bores(settled):
        place, deep = bore.place, bore.length.value
        called = named(f"{part.name}.{bore.name}")
        assert bore.level is not None, "every bore has its level"
        half = bore.width.value / 2
        off = 0.0 if _guided(settled, part, bore) else settled.plan.hand.at(bore.length.value)
        faces = {"back": bore.level.value, "show face": part.thickness - bore.level.value}
        for face, away in faces.items():
            if away - half < off + SAME:
                left = precise("wood", away - half)
                message = said("{} leaves {} of wood to the " + face, called, left)
                advice: Text = "A hand is off by more: bore half way through, or slimmer."
                side = -1 if face == "back" else 1
                word = "of wood" if away > half else "out of the face"
                line = ((deep, side * half), (deep, side * away), word)
                what = _alone(settled, part, bore, line)
                yield error("bore-breaks-out", message, place, advice, **what)
        solid = Region(part.plain.outer)
        if not contains(solid, _wider(bore, WALL)):
            wall = length("least", WALL)
            message = said("{} comes within {} of another edge", called, wall)
            advice = "Move it along its edge, or bore it less deep."
            what = _alone(settled, part, bore, across(deep, 2 * half, "wide"), flat=True)
            yield error("bore-breaks-out", message, place, advice, **what)
        nuts = _for_nuts(settled, part)
        for other in part.features:
            if other.name not in nuts and _is_met(bore, other, part):
                opening = named(f"{part.name}.{other.name}")
                message = said("{} runs into {} {}", called, other.kind.name, opening)
                advice = "Move one of them: only a hole for a barrel nut is to be met."
                what = _alone(settled, part, bore, along(0.0, deep, "deep"), flat=True)
                yield error("bore-meets-opening", message, place, advice, **what)


def _bores(settled: SettledPlan) -> Iterator[tuple[SettledPart, SettledFeature]]:
    for part in settled.parts:
        yield from ((part, each) for each in bores_of_part(part))


def _alone(
    settled: SettledPlan,
    part: SettledPart,
    bore: SettledFeature,
    line: Line,
    *,
    flat: bool = False,
) -> Beside:
    """Return what a finding on a bore has besides its words, with what its picture measures."""
    axial = Axial(
        bore=f"{part.name}.{bore.name}",
        at=(line[0][0] + line[1][0]) / 2,
        measured=Measured(a=line[0], b=line[1], word=line[2]),
        flat=flat,
        variant=settled.variant.label,
    )
    return {**about(settled, part, bore), "axial": axial}


def _guided(settled: SettledPlan, part: SettledPart, bore: SettledFeature) -> bool:
    stated = settled.plan.part(part.name).features
    name = bore.name.partition(".")[0]
    return any(each.name == name and getattr(each.cutting, "guided", False) for each in stated)


def _wider(bore: SettledFeature, by: float) -> Contour:
    """Return the outline of a bore on the face with so much more beside it, not at its mouth."""
    (x, y), (ux, uy) = bore.at, bore.direction
    half, deep = bore.width.value / 2 + by, bore.length.value + by
    return polygon(
        [
            (x - aside * uy - inward * ux, y + aside * ux - inward * uy, 0.0)
            for aside, inward in ((-half, 0.0), (half, 0.0), (half, deep), (-half, deep))
        ]
    )


def _for_nuts(settled: SettledPlan, part: SettledPart) -> frozenset[str]:
    """Return the holes of a part that barrel nuts lie in: those are to be met.

    Where a nut's own is not known, that is told, and any may be meant.
    """
    labels = {each.label for each in part.pieces}
    nuts = [e for e in fastenings_of(settled) if e.nut is not None and e.nut.kind == CROSS_NUT]
    if any(each.cross is None and each.last.piece in labels for each in nuts):
        return frozenset(each.name for each in part.features if each.kind is HOLE)
    crosses = (each.cross for each in nuts if each.cross and each.cross.piece in labels)
    named_for = (e.feature for e in bores_of(settled, part) if e.item.kind == CROSS_NUT)
    features = (*(each.feature for each in crosses), *named_for)
    return frozenset(each.name for each in features if each is not None)


def _is_met(bore: SettledFeature, other: SettledFeature, part: SettledPart) -> bool:
    """Tell whether a bore runs into something else that is taken away, or into another bore."""
    if other is bore or other.kind.interlocks:
        return False
    assert bore.level is not None, "every bore has its level"
    if other.kind is BORE:
        assert other.level is not None, "every bore has its level"
        high = abs(other.level.value - bore.level.value)
        reach = (bore.width.value + other.width.value) / 2
        return (
            high < reach - SAME
            and bore.name < other.name
            and intersects(_wider(bore, 0.0), _wider(other, 0.0))
        )
    if not (other.kind.opens or other.depth is not None):
        return False
    floor = part.thickness - other.depth.value if other.depth is not None else 0.0
    return bore.level.value + bore.width.value / 2 > floor + SAME and any(
        each.closed and intersects(_wider(bore, 0.0), each) for each in other.shape
    )
