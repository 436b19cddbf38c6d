"""Where a stated span lies in the settled plan: its supports, stations, members and limit."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from kerfolio.basis.figures import figure
from kerfolio.basis.measures import length
from kerfolio.basis.said import said
from kerfolio.geometry.measure import Box, bounds
from kerfolio.model.span import Span, SpanLoad, Support
from kerfolio.model.statement import Named
from kerfolio.settling.scope import Scope, unknown, unsettled
from kerfolio.settling.settled import SettledBoard, SettledPart, SettledPlan
from kerfolio.shop.beam import Layer
from kerfolio.shop.member import Member, board_member, panel_member
from kerfolio.shop.settled_scope import scope_of_settled

_STEP = 2.0  # mm from station to station
_LEAST_STATIONS = 60
_SLACK = 0.01


@dataclass(frozen=True, slots=True, kw_only=True)
class SpanPlace:
    """A span ready to be reckoned: ``length`` mm, members with a section at each station.

    The first member is the carrier itself, a second one stands on edge under it; it carries the
    first on its ``shoulder``, mm above its lower edge.
    """

    carrier: str
    length: float
    stations: tuple[float, ...]
    members: tuple[Member, ...]
    limit: tuple[float, str]
    shoulder: float = 0.0

    def layers(self, station: int) -> tuple[Layer, ...]:
        """Return the members' sections at a station, the flat one on the shoulder of the other."""
        first, *under = self.members
        return (first.layer(station, self.shoulder), *(each.layer(station) for each in under))


def span_place(span: Span, settled: SettledPlan) -> SpanPlace | None:
    """Return where a span lies, None where a stiffness is not known. Raises SettlingError."""
    scope = scope_of_settled(settled)
    on_edge = span.kind == "rail"
    if span.board is not None:
        board = _board(span, settled)
        ends = _ends(span, scope, Box(0.0, 0.0, board.length, board.stock.width))
        stations = _stations(*ends)
        members = [board_member(board, stations, on_edge=on_edge)]
    else:
        part = _part(span, settled)
        ends = _ends(span, scope, bounds(part.routed))
        stations = _stations(*ends)
        sheet = settled.sheet(part.sheet)
        members = [panel_member(part, sheet, span.axis, stations, on_edge=on_edge)]
    if span.web is not None:
        members.append(_web(span, settled, len(stations)))
    made = tuple(each for each in members if each is not None)
    if len(made) < len(members):
        return None
    for each in made:
        _check_whole(each, span)
    between = abs(ends[1] - ends[0])
    return SpanPlace(
        carrier=made[0].what,
        length=between,
        stations=stations,
        members=made,
        limit=_limit(span, scope, between),
        shoulder=made[1].shoulder if len(made) > 1 else 0.0,
    )


def load_kg(span: Span, length: float) -> float:
    """Return the whole load of a span of ``length`` mm, kg."""
    load: SpanLoad = span.load
    return load.kg * length / 1000 if load.per_metre else load.kg


def _part(span: Span, settled: SettledPlan) -> SettledPart:
    assert span.part is not None, "the form asks for a part or a board"
    return _named_part(span.part, settled)


def _named_part(named: Named, settled: SettledPlan) -> SettledPart:
    found = next((each for each in settled.parts if each.name == named.name), None)
    if found is None:
        raise unknown("part", named, (each.name for each in settled.parts))
    return found


def _board(span: Span, settled: SettledPlan) -> SettledBoard:
    assert span.board is not None, "asked for by the caller"
    found = next((each for each in settled.boards if each.use.name == span.board.name), None)
    if found is None:
        raise unknown("board", span.board, (each.use.name for each in settled.boards))
    return found


def _ends(span: Span, scope: Scope, box: Box) -> tuple[float, float]:
    """Return where the span begins and ends; of an overhang, the held end first."""
    low, high = (box.x0, box.x1) if span.axis == "x" else (box.y0, box.y1)
    if not span.supports:
        return low, high
    edges = {"left": box.x0, "right": box.x1, "bottom": box.y0, "top": box.y1}
    first, last = (_at(each, edges, scope) for each in span.supports)
    for at, support in zip((first, last), span.supports, strict=True):
        if not low - _SLACK <= at <= high + _SLACK:
            message = said("the support at {} is not on the part", length("support", at))
            reach = length("least", low), length("most", high)
            advice = said("Along {} it reaches from {} to {}.", span.axis, *reach)
            raise unsettled("span-outside", message, support.place, advice)
    if abs(first - last) < 1:
        near = f"the supports of `{span.name}` are in one place"
        raise unsettled("span-outside", near, span.place, "A span needs two of them.")
    return (first, last) if span.kind == "overhang" else (min(first, last), max(first, last))


def _at(support: Support, edges: dict[str, float], scope: Scope) -> float:
    return edges[support.edge] if support.at is None else scope.mm(support.at)


def _stations(first: float, last: float) -> tuple[float, ...]:
    """Return the middles of equal steps along a span."""
    count = max(_LEAST_STATIONS, math.ceil(abs(last - first) / _STEP))
    step = (last - first) / count
    return tuple(first + (index + 0.5) * step for index in range(count))


def _web(span: Span, settled: SettledPlan, count: int) -> Member | None:
    """Return the parts on edge under a panel; their whole length lies along the span."""
    assert span.web is not None, "asked for by the caller"
    part = _named_part(span.web.part, settled)
    box = bounds(part.plain)
    step = box.width / count
    stations: Sequence[float] = [box.x0 + (index + 0.5) * step for index in range(count)]
    sheet = settled.sheet(part.sheet)
    return panel_member(part, sheet, "x", stations, on_edge=True, count=span.web.count)


def _check_whole(member: Member, span: Span) -> None:
    """Raise SettlingError where a member has a gap right across."""
    if not all(member.sections):
        message = f"`{member.what}` has a gap right across the span"
        raise unsettled("span-outside", message, span.place, "Choose supports with wood between.")


def _limit(span: Span, scope: Scope, length: float) -> tuple[float, str]:
    limit = span.limit
    if limit.length is not None:
        return scope.positive(limit.length, "limit"), limit.length.text
    share = limit.share or 1.0
    return length / share, f"span/{figure(share)}"
