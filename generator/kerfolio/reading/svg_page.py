"""The page of an SVG drawing: its size, and the map from its numbers to mm with y up."""

from __future__ import annotations

from dataclasses import dataclass
from string import ascii_letters

from kerfolio.basis.finding import Finding, error, note, warning
from kerfolio.basis.measures import length as told_length
from kerfolio.basis.said import ByUnit, said
from kerfolio.geometry.affine import Affine, after
from kerfolio.model.statement import Named
from kerfolio.reading.drawn_said import MM_PER_UNIT, overruled
from kerfolio.reading.svg_tree import SvgNode
from kerfolio.reading.svg_viewport import (
    MM_PER_PX,
    SvgError,
    ViewBox,
    fitted,
    length,
    view_box,
)

ADVICE = said("Set the drawing's width and height in {}.", ByUnit("mm", "inches"))
_OR_UNIT = said(
    "Set the drawing's width and height in {}, or write {} in the part's `drawing`.",
    ByUnit("mm", "inches"),
    ByUnit("`unit: mm`", "`unit: in`"),
)
_LETTERS = " %" + ascii_letters


@dataclass(frozen=True, slots=True)
class Page:
    """The map from user units to mm with y up, and the size percentages refer to."""

    affine: Affine
    viewport: tuple[float, float]


def read_page(root: SvgNode, unit: Named | None = None) -> tuple[Page | None, tuple[Finding, ...]]:
    """Return the page of a drawing, and what had to be assumed; None when its size is broken.

    ``unit`` is what the plan says that the numbers of its width and height are in.
    """
    try:
        box = view_box(root.get("viewBox"))
        width, height = (_side(root.get(name), unit) for name in ("width", "height"))
    except SvgError as problem:
        return None, (error("unreadable-size", str(problem), root.place, ADVICE),)
    if 0 in (width, height) or min(width or 1, height or 1) < 0:
        return None, (error("unreadable-size", "the drawing's size is 0", root.place, ADVICE),)
    page = _page(root, box, (width, height), MM_PER_UNIT[unit.name] if unit else MM_PER_PX)
    return page, _overruled(root, unit) if unit else _assumed(root, box, width, height)


def _page(
    root: SvgNode, box: ViewBox | None, size: tuple[float | None, float | None], mm: float
) -> Page:
    """Return the page, ``mm`` the length of what its width and height count.

    A side that is left out follows from the other and the view box.
    """
    width, height = size
    shown = box or ViewBox(0.0, 0.0, width or height or 100.0, height or width or 100.0)
    ratio = shown.height / shown.width
    if width is None:
        width = height / ratio if height is not None else shown.width
    height = width * ratio if height is None else height
    up = (mm, 0.0, 0.0, -mm, 0.0, mm * height)
    inner = fitted(shown, width, height, root.get("preserveAspectRatio"))
    return Page(after(up, inner), (shown.width, shown.height))


def _side(text: str | None, unit: Named | None) -> float | None:
    """Return a drawing's width or height in px, or its bare number where the plan says the unit.

    None when it is left to the viewer.
    """
    if text is None or text == "auto" or text.endswith("%"):
        return None
    return length(text.rstrip(_LETTERS) if unit else text, None)


def _unit_of(text: str) -> str:
    """Return the unit of a stated length: empty for a bare number."""
    return text[len(text.rstrip(_LETTERS)) :].strip().lower()


def _overruled(root: SvgNode, unit: Named) -> tuple[Finding, ...]:
    """Say where the drawing states another unit than the plan."""
    sides = (root.get("width") or "", root.get("height") or "")
    own = [each for each in map(_unit_of, sides) if each not in ("", "px", "%", unit.name)]
    return (overruled(own[0], unit),) if own else ()


def _assumed(
    root: SvgNode, box: ViewBox | None, width: float | None, height: float | None
) -> tuple[Finding, ...]:
    """Say what is assumed when the drawing does not state its size in a unit of length."""
    if width is None and (height is None or box is None):
        message = "no size stated: 1 unit is read as 1/96 in"
        return (warning("missing-size", message, root.place, _OR_UNIT),)
    which, px = ("width", width) if width is not None else ("height", height)
    stated = root.get(which) or ""
    if px is not None and _unit_of(stated) in ("", "px"):
        how = "in px" if _unit_of(stated) else "without a unit"
        comes = told_length(which, px * MM_PER_PX)
        words = said("{} `{}` is {}: read at 96 to the inch, {}", which, stated, how, comes)
        return (note("size-in-px", words, root.place, _OR_UNIT),)
    return ()
