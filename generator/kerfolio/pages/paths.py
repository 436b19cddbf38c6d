"""The ways to get the parts cut: a reader chooses one, and sees what it takes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from kerfolio.document.chapter import EVERYONE, Chapter, Who
from kerfolio.document.words import File, Words
from kerfolio.edition.edition import Edition
from kerfolio.edition.format_words import format_words
from kerfolio.edition.names import PAPERS, booklet_name, layout_name, saw_name, setup_name

TITLES: Mapping[str, str] = {
    Who.ROUTER: "I have a CNC router",
    Who.SAW: "I have a table saw or a track saw",
    Who.HAND: "I have a jigsaw, a drill and paper",
    Who.SHOP: "A shop cuts for me",
    "look": "I only want to look",
}
"""What readers say of themselves, in the order of what takes least work by hand."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Path:
    """A way by its ``name``; ``lines`` say which files it takes, ``chapters`` are its own."""

    name: str
    title: str
    lines: tuple[Words, ...]
    chapters: tuple[Chapter, ...]


def paths_of(edition: Edition, chapters: Sequence[Chapter], names: frozenset[str]) -> list[Path]:
    """Return every way; ``names`` are those of the bundle's files, or empty where not known."""
    lines = _Lines(edition=edition, names=names)
    return [
        Path(
            name=name,
            title=title,
            lines=tuple(lines.of(name)),
            chapters=tuple(_own(chapters, name)),
        )
        for name, title in TITLES.items()
    ]


def _own(chapters: Sequence[Chapter], name: str) -> Iterator[Chapter]:
    yield from (each for each in chapters if each.who != EVERYONE and name in each.who)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Lines:
    edition: Edition
    names: frozenset[str]

    def of(self, name: str) -> Iterator[Words]:
        """Yield what a reader of a way takes of the bundle."""
        fit, formats = self.edition.settled.variant.label, format_words(self.edition.formats)
        inch = self.edition.first == "in"
        match name:
            case Who.ROUTER:
                squares = "4 in and 100 mm" if inch else "100 mm and 4 in"
                yield (
                    f"Take {formats.each} for each sheet, {formats.units}, made for your sheet’s "
                    "thickness: ",
                    File(name=f"cut/{fit}", text=f"cut/{fit}"),
                    " is the one drawn here.",
                )
                yield f"After opening a file measure its check squares, {squares}; off, do not cut."
                yield ("At the machine: ", *self.printed("setup", "the setup sheets"), ".")
            case Who.SAW:
                if self.edition.saw:
                    saw = self.printed("saw", "the saw sheets")
                    yield ("Every cut in order, with its fence setting: ", *saw, ".")
                yield (
                    "Every overall size: ",
                    File(name="lists/parts.csv", text="the parts list"),
                    ". Take a template for parts with curves and slots.",
                )
            case Who.HAND:
                yield (
                    "Take the templates for your sheet’s thickness, every part at full size on A4, "
                    "on US Letter or on a roll: ",
                    File(name=f"templates/{fit}-a4.pdf", text="those drawn here"),
                    ".",
                )
                yield (
                    "Print the first page alone, at 100 %, without fitting to the page, and "
                    "measure its check square in both directions."
                )
            case Who.SHOP:
                yield (
                    f"Send the {formats.sent} files for the thickness that the shop has measured, ",
                    *self.printed("layout", "the layouts"),
                    " and ",
                    *self.printed("setup", "the setup sheets"),
                    ".",
                )
            case _:
                yield ("It is all in ", *self.printed("booklet", "the booklet"), ", in order.")

    def printed(self, what: str, words: str) -> Iterator[str | File]:
        """Yield a file by its paper, the workshop's own first; words alone where it is not."""
        label = self.edition.settled.variant.label
        papers = sorted(PAPERS, key=lambda each: each != self.edition.identity.paper)
        named = {
            "booklet": booklet_name,
            "setup": lambda paper: setup_name(label, paper),
            "layout": lambda paper: layout_name(label, paper),
            "saw": saw_name,
        }[what]
        there = [each for each in papers if not self.names or named(each) in self.names]
        if not there:
            yield words
            return
        yield File(name=named(there[0]), text=words)
        for paper in there[1:]:
            yield from (" (", File(name=named(paper), text=f"on {PAPERS[paper]}"), ")")
