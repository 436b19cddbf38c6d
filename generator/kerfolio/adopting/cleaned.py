"""A drawing cleaned: loose lines joined, what is drawn twice dropped, curves made arcs again."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from math import dist

from kerfolio.adopting.aside import why_aside
from kerfolio.adopting.shape import Dropped, Question, Shape
from kerfolio.basis.digits import digits
from kerfolio.geometry.arc_runs import with_arcs
from kerfolio.geometry.canonical import tidy
from kerfolio.geometry.chain import chained
from kerfolio.geometry.checks import CROSSING, faults
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.measure import area, bounds
from kerfolio.geometry.near import meeting
from kerfolio.geometry.nesting import off_shape
from kerfolio.geometry.shape_error import ShapeError
from kerfolio.geometry.straightened import straightened
from kerfolio.geometry.transform import scaled
from kerfolio.model.outline import Drawing

SILENT = 0.05
"""Ends this close, mm, are joined without a word."""

ASKED = 0.8
"""Ends this close, mm, are joined, and asked for."""

_SAME = 0.05
_LEAST_AREA = 0.05
_KEEP, _LEAVE = "close it", "leave it out"


@dataclass(frozen=True, slots=True, kw_only=True)
class Cleaned:
    """The closed shapes and open lines of a drawing, what was dropped, joined and is asked.

    ``joined`` counts the ends that were joined without a word, ``squared`` curves made arcs.
    """

    closed: tuple[Shape, ...]
    lines: tuple[Shape, ...]
    dropped: tuple[Dropped, ...] = ()
    questions: tuple[Question, ...] = ()
    joined: int = 0


def cleaned(
    drawing: Drawing, scale: float = 1.0, answers: Mapping[str, str] | None = None
) -> Cleaned:
    """Return what a drawing holds, its numbers multiplied by ``scale``."""
    shapes = [
        Shape(
            contour=scaled(Contour(each.vertices, each.closed), scale),
            names=tuple(dict.fromkeys((*each.inserts, *each.names, each.name))),
            place=each.place,
        )
        for each in drawing.elements
        if len(each.vertices) > 1
    ]
    reasons = [why_aside(each.names[:-1], each.contour) for each in shapes]
    aside = [
        Dropped(what="path", why=why, at=_spot(each), place=each.place)
        for each, why in zip(shapes, reasons, strict=True)
        if why
    ]
    shapes = [each for each, why in zip(shapes, reasons, strict=True) if not why]
    closed = [each for each in shapes if each.contour.closed]
    loose = [each for each in shapes if not each.contour.closed]
    once, count = _joined(loose, SILENT)
    closed += [each for each in once if each.contour.closed]
    loose = [each for each in once if not each.contour.closed]
    asked, questions, left = _asked(loose, answers or {})
    sound, dropped = _sound((*closed, *asked))
    kept, doubled = _once(sound)
    return Cleaned(
        closed=tuple(kept),
        lines=tuple(left),
        dropped=(*aside, *dropped, *doubled),
        questions=tuple(questions),
        joined=count,
    )


def _joined(lines: Sequence[Shape], gap: float) -> tuple[list[Shape], int]:
    """Return lines joined where two ends meet, and how many joins there were."""
    made, count = [], 0
    for chain in chained([each.contour for each in lines], gap):
        members = [lines[index] for index in sorted(chain.members)]
        names = tuple(dict.fromkeys(name for each in members for name in each.names))
        made.append(replace(members[0], contour=chain.contour, names=names))
        count += len(members) - 1 + chain.contour.closed
    return made, count


def _asked(
    lines: Sequence[Shape], answers: Mapping[str, str]
) -> tuple[list[Shape], list[Question], list[Shape]]:
    """Return what wider gaps close, the questions whether they may, and what stays open."""
    closed, questions, left = [], [], []
    contours = [each.contour for each in lines]
    for chain in chained(contours, ASKED):
        members = [lines[index] for index in sorted(chain.members)]
        if not chain.contour.closed:
            left += members
            continue
        at = contours[chain.members[0]].vertices[0][:2]
        wide = _widest([contours[index] for index in chain.members])
        question = Question(
            key=f"gap {digits(at[0], 1)} {digits(at[1], 1)}",
            words=f"ends {digits(wide, 2)} mm apart: are they to meet?",
            answers=(_KEEP, _LEAVE),
            at=at,
            place=members[0].place,
        )
        questions.append(question)
        if answers.get(question.key, question.default) == _KEEP:
            names = tuple(dict.fromkeys(name for each in members for name in each.names))
            closed.append(replace(members[0], contour=chain.contour, names=names))
        else:
            left += members
    return closed, questions, left


def _widest(paths: Sequence[Contour]) -> float:
    """Return how far the ends of paths that meet are apart at most: each end to the nearest."""
    ends = [spot for each in paths for spot in (each.vertices[0][:2], each.vertices[-1][:2])]
    return max(
        min(dist(one, other) for j, other in enumerate(ends) if j != i)
        for i, one in enumerate(ends)
    )


def _sound(shapes: Iterable[Shape]) -> tuple[list[Shape], list[Dropped]]:
    """Return closed shapes in their tidy form, and those that enclose nothing sound."""
    kept, dropped = [], []
    for each in shapes:
        why = ""
        try:
            contour = tidy(straightened(with_arcs(tidy(each.contour))))
        except ShapeError:
            contour, why = each.contour, "it encloses no area"
        else:
            if area(contour) < _LEAST_AREA:
                why = "it encloses no area"
            elif any(fault.kind == CROSSING for fault in faults(contour)):
                why = "its line crosses itself"
        if why:
            dropped.append(Dropped(what="path", why=why, at=_spot(each), place=each.place))
        else:
            kept.append(replace(each, contour=contour))
    return kept, dropped


def _once(shapes: Sequence[Shape]) -> tuple[list[Shape], list[Dropped]]:
    """Return shapes without those that repeat an earlier one."""
    contours = [each.contour for each in shapes]
    again: set[int] = set()
    for one, other in meeting(contours, contours):
        if one < other and one not in again and other not in again and _alike(contours, one, other):
            again.add(other)
    dropped = [
        Dropped(what="path", why="it is drawn twice", at=_spot(shapes[i]), place=shapes[i].place)
        for i in sorted(again)
    ]
    return [each for index, each in enumerate(shapes) if index not in again], dropped


def _alike(contours: Sequence[Contour], one: int, other: int) -> bool:
    a, b = bounds(contours[one]), bounds(contours[other])
    sides = zip((a.x0, a.y0, a.x1, a.y1), (b.x0, b.y0, b.x1, b.y1), strict=True)
    if any(abs(p - q) > _SAME for p, q in sides):
        return False
    return off_shape(contours[one], contours[other]) <= _SAME


def _spot(shape: Shape) -> Point:
    return bounds(shape.contour).centre
