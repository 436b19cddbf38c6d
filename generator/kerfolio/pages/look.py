"""A workshop's look as custom properties of a style sheet: one block, which names every colour."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from kerfolio.basis.colour import against, hue_of
from kerfolio.drawing.palette import Palette, palettes_of
from kerfolio.drawing.vocabulary import Ink
from kerfolio.model.look import Look, TypePair

_SERIF = (
    '"Source Serif Pro", "Source Serif 4", "Iowan Old Style", Charter, "Bitstream Charter", '
    "Palatino, Georgia, serif"
)
_SANS = '"Source Sans Pro", "Source Sans 3", Candara, Calibri, "Segoe UI", system-ui, sans-serif'
_HAIR = 1.3
"""How lines between things stand apart from the ground: they part, and nothing hangs on them."""


def tokens(look: Look) -> str:
    """Return the properties: ``--INK`` of every role, ``--hair``, and the faces of text.

    ``--head`` is the face of headings, ``--read`` of running text, ``--label`` of all the rest.
    """
    found = palettes_of(look)
    light = {"color-scheme": "light dark", **_types(look.type), **_colours(found.light)}
    dark = _rule(_colours(found.dark))
    paper = _rule({"color-scheme": "light", **_colours(found.paper)})
    return (
        f"{_rule(light)}@media (prefers-color-scheme: dark) {{\n{dark}}}\n"
        f"@media print {{\n{paper}}}\n"
    )


def theme_colours(look: Look) -> tuple[str, str]:
    """Return the grounds of light and of dark screens, for the browser's own bars."""
    found = palettes_of(look)
    return found.light[Ink.PAPER], found.dark[Ink.PAPER]


def _rule(properties: Mapping[str, str]) -> str:
    return f":root {{{''.join(_lines(properties))}\n}}\n"


def _lines(properties: Mapping[str, str]) -> Iterator[str]:
    yield from (f"\n  {name}: {value};" for name, value in properties.items())


def _types(pair: TypePair) -> dict[str, str]:
    faces = {True: _SERIF, False: _SANS}
    return {
        "--head": faces[pair.heads_in_serif],
        "--read": faces[pair.reads_in_serif],
        "--label": faces[pair.labels_in_serif],
    }


def _colours(palette: Palette) -> dict[str, str]:
    ground, ink = palette[Ink.PAPER], palette[Ink.INK]
    darker = _HAIR if int(ground[1:3], 16) > 127 else 1 / _HAIR
    hair = against(ground, darker, hue_of(ink))
    return {**{f"--{role}": palette[role] for role in Ink}, "--hair": hair}
