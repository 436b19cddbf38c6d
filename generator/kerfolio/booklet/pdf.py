"""A document as a booklet to print: a tagged PDF, set by typst from data and one template.

It is told once. What is measured in a draft decides where pages begin and how high pictures are
(``fitting.py``); what was set is looked at before it is printed.
"""

from __future__ import annotations

import io
import json
from collections.abc import Callable, Mapping, Sequence
from dataclasses import asdict, dataclass
from functools import cache, partial
from typing import Any

import segno

from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.basis.shipped import shipped
from kerfolio.booklet.art import Gallery, Shown
from kerfolio.booklet.fitting import Atom, Plan, atoms_of, half_empty, planned
from kerfolio.booklet.lines import Lines
from kerfolio.booklet.look import booklet_look
from kerfolio.booklet.mark import mark_of
from kerfolio.booklet.measure import Measure
from kerfolio.booklet.rows import PictureRow
from kerfolio.booklet.setting import BLANK, measured, printed
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
_SLACKS = (1.5, 4.0, 8.0, 14.0)
"""mm of a page that are left out of account; the next where a page would stand half empty."""
_SPILL = 0.15
"""Share of a page that is no more than a few lines."""
_FEW_PAGES = 2

Data = dict[str, Any]


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
    lines = Lines(language=document.language, targets=targets(document))
    return {name: _pdf(_job(document, lines, gallery, each, look)) for name, each in papers.items()}


def _pdf(job: _Job) -> bytes:
    """Return the first setting without faults, else the one with the fewest."""
    made = list[_Set]()
    for density in _DENSITIES:
        draft, tried = job.draft(density), list[Plan]()
        for slack in _SLACKS:
            plan = planned(draft.atoms, job.teller.measure.height - slack)
            if plan in tried:
                continue
            tried.append(plan)
            made.append(job.set(draft, plan))
            if not any(made[-1].faults):
                return printed(made[-1].files)
        if not all(each.spills for each in made):
            break
    return printed(min(made, key=lambda each: each.faults).files)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Draft:
    """What was measured: the room of the cover's picture, mm, whether the contents stand ``beside``
    it, and all that goes on pages.
    """

    density: float
    cover: float
    beside: bool
    atoms: Sequence[Atom]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Set:
    """What a booklet is printed from; whether a few lines spill onto a last page, how many pages
    stand empty.
    """

    files: Mapping[str, bytes]
    spills: bool
    empty: int

    @property
    def faults(self) -> tuple[bool, int]:
        """What is wrong with it, the worse fault first."""
        return self.spills, self.empty


@dataclass(frozen=True, slots=True, kw_only=True)
class _Job:
    """A document told for a paper: ``told`` lacks only pictures, and where pages begin."""

    document: Document
    teller: Teller
    told: Data
    signs: Mapping[str, bytes]
    sizes: Sequence[PictureRow]

    def draft(self, density: float) -> _Draft:
        """Return what is measured with every picture in its whole room."""
        rows = [self.teller.row_data(row, 1.0, lambda _: BLANK) for row in self.teller.rows]
        cover = self._cover(_COVER, lambda _: BLANK)
        told = {"draft": True, "density": density, "beside": True, "breaks": [], "rows": rows}
        found = measured(self._files({**self.told, **told}, cover))
        beside = bool(found["beside"])
        atoms = atoms_of(found["edges"], self.sizes)
        if not beside:
            high, after = found["contents"], found["below"]
            atoms = [Atom(height=high, after=after, fresh=True), *atoms]
        return _Draft(
            density=density, cover=max(_LEAST_COVER, found["cover"]), beside=beside, atoms=atoms
        )

    def set(self, draft: _Draft, plan: Plan) -> _Set:
        """Return the document with pages and pictures as planned, and what is wrong with it."""
        teller, named = self.teller, self.teller.gallery.file_of
        rows = [
            teller.row_data(row, plan.shares.get(row.number, 1.0), named) for row in teller.rows
        ]
        told = {
            "draft": False,
            "density": draft.density,
            "beside": draft.beside,
            "breaks": sorted(plan.breaks),
            "rows": rows,
        }
        files = self._files({**self.told, **told}, self._cover(draft.cover, named))
        edges = measured(files)["edges"]
        empty = half_empty(edges, teller.measure)
        return _Set(files=files, spills=self._spills(edges), empty=empty)

    def _cover(self, room: float, named: Callable[[Shown], str]) -> Data | None:
        """Return the cover's picture in a room so high, mm."""
        opening, teller = self.document.opening, self.teller
        if opening.picture is None:
            return None
        shown = teller.gallery.shown(opening.picture, (teller.measure.width, room), opening.alt)
        return None if shown is None else teller.picture(shown, named)

    def _spills(self, edges: Sequence[Mapping[str, Any]]) -> bool:
        last = edges[-1] if edges else None
        if last is None or last["page"] <= _FEW_PAGES:
            return False
        measure = self.teller.measure
        return bool(last["y"] - measure.top < _SPILL * measure.height)

    def _files(self, told: Data, cover: Data | None) -> dict[str, bytes]:
        """Return all that typst reads."""
        told = {**told, "opening": {**told["opening"], "picture": cover}}
        pictures = self.teller.gallery.files
        shown = [each["file"] for row in told["rows"] for each in row["figures"]]
        names = {*shown, *([cover["file"]] if cover else [])}
        return {
            **_templates(),
            "document.json": json.dumps(told, ensure_ascii=False).encode(),
            **{name: pictures[name] for name in sorted(names & pictures.keys())},
            **self.signs,
        }


def _job(document: Document, lines: Lines, gallery: Gallery, paper: PaperStock, look: Look) -> _Job:
    measure, colours = Measure(paper=paper), booklet_look(look)
    teller = Teller(lines=lines, gallery=gallery, measure=measure)
    signs = {"mark.svg": mark_of(document.opening.kicker or document.author, look)}
    if document.address:
        signs["address.svg"] = _code(document.address, colours.ink)
    told = {
        "page": asdict(measure) | {"width": paper.width, "height": paper.height},
        "look": asdict(colours),
        "language": document.language,
        "words": _words(lines.reader),
        "title": document.title,
        "author": document.author,
        "subject": document.subject,
        "foot": lines.text(document.foot),
        "address": document.address,
        "day": document.day,
        "opening": teller.opening(document.opening),
        "chapters": [teller.chapter(each) for each in document.chapters],
    }
    return _Job(
        document=document,
        teller=teller,
        told=told,
        signs=signs,
        sizes=[row.sized(gallery) for row in teller.rows],
    )


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
