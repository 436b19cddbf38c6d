"""What colour each role of ink has: worked out from a workshop's look, in one place.

Tints are told apart by their relative luminance, so that they are by those too who see few hues:
neighbouring faces of a solid by ``STEP``, what is new from what stands by as much.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType

from kerfolio.basis.colour import MARK, Hue, against, hue_of, nearest_apart
from kerfolio.drawing.vocabulary import Ink
from kerfolio.model.look import Look

Palette = Mapping[Ink, str]
"""A colour ``#rrggbb`` for every role."""

CUT_INKS: Palette = MappingProxyType(
    {
        Ink.ENGRAVE: "#5c8038",
        Ink.POCKET: "#3b76bb",
        Ink.HOLE: "#975eac",
        Ink.OPENING: "#a06f14",
        Ink.OUTLINE: "#177f86",
        Ink.BRIDGE: "#b5532a",
        Ink.ASIDE: "#8b8174",
    }
)
"""What stands on cut files differs in hue and shows on white as on the dark grounds of drawing
programs, by 3:1 at least (WCAG 2.2, 1.4.11). It is the same in every workshop, and the colours
follow no machine program's code."""

STEP = 1.34
"""How a tint stands apart from the next one, by the contrast ratio of WCAG; after rounding to eight
bits 1.3 is left."""

_BIRCH = Hue(math.radians(80), 0.024)
"""Pale birch, whatever the accent: wood looks like wood."""

_PALE, _NEUTRAL, _NEW, _NEW_LINE = 0.005, 0.012, 0.075, 0.08
"""Chroma, in the accent's hue: of the palest grey, of inks, of what is new, of its edges."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Palettes:
    """A look on a light screen, on a dark one and on white paper."""

    light: Palette
    dark: Palette
    paper: Palette


def palettes_of(look: Look) -> Palettes:
    """Return all colours of a look."""
    return _palettes(look.accent, look.ground)


@cache
def _palettes(accent: str, ground: str) -> Palettes:
    return Palettes(
        light=_light(accent, ground), dark=_dark(accent), paper=_light(accent, "#ffffff")
    )


def _light(accent: str, ground: str) -> Palette:
    """Return the palette on a light ground; each tint is so much darker than that."""
    hue = hue_of(accent)
    grey, new, line = hue.weaker(_NEUTRAL), hue.weaker(_NEW), hue.weaker(_NEW_LINE)
    face = 1.07
    tints = {
        Ink.PAPER: ground,
        Ink.WASTE: against(ground, 1.08, hue.weaker(_PALE)),
        Ink.WOOD: against(ground, 1.22, _BIRCH),
        Ink.WOOD_DARK: against(ground, 1.22 * STEP, _BIRCH),
        Ink.FACE_LIGHT: against(ground, face, _BIRCH),
        Ink.FACE_MID: against(ground, face * STEP, _BIRCH),
        Ink.FACE_DARK: against(ground, face * STEP**2, _BIRCH),
        Ink.NEW_LIGHT: against(ground, face * STEP * 1.1, new),
        Ink.NEW_MID: against(ground, face * STEP**2 * 1.1, new),
        Ink.NEW_DARK: against(ground, face * STEP**3 * 1.1, new),
    }
    lines = {
        Ink.INK: against(ground, 16.0, grey),
        Ink.SOFT: against(ground, 6.2, grey),
        Ink.FAINT: against(ground, 2.1, grey),
        Ink.ACCENT: accent,
        Ink.NEW_LINE: against(ground, 11.0, line),
    }
    return MappingProxyType(tints | lines | _cut_inks(tints))


def _dark(accent: str) -> Palette:
    """Return the palette on a dark ground of the accent's hue; each tint is so much lighter."""
    hue = hue_of(accent)
    grey, new, line = hue.weaker(_NEUTRAL), hue.weaker(_NEW), hue.weaker(_NEW_LINE)
    ground = against("#000000", 1 / 1.19, grey)
    face = 1.43
    tints = {
        Ink.PAPER: ground,
        Ink.WASTE: against(ground, 1 / 1.08, grey),
        Ink.WOOD: against(ground, 1 / (face * STEP), _BIRCH),
        Ink.WOOD_DARK: against(ground, 1 / face, _BIRCH),
        Ink.FACE_LIGHT: against(ground, 1 / (face * STEP**2), _BIRCH),
        Ink.FACE_MID: against(ground, 1 / (face * STEP), _BIRCH),
        Ink.FACE_DARK: against(ground, 1 / face, _BIRCH),
        Ink.NEW_LIGHT: against(ground, 1 / (face * STEP**3), new),
        Ink.NEW_MID: against(ground, 1 / (face * STEP**2), new),
        Ink.NEW_DARK: against(ground, 1 / (face * STEP), new),
    }
    lines = {
        Ink.INK: against(ground, 1 / 16.0, grey),
        Ink.SOFT: against(ground, 1 / 7.4, grey),
        Ink.FAINT: against(ground, 1 / 2.4, grey),
        Ink.ACCENT: against(ground, 1 / 7.0, hue),
        Ink.NEW_LINE: against(ground, 1 / 12.0, line),
    }
    return MappingProxyType(tints | lines | _cut_inks(tints))


def _cut_inks(tints: Mapping[Ink, str]) -> dict[Ink, str]:
    """Return the inks of cut files as they show on a page: on its ground and on the wood there."""
    grounds = (tints[Ink.PAPER], tints[Ink.WASTE], tints[Ink.WOOD])
    return {ink: nearest_apart(colour, grounds, MARK) for ink, colour in CUT_INKS.items()}


PALETTE: Palette = MappingProxyType({**palettes_of(Look()).paper, **CUT_INKS})
"""The usual look on white paper: what files for machines and templates are drawn in, since they are
the same whatever the workshop looks like."""
