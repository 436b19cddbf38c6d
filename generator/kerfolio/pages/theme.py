"""The theme: templates and style, and the one way from a record to HTML text."""

from __future__ import annotations

import re
from functools import cache, partial
from typing import Any

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

from kerfolio.basis.digits import digits
from kerfolio.basis.figures import (
    bytes_text,
)
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import day_text
from kerfolio.basis.sheet_size import sheet_text
from kerfolio.basis.shipped import shipped
from kerfolio.basis.thickness import thickness_text
from kerfolio.model.look import Look
from kerfolio.model.prose import plain_text, ticked
from kerfolio.pages import document, paths
from kerfolio.pages.asset import asset
from kerfolio.pages.links import safe_href
from kerfolio.pages.look import tokens
from kerfolio.pages.signed import signs
from kerfolio.pages.signs import cleaned
from kerfolio.pages.spoken import spoken, spoken_list, ways
from kerfolio.pages.typefaces import held_faces, linked_faces

THEME = "workbench"
_VIEW_BOX = re.compile(r'viewBox="[\d.-]+ [\d.-]+ ([\d.]+) [\d.]+"')
_KEPT_WHOLE = re.compile(r"(<(script|style|svg|title|code)\b.*?</\2>)", re.DOTALL)
_LONG = re.compile(r"[^\s<>]{18,}")
"""A word that may be wider than the narrowest column; ordinary words are shorter."""

_TEXT_WITH_LONG = re.compile(rf"(?<=>)[^<>]*{_LONG.pattern}[^<>]*(?=<)")


def render(template: str, reader: Reader, **context: Any) -> str:
    """Fill a template; ``say`` says a message of the catalogue to the reader.

    Everything printed is escaped; an unknown or missing value is our bug.
    """
    told = {"reader": reader, "say": partial(spoken, reader)}
    text = _environment().get_template(template).render(told | context)
    return breakable(text) if template.endswith(".html") else text


def breakable(page: str) -> str:
    """Return a page whose longest words may be broken anywhere, so that none is wider than a phone.

    Only such words are marked (``long`` in the style sheet): were every word breakable, tables
    would break ordinary ones to save width.
    """
    pieces = _KEPT_WHOLE.split(page)
    pieces[::3] = [_TEXT_WITH_LONG.sub(_marked, each) for each in pieces[::3]]
    del pieces[2::3]
    return "".join(pieces)


def _marked(text: re.Match[str]) -> str:
    return _LONG.sub(r'<span class="long">\g<0></span>', text[0])


@cache
def stylesheet(look: Look) -> str:
    """Return the site's style sheet; the fonts it names lie beside it in ``fonts/``."""
    return linked_faces(look.type, "fonts/") + _own_style(look) + theme_text("unseal.css")


def inline_style(look: Look) -> Markup:
    """Return the style for a page of one file; it names no other file and holds its fonts."""
    return Markup(held_faces(look.type) + _own_style(look))


def _own_style(look: Look) -> str:
    sheets = ("style.css", "document.css", "viewer.css", "fitting.css")
    return tokens(look) + "".join(map(theme_text, sheets))


def to_scale(svg: str, rem: float) -> Markup:
    """Return an inline drawing of our own with a width of ``rem`` for each mm of its view box.

    It sets the drawings of a page to one scale, so that their lettering is of one size. The width
    is an attribute of the drawing, since a page allows itself no ``style`` attributes.
    """
    found = _VIEW_BOX.search(svg)
    if found is None:
        return Markup(svg)
    width = digits(float(found.group(1)) * rem, 2)
    return Markup(str(svg).replace("<svg ", f'<svg width="{width}rem" ', 1))


@cache
def theme_text(name: str) -> str:
    """Return a file of the theme, read once."""
    return (shipped("themes") / THEME / name).read_text("utf-8")


def _final(value: object) -> object:
    if value is None:
        raise TypeError("a template prints a value that is missing")
    if isinstance(value, str) and not isinstance(value, Markup):
        return cleaned(value)
    return value


@cache
def _environment() -> Environment:
    environment = Environment(
        loader=FileSystemLoader(shipped("themes") / THEME / "templates"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
        finalize=_final,
    )
    environment.filters |= {
        "asset": asset,
        "day": lambda when, reader: day_text(reader, when),
        "thickness": thickness_text,
        "sheet_size": sheet_text,
        "bytes": bytes_text,
        "listed": spoken_list,
        "ways": ways,
        "safe_href": safe_href,
        "signs": signs,
        "plain_text": plain_text,
        "ticked": ticked,
        "to_scale": to_scale,
        "beside_paths": paths.beside_paths,
        "who_of": document.who_of,
        "folds_away": document.folds_away,
        "runs": document.runs,
        "chief_column": document.chief_column,
        "cells": document.cells_of,
        "figure_on": document.figure_on,
        "drawn_figure": document.drawn_figure,
    }
    return environment
