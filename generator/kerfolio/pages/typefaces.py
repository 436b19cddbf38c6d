"""The faces of pages: their files, and the rules of a style sheet that name them."""

from __future__ import annotations

from base64 import b64encode
from collections.abc import Callable, Iterator
from functools import cache

from kerfolio.model.look import TypePair
from kerfolio.writing.webfont import web_fonts

FONT_FOLDER = "assets/fonts/"
"""Where a site keeps the files."""

_Face = tuple[str, str, str, str]
"""Family, weight, slant, and the stem of its file."""

_SERIF, _SANS = "Source Serif Pro", "Source Sans Pro"
_FACES: tuple[_Face, ...] = (
    (_SERIF, "400", "normal", "source-serif-regular"),
    (_SERIF, "400", "italic", "source-serif-italic"),
    (_SERIF, "600 700", "normal", "source-serif-bold"),
    (_SANS, "400", "normal", "source-sans-regular"),
    (_SANS, "400", "italic", "source-sans-italic"),
    (_SANS, "600 700", "normal", "source-sans-bold"),
)


def files_of(pair: TypePair) -> tuple[str, ...]:
    """Return the files that a pair of types needs: drawings are lettered in the sans, always.

    What runs on is slanted where it is stressed, the rest is not.
    """
    return tuple(f"{name}.woff2" for *_, name in _faces_of(pair))


def linked_faces(pair: TypePair, folder: str) -> str:
    """Return the rules for files in a folder, as the style sheet leads to it."""
    return _rules(pair, lambda name: f"{folder}{name}.woff2")


@cache
def held_faces(pair: TypePair) -> str:
    """Return the rules with the files in them, for a page of one file."""
    return _rules(pair, lambda name: f"data:font/woff2;base64,{_text(name)}")


def _faces_of(pair: TypePair) -> Iterator[_Face]:
    serif = pair.heads_in_serif or pair.reads_in_serif
    slanted = _SERIF if pair.reads_in_serif else _SANS
    for face in _FACES:
        family, _, style, _ = face
        if (style == "normal" or family == slanted) and (family == _SANS or serif):
            yield face


def _text(name: str) -> str:
    return b64encode(web_fonts()[f"{name}.woff2"]).decode()


def _rules(pair: TypePair, address: Callable[[str], str]) -> str:
    return "".join(
        f'@font-face {{ font-family: "{family}"; font-weight: {weight}; font-style: {slant}; '
        f'font-display: swap; src: url("{address(name)}") format("woff2"); }}\n'
        for family, weight, slant, name in _faces_of(pair)
    )
