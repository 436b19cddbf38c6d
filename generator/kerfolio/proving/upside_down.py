"""Checks that a piece stands as it is drawn, and not upside down because of one word."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from math import dist

from kerfolio.assembly.building import Build
from kerfolio.assembly.ends import pieces_of
from kerfolio.assembly.links import links_of, root_of
from kerfolio.assembly.other_edges import from_other_edges, side_of
from kerfolio.assembly.posing import panels_of
from kerfolio.assembly.standing import stood
from kerfolio.assembly.trying import standing_of
from kerfolio.basis.finding import Finding, Severity, note
from kerfolio.basis.said import said
from kerfolio.geometry.contour import Point
from kerfolio.geometry.measure import contours_of
from kerfolio.geometry.rigid import Rigid
from kerfolio.proving.rule import COMMON_PRACTICE, together
from kerfolio.settling.settled import SettledPart, SettledPlan

_ALONG = 0.99
"""The cosine between the top of a drawing and straight up or down, at least."""

_SAME = 0.1
"""Points nearer than this, mm, are one."""


@together(
    "piece-upside-down",
    reason="A drawing is read with its top up, and most are meant so.",
    source=COMMON_PRACTICE,
    severity=Severity.NOTE,
)
def stands_as_drawn(build: Build) -> Iterator[Finding]:
    """Look for parts that stand upside down beside others that do not, for the edge of one set.

    A part of which it makes no difference is passed over, and one whose set nothing else fits.
    """
    if build.drawn.gaps:
        return
    settled = build.settled
    heights = _heights({each.label: each.pose for each in build.drawn.assembled.pieces}, settled)
    hanging = {name for name, ups in heights.items() if ups == {False}}
    if not hanging or all(ups == {False} for ups in heights.values()):
        return
    links = links_of(settled)[0]
    root = root_of(links)
    near = [each for each in links if hanging & {each.a.part.name, each.b.part.name}]
    for each in from_other_edges(settled, near):
        (name,) = each.parts
        changed = each.change(settled) if name in hanging else settled
        if changed is settled or _is_as_good(_part(settled, name), _part(changed, name)):
            continue
        made = standing_of(changed, root, len(links), each.parts)
        if made is None or not made.is_sound:
            continue
        standing = settled.plan.standing
        poses = stood(made.poses, pieces_of(changed), panels_of(changed), standing)
        if _heights(poses, changed) == {**heights, name: {True}}:
            message = said("`{}` makes `{}` stand upside down", each.subject, name)
            side = side_of(settled, name, each.subject.removeprefix(f"{name}."))
            was = f"It is stated with `edge: {side}`."
            advice = said("{} {} Or leave it, if that is meant.", was, each.cure)
            yield note("piece-upside-down", message, each.place, advice, subject=each.subject)


def _part(settled: SettledPlan, name: str) -> SettledPart:
    return next(each for each in settled.parts if each.name == name)


def _heights(poses: Mapping[str, Rigid], settled: SettledPlan) -> dict[str, set[bool]]:
    """Return of each part whether the top of its drawing points up, of pieces that stand."""
    found: dict[str, set[bool]] = {}
    parts = pieces_of(settled)
    for label, pose in poses.items():
        if abs(pose.y[2]) > _ALONG:
            found.setdefault(parts[label].name, set()).add(pose.y[2] > 0)
    return found


def _is_as_good(hanging: SettledPart, standing: SettledPart) -> bool:
    """Tell whether a part, upside down, is what it would be the other way up."""
    width, height = hanging.size
    mine, theirs = _points(hanging), _points(standing)
    turned = [(width - x, height - y) for x, y in mine]
    over = [(x, height - y) for x, y in mine]
    return any(
        all(any(dist(one, other) < _SAME for other in theirs) for one in points)
        for points in (turned, over)
    )


def _points(part: SettledPart) -> list[Point]:
    return [(x, y) for contour in contours_of(part.plain) for x, y, _ in contour.vertices]
