"""Checks of drawn outlines: what in them is made for a sheet, and does it follow that sheet?"""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.finding import Finding, Severity, note, warning
from kerfolio.basis.measures import number, precise, spot
from kerfolio.basis.said import Text, Words, said
from kerfolio.model.feature_kind import NOTCH
from kerfolio.model.outline import Drawn
from kerfolio.proving.rule import COMMON_PRACTICE, after
from kerfolio.settling.settled import DrawnEdges, SettledPart, SettledPlan

_STEP = (
    "A tab or notch at the end of an edge follows no sheet and gets no relief: draw the edge "
    "straight and state it under `features`, or write `tabs: as drawn` in the part's `drawing`."
)
_FINGERS = (
    "They share walls, or their corners are not level: draw the edge straight there and state "
    "them under `features`, or write `{}: as drawn`."
)


@after(
    "edge-as-drawn",
    reason="What is drawn for one thickness binds or rattles at another.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def edges_follow(settled: SettledPlan) -> Iterator[Finding]:
    """Look for notches and tabs in drawn outlines that are a sheet's thickness and stay so."""
    stated = {part.name: part.shape for part in settled.plan.parts}
    for part in settled.parts:
        for each in part.drawn_edges:
            if not each.takes:
                shape = stated[part.name]
                assert isinstance(shape, Drawn), "only drawn parts have drawn edges"
                advice = _advice(each, part, shape)
                they = "it stays" if _one(each) else "they stay"
                message, name = said("{}: {} as drawn", _what(each), they), part.name
                yield warning("edge-as-drawn", message, each.place, advice, subject=name)


@after(
    "edge-follows",
    reason="A part is not quite what was drawn where it follows its sheet.",
    source=COMMON_PRACTICE,
    severity=Severity.NOTE,
)
def edges_told(settled: SettledPlan) -> Iterator[Finding]:
    """Tell the notches and tabs of drawn outlines that follow a sheet without being stated."""
    for part in settled.parts:
        for each in part.drawn_edges:
            if each.takes:
                key = each.kind.outlined if each.kind else ""
                count = "it is" if _one(each) else "they are"
                words = "{}: {} `{}`, which takes `{}`"
                if not _one(each):
                    words = "{}: {} `{}`, which take `{}`"
                message = said(words, _what(each), count, f"{part.name}.{key}", each.takes)
                advice = (
                    f"Write `{key}: takes {each.takes}` in the part's `drawing` to say so, or "
                    f"`{key}: as drawn`."
                )
                yield note("edge-follows", message, each.place, advice, subject=part.name)


def _one(edges: DrawnEdges) -> bool:
    return len(edges.spots) == 1


def _what(edges: DrawnEdges) -> Words:
    """Return what was found where: an outline's 4 notches 18 mm wide, the first at 60, 240 mm."""
    at, size = spot(*edges.spots[0]), precise("size", edges.size)
    count: Text = "" if _one(edges) else said("{} ", number("count", len(edges.spots)))
    first = "at" if _one(edges) else "the first at"
    is_dxf = edges.place.file.lower().endswith(".dxf")
    whose = "of the drawing" if is_dxf else "from the drawing's lower left"
    if edges.kind is None:
        where = "once" if _one(edges) else said("{} times", number("count", len(edges.spots)))
        words = "the outline `{}` steps back {} {}, {} {} {}"
        return said(words, edges.element, size, where, first, at, whose)
    noun = edges.kind.name if _one(edges) else edges.kind.outlined
    how = "wide" if edges.kind is NOTCH else "long"
    a = "a " if _one(edges) else ""
    words = "the outline `{}` has {}{}{} {} {}, {} {} {}"
    return said(words, edges.element, a, count, noun, size, how, first, at, whose)


def _advice(edges: DrawnEdges, part: SettledPart, drawn: Drawn) -> str:
    if edges.kind is None:
        return _STEP
    key = edges.kind.outlined
    if drawn.said_of(edges.kind) is not None:
        return _FINGERS.format(key)
    follow = "It follows no sheet and gets" if _one(edges) else "They follow no sheet and get"
    return (
        f"{follow} no relief: write `{key}: takes {part.sheet}` in the part's `drawing`, or "
        f"`{key}: as drawn`."
    )
