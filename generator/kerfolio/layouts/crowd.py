"""Pieces crowded into too few sheets, parted step by step: a guided local search.

All pieces lie in the sheets, some of them in each other. Again and again a piece that overlaps is
taken up and laid where it overlaps least, over all sheets, turns and places of a lattice at once.
Pairs that keep overlapping weigh more and more, which leads out of dead ends (guided local search
for nesting: Egeblad, Nielsen and Odgaard, "Fast neighborhood search for two- and three-dimensional
nesting problems", 2007). What nearly lies free is eased apart exactly.
"""

from __future__ import annotations

import math
import random
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from kerfolio.geometry.slabs import Numbers
from kerfolio.layouts.easing import eased
from kerfolio.layouts.filling import Found
from kerfolio.layouts.lattice import Depths, Lattice, Overlap
from kerfolio.layouts.pose import Kind, Pose
from kerfolio.layouts.room import Room

_STALL = 12
_DEAD = 8
_SLACKS = (1.0, 0.75, 0.5)
"""Overlaps let pass on the lattice, in steps, in turn: easing may part them."""


@dataclass(slots=True)
class _Lying:
    kind: int
    sheet: int
    pose: Pose
    row: int
    column: int


class Crowd:
    """The search; ``sheets`` are the rooms to fill, ``starts`` every piece with a sheet of them."""

    def __init__(
        self,
        kinds: Sequence[Kind],
        sheets: Sequence[Room],
        starts: Sequence[tuple[int, Found]],
        lattice: Lattice,
        chance: random.Random,
    ) -> None:
        self.kinds, self.sheets, self.lattice, self.chance = kinds, tuple(sheets), lattice, chance
        self.zones = tuple(_zone(room) for room in self.sheets)
        self.work = 0
        self._level = 0
        self.pieces = [_Lying(found.kind, sheet, found.pose, 0, 0) for sheet, found in starts]
        for piece, (_, found) in zip(self.pieces, starts, strict=True):
            self._lay(piece, found.x, found.y)
        # The last row and column stand for the barred zones of the piece's sheet.
        count = len(self.pieces) + 1
        self.weights = np.ones((count, count))
        self.depths = np.zeros((count, count))
        self._measure()

    def parted(self, moves: int) -> list[list[Found]] | None:
        """Return places for each sheet, free of overlaps, or None when the moves are used up."""
        best, since, end = np.inf, 0, self.work + moves
        while self.work < end:
            self._loosen(end)
            made, total = self._ease()
            if made is not None:
                return made
            best, since = (total, 0) if total < best - 0.01 else (best, since + 1)
            if since > _DEAD:
                self._shake()
                best, since = np.inf, 0
        return None

    def _slack(self) -> float:
        return _SLACKS[self._level % len(_SLACKS)] * self.lattice.step

    def _lay(self, piece: _Lying, x: float, y: float) -> None:
        rows, columns = self._ends(piece.sheet, piece.pose)
        piece.row = min(max(round(y / self.lattice.step), 0), rows - 1)
        piece.column = min(max(round(x / self.lattice.step), 0), columns - 1)

    def _ends(self, sheet: int, pose: Pose) -> tuple[int, int]:
        """Return how many rows and columns of places a pose has on a sheet, at least 1."""
        room, step = self.sheets[sheet], self.lattice.step
        rows = int((room.height - pose.height) / step + 1e-6) + 1
        columns = int((room.width - pose.width) / step + 1e-6) + 1
        return max(rows, 1), max(columns, 1)

    def _measure(self) -> None:
        for index in range(len(self.pieces)):
            self._measure_one(index)

    def _measure_one(self, index: int) -> None:
        piece, slack = self.pieces[index], self._slack()
        for number, other in enumerate(self.pieces):
            if number == index:
                continue
            depth = 0.0
            if other.sheet == piece.sheet:
                overlap = self.lattice.overlap(other.pose, piece.pose, slack)
                depth = overlap.at(piece.row - other.row, piece.column - other.column)
            self.depths[index, number] = self.depths[number, index] = depth
        zone = self.zones[piece.sheet]
        if zone is not None:
            depth = self.lattice.overlap(zone, piece.pose, slack).at(piece.row, piece.column)
            self.depths[index, -1] = depth
        else:
            self.depths[index, -1] = 0.0
        self.work += 10 + len(self.pieces)

    def _loosen(self, end: int) -> None:
        """Move overlapping pieces in rounds until none is left or no round gains any more."""
        best, stall = np.inf, 0
        while stall < _STALL and self.work < end:
            crowded = [int(each) for each in np.flatnonzero(self.depths[:-1].sum(axis=1) > 0)]
            if not crowded:
                return
            self.chance.shuffle(crowded)
            for index in crowded:
                if self.depths[index].sum() > 0:
                    self._move(index)
            deepest, total = self.depths.max(), float(self.depths[:-1].sum())
            share = np.where(self.depths > 0, 0.2 + 0.8 * self.depths / max(deepest, 1e-9), 0.0)
            worn = np.maximum(1.0, self.weights * 0.95)
            self.weights = np.where(self.depths > 0, self.weights + share, worn)
            best, stall = (total, 0) if total < best - 1e-6 else (best, stall + 1)

    def _move(self, index: int) -> None:
        """Lay a piece where it overlaps least by weight, if that is better than where it lies."""
        piece = self.pieces[index]
        least = float((self.weights[index] * self.depths[index]).sum()) - 1e-6
        best: tuple[int, Pose, int, int] | None = None
        for sheet, room in enumerate(self.sheets):
            for pose in self.kinds[piece.kind].poses:
                if not pose.fits(room):
                    continue
                field = self._field(index, sheet, pose)
                lowest = field.min()
                if lowest < least:
                    cells = np.flatnonzero(field.ravel() <= lowest + np.float32(1e-6))
                    cell = int(cells[self.chance.randrange(len(cells))])
                    row, column = divmod(cell, field.shape[1])
                    least, best = float(lowest), (sheet, pose, row, column)
        if best is not None:
            piece.sheet, piece.pose, piece.row, piece.column = best
            self._measure_one(index)

    def _field(self, index: int, sheet: int, pose: Pose) -> Depths:
        """Return the weighted overlap of a piece in a pose at every place of a sheet."""
        slack, weights = self._slack(), self.weights[index]
        field = np.zeros(self._ends(sheet, pose), dtype=np.float32)
        zone = self.zones[sheet]
        if zone is not None:
            _add(field, self.lattice.overlap(zone, pose, slack), 0, 0, weights[-1])
        for number, other in enumerate(self.pieces):
            if other.sheet == sheet and number != index:
                overlap = self.lattice.overlap(other.pose, pose, slack)
                _add(field, overlap, other.row, other.column, weights[number])
                self.work += 30 + overlap.depths.size // 1000
        self.work += 20 + field.size // 500
        return field

    def _ease(self) -> tuple[list[list[Found]] | None, float]:
        """Part the pieces of every sheet exactly; None and the sum missing where that fails."""
        made, total = [], 0.0
        pressed: list[tuple[int, int, float]] = []
        for sheet, room in enumerate(self.sheets):
            members = [i for i, piece in enumerate(self.pieces) if piece.sheet == sheet]
            poses = [self.pieces[i].pose for i in members]
            cells = [[self.pieces[i].column, self.pieces[i].row] for i in members]
            places = np.array(cells, dtype=np.float64).reshape(-1, 2) * self.lattice.step
            result = eased(poses, places, room, self.lattice.step)
            self.work += result.work
            made.append(self._found(members, result.places))
            for index, (x, y) in zip(members, result.places.tolist(), strict=True):
                self._lay(self.pieces[index], x, y)
            numbers = [*members, -1]
            pressed += [(numbers[a], numbers[b], amount) for a, b, amount in result.missing]
        if not pressed:
            return made, 0.0
        total = math.fsum(amount for *_, amount in pressed)
        self._press(pressed)
        return None, total

    def _found(self, members: Sequence[int], places: Numbers) -> list[Found]:
        return [
            Found(kind=self.pieces[i].kind, pose=self.pieces[i].pose, x=x, y=y)
            for i, (x, y) in zip(members, places.tolist(), strict=True)
        ]

    def _press(self, pressed: Sequence[tuple[int, int, float]]) -> None:
        """Give weight to the pairs that easing could not part, and let them overlap less."""
        heaviest = float(self.weights.max())
        for one, other, _ in pressed:
            self.weights[one, other] += heaviest
            self.weights[other, one] = self.weights[one, other]
        self._level += 1
        self._measure()
        if not (self.depths[:-1] > 0).any():
            one, other, amount = max(pressed, key=lambda each: each[2])
            self.depths[one, other] = self.depths[other, one] = amount + 1.0
            self._move(one if other < 0 or self.chance.random() < 0.5 else other)

    def _shake(self) -> None:
        """Throw some pieces anywhere and forget the weights."""
        count = min(max(2, len(self.pieces) // 10), len(self.pieces))
        for piece in self.chance.sample(self.pieces, count):
            poses = [
                (sheet, pose)
                for sheet, room in enumerate(self.sheets)
                for pose in self.kinds[piece.kind].poses
                if pose.fits(room)
            ]
            piece.sheet, piece.pose = poses[self.chance.randrange(len(poses))]
            rows, columns = self._ends(piece.sheet, piece.pose)
            piece.row, piece.column = self.chance.randrange(rows), self.chance.randrange(columns)
        self.weights = np.ones_like(self.weights)
        self._measure()


def _zone(room: Room) -> Pose | None:
    """Return the barred zones of a room as a shape that lies at its 0,0."""
    table = room.barred.table
    if not table.shape[1]:
        return None
    width, height = float(table[4:].max()), float(table[1].max())
    return Pose(turn=0.0, slabs=room.barred, width=width, height=height, corner=(0.0, 0.0))


def _add(field: Depths, overlap: Overlap, row: int, column: int, weight: float) -> None:
    """Add depths times a weight to a field, the first corner of the offset at (row, column)."""
    depths = overlap.depths
    top, left = row + overlap.row, column + overlap.column
    low, high = max(top, 0), min(top + depths.shape[0], field.shape[0])
    first, last = max(left, 0), min(left + depths.shape[1], field.shape[1])
    if low < high and first < last:
        part = depths[low - top : high - top, first - left : last - left]
        field[low:high, first:last] += part if weight == 1.0 else np.float32(weight) * part
