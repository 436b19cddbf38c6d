"""Pages to PDF: real sizes, embedded faces, bookmarks, the structure for those who listen.

The same pages give the same bytes: nothing of the clock, the machine or the run goes in.
"""

from __future__ import annotations

import io
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from functools import cache
from hashlib import md5
from math import cos, radians, sin
from typing import Any

from kerfolio.basis.digits import rounded
from kerfolio.basis.unconfigured import unconfigured
from kerfolio.drawing.expand import expanded
from kerfolio.drawing.extent import box_of
from kerfolio.drawing.lettering import Box
from kerfolio.drawing.vocabulary import Anchor, Label, Stroke
from kerfolio.drawing.window import meets
from kerfolio.geometry.contour import Point
from kerfolio.writing.page import (
    About,
    Image,
    Mark,
    Page,
    Panel,
    Passage,
    Replay,
    Rule,
    Run,
    Text,
)
from kerfolio.writing.pdf_path import Spot, colour, dashed, number, points, spot, stroke_path
from kerfolio.writing.pdf_structure import Structure
from kerfolio.writing.setting import width
from kerfolio.writing.typeface import MM_PER_POINT, Face, Style, font_file, in_faces, kerns

with unconfigured():
    from reportlab import rl_config
    from reportlab.lib.utils import ImageReader
    from reportlab.pdfbase import pdfmetrics
    from reportlab.pdfbase.ttfonts import TTFont
    from reportlab.pdfgen.canvas import Canvas

PRODUCER = "Kerfolio"

_BLEED = 1.0  # mm around an item's box: half the thickest line and what kerning may add

rl_config.useA85 = 0  # plain binary streams: a fifth smaller, and every reader takes them


@cache
def _font(face: Face) -> Any:
    font = TTFont(face.value, str(font_file(face)), asciiReadable=False)
    pdfmetrics.registerFont(font)
    return font


@dataclass(slots=True)
class _Book:
    """A document being written."""

    canvas: Any
    structure: Structure = field(default_factory=Structure)
    bookmarks: int = 0

    def say(self, operators: Iterable[str]) -> None:
        self.canvas._code.extend(operators)


def pdf_bytes(about: About, pages: Sequence[Page]) -> bytes:
    """Return the pages as a PDF 1.4 file; all lengths on them in mm, y up.

    With ``about.full_size`` the file asks the reader's program not to scale the print.
    """
    out = io.BytesIO()
    book = _Book(_canvas(out, about))
    for page in pages:
        _write_page(book, page)
    book.structure.write(book.canvas._doc)
    book.canvas.save()
    return out.getvalue()


def _canvas(out: io.BytesIO, about: About) -> Any:
    _font(Face.SANS)  # an embedded face to begin with, else the library names one that is not
    canvas: Any = Canvas(
        out,
        pageCompression=1,
        invariant=1,
        pdfVersion=(1, 4),
        initialFontName=Face.SANS.value,  # type: ignore[arg-type] # the stub says a number
        lang=about.language,
    )
    document = canvas._doc
    # SOURCE_DATE_EPOCH would still reach the dates and the file's id: both come from `about` alone.
    document._timeStamp.YMDhms = (about.date.year, about.date.month, about.date.day, 0, 0, 0)
    document.signature = md5(about.subject.encode(), usedforsecurity=False)
    canvas.setTitle(about.title)
    canvas.setAuthor(about.author)
    canvas.setSubject(about.subject)
    canvas.setCreator(PRODUCER)
    canvas.setProducer(PRODUCER)
    canvas.setViewerPreference("DisplayDocTitle", "true")
    if about.full_size:
        canvas.setViewerPreference("PrintScaling", "None")
    return canvas


def _write_page(book: _Book, page: Page) -> None:
    canvas = book.canvas
    canvas.setPageSize(_in_points((page.width, page.height)))
    book.structure.open_page()
    for passage in page.passages:
        if passage.bookmark:
            _bookmark(book, passage, page)
        book.say([book.structure.opening(passage)])
        for mark in passage.marks:
            _write(book, mark)
        book.say(["EMC"])
    canvas.showPage()


def _in_points(lengths: Iterable[float]) -> tuple[float, ...]:
    """Return lengths in mm as points that the library writes in four decimals."""
    return tuple(rounded(mm / MM_PER_POINT) for mm in lengths)


def _bookmark(book: _Book, passage: Passage, page: Page) -> None:
    key = f"place-{book.bookmarks}"
    book.bookmarks += 1
    tops = [mark.y for mark in passage.marks if isinstance(mark, Text)]
    top = min(page.height, max(tops, default=page.height) + 15)
    book.canvas.bookmarkPage(key, fit="XYZ", left=0, top=rounded(top / MM_PER_POINT), zoom=0)
    book.canvas.addOutlineEntry(passage.bookmark, key, level=passage.level, closed=1)
    book.canvas.showOutline()


