"""Where a stated span lies in the settled plan: its supports, stations, members and limit."""

from __future__ import annotations

import math
from dataclasses import dataclass

from kerfolio.basis.figures import figure
from kerfolio.basis.measures import length
from kerfolio.basis.said import said
from kerfolio.geometry.measure import Box, bounds
from kerfolio.model.span import Span, SpanLoad, Support, Under
from kerfolio.model.statement import Named
from kerfolio.settling.scope import FOLLOWS, Scope, unknown, unsettled
from kerfolio.settling.settled import SettledBoard, SettledPart, SettledPlan
from kerfolio.shop.beam import Layer
from kerfolio.shop.body import body_of
from kerfolio.shop.member import Line, Member, board_member, carrier_member, under_member
from kerfolio.shop.settled_scope import scope_of_settled

_STEP = 2.0  # mm from station to station
_LEAST_STATIONS = 60
_SLACK = 0.01


@dataclass(frozen=True, slots=True, kw_only=True)
class SpanPlace:
    """A span ready to be reckoned: ``length`` mm, members with a section at each station.

    The first member is the carrier itself; those that follow lie under it, from the top down, each
    on the shoulder of the next. ``glued`` tells of each of them whether it is stated to hold to
    what is over it. ``ends`` are the places of its supports along the carrier; of an overhang the
    held one comes first.
    """

    carrier: str
    length: float
    ends: tuple[float, float]
    stations: tuple[float, ...]
    members: tuple[Member, ...]
    limit: tuple[float, str]
    glued: tuple[bool, ...] = ()

    def layers(self, station: int) -> tuple[Layer, ...]:
        """Return the members' sections at a station, each on the shoulder of the next."""
        made, base = [], 0.0
        for each in reversed(self.members):
            made.append(each.layer(station, base))
            base += each.height
        return tuple(reversed(made))


def span_place(span: Span, settled: SettledPlan) -> SpanPlace | None:
    """Return where a span lies, None where a stiffness is not known. Raises SettlingError."""
    scope = scope_of_settled(settled)
    if span.board is not None:
        board = _board(span, settled)
        line = _line(_ends(span, scope, Box(0.0, 0.0, board.length, board.stock.width)))
        members = [board_member(board, settled, span, line.stations)]
    else:
        part = _part(span, settled)
        box = body_of(part) if span.kind == "leg" else bounds(part.routed)
        line = _line(_ends(span, scope, box))
        members = [carrier_member(part, settled, span, line)]
    members += [_under(each, span, settled, line) for each in span.under]
    made = tuple(each for each in members if each is not None)
    if len(made) < len(members):
        return None
    for each in made:
        _check_whole(each, span)
    between = abs(line.ends[1] - line.ends[0])
    return SpanPlace(
        carrier=made[0].what,
        length=between,
        ends=line.ends,
        stations=line.stations,
        members=made,
        limit=_limit(span, scope, between),
        glued=tuple(each.joined == "glued" for each in span.under),
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
    if found is None and named.name in settled.plan.unread:
        raise unsettled(FOLLOWS, f"`{named.name}` is told of where it stands", named.place)
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


def _line(ends: tuple[float, float]) -> Line:
    """Return where a span runs."""
    first, last = ends
    count = max(_LEAST_STATIONS, 2 * math.ceil(abs(last - first) / _STEP / 2))
    step = (last - first) / count
    stations = tuple(first + (index + 0.5) * step for index in range(count))
    return Line(ends=ends, stations=stations)


def _under(under: Under, span: Span, settled: SettledPlan, line: Line) -> Member | None:
    part = _named_part(under.part, settled)
    return under_member(part, settled, span, line, lies=under.lies, count=under.count)


def _check_whole(member: Member, span: Span) -> None:
    """Raise SettlingError where a member has a gap right across, between its ends."""
    solid = [index for index, strips in enumerate(member.sections) if strips]
    reach = len(member.sections) if member.what == (span.part or span.board or span).name else 0
    if len(solid) < max(reach, 1) or solid[-1] - solid[0] + 1 > len(solid):
        message = f"`{member.what}` has a gap right across the span"
        raise unsettled("span-outside", message, span.place, "Choose supports with wood between.")


def _limit(span: Span, scope: Scope, length: float) -> tuple[float, str]:
    limit = span.limit
    if limit.length is not None:
        return scope.positive(limit.length, "limit"), limit.length.text
    share = limit.share or 1.0
    return length / share, f"span/{figure(share)}"
