"""A document as a booklet to print: a tagged PDF, set by typst from data and one template.

What is measured in a first setting decides how high pictures are in the next (``fitting.py``).
"""

from __future__ import annotations

import io
import json
from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass, field
from functools import cache, partial
from typing import Any

import segno

from kerfolio.basis.shipped import shipped
from kerfolio.booklet.art import Gallery
from kerfolio.booklet.fitting import boxes_of, fitted
from kerfolio.booklet.lines import Lines
from kerfolio.booklet.look import BookletLook
from kerfolio.booklet.measure import Measure
from kerfolio.booklet.rows import PictureRow
from kerfolio.booklet.setting import measured, printed
from kerfolio.booklet.told import Teller, targets
from kerfolio.document.chapter import Document
from kerfolio.model.stock import PaperStock
from kerfolio.writing.palette import PALETTE, Palette
from kerfolio.writing.svg import svg_bytes

_SETTINGS = 3
"""How often a booklet is set to find its pictures' sizes; most are found after the first."""
_COVER = 110.0
"""Room for the cover's picture before anybody has measured what is left for it, mm."""
_LEAST_COVER = 40.0
_NEAR = 0.4
"""mm of a picture that no further setting is worth."""

Data = dict[str, Any]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Sizes:
    """Sizes that one setting finds for the next: the room of the cover's picture, mm, and how much
    of its own room each row of pictures is given, where it is not all.
    """

    cover: float = _COVER
    shares: Mapping[int, float] = field(default_factory=dict)

    def near(self, other: _Sizes, rows: Sequence[PictureRow]) -> bool:
        """Tell whether pictures come out alike."""
        moved = (
            row.room * (self.shares.get(place, 1.0) - other.shares.get(place, 1.0))
            for place, row in enumerate(rows)
            if not row.fixed
        )
        return abs(self.cover - other.cover) < _NEAR and all(abs(each) < _NEAR for each in moved)


def booklet_pdf(
    document: Document,
    paper: PaperStock,
    pictures: Mapping[str, bytes],
    look: BookletLook = BookletLook(),  # noqa: B008  frozen
    palette: Palette = PALETTE,
) -> bytes:
    """Return the document as PDF 1.7 after PDF/UA-1 (ISO 14289-1), the same bytes on any day.

    ``pictures`` are the bytes of its photos, PNG or JPEG, by their file; ``palette`` gives drawings
    their colours.
    """
    gallery = Gallery(
        pictures=pictures, written=partial(svg_bytes, palette=palette, stretched=False)
    )
    measure, sizes = Measure(paper=paper), _Sizes()
    for _ in range(_SETTINGS):
        files, rows = _files(document, gallery, measure, look, sizes)
        found = _found(files, rows, measure)
        if found.near(sizes, rows):
            break
        sizes = found
    else:
        files, _ = _files(document, gallery, measure, look, sizes)
    return printed(files)


def _files(
    document: Document, gallery: Gallery, measure: Measure, look: BookletLook, sizes: _Sizes
) -> tuple[dict[str, bytes], Sequence[PictureRow]]:
    """Return all that typst reads, and the rows of pictures in it."""
    lines = Lines(language=document.language, targets=targets(document))
    teller = Teller(lines=lines, gallery=gallery, measure=measure, shares=sizes.shares)
    told = {
        "page": asdict(measure) | {"width": measure.paper.width, "height": measure.paper.height},
        "look": asdict(look),
        "language": document.language,
        "title": f"{document.opening.title}: {document.what[:1].lower()}{document.what[1:]}",
        "author": document.author,
        "subject": document.subject,
        "foot": lines.text(document.foot),
        "address": document.address,
        "day": document.day,
        "opening": teller.opening(document.opening, sizes.cover),
        "chapters": [teller.chapter(each) for each in document.chapters],
    }
    files = {
        "main.typ": _template(),
        "document.json": json.dumps(told, ensure_ascii=False).encode(),
        **gallery.files,
    }
    if document.address:
        files["address.svg"] = _code(document.address, look.ink)
    return files, teller.rows


def _found(files: Mapping[str, bytes], rows: Sequence[PictureRow], measure: Measure) -> _Sizes:
    """Return the sizes that a setting of these files asks for."""
    told = measured(files)
    boxes = boxes_of(told["edges"], measure)
    return _Sizes(
        cover=max(_LEAST_COVER, told["cover"]), shares=fitted(boxes, rows, measure.height)
    )


@cache
def _template() -> bytes:
    return (shipped("themes") / "workbench" / "booklet.typ").read_bytes()


def _code(address: str, ink: str) -> bytes:
    """Return the address as a sign for a phone to read (ISO/IEC 18004), its quiet zone with it."""
    out = io.BytesIO()
    segno.make_qr(address, error="m").save(out, kind="svg", border=4, dark=ink, xmldecl=False)
    return out.getvalue()