def _write(book: _Book, mark: Mark) -> None:
    match mark:
        case Text():
            _text(book, mark)
        case Rule():
            pen = f"{colour(mark.ink, 'RG')} {points(mark.width)} w {dashed(mark.dash)}"
            book.say([pen, f"{spot((mark.x, mark.y))} m {spot((mark.to_x, mark.to_y))} l S"])
        case Panel():
            box = f"{spot((mark.x, mark.y))} {points(mark.width)} {points(mark.height)} re f"
            book.say([colour(mark.ink, "rg"), box])
        case Image():
            _image(book, mark)
        case Replay():
            _replay(book, mark)


def _text(book: _Book, text: Text) -> None:
    across, up = cos(radians(text.angle)), sin(radians(text.angle))
    share = {Anchor.START: 0.0, Anchor.MIDDLE: 0.5, Anchor.END: 1.0}[text.anchor]
    along = -share * width(text.runs)
    for run in text.runs:
        at = (text.x + along * across, text.y + along * up)
        book.say(_set_run(book.canvas._doc, run, at, (across, up)))
        along += width((run,))
        if run.link:
            _link(book, run, at)


def _set_run(document: Any, run: Run, at: Point, way: Point) -> Iterator[str]:
    """Yield the operators that set a run, kerned, in every face its letters need."""
    turn = " ".join(number(each) for each in (way[0], way[1], -way[1], way[0]))
    tracking = run.style.tracking / 1000 * run.style.points
    yield f"BT {colour(run.style.ink, 'rg')} {number(tracking)} Tc {turn} {spot(at)} Tm"
    for face, part in in_faces(run.style.face, run.text):
        yield from _set_part(document, face, part, run.style)
    yield "ET"


def _set_part(document: Any, face: Face, part: str, style: Style) -> Iterator[str]:
    font, subset, row = _font(face), -1, ""
    for letter, after in zip(part, kerns(face, part), strict=True):
        ((used, code),) = font.splitString(letter, document)
        if used != subset:
            if row:
                yield f"[{row}] TJ"
            yield f"{font.getSubsetInternalName(used, document)} {number(style.points)} Tf"
            subset, row = used, ""
        row += f"<{code.hex()}>" + (f"{number(-after)}" if after else "")
    yield f"[{row}] TJ".replace("><", "")


def _link(book: _Book, run: Run, at: Point) -> None:
    left, base = at
    box = (left, base - 0.25 * run.style.em, left + width((run,)), base + 0.8 * run.style.em)
    book.canvas.linkURL(run.link, _in_points(box))


def picture_size(content: bytes) -> tuple[int, int]:
    """Return the width and height of a PNG or JPEG picture in pixels."""
    wide, high = ImageReader(io.BytesIO(content)).getSize()
    return int(wide), int(high)


def _image(book: _Book, image: Image) -> None:
    picture = ImageReader(io.BytesIO(image.content))
    wide, high = picture.getSize()
    scale = min(image.width / wide, image.height / high)
    left = image.x + (image.width - wide * scale) / 2
    bottom = image.y + (image.height - high * scale) / 2
    box = (left, bottom, wide * scale, high * scale)
    book.canvas.drawImage(picture, *_in_points(box), mask="auto")


def _replay(book: _Book, replay: Replay) -> None:
    left, bottom = replay.drawing.box[:2]
    scale = replay.scale

    def at(point: Point) -> Point:
        return replay.x + (point[0] - left) * scale, replay.y + (point[1] - bottom) * scale

    book.say(["q 1 J 1 j"])
    if replay.clip:
        x, y, right, top = replay.clip
        book.say([f"{spot((x, y))} {points(right - x)} {points(top - y)} re W n"])
    for each in (part for item in replay.drawing.items for part in expanded(item)):
        if replay.clip and not _in_sight(each, at, replay.clip):
            continue
        if isinstance(each, Label):
            _text(book, _label(each, at, scale))
        else:
            book.say(stroke_path(each, scale, at))
    book.say(["Q"])


def _in_sight(item: Stroke | Label, at: Spot, clip: Box) -> bool:
    """Tell whether any of an item may show: what surely lies outside need not be written."""
    left, bottom, right, top = box_of(item)
    (x0, y0), (x1, y1) = at((left - _BLEED, bottom - _BLEED)), at((right + _BLEED, top + _BLEED))
    return meets((x0, y0, x1, y1), clip)


def _label(label: Label, at: Spot, scale: float) -> Text:
    face = Face.SANS_STRONG if label.strong else Face.SANS
    style = Style(face=face, points=label.height * scale / MM_PER_POINT, ink=label.ink)
    x, y = at(label.at)
    return Text(x=x, y=y, runs=(Run(label.text, style),), anchor=label.anchor, angle=label.angle)
