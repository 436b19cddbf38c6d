"""SVG lengths, viewports and transforms: how a drawing's numbers become millimetres."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass

from kerfolio.geometry.affine import IDENTITY, Affine, after, rotation, scaling, translation

PX_PER_UNIT = {
    "": 1.0,
    "px": 1.0,
    "in": 96.0,
    "cm": 96 / 2.54,
    "mm": 96 / 25.4,
    "q": 96 / 101.6,
    "pt": 96 / 72,
    "pc": 16.0,
}
"""Absolute lengths in px (CSS Values and Units, section 6.2: 96 px are 1 in)."""
MM_PER_PX = 25.4 / 96

_NUMBER = r"[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?"
_LENGTH = re.compile(rf"({_NUMBER})\s*([a-zA-Z]*|%)")
_FUNCTION = re.compile(r"([a-zA-Z]+)\s*\(([^()]*)\)[\s,]*")
_ARGUMENT = re.compile(rf"({_NUMBER})\s*(px|deg|)")


class SvgError(ValueError):
    """A value in the markup that cannot be read; the message quotes it."""


def length(text: str, whole: float | None) -> float:
    """Return a length in user units (px); ``whole`` is what 100 % is.

    Raises SvgError for anything but a number with a known absolute unit or a percentage.
    """
    found = _LENGTH.fullmatch(text.strip())
    if not found:
        raise SvgError(f"`{text}` is not a length")
    number, unit = float(found[1]), found[2].lower()
    if unit == "%" and whole is not None:
        value = number / 100 * whole
    elif unit in PX_PER_UNIT:
        value = number * PX_PER_UNIT[unit]
    else:
        raise SvgError(f"`{text}`: unit `{found[2]}` is not read here")
    if not math.isfinite(value):
        raise SvgError(f"`{text}` is too large")
    return value


def numbers(text: str) -> list[float]:
    """Return a list of numbers parted by blanks or commas; raises SvgError for anything else."""
    found = re.findall(_NUMBER, text)
    if re.sub(rf"{_NUMBER}|[\s,]", "", text):
        raise SvgError(f"`{text[:24]}` is not a list of numbers")
    values = [float(each) for each in found]
    if not all(map(math.isfinite, values)):
        raise SvgError(f"`{text[:24]}` holds too large a number")
    return values


@dataclass(frozen=True, slots=True)
class ViewBox:
    """The part of user space shown: corner and size in user units."""

    x: float
    y: float
    width: float
    height: float


def view_box(text: str | None) -> ViewBox | None:
    """Return a ``viewBox``, None when there is none; raises SvgError for a broken one."""
    if text is None:
        return None
    values = numbers(text)
    if len(values) != 4 or values[2] <= 0 or values[3] <= 0:
        raise SvgError(f"viewBox `{text}` needs x, y, width and height above 0")
    return ViewBox(*values)


_ALIGN = re.compile(r"x(Min|Mid|Max)Y(Min|Mid|Max)")
_SHARE = {"Min": 0.0, "Mid": 0.5, "Max": 1.0}


def fitted(box: ViewBox, width: float, height: float, ratio: str | None) -> Affine:
    """Return the map from a view box to a viewport at 0,0 (SVG 2, section 8.2).

    ``ratio`` is the value of ``preserveAspectRatio``; one that is missing or wrong counts as
    ``xMidYMid meet``.
    """
    sx, sy = width / box.width, height / box.height
    words = (ratio or "").replace("defer", "").split() or ["xMidYMid"]
    align = _ALIGN.fullmatch(words[0]) or _ALIGN.fullmatch("xMidYMid")
    assert align is not None
    if words[0] != "none":
        sx = sy = max(sx, sy) if words[1:] == ["slice"] else min(sx, sy)
    x, y = -box.x * sx, -box.y * sy
    if words[0] != "none":
        x += (width - box.width * sx) * _SHARE[align[1]]
        y += (height - box.height * sy) * _SHARE[align[2]]
    return (sx, 0.0, 0.0, sy, x, y)


def transform(text: str) -> Affine:
    """Return a ``transform``: its functions, the first outermost; raises SvgError when broken."""
    result, position = IDENTITY, 0
    text = text.strip()
    if text.lower() in ("", "none"):
        return IDENTITY
    while position < len(text):
        found = _FUNCTION.match(text, position)
        if not found:
            raise SvgError(f"transform breaks off at `{text[position : position + 16]}`")
        result = after(result, _function(found[1], found[2], found[0].strip(" ,")))
        position = found.end()
    return result


def _function(name: str, arguments: str, quoted: str) -> Affine:
    values = [float(each[1]) for each in _ARGUMENT.finditer(arguments)]
    if _ARGUMENT.sub("", arguments).strip(" \t\r\n,") or not all(map(math.isfinite, values)):
        raise SvgError(f"transform `{quoted}` holds more than numbers")
    match name, values:
        case "matrix", [a, b, c, d, e, f]:
            return (a, b, c, d, e, f)
        case "translate", [x]:
            return translation(x, 0.0)
        case "translate", [x, y]:
            return translation(x, y)
        case "scale", [s]:
            return scaling(s, s)
        case "scale", [x, y]:
            return scaling(x, y)
        case "rotate", [angle]:
            return rotation(angle)
        case "rotate", [angle, x, y]:
            return rotation(angle, x, y)
        case "skewX", [angle]:
            return (1.0, 0.0, math.tan(math.radians(angle)), 1.0, 0.0, 0.0)
        case "skewY", [angle]:
            return (1.0, math.tan(math.radians(angle)), 0.0, 1.0, 0.0, 0.0)
    raise SvgError(f"transform `{quoted}` is not known")
