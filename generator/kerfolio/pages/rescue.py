"""Saving a piece on the fitting page: which pieces there are, and what can be done for each."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Any

from markupsafe import Markup

from kerfolio.basis.json_text import json_text, number
from kerfolio.basis.said import stated_name
from kerfolio.edition.edition import Edition
from kerfolio.edition.rescue_words import glued_words, laid_words
from kerfolio.fitted.form import Fitted
from kerfolio.fitted.writing import fitted_json
from kerfolio.layouts.alone import ways_to_lie
from kerfolio.model.feature_kind import FINGERS
from kerfolio.pages.script_data import packed_data, script_data
from kerfolio.settling.reopened import takers
from kerfolio.settling.settled import SettledPart
from kerfolio.settling.titles import part_title
from kerfolio.shop.mates import mates_of
from kerfolio.shop.shims import LEAST_LOOSE, SLIPS, shims

RESCUE_FILES = "rescue.json"
"""What the site calls the files that open pieces wider, in a plan's folder."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Rescue:
    """What the page says and has of it: its pieces, in the words of a list, and its data.

    ``files`` are those that open pieces wider, packed; empty where the page fetches them.
    """

    pieces: tuple[tuple[str, str], ...]
    data: Markup
    files: Markup


def rescue_of(edition: Edition, fitted: Fitted | None, *, inline: bool) -> Rescue:
    """Return what saves the pieces of an edition; ``fitted`` are the files that open them wider."""
    parts = edition.settled.parts
    names = frozenset(_names(fitted)) if fitted else frozenset[str]()
    about = {
        "files": RESCUE_FILES if fitted else "",
        "laid": laid_words(edition.reader),
        "glued": glued_words(edition.reader),
        "leastLoose": number(LEAST_LOOSE),
        "slips": [[name, number(each)] for name, each in SLIPS],
        "parts": [_part(edition, part, wider=part.name in names) for part in parts],
    }
    return Rescue(
        pieces=tuple(
            (part.name, f"{part.mark}: {part_title(edition.plan, part.name)}") for part in parts
        ),
        data=script_data(json_text(about)),
        files=packed_data(fitted_json(fitted) if fitted and inline else ""),
    )


def _names(fitted: Fitted) -> Iterator[str]:
    """Yield the parts that there are files for."""
    for file in fitted.files:
        words = (each for each in file.cells[0].name if isinstance(each, str))
        stem = next(each for each in words if "/rescue/" in each)
        yield stem.partition("/rescue/")[2].removesuffix("-wider-")


def _part(edition: Edition, part: SettledPart, *, wider: bool) -> dict[str, Any]:
    settled = edition.settled
    return {
        "name": part.name,
        "sheet": part.sheet,
        "wider": wider,
        "goes": list(mates_of(part.name, settled)),
        "slips": list(_slips(edition, part)),
        "lies": list(_lying(edition, part)),
    }


def _slips(edition: Edition, part: SettledPart) -> Iterator[list[Any]]:
    """Yield each opening's name, how many, length and width; a sheet's name for its thickness."""
    found = zip(takers(part.features), shims(edition.settled, part, part.features), strict=True)
    for feature, each in found:
        length = feature.takes if feature.kind is FINGERS else number(each.length, 2)
        width = number(each.width, 2) if feature.depth else part.sheet
        yield [stated_name(each.feature), each.count, length, width]


def _lying(edition: Edition, part: SettledPart) -> Iterator[list[Any]]:
    """Yield each turn that a part may take, and what it takes then, whatever the sheet measures."""
    every = (
        ways_to_lie(there.part(part.name), there.sheet(part.sheet)) for there in edition.corners
    )
    for ways in zip(*every, strict=True):
        yield [number(ways[0][0]), *(number(max(sides), 1) for sides in _sides(ways))]


def _sides(ways: Iterable[tuple[float, tuple[float, float]]]) -> Iterable[tuple[float, ...]]:
    return zip(*(size for _, size in ways), strict=True)
