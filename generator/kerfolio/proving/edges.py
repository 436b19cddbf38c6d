"""Checks of what is done to edges: roundings that bite a joint, banding and finish within one."""

from __future__ import annotations

from collections.abc import Iterator
from math import floor

from kerfolio.assembly.ends import end_of, pieces_of
from kerfolio.basis.finding import Finding, Severity, error, note, warning
from kerfolio.basis.lengths import INCH, inch_text, mm_text
from kerfolio.basis.measures import point, precise
from kerfolio.basis.reader import Reader
from kerfolio.basis.said import Measure, Quantity, Text, named, said, stated_name
from kerfolio.basis.tolerance import NOISE, SAME
from kerfolio.geometry.arc import Edge, edges
from kerfolio.model.edge_treatment import BAND, BOTH_FACES, MASK, ROUND_OVER, EdgeKind
from kerfolio.model.feature_kind import FINGERS, NOTCH, TAB
from kerfolio.model.finish import AFTER
from kerfolio.model.purpose import GLUED
from kerfolio.proving.marks import about, spots_mark
from kerfolio.proving.rule import COMMON_PRACTICE, after
from kerfolio.settling.bridges import butted_sides
from kerfolio.settling.settled import (
    SettledEdge,
    SettledFeature,
    SettledJoint,
    SettledPart,
    SettledPlan,
)
from kerfolio.shop.rounding import Limit, butts, limits, stands_on

_TENTHS, _OF_AN_INCH = 10, 64


@after(
    "round-over-too-large",
    reason="A rounding takes the faces off that shoulders and walls bear on.",
    source=COMMON_PRACTICE,
    also=("round-over-in-joint",),
)
def round_overs(settled: SettledPlan) -> Iterator[Finding]:
    """Look for roundings larger than the sheet, or what is cut beside them, leaves room for."""
    for edge, part, sides in _edges_of(settled, ROUND_OVER):
        yield from _too_large(edge, part, settled, sides)


def _edges_of(
    settled: SettledPlan, kind: EdgeKind
) -> Iterator[tuple[SettledEdge, SettledPart, frozenset[str]]]:
    """Yield the edges of a treatment with their part, and which of its sides butt."""
    sides = butted_sides(settled.plan.joints, settled.plan.parts)
    for part in settled.parts:
        for edge in part.edges:
            if edge.kind is kind:
                yield edge, part, sides.get(part.name, frozenset())


def _too_large(
    edge: SettledEdge, part: SettledPart, settled: SettledPlan, sides: frozenset[str]
) -> Iterator[Finding]:
    """Yield the first that leaves no room at all, and the tightest of those that leave some."""
    bounds = [each for each in limits(edge, part, sides) if edge.radius > each.radius + NOISE]
    none = [each for each in bounds if each.radius <= SAME]
    some = sorted((each for each in bounds if each.radius > SAME), key=lambda each: each.radius)
    for limit in none[:1]:
        message = said("{} {}", _rounding(edge, part), _in_the_way(limit, part))
        advice = "Leave that edge `square`, or round over a stretch of it that keeps clear."
        place, mark = edge.place, spots_mark(settled, part, [limit.at] if limit.at else [])
        yield error("round-over-in-joint", message, place, advice, mark=mark, subject=part.name)
    for limit in some[:1]:
        message = said("{} {}", _rounding(edge, part), _too_near(limit, edge, part))
        fits = said("At most {} fits.", _at_most(limit.radius))
        place, mark = edge.place, spots_mark(settled, part, [limit.at] if limit.at else [])
        yield error("round-over-too-large", message, place, fits, mark=mark, subject=part.name)


def _rounding(edge: SettledEdge, part: SettledPart) -> Text:
    return said("round-over of {} on {}", precise("radius", edge.radius), edge_words(edge, part))


def _in_the_way(limit: Limit, part: SettledPart) -> Text:
    if limit.feature is None:
        return "takes the edge that butts on another piece"
    kind, name = limit.feature.kind, named(f"{part.name}.{limit.feature.name}")
    if kind in (TAB, FINGERS):
        return said("takes the shoulders of {} {}", kind.noun.split()[-1], name)
    return said("runs into {} {}, which reaches the edge", kind.name, name)


def _too_near(limit: Limit, edge: SettledEdge, part: SettledPart) -> Text:
    most = precise("most", limit.radius)
    if limit.feature is None:
        share = "half of the sheet" if edge.faces == BOTH_FACES else "the sheet"
        return said("is larger than {}, {}", share, most)
    kind, name = limit.feature.kind, named(f"{part.name}.{limit.feature.name}")
    if limit.walls:
        return said("takes more than a third of the walls of {} {}, {}", kind.name, name, most)
    return said("runs into {} {}, {} away", kind.name, name, most)


def _at_most(radius: float) -> Measure:
    return Measure((Quantity("most", radius, "mm"),), _rounded_down)


