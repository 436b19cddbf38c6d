"""The page of an SVG drawing: its size, and the map from its numbers to mm with y up."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.finding import Finding, error, note, warning
from kerfolio.basis.said import written
from kerfolio.geometry.affine import Affine, after
from kerfolio.reading.svg_tree import SvgNode
from kerfolio.reading.svg_viewport import (
    MM_PER_PX,
    SvgError,
    ViewBox,
    fitted,
    length,
    view_box,
)

ADVICE = written("mm", "inches", "Set the drawing's width and height in {}.")


@dataclass(frozen=True, slots=True)
class Page:
    """The map from user units to mm with y up, and the size percentages refer to."""

    affine: Affine
    viewport: tuple[float, float]


def read_page(root: SvgNode) -> tuple[Page | None, tuple[Finding, ...]]:
    """Return the page of a drawing, and what had to be assumed; None when its size is broken."""
    try:
        box = view_box(root.get("viewBox"))
        width, height = _side(root, "width"), _side(root, "height")
    except SvgError as problem:
        return None, (error("unreadable-size", str(problem), root.place, ADVICE),)
    if 0 in (width, height) or min(width or 1, height or 1) < 0:
        return None, (error("unreadable-size", "the drawing's size is 0", root.place, ADVICE),)
    return _page(root, box, width, height), _assumed(root, box, width, height)


def _page(root: SvgNode, box: ViewBox | None, width: float | None, height: float | None) -> Page:
    """Return the page; a side that is left out follows from the other and the view box."""
    shown = box or ViewBox(0.0, 0.0, width or height or 100.0, height or width or 100.0)
    ratio = shown.height / shown.width
    if width is None:
        width = height / ratio if height is not None else shown.width
    height = width * ratio if height is None else height
    k = MM_PER_PX
    up = (k, 0.0, 0.0, -k, 0.0, k * height)
    inner = fitted(shown, width, height, root.get("preserveAspectRatio"))
    return Page(after(up, inner), (shown.width, shown.height))


def _side(root: SvgNode, name: str) -> float | None:
    """Return the drawing's width or height in px; None when it is left to the viewer."""
    text = root.get(name)
    if text is None or text == "auto" or text.endswith("%"):
        return None
    return length(text, None)


def _assumed(
    root: SvgNode, box: ViewBox | None, width: float | None, height: float | None
) -> tuple[Finding, ...]:
    """Say what is assumed when the drawing does not state its size in a unit of length."""
    if width is None and (height is None or box is None):
        message = "no size stated: 1 unit is read as 1/96 in"
        return (warning("missing-size", message, root.place, ADVICE),)
    stated = (root.get("width") if width is not None else root.get("height")) or ""
    if stated[-1:].isdigit() or stated.lower().endswith("px"):
        message = f"size `{stated}` is in px: read at 96 per inch"
        return (note("size-in-px", message, root.place, ADVICE),)
    return ()
