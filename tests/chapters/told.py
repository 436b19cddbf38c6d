"""Editions for the tests of chapters, and a chapter as the words that stand in it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import fields, is_dataclass, replace
from functools import cache

from kerfolio.document.blocks import Caution, Fact, Listing, Row
from kerfolio.document.picture import Art, Shot
from kerfolio.document.words import Both, File, Mark, Reference
from kerfolio.edition.edition import Edition
from kerfolio.edition.public import shown_to_all
from kerfolio.model.prose import Span
from kerfolio.publishing.edition import edition_of
from kerfolio.publishing.laid_out import LaidOut
from tests.plans import READY, proved, small_layout, workshop

DOTTED = re.compile(r"\b[a-z][a-z0-9-]*\.[a-z0-9][a-z0-9-]*\b")
"""A name of a plan file: ``side.left``, ``rail.left-tab``."""

NO_NAMES = re.compile(
    r"https?://\S+|\S+@\S+|\b[\w-]+\.(?:dxf|svg|pdf|csv|zip|html|json|txt|glb)\b|[\w.]+\.org/\S*"
)
"""What holds a point and is no such name: addresses and files."""


_SILENT = ("id", "iso", "name", "who", "soon", "kind", "size", "manner", "place")
_INLINE = (str, Both, Mark, Span, Reference, File)


@cache
def rack(text: str = READY) -> Edition:
    """Return the probe rack worked out whole: five pieces' joints, bolts, four sets of files."""
    found = LaidOut(proof=proved(text), layout=small_layout(), fresh="")
    return replace(edition_of(workshop(text), found), fitted=True)


@cache
def locked(show: str = "") -> Edition:
    """Return what everybody may see of it where it is for supporters and shows only that."""
    stated = f"version: 1.0.0\naccess: supporters\nshow: [{show}]"
    text = READY.replace("version: 1.0.0", stated)
    return shown_to_all(rack(text))


def words_of(found: object) -> str:
    """Return all that is read in a chapter, an opening or a block, a line each."""
    return "\n".join(_lines(found))


def names_in(found: object) -> list[str]:
    """Return the names of a plan file that readers would see."""
    return DOTTED.findall(NO_NAMES.sub("", words_of(found)))


def references_in(found: object) -> Iterator[Reference]:
    """Yield what leads to other chapters."""
    match found:
        case Reference():
            yield found
        case tuple():
            yield from (each for one in found for each in references_in(one))
        case Art() | Shot():
            return
        case _ if is_dataclass(found) and not isinstance(found, type):
            for field in fields(found):
                yield from references_in(getattr(found, field.name))


def _lines(found: object) -> Iterator[str]:
    match found:
        case str():
            yield found
        case Both():
            yield f"{found.first} ({found.other})"
        case Mark() | Span() | Reference():
            yield found.text
        case File():
            yield found.text or found.name
        case Art() | Shot():
            return
        case Row() | Listing() | Caution() | Fact():
            for each in _entries(found):
                yield from _lines(each)
        case tuple():
            if found and all(isinstance(each, _INLINE) for each in found):
                yield "".join("".join(_lines(each)) for each in found)
            else:
                for each in found:
                    yield from _lines(each)
        case _ if is_dataclass(found) and not isinstance(found, type):
            for field in fields(found):
                if field.name not in _SILENT:
                    yield from _lines(getattr(found, field.name))


def files_in(found: object) -> set[str]:
    """Return the files and folders of a bundle that are named in a chapter."""
    match found:
        case File():
            return {found.name}
        case tuple():
            return {name for each in found for name in files_in(each)}
        case _ if is_dataclass(found) and not isinstance(found, type):
            values = (getattr(found, field.name) for field in fields(found))
            return {name for each in values for name in files_in(each)}
        case _:
            return set()


def _entries(found: Row | Listing | Caution | Fact) -> Iterator[object]:
    """Yield what of them are lines each, and no pieces of one."""
    match found:
        case Row():
            yield from found.cells
        case Listing():
            yield from found.entries
        case Caution():
            yield from (found.head, *found.lines)
        case Fact():
            yield found.head
            yield from (each for line in found.lines for each in line)
