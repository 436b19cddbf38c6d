"""Stated outlines made into contours in mm."""

from __future__ import annotations

import re
from typing import assert_never

from kerfolio.basis.measures import length, point
from kerfolio.basis.place import Place
from kerfolio.basis.said import said
from kerfolio.geometry.affine import scaling
from kerfolio.geometry.boolean import union
from kerfolio.geometry.checks import CROSSING, OPEN, ZERO_AREA, faults
from kerfolio.geometry.contour import Contour, Point, Region
from kerfolio.geometry.path_text import contours
from kerfolio.geometry.shape_error import ShapeError
from kerfolio.geometry.shapes import (
    CornerPoint,
    circle,
    ellipse,
    mirrored_half,
    polygon,
    rectangle,
    rounded_slot,
)
from kerfolio.geometry.transform import mirrored_x, mirrored_y
from kerfolio.model.outline import (
    Circle,
    Ellipse,
    Mirror,
    Outline,
    PathText,
    Polygon,
    Rectangle,
    RoundedSlot,
)
from kerfolio.model.statement import Amount
from kerfolio.settling.scope import Scope, misshapen, unsettled
from kerfolio.settling.sketched import sketched

_BRACES = re.compile(r"\{([^{}]*)\}")


def outline_contour(outline: Outline, scope: Scope, what: str, *, centred: bool) -> Contour:
    """Return a closed contour: its lower left corner at 0,0 or, ``centred``, its middle there.

    Polygons and paths stand where they are stated. Raises SettlingError.
    """
    try:
        made = _made(outline, scope, what, centred)
    except ShapeError as fault:
        raise misshapen(what, fault, outline.place) from fault
    check_contour(made, what, outline.place)
    return made


def check_contour(contour: Contour, what: str, place: Place, *, drawn: bool = False) -> None:
    """Raise SettlingError when a contour is open, crosses itself or encloses nothing.

    ``drawn`` tells that it comes from a drawing, which has no Z to write.
    """
    for fault in faults(contour):
        at = point(*fault.at)
        shown = sketched("", contour, (), spots=(fault.at,))
        if fault.kind == CROSSING:
            advice = "Put the corners in order round the shape, so that no side crosses another."
            message = said("{} crosses itself at {}", what, at)
            raise unsettled("self-crossing", message, place, advice, sketch=shown)
        if fault.kind == ZERO_AREA:
            advice = "Give it three corners that are not on one line."
            told = f"{what} encloses no area"
            raise unsettled("zero-area", told, place, advice, sketch=shown)
        if fault.kind == OPEN:
            message = said("{} is open at {}", what, at)
            apart = said(
                "Join its ends in the drawing: they are {} apart.", length("gap", fault.size)
            )
            cure = apart if drawn else "Close it with Z."
            raise unsettled("open-path", message, place, cure, sketch=shown)


def _made(outline: Outline, scope: Scope, what: str, centred: bool) -> Contour:
    match outline:
        case Rectangle():
            width, height = _both(outline.width, outline.height, scope)
            left, bottom = (-width / 2, -height / 2) if centred else (0.0, 0.0)
            radius = scope.not_negative(outline.round, "round") if outline.round else 0.0
            return rectangle(left, bottom, left + width, bottom + height, radius)
        case Polygon():
            return _polygon(outline, scope, what)
        case Circle():
            diameter = scope.positive(outline.diameter, "diameter")
            return circle(_middle(diameter, diameter, centred), diameter)
        case Ellipse():
            width, height = _both(outline.width, outline.height, scope)
            return ellipse(_middle(width, height, centred), width, height)
        case RoundedSlot():
            length, width = _both(outline.length, outline.width, scope)
            return rounded_slot(_middle(length, width, centred), length, width)
        case PathText():
            return _path(outline, scope, what)
        case _:
            assert_never(outline)


def _both(one: Amount, other: Amount, scope: Scope) -> tuple[float, float]:
    return scope.positive(one, "width"), scope.positive(other, "height")


def _middle(width: float, height: float, centred: bool) -> Point:
    return (0.0, 0.0) if centred else (width / 2, height / 2)


def _polygon(outline: Polygon, scope: Scope, what: str) -> Contour:
    corners: tuple[CornerPoint, ...] = tuple(
        (*scope.point(each.at), scope.not_negative(each.round, "round") if each.round else 0.0)
        for each in outline.corners
    )
    if outline.mirror:
        x, y = _line(outline.mirror, scope)
        corners = mirrored_half(corners, x=x, y=y)
    # Corners in a wrong order are told before roundings, which then fit nowhere.
    check_contour(Contour(tuple((x, y, 0.0) for x, y, _ in corners)), what, outline.place)
    return polygon(corners)


def _line(mirror: Mirror, scope: Scope) -> tuple[float | None, float | None]:
    x = scope.mm(mirror.x) if mirror.x else None
    return x, None if mirror.y is None else scope.mm(mirror.y)


def _path(outline: PathText, scope: Scope, what: str) -> Contour:
    def worked(match: re.Match[str]) -> str:
        return repr(scope.value(Amount(match[1], outline.place)))

    # Mapped before they become chords, curves keep to the tolerance in any unit.
    in_mm = scaling(scope.mm_per_unit, scope.mm_per_unit)
    found = contours(_BRACES.sub(worked, outline.text), in_mm)
    if len(found) != 1:
        message = f"{what} has {len(found)} lines, it needs one"
        raise unsettled("path-count", message, outline.place, "Draw one closed line, ending in Z.")
    (made,) = found
    check_contour(made, what, outline.place)
    if not outline.mirror:
        return made
    return union(Region(made), [mirrored(made, outline.mirror, scope)]).outer


def mirrored(contour: Contour, mirror: Mirror, scope: Scope) -> Contour:
    """Return a contour mirrored at a stated line. Raises SettlingError."""
    x, y = _line(mirror, scope)
    if x is not None:
        return mirrored_x(contour, x)
    assert y is not None, "a mirror states x or y"
    return mirrored_y(contour, y)
