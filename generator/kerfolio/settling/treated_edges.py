"""What is done to the edges of a part, settled: which stretches of its outline each means."""

from __future__ import annotations

from collections.abc import Sequence

from kerfolio.basis.finding import Finding
from kerfolio.basis.measures import point
from kerfolio.basis.names import begins, did_you_mean
from kerfolio.basis.said import said
from kerfolio.geometry.arc import Edge, edges
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.edge_runs import kept_runs, parted
from kerfolio.model.edge_treatment import ROUND_OVER, TreatedEdge
from kerfolio.model.feature_kind import HOLE, WINDOW
from kerfolio.model.part import Part
from kerfolio.model.statement import Named
from kerfolio.settling.edge import edge_frame
from kerfolio.settling.scope import Scope, SettlingError, unsettled
from kerfolio.settling.settled import SettledEdge, SettledFeature, SettledPart


def treated_edges(
    part: Part, made: SettledPart, outline: Contour, scope: Scope
) -> tuple[tuple[SettledEdge, ...], tuple[Finding, ...]]:
    """Return what is done to a part's edges, with a finding for each that it does not have.

    Edges are those of its ``outline`` before features: walls of tabs and notches are none. Each
    stretch has the treatment stated for it first, those stated most closely coming first.
    """
    if not part.edges:
        return (), ()
    free = kept_runs(outline, made.plain.outer)
    settled: list[SettledEdge] = []
    findings: list[Finding] = []
    for stated in part.edges:
        try:
            if stated.opening is not None:
                found = _rims(stated, stated.opening, made, scope)
            else:
                found, free = _of_outline(stated, free, outline, scope)
        except SettlingError as trouble:
            findings.append(trouble.about(part.name))
        else:
            settled += [found] if found.runs else []
    return tuple(settled), tuple(findings)


def _of_outline(
    stated: TreatedEdge, free: tuple[Edge, ...], outline: Contour, scope: Scope
) -> tuple[SettledEdge, tuple[Edge, ...]]:
    """Return an edge of the outline, or all that are free, and what is left free."""
    if stated.line is None:
        return _settled(stated, free, scope), ()
    frame = edge_frame(stated.line, outline, scope)
    ends = (frame.point(frame.first, 0.0), frame.point(frame.last, 0.0))
    if not parted(tuple(edges(outline)), *ends)[0]:
        raise _no_edge(stated, ends)
    taken, rest = parted(free, *ends)
    return _settled(stated, taken, scope, stated.line.side, ends), rest


def _no_edge(stated: TreatedEdge, ends: tuple[Point, Point]) -> SettlingError:
    side = stated.line.side if stated.line else ""
    if side:
        message = said("no straight edge `{}`", side)
    else:
        message = said("no edge from {} to {}", *(point(*each) for each in ends))
    advice = (
        "Name an edge by two points on it, as the outline is without tabs and notches: "
        "`also: [{from: [0, 0], to: [60, 0], treatment: ease}]`; the rest is `all`."
    )
    return unsettled("no-such-edge", message, stated.place, advice)


def _rims(stated: TreatedEdge, opening: Named, made: SettledPart, scope: Scope) -> SettledEdge:
    """Return the rims of an opening and of its copies. Raises SettlingError."""
    through = [each for each in made.features if _goes_through(each)]
    meant = [each for each in through if begins(each.name, opening.name)]
    if not meant:
        message = f"no window or hole `{opening.name}` that goes through"
        advice = did_you_mean(opening.name, [each.name for each in through])
        raise unsettled("no-such-edge", message, opening.place, advice)
    runs = tuple(run for each in meant for shape in each.shape for run in edges(shape))
    names = tuple(each.name for each in meant)
    return _settled(stated, runs, scope, openings=names)


def _goes_through(feature: SettledFeature) -> bool:
    return feature.kind in (WINDOW, HOLE) and feature.depth is None


def _settled(
    stated: TreatedEdge,
    runs: Sequence[Edge],
    scope: Scope,
    side: str = "",
    ends: tuple[Point, Point] | None = None,
    openings: tuple[str, ...] = (),
) -> SettledEdge:
    asked = stated.treatment
    radius = scope.positive(asked.radius, ROUND_OVER.name) if asked.radius else 0.0
    thickness = scope.positive(asked.thickness, "thickness") if asked.thickness else None
    return SettledEdge(
        kind=asked.kind,
        runs=tuple(runs),
        side=side,
        ends=ends,
        openings=openings,
        radius=radius,
        faces=asked.faces,
        of=asked.of,
        thickness=thickness,
        place=stated.place,
    )
