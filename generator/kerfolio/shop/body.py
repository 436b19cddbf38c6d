"""A part without the tabs that stand out of it: what bends, and the tabs that hold its ends."""

from __future__ import annotations

from kerfolio.geometry.boolean import difference
from kerfolio.geometry.measure import Box, bounds
from kerfolio.geometry.shape_error import ShapeError
from kerfolio.model.feature_kind import TAB
from kerfolio.settling.settled import SettledFeature, SettledPart

_SLACK = 0.05
"""Roots within this of the body's end, mm, stand on it."""


def body_of(part: SettledPart) -> Box:
    """Return the box of a part with its tabs taken off: shoulder to shoulder, mm."""
    tabs = [contour for each in part.features if each.kind is TAB for contour in each.shape]
    try:
        return bounds(difference(part.plain, tabs)) if tabs else bounds(part.plain)
    except ShapeError:
        return bounds(part.plain)


def end_tabs(
    part: SettledPart, axis: str
) -> tuple[tuple[SettledFeature, ...], tuple[SettledFeature, ...]]:
    """Return the tabs that stand out of both ends of a part's body, along its ``axis``."""
    body, index = body_of(part), "xy".index(axis)
    low, high = (body.x0, body.x1) if axis == "x" else (body.y0, body.y1)
    tabs = [each for each in part.features if each.kind is TAB]
    return (
        tuple(each for each in tabs if _stands(each, index, low, -1)),
        tuple(each for each in tabs if _stands(each, index, high, 1)),
    )


def _stands(tab: SettledFeature, index: int, end: float, way: int) -> bool:
    return tab.direction[index] * way > 1 - _SLACK and abs(tab.at[index] - end) < _SLACK
