"""What must follow the thickness: by closing the loops of joints a little thinner and thicker.

While a sheet grows by 1 mm, each piece may move and each edge that carries tabs or fingers may be
moved, so that shoulders stay on faces and tabs in the middle of their slots; a wedge's slot goes
with the face that the wedge draws on. These are linear equations. Of all that answer them the one
is taken that moves the fewest edges: right and upper ones before left and lower ones, those with
tabs before those with fingers, which make the outer size, and slots only where no edge will do.
Edges that only touch a face follow last.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction

from kerfolio.adopting.edge_key import EdgeKey, edge_key
from kerfolio.adopting.finger_rows import FingerRow
from kerfolio.adopting.meeting import Meet
from kerfolio.adopting.recognised import Notch, Tab
from kerfolio.adopting.sets import PartPlan
from kerfolio.adopting.together import Arrangement
from kerfolio.adopting.touching import Touch, led_edges
from kerfolio.adopting.wedges import Wedge
from kerfolio.geometry.basic_solution import basic_solution
from kerfolio.geometry.contour import Point
from kerfolio.geometry.rigid import Rigid, Vector, cross
from kerfolio.model.feature_kind import NOTCH, TAB

_LEAST = 1e-6
_FINE = 10000


@dataclass(frozen=True, slots=True, kw_only=True)
class Following:
    """How edges and slots of each part move while one sheet grows by 1 mm.

    ``edges`` move outwards, ``slots`` by (x, y), in the part's own frame. ``closes`` tells whether
    all loops close then.
    """

    edges: Mapping[tuple[int, EdgeKey], Fraction] = field(default_factory=dict)
    slots: Mapping[tuple[int, int], tuple[Fraction, Fraction]] = field(default_factory=dict)
    closes: bool = True


def following(
    parts: Sequence[PartPlan],
    arranged: Arrangement,
    wedges: Sequence[Wedge],
    touching: Sequence[Touch],
    sheet: str,
    fixed: frozenset[int] = frozenset(),
) -> Following:
    """Return what follows one sheet; the edges of the parts that are ``fixed`` cannot.

    Edges that are ``touching`` faces go with them, once it is known how pieces move.
    """
    equations = _Equations(parts, arranged, sheet, fixed)
    for meet in arranged.meets:
        equations.add(meet)
    for wedge in wedges:
        equations.add_wedge(wedge)
    found, moves = equations.solved()
    led = led_edges(parts, arranged, touching, moves, sheet)
    return replace(found, edges={**led, **found.edges})


_Unknown = tuple[str, int, tuple[int, ...]]
"""What may move: an opening ``led`` by one thing alone, a ``piece`` along an axis, a ``side`` of a
part with tabs, a ``corner`` (one with fingers), an ``opening`` of a part along an axis."""

_RANKS = ("led", "piece", "side", "corner", "opening")


class _Equations:
    def __init__(
        self,
        parts: Sequence[PartPlan],
        arranged: Arrangement,
        sheet: str,
        fixed: frozenset[int],
    ) -> None:
        self._parts, self._arranged, self._sheet, self._fixed = parts, arranged, sheet, fixed
        self._owner = {piece: i for i, part in enumerate(parts) for piece in part.numbers}
        self._rows: list[tuple[dict[_Unknown, float], float]] = []
        self._root = next(iter(arranged.poses))

    def add(self, meet: Meet) -> None:
        """Add what two features that meet ask for."""
        one, other = self._owner[meet.one], self._owner[meet.other]
        pair = (meet.one, meet.other)
        a, b = self._arranged.poses[meet.one], self._arranged.poses[meet.other]
        mine, theirs = self._parts[one].made, self._parts[other].made
        if meet.kind is TAB:
            tab = mine.tabs[meet.first]
            out, along = a.vector((*tab.out, 0.0)), a.vector((*tab.along, 0.0))
            edge = {**self._edge(one, tab), **self._slot(other, meet.second, b, out, -1.0)}
            self._add(pair, out, edge, -self._half(other))
            for axis in (along, a.z):
                self._add(pair, axis, self._slot(other, meet.second, b, axis, -1.0), 0.0)
        elif meet.kind is NOTCH:
            notch = mine.notches[meet.first]
            for axis in (a.vector((*notch.out, 0.0)), a.z, b.z):
                self._add(pair, axis, {}, 0.0)
        else:
            row, comb = mine.fingers[meet.first], theirs.fingers[meet.second]
            out, back = a.vector((*row.out, 0.0)), b.vector((*comb.out, 0.0))
            self._add(pair, out, self._edge(one, row), self._half(other))
            against = {key: -value for key, value in self._edge(other, comb).items()}
            self._add(pair, back, against, -self._half(one))
            self._add(pair, cross(out, back), {}, 0.0)

    def add_wedge(self, wedge: Wedge) -> None:
        """Add that a wedge's slot goes with the face that the wedge draws on."""
        pose, part = self._arranged.poses[wedge.through], self._owner[wedge.through]
        out = pose.vector((*wedge.out, 0.0))
        slot = self._slot(part, wedge.slot, pose, out, 1.0)
        moves = {("led", each[1], each[2]): factor for each, factor in slot.items()}
        self._add((wedge.through, wedge.holds), out, moves, self._half(self._owner[wedge.holds]))

    def _half(self, part: int) -> float:
        return 0.5 if self._parts[part].sheet == self._sheet else 0.0

    def _edge(self, part: int, feature: Tab | FingerRow | Notch) -> dict[_Unknown, float]:
        if part in self._fixed:
            return {}
        if isinstance(feature, FingerRow):
            return {("corner", part, edge_key(feature.out, feature.middle)): 1.0}
        return {("side", part, edge_key(feature.out, feature.at)): 1.0}

    def _slot(
        self, part: int, slot: int, pose: Rigid, axis: Vector, sign: float
    ) -> dict[_Unknown, float]:
        local = pose.inverse.vector(axis)
        return {
            ("opening", part, (slot, k)): sign * local[k] for k in (0, 1) if abs(local[k]) > _LEAST
        }

    def _add(
        self,
        pair: tuple[int, int],
        axis: Vector,
        moves: Mapping[_Unknown, float],
        wanted: float,
    ) -> None:
        """Add that along an axis the first piece, and what ``moves``, goes as the second does."""
        row = dict(moves)
        for piece, sign in zip(pair, (1.0, -1.0), strict=True):
            if piece != self._root:
                for k in range(3):
                    row[("piece", piece, (k,))] = sign * axis[k]
        self._rows.append((row, wanted))

    def solved(self) -> tuple[Following, dict[int, Vector]]:
        """Return what moves, by the fewest unknowns in order of preference; and the pieces."""
        every = {each for row, _ in self._rows for each in row}
        order = sorted(every, key=_preference)
        place = {each: i for i, each in enumerate(order)}
        rows = [{place[each]: value for each, value in row.items()} for row, _ in self._rows]
        found, closes = basic_solution(rows, [wanted for _, wanted in self._rows], len(order))
        values = dict(zip(order, found, strict=True))
        moves = {
            piece: tuple(values.get(("piece", piece, (k,)), 0.0) for k in range(3))
            for piece in self._arranged.poses
        }
        return _told(values, closes=closes), {n: (x, y, z) for n, (x, y, z) in moves.items()}


