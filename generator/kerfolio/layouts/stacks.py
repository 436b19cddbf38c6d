"""The sheets there are of one material: bought in one or more sizes, or offcuts at hand."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from kerfolio.layouts.engine import Box, Stack
from kerfolio.layouts.verify import TOLERANCE
from kerfolio.settling.settled import SettledClamp, SettledSheet, SheetSize

_SQUARE_METRE = 1e6


def stacks_of(sheet: SettledSheet) -> tuple[Stack, ...]:
    """Return the sheets to lay pieces on: the size stated first, other sizes, offcuts.

    A sheet bought is worth its area in square metres, an offcut nothing.
    """
    bought = dict.fromkeys((sheet.size, *sheet.also))
    return (
        *(
            Stack(size=size, worth=size[0] * size[1] / _SQUARE_METRE, barred=zones(sheet, size))
            for size in bought
        ),
        *(
            Stack(size=each.size, count=each.count, worth=0.0, barred=zones(sheet, each.size))
            for each in sheet.offcuts
        ),
    )


def stacks_in_turn(stacks: Sequence[Stack], sizes: Iterable[SheetSize]) -> tuple[int, ...]:
    """Return the stack that each sheet comes from, offcuts at hand before sheets to buy."""
    taken: list[int] = []
    free = sorted(range(len(stacks)), key=lambda number: stacks[number].worth)
    for size in sizes:
        same = [number for number in free if alike(stacks[number].size, size)]
        counts = {n: stacks[n].count for n in same}
        left = (n for n, count in counts.items() if count is None or taken.count(n) < count)
        taken.append(next(left, same[-1]))
    return tuple(taken)


def alike(one: SheetSize, other: SheetSize) -> bool:
    """Tell whether two sheets have the same size, as closely as layouts are proved."""
    return all(abs(a - b) <= TOLERANCE for a, b in zip(one, other, strict=True))


def zones(sheet: SettledSheet, size: tuple[float, float]) -> tuple[Box, ...]:
    """Return the zones kept clear on a sheet of a size, as far as they lie on it, mm."""
    boxes = (_zone(clamp, size) for clamp in sheet.clamps)
    return tuple(box for box in boxes if box[0] < box[2] and box[1] < box[3])


def _zone(clamp: SettledClamp, size: tuple[float, float]) -> Box:
    width, height = size
    level = clamp.edge in ("top", "bottom")
    low, high = clamp.at - clamp.width / 2, clamp.at + clamp.width / 2
    low, high = max(low, 0.0), min(high, width if level else height)
    if clamp.edge == "left":
        return 0.0, low, min(clamp.depth, width), high
    if clamp.edge == "right":
        return max(width - clamp.depth, 0.0), low, width, high
    if clamp.edge == "bottom":
        return low, 0.0, high, min(clamp.depth, height)
    return low, max(height - clamp.depth, 0.0), high, height
