"""The faces of pages: their files, and the rules of a style sheet that name them."""

from __future__ import annotations

from base64 import b64encode
from collections.abc import Callable
from functools import cache

from kerfolio.writing.webfont import web_fonts

FONT_FOLDER = "assets/fonts/"
"""Where a site keeps the files."""

_SERIF, _SANS = "Source Serif Pro", "Source Sans Pro"
_FACES = (
    (_SERIF, "400", "normal", "source-serif-regular"),
    (_SERIF, "400", "italic", "source-serif-italic"),
    (_SERIF, "600 700", "normal", "source-serif-bold"),
    (_SANS, "400", "normal", "source-sans-regular"),
    (_SANS, "400", "italic", "source-sans-italic"),
    (_SANS, "600 700", "normal", "source-sans-bold"),
)


def linked_faces(folder: str) -> str:
    """Return the rules for files in a folder, as the style sheet leads to it."""
    return _rules(lambda name: f"{folder}{name}.woff2")


@cache
def held_faces() -> str:
    """Return the rules with the files in them, for a page of one file."""
    return _rules(lambda name: f"data:font/woff2;base64,{_text(name)}")


def _text(name: str) -> str:
    return b64encode(web_fonts()[f"{name}.woff2"]).decode()


def _rules(address: Callable[[str], str]) -> str:
    return "".join(
        f'@font-face {{ font-family: "{family}"; font-weight: {weight}; font-style: {slant}; '
        f'font-display: swap; src: url("{address(name)}") format("woff2"); }}\n'
        for family, weight, slant, name in _FACES
    )
