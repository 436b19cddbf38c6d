"""Colours as ``#rrggbb``: how light they are, how they stand apart, and the nearest that does.

Lightness that tells colours apart is the relative luminance of WCAG 2.2, contrast its ratio (W3C,
definitions of both). Hue and strength are those of OKLab, which keeps a hue while it gets lighter
(B. Ottosson, "A perceptual color space for image processing", 2020; the numbers are that page's).
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterable
from dataclasses import dataclass

_HEX = re.compile(r"#?([0-9a-f]{3}|[0-9a-f]{6})", re.IGNORECASE)
_FINE = 40
"""Halvings of an interval of 1: far below a step of eight bits."""

TEXT = 4.5
"""The contrast that text needs (WCAG 2.2, 1.4.3)."""

MARK = 3.0
"""The contrast that lines and marks need (WCAG 2.2, 1.4.11)."""

_FLARE = 0.05
"""The light that a screen reflects, as the contrast ratio of WCAG counts it."""


@dataclass(frozen=True, slots=True)
class Hue:
    """A family of colours: its ``angle`` in radians and its ``chroma``, both of OKLab."""

    angle: float
    chroma: float

    def weaker(self, chroma: float) -> Hue:
        """Return the family with at most this chroma."""
        return Hue(self.angle, min(chroma, self.chroma))


def read_colour(text: str) -> str | None:
    """Return ``1C5C46`` or ``#abc`` as ``#rrggbb`` in small letters, or None for what is none."""
    found = _HEX.fullmatch(text.strip())
    if found is None:
        return None
    digits = found[1].lower()
    return "#" + (digits if len(digits) == 6 else "".join(2 * each for each in digits))


def rgb(colour: str) -> tuple[int, int, int]:
    """Return ``#1c5c46`` as (28, 92, 70)."""
    return int(colour[1:3], 16), int(colour[3:5], 16), int(colour[5:7], 16)


def linear(channel: float) -> float:
    """Return a channel of sRGB, 0 to 1, as linear light (IEC 61966-2-1)."""
    return channel / 12.92 if channel <= 0.04045 else ((channel + 0.055) / 1.055) ** 2.4


def _shown(light: float) -> float:
    """Return linear light as a channel of sRGB."""
    return light * 12.92 if light <= 0.0031308 else 1.055 * light ** (1 / 2.4) - 0.055


def luminance(colour: str) -> float:
    """Return the relative luminance, 0 (black) to 1 (white)."""
    red, green, blue = (linear(each / 255) for each in rgb(colour))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Return how two colours stand apart, 1 to 21."""
    low, high = sorted((luminance(one), luminance(other)))
    return (high + _FLARE) / (low + _FLARE)


def least_contrast(colour: str, others: Iterable[str]) -> float:
    """Return how a colour stands apart from the one that it is nearest to."""
    return min(contrast(colour, each) for each in others)


def hue_of(colour: str) -> Hue:
    """Return the family of a colour; that of a grey has no chroma."""
    red, green, blue = (linear(each / 255) for each in rgb(colour))
    long = math.cbrt(0.4122214708 * red + 0.5363325363 * green + 0.0514459929 * blue)
    middle = math.cbrt(0.2119034982 * red + 0.6806995451 * green + 0.1073969566 * blue)
    short = math.cbrt(0.0883024619 * red + 0.2817188376 * green + 0.6299787005 * blue)
    a = 1.9779984951 * long - 2.4285922050 * middle + 0.4505937099 * short
    b = 0.0259040371 * long + 0.7827717662 * middle - 0.8086757660 * short
    chroma = math.hypot(a, b)
    return Hue(math.atan2(b, a), chroma if chroma > 0.002 else 0.0)


def toned(hue: Hue, light: float) -> str:
    """Return the colour of a family whose relative luminance is ``light``, 0 to 1.

    Where no screen shows one of that chroma, the strongest that it shows.
    """
    weakest, strongest = 0.0, hue.chroma
    if _fits(hue, light):
        return _hex(_of_light(hue, light))
    for _ in range(_FINE):
        middle = (weakest + strongest) / 2
        if _fits(Hue(hue.angle, middle), light):
            weakest = middle
        else:
            strongest = middle
    return _hex(_of_light(Hue(hue.angle, weakest), light))


def against(colour: str, ratio: float, hue: Hue | None = None) -> str:
    """Return what stands ``ratio`` apart from a colour: darker, or lighter with one below 1.

    It is of the colour's own family, or of another ``hue``.
    """
    light = (luminance(colour) + _FLARE) / ratio - _FLARE
    return toned(hue or hue_of(colour), min(1.0, max(0.0, light)))


def nearest_apart(colour: str, grounds: Iterable[str], least: float) -> str:
    """Return a colour, or the nearest of its family that stands ``least`` apart from all grounds.

    Darker ones are looked for on light grounds, lighter ones on dark grounds.
    """
    grounds = tuple(grounds)
    if least_contrast(colour, grounds) >= least:
        return colour
    lights = [luminance(each) for each in grounds]
    darker = min(lights) > 0.18  # a middle grey: above it, black stands farther off than white
    near = (min(lights) + _FLARE) / least if darker else (max(lights) + _FLARE) * least
    step = 0.999 if darker else 1.001
    found, light, hue = colour, near, hue_of(colour)
    while 0 < light - _FLARE < 1:
        found = toned(hue, light - _FLARE)
        if least_contrast(found, grounds) >= least:
            break
        light *= step  # eight bits have rounded it to the wrong side
    return found


Light = tuple[float, float, float]


def _of_light(hue: Hue, light: float) -> Light:
    """Return linear red, green and blue of a family at a relative luminance."""
    low, high = 0.0, 1.0
    for _ in range(_FINE):
        middle = (low + high) / 2
        red, green, blue = _linear_of(middle, hue)
        if 0.2126 * red + 0.7152 * green + 0.0722 * blue < light:
            low = middle
        else:
            high = middle
    return _linear_of((low + high) / 2, hue)


def _linear_of(lightness: float, hue: Hue) -> Light:
    a, b = hue.chroma * math.cos(hue.angle), hue.chroma * math.sin(hue.angle)
    long = (lightness + 0.3963377774 * a + 0.2158037573 * b) ** 3
    middle = (lightness - 0.1055613458 * a - 0.0638541728 * b) ** 3
    short = (lightness - 0.0894841775 * a - 1.2914855480 * b) ** 3
    return (
        4.0767416621 * long - 3.3077115913 * middle + 0.2309699292 * short,
        -1.2684380046 * long + 2.6097574011 * middle - 0.3413193965 * short,
        -0.0041960863 * long - 0.7034186147 * middle + 1.7076147010 * short,
    )


def _fits(hue: Hue, light: float) -> bool:
    return all(-0.0005 <= each <= 1.0005 for each in _of_light(hue, light))


def _hex(light: Light) -> str:
    channels = (round(255 * _shown(min(1.0, max(0.0, each)))) for each in light)
    return "#" + "".join(f"{each:02x}" for each in channels)
