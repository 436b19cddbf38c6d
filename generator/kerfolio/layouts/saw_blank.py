"""The rectangular blank a part is cut from on the saw, before it is shaped."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.geometry.contour import Contour
from kerfolio.geometry.measure import Box, bounds
from kerfolio.settling.settled import SettledPart

_ON = 0.01
_STRAIGHT = 0.25
"""Share of a side along which an edge must run straight for the saw to finish it."""

Sides = tuple[float, float, float, float]
"""left, bottom, right, top in mm."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Blank:
    """A part's blank lying turned by ``turn`` degrees: its size, and what is trimmed off it later.

    ``grown`` is the allowance on each side, 0 where the saw cuts the finished edge. ``corner`` is
    where the blank's lower left corner lies in the turned part's frame. All in mm.
    """

    turn: float
    size: tuple[float, float]
    grown: Sides
    corner: tuple[float, float]


def blank_of(
    part: SettledPart, turn: float, allowance: float, room: tuple[float, float]
) -> Blank | None:
    """Return the blank of a part turned by 0 or 90 degrees; None where ``room`` cannot hold it.

    Where the part fits but its allowances do not, they are as large as the room lets them be.
    """
    box = bounds(part.plain.outer)
    left, bottom, right, top = _grown(part.plain.outer, box, allowance)
    x, y, width, height = box.x0, box.y0, box.width, box.height
    if turn == 90.0:
        left, bottom, right, top = top, left, bottom, right
        x, y, width, height = -box.y1, box.x0, box.height, box.width
    if width > room[0] + _ON or height > room[1] + _ON:
        return None
    left, right = _squeezed(left, right, room[0] - width)
    bottom, top = _squeezed(bottom, top, room[1] - height)
    return Blank(
        turn=turn,
        size=(width + left + right, height + bottom + top),
        grown=(left, bottom, right, top),
        corner=(x - left, y - bottom),
    )


def _grown(outline: Contour, box: Box, allowance: float) -> Sides:
    vertical, level = _STRAIGHT * box.height, _STRAIGHT * box.width
    straight = _straight(outline, box)
    least = (vertical, level, vertical, level)
    left, bottom, right, top = (
        0.0 if run >= need else allowance for run, need in zip(straight, least, strict=True)
    )
    return left, bottom, right, top


def _straight(outline: Contour, box: Box) -> Sides:
    """Return the length of straight outline along each side of the box."""
    runs = [0.0, 0.0, 0.0, 0.0]
    ends = outline.vertices
    for (x0, y0, bulge), (x1, y1, _) in zip(ends, (*ends[1:], ends[0]), strict=True):
        if bulge:
            continue
        for side, (a, b, at, run) in enumerate(
            (
                (x0, x1, box.x0, y1 - y0),
                (y0, y1, box.y0, x1 - x0),
                (x0, x1, box.x1, y1 - y0),
                (y0, y1, box.y1, x1 - x0),
            )
        ):
            if abs(a - at) < _ON and abs(b - at) < _ON:
                runs[side] += abs(run)
    return runs[0], runs[1], runs[2], runs[3]


def _squeezed(one: float, other: float, room: float) -> tuple[float, float]:
    if one + other <= room:
        return one, other
    share = max(0.0, room) / (one + other)
    return one * share, other * share
