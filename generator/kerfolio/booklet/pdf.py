"""A document as a booklet to print: a tagged PDF, set by typst from data and one template.

What is measured in a first setting decides how high pictures are in the next (``fitting.py``).
"""

from __future__ import annotations

import io
import json
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import asdict, dataclass, field
from functools import cache, partial
from typing import Any

import segno

from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.basis.shipped import shipped
from kerfolio.booklet.art import Gallery
from kerfolio.booklet.fitting import boxes_of, fitted, half_empty
from kerfolio.booklet.lines import Lines
from kerfolio.booklet.look import BookletLook, booklet_look
from kerfolio.booklet.measure import Measure
from kerfolio.booklet.rows import PictureRow
from kerfolio.booklet.setting import hollow, measured, printed
from kerfolio.booklet.told import Teller, targets
from kerfolio.document.chapter import Document
from kerfolio.drawing.palette import palettes_of
from kerfolio.model.look import Look
from kerfolio.model.stock import PaperStock
from kerfolio.writing.svg import svg_bytes

_COVER = 110.0
"""Room for the cover's picture before anybody has measured what is left for it, mm."""
_LEAST_COVER = 40.0
_DENSITIES = (1.0, 0.88, 0.76)
"""How wide white spaces stand; the next where a few lines would be left for a last page."""
_SLACKS = (1.5, 6.0, 14.0)
"""mm of a page that are left out of account; the next where a page would stand half empty."""
_SPILL = 0.15
"""Share of a page that is no more than a few lines."""
_FEW_PAGES = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class _Sizes:
    """Sizes that a draft finds: the room of the cover's picture, mm, whether the contents stand
    ``beside`` it, and how much of its own room each row of pictures is given, where it is not all.
    """

    cover: float = _COVER
    beside: bool = False
    shares: Mapping[int, float] = field(default_factory=dict)


def booklet_pdfs(
    document: Document,
    papers: Mapping[str, PaperStock],
    pictures: Mapping[str, bytes],
    look: Look,
) -> dict[str, bytes]:
    """Return the document as PDF 1.7 after PDF/UA-1 (ISO 14289-1), the same bytes on any day, for
    each paper by its name.

    ``pictures`` are the bytes of its photos, PNG or JPEG, by their file. All papers share what was
    drawn.
    """
    written = partial(svg_bytes, palette=palettes_of(look).paper, stretched=False)
    gallery = Gallery(pictures=pictures, written=written)
    return {
        name: _pdf(
            _Job(
                document=document,
                gallery=gallery,
                measure=Measure(paper=paper),
                look=booklet_look(look),
            )
        )
        for name, paper in papers.items()
    }


def _pdf(job: _Job) -> bytes:
    """Return the first setting without faults, else the one with the fewest."""
    made = list[_Set]()
    for density in _DENSITIES:
        for each in job.settings(density):
            made.append(each)
            if not any(each.faults):
                return printed(each.files)
        if not all(each.spills for each in made):
            break
    return printed(min(made, key=lambda each: each.faults).files)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Set:
    """A booklet; whether a few lines of it spill onto a last page, how many pages stand empty."""

    files: Mapping[str, bytes]
    spills: bool
    empty: int

    @property
    def faults(self) -> tuple[bool, int]:
        """What is wrong with it, the worse fault first."""
        return self.spills, self.empty


@dataclass(frozen=True, slots=True, kw_only=True)
class _Job:
    """A document to be set on a paper."""

    document: Document
    gallery: Gallery
    measure: Measure
    look: BookletLook

    def settings(self, density: float) -> Iterator[_Set]:
        """Yield the document with its pictures in sizes that a draft of it asks for.

        Each next one counts on less of a page: white space is not the same in draft and print.
        """
        for sizes in self._sizes(density):
            files, _ = self._files(sizes, density, draft=False)
            edges = measured(hollow(files))["edges"]
            empty = half_empty(edges, self.measure)
            yield _Set(files=files, spills=self._spills(edges), empty=empty)

    def _sizes(self, density: float) -> Iterator[_Sizes]:
        """Yield sizes from a draft; from a second one where the contents stand elsewhere."""
        beside = self.document.opening.picture is None
        for _ in range(2):
            files, rows = self._files(_Sizes(beside=beside), density, draft=True)
            told = measured(hollow(files))
            if told["beside"] == beside:
                break
            beside = told["beside"]
        boxes = boxes_of(told["edges"], self.measure)
        for slack in _SLACKS:
            yield _Sizes(
                cover=max(_LEAST_COVER, told["cover"]),
                beside=beside,
                shares=fitted(boxes, rows, self.measure.height - slack),
            )

    def _spills(self, edges: Sequence[Mapping[str, Any]]) -> bool:
        last = edges[-1] if edges else None
        if last is None or last["page"] <= _FEW_PAGES:
            return False
        return bool(last["y"] - self.measure.top < _SPILL * self.measure.height)

    def _files(
        self, sizes: _Sizes, density: float, *, draft: bool
    ) -> tuple[Mapping[str, bytes], Sequence[PictureRow]]:
        """Return all that typst reads, and the rows of pictures in it."""
        document, measure = self.document, self.measure
        lines = Lines(language=document.language, targets=targets(document))
        teller = Teller(lines=lines, gallery=self.gallery, measure=measure, shares=sizes.shares)
        paper = {"width": measure.paper.width, "height": measure.paper.height}
        told = {
            "page": asdict(measure) | paper,
            "density": density,
            "draft": draft,
            "beside": sizes.beside,
            "look": asdict(self.look),
            "language": document.language,
            "words": _words(lines.reader),
            "title": document.title,
            "author": document.author,
            "subject": document.subject,
            "foot": lines.text(document.foot),
            "address": document.address,
            "day": document.day,
            "opening": teller.opening(document.opening, sizes.cover),
            "chapters": [teller.chapter(each) for each in document.chapters],
        }
        files = {
            **_templates(),
            "document.json": json.dumps(told, ensure_ascii=False).encode(),
            **self.gallery.files,
        }
        if document.address:
            files["address.svg"] = _code(document.address, self.look.ink)
        return files, teller.rows


def _words(reader: Reader) -> Mapping[str, str]:
    """Return the words that the template has of its own, with places for numbers of pages."""
    return {
        "notices": say(reader, "booklet-notices"),
        "caution": say(reader, "booklet-caution"),
        "by-hand": say(reader, "booklet-by-hand"),
        "page": say(reader, "booklet-page", page="{page}", pages="{pages}"),
        "led": say(reader, "booklet-led", words="{words}", page="{page}"),
    }


@cache
def _templates() -> Mapping[str, bytes]:
    """Return the theme's files for booklets; ``main.typ`` sets a document."""
    folder = shipped("themes") / "workbench" / "booklet"
    return {each.name: each.read_bytes() for each in sorted(folder.glob("*.typ"))}


def _code(address: str, ink: str) -> bytes:
    """Return the address as a sign for a phone to read (ISO/IEC 18004), its quiet zone with it."""
    out = io.BytesIO()
    segno.make_qr(address, error="m").save(out, kind="svg", border=4, dark=ink, xmldecl=False)
    return out.getvalue()
