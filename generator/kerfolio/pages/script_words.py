"""Scripts of the theme with the words they say to a reader."""

from __future__ import annotations

import json
from functools import cache

from markupsafe import Markup

from kerfolio.basis.catalogue import templates
from kerfolio.basis.reader import Reader
from kerfolio.pages.script_data import script_data
from kerfolio.pages.theme import theme_text


@cache
def told_script(reader: Reader, scripts: tuple[str, ...], words: tuple[str, ...]) -> Markup:
    """Return scripts of the theme as one that keeps its names to itself.

    ``words`` are the files of the catalogue whose messages they say.
    """
    parts = "\n".join((script_words(reader, words), *map(theme_text, scripts)))
    return Markup(f'(() => {{\n"use strict";\n\n{parts}}})();\n')


def script_words(reader: Reader, words: tuple[str, ...]) -> str:
    """Return what stands before scripts that say messages of these files of the catalogue."""
    said = {name: text for file in words for name, text in templates(reader.language, file).items()}
    data = script_data(json.dumps(said | {"mark": reader.mark}, ensure_ascii=False))
    return f"const WORDS = {data};\n{theme_text('say.js')}"