def _preference(unknown: _Unknown) -> tuple[object, ...]:
    kind, part, which = unknown
    rank = _RANKS.index(kind)
    if kind in ("side", "corner"):
        x, y, level = which
        return (rank, x + y < 0, part, -x, -y, level)
    return (rank, part, which)


def _told(found: Mapping[_Unknown, float], *, closes: bool) -> Following:
    edges: dict[tuple[int, EdgeKey], Fraction] = {}
    slots: dict[tuple[int, int], list[Fraction]] = {}
    for (kind, part, which), value in found.items():
        near = Fraction(value).limit_denominator(_FINE)
        if kind in ("side", "corner") and near:
            edges[part, (which[0], which[1], which[2])] = near
        elif kind == "led" or (kind == "opening" and near):
            slot, axis = which
            slots.setdefault((part, slot), [Fraction(0), Fraction(0)])[axis] = near
    put = {key: (x, y) for key, (x, y) in slots.items()}
    return Following(edges=edges, slots=put, closes=closes)


def moved_corners(
    outs: Sequence[Point], by: Sequence[Fraction]
) -> Iterator[tuple[Fraction, Fraction]]:
    """Yield how each corner of a polygon moves whose edges move outwards: where edge i ends.

    ``outs`` are the unit vectors out of its edges, in order round it.
    """
    for index, (out, mine) in enumerate(zip(outs, by, strict=True)):
        after = (index + 1) % len(outs)
        det = out[0] * outs[after][1] - out[1] * outs[after][0]
        if abs(det) < _LEAST:
            x, y = out[0] * float(mine), out[1] * float(mine)
        else:
            x = (float(mine) * outs[after][1] - float(by[after]) * out[1]) / det
            y = (float(by[after]) * out[0] - float(mine) * outs[after][0]) / det
        yield Fraction(x).limit_denominator(_FINE), Fraction(y).limit_denominator(_FINE)