def _rounded_down(mm: float, reader: Reader) -> str:
    """Return a length no longer than it is, to 0.1 mm or to 1/64 in."""
    if reader.unit == "in":
        steps = floor(mm / INCH * _OF_AN_INCH + NOISE)
        return inch_text(steps * INCH / _OF_AN_INCH, _OF_AN_INCH)
    return mm_text(floor(mm * _TENTHS + NOISE) / _TENTHS)


def edge_words(edge: SettledEdge, part: SettledPart) -> Text:
    """Return what an edge is called: ``edge `top` of `side` ``."""
    if edge.openings:
        return said("the rim of {}", named(f"{part.name}.{edge.openings[0]}"))
    if edge.side:
        return f"edge `{edge.side}` of `{part.name}`"
    if edge.ends:
        ends = (point(*each) for each in edge.ends)
        return said("the edge of `{}` from {} to {}", part.name, *ends)
    return f"`all` other edges of `{part.name}`"


@after(
    "banding-in-joint",
    reason="Banding adds its thickness to the piece: a joint beside it no longer meets as drawn.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def banding(settled: SettledPlan) -> Iterator[Finding]:
    """Look for banding on edges that butt, or that tabs, fingers or notches stand on."""
    for edge, part, sides in _edges_of(settled, BAND):
        yield from _banded(edge, part, settled, sides)


def _banded(
    edge: SettledEdge, part: SettledPart, settled: SettledPlan, sides: frozenset[str]
) -> Iterator[Finding]:
    thick: Text = "its thickness"
    if edge.thickness is not None:
        thick = said("{}", precise("thickness", edge.thickness))
    advice = said("Draw that edge {} further in, or leave it `square`.", thick)
    where = edge_words(edge, part)
    if butts(edge, part, sides):
        message = said("banding on {} makes it longer by {}, where it butts", where, thick)
        place, subject = edge.place, part.name
        yield warning("banding-in-joint", message, place, advice, subject=subject)
    standing = [each for each in part.features if stands_on(each, edge)]
    for feature in standing[:1] if edge.runs else ():
        name = named(f"{part.name}.{feature.name}")
        what = "deeper" if feature.kind is NOTCH else "shorter"
        message = said(
            "banding on {} makes {} {} {} by {}", where, feature.kind.name, name, what, thick
        )
        beside = about(settled, part, feature)
        yield warning("banding-in-joint", message, edge.place, advice, **beside)


@after(
    "glued-edge-unmasked",
    reason="Glue holds on bare wood: finish on a shoulder is finish in the joint.",
    source=COMMON_PRACTICE,
    severity=Severity.NOTE,
)
def glued_edges(settled: SettledPlan) -> Iterator[Finding]:
    """Look for edges that are glued and not masked, in parts that say what is done to edges.

    A finish that comes after assembly finds no bare shoulders.
    """
    finish = settled.plan.finish
    if finish is not None and finish.when == AFTER:
        return
    told = set[tuple[str, str]]()
    for part, feature in _glued(settled):
        stem = stated_name(f"{part.name}.{feature.name}")
        masked = [each for each in part.edges if each.kind is MASK]
        if not part.edges or (part.name, stem) in told or not _has_shoulders(feature, part):
            continue
        if not any(stands_on(feature, each) for each in masked):
            told.add((part.name, stem))
            message = said("the edge that {} stands on is glued and not masked", named(stem))
            advice = "Mark it `mask`, so that no finish comes between wood and glue."
            beside = about(settled, part, feature)
            yield note("glued-edge-unmasked", message, part.place, advice, **beside)


def _glued(settled: SettledPlan) -> Iterator[tuple[SettledPart, SettledFeature]]:
    """Yield the tabs and fingers of joints that are glued, with their parts."""
    pieces = pieces_of(settled)
    for joint in settled.joints:
        found = [end_of(each.name, pieces) for each in (joint.stated.a, joint.stated.b)]
        ends = [each for each in found if each is not None]
        if any(_is_glued(joint, feature) for end in ends for feature in end.features):
            yield from (
                (end.part, feature)
                for end in ends
                for feature in end.features
                if feature.kind in (TAB, FINGERS)
            )


def _is_glued(joint: SettledJoint, feature: SettledFeature) -> bool:
    stated = joint.stated.fit
    if stated is not None and stated.purpose is not None:
        return stated.purpose is GLUED
    return feature.room is not None and feature.room.purpose is GLUED


def _has_shoulders(feature: SettledFeature, part: SettledPart) -> bool:
    """Tell whether anything of the edge is left beside what stands on it."""
    return any(stands_on(feature, _alone(run)) for run in edges(part.plain.outer) if not run.bulge)


def _alone(run: Edge) -> SettledEdge:
    return SettledEdge(kind=MASK, runs=(run,))
