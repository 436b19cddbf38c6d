"""What a step marks out: on each part the middles of features, and lines off its sides."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from kerfolio.basis.finding import Finding
from kerfolio.geometry.contour import Point
from kerfolio.model.feature_kind import BORE
from kerfolio.model.handwork import Marked, PencilLine
from kerfolio.model.plan import Step
from kerfolio.model.statement import Named
from kerfolio.settling.scope import Scope, SettlingError
from kerfolio.settling.settled import SettledPart, SettledPlan
from kerfolio.settling.worked import worked_on


@dataclass(frozen=True, slots=True, kw_only=True)
class MarkedPart:
    """A part with the pieces that are marked: ``points`` on its face, mm, and ``lines``.

    ``edges`` are points on its edges, each with the direction that the edge looks in. A line is a
    side and how far it is off that, mm.
    """

    part: SettledPart
    pieces: tuple[str, ...]
    points: tuple[Point, ...] = ()
    edges: tuple[tuple[Point, Point], ...] = ()
    lines: tuple[tuple[str, float], ...] = ()

    @property
    def mark(self) -> str:
        """The marks of all its pieces that are meant: ``A1, A2``, ``A1–A4``."""
        marks = [each.mark for each in self.part.pieces if each.label in self.pieces]
        first, last = marks[0], marks[-1]
        return {1: first, 2: f"{first}, {last}"}.get(len(marks), f"{first}–{last}")


def pencilled(
    steps: Iterable[Step], scope: Scope
) -> tuple[tuple[tuple[str, float], ...], tuple[Finding, ...]]:
    """Return how far off its side each line is that steps mark out, mm, by its words."""
    made: list[tuple[str, float]] = []
    findings: list[Finding] = []
    for line in (each for step in steps for each in step.marks if isinstance(each, PencilLine)):
        try:
            made.append((line.at.text, scope.positive(line.at, "at")))
        except SettlingError as trouble:
            findings.append(trouble.about(line.on.name))
    return tuple(made), tuple(findings)


def marked_in(step: Step, settled: SettledPlan) -> tuple[MarkedPart, ...]:
    """Return what a step marks out, part by part in the order in which it names them."""
    lines = dict(settled.pencilled)
    found: dict[tuple[str, tuple[str, ...]], MarkedPart] = {}
    for each in step.marks:
        line = each if isinstance(each, PencilLine) else None
        worked = worked_on(name_marked(each).name, settled.parts)
        if worked is None:
            continue
        key = worked.part.name, worked.pieces
        made = found.setdefault(key, MarkedPart(part=worked.part, pieces=worked.pieces))
        if line is None:
            bores = [(f.at, f.direction) for f in worked.features if f.kind is BORE]
            spots = [f.at for f in worked.features if f.kind is not BORE]
            found[key] = replace(
                made,
                points=tuple(dict.fromkeys((*made.points, *spots))),
                edges=tuple(dict.fromkeys((*made.edges, *bores))),
            )
        elif line.at.text in lines:
            more = ((side, lines[line.at.text]) for side in line.sides)
            found[key] = replace(made, lines=tuple(dict.fromkeys((*made.lines, *more))))
    return tuple(each for each in found.values() if each.points or each.edges or each.lines)


def name_marked(marked: Marked) -> Named:
    """Return the name of what is marked."""
    return marked.on if isinstance(marked, PencilLine) else marked
