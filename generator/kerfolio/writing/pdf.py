"""Pages to PDF: real sizes, embedded faces, bookmarks, the structure for those who listen.

The same pages give the same bytes: nothing of the clock, the machine or the run goes in.
"""

from __future__ import annotations

import io
import re
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from functools import cache, lru_cache
from hashlib import md5
from itertools import groupby
from math import cos, radians, sin
from types import SimpleNamespace
from typing import Any

from kerfolio.basis.catalogue import spoken
from kerfolio.basis.digits import rounded
from kerfolio.basis.figured import Figure, parts_of
from kerfolio.basis.style import Numbers, told_as
from kerfolio.basis.unconfigured import unconfigured
from kerfolio.drawing.expand import expanded
from kerfolio.drawing.palette import PALETTE, Palette
from kerfolio.drawing.vocabulary import Anchor, Drawing, Ink, Label
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
from kerfolio.writing.pdf_path import Place, colour, dashed, number, points, spot, stroke_path
from kerfolio.writing.pdf_slots import Slots
from kerfolio.writing.pdf_structure import Structure
from kerfolio.writing.setting import width
from kerfolio.writing.typeface import MM_PER_POINT, Face, Style, font_file, in_faces, kerns

with unconfigured():
    from reportlab import rl_config
    from reportlab.lib.utils import ImageReader
    from reportlab.pdfbase import pdfdoc, pdfmetrics
    from reportlab.pdfbase.ttfonts import TTFont
    from reportlab.pdfgen.canvas import Canvas

PRODUCER = "Kerfolio"

rl_config.useA85 = 0  # plain binary streams: a fifth smaller, and every reader takes them


@cache
def _font(face: Face, *, fixed: bool) -> Any:
    """Return a face; in a ``fixed`` one each sign of ASCII has its own code, whatever is used."""
    name = f"{face.value}-fixed" if fixed else face.value
    font = TTFont(name, str(font_file(face)), asciiReadable=fixed)
    pdfmetrics.registerFont(font)
    return font


_SIGNS = "·×–’“”…°²ø→\N{NO-BREAK SPACE}"
"""Signs of our own words beyond ASCII: where every file has their shapes, fonts are the same."""
_LETTERS = {"de": "ÄÖÜäöüß„"}
"""Those that a language has besides."""


@dataclass(slots=True)
class _Held:
    """A drawing that a file holds once, and the largest scale it is shown at."""

    name: str
    drawing: Drawing
    scale: float = 0.0


@dataclass(slots=True)
class _Book:
    """A document being written."""

    canvas: Any
    slots: Slots | None = None
    palette: Palette = field(default_factory=lambda: PALETTE)
    signs: str = _SIGNS
    structure: Structure = field(default_factory=Structure)
    bookmarks: int = 0
    code: list[str] = field(default_factory=list)
    drawings: dict[int, _Held] = field(default_factory=dict)
    marks: dict[tuple[Mark, ...], tuple[str, Page]] = field(default_factory=dict)
    faces: set[Face] = field(default_factory=set)
    parts: dict[tuple[Face, str, float], tuple[str, ...]] = field(default_factory=dict)

    def say(self, operators: Iterable[str]) -> None:
        if self.slots is None:
            self.canvas._code.extend(operators)
        else:
            self.code.extend(operators)

    def said(self) -> str:
        """Return what was said since the last time, for a stream; tokens have become numbers."""
        assert self.slots is not None, "without slots nothing is held back"
        text = self.slots.stream(self.code)
        self.code.clear()
        return text

    def drawn_spot(self, point: Point) -> str:
        """Return a point of a drawing, mm, as two numbers in points, which may be told anew."""
        if self.slots is None:
            return spot(point)
        return " ".join(self.slots.hold(mm / MM_PER_POINT) for mm in point)

    def colour(self, ink: Ink, operator: str) -> str:
        return colour(self.palette[ink], operator)

    def font(self, face: Face) -> Any:
        font = _font(face, fixed=self.slots is not None)
        if self.slots is not None and face not in self.faces:
            self.faces.add(face)
            own = (each for each in self.signs if in_faces(face, each) == ((face, each),))
            font.splitString("".join(own), self.canvas._doc)
        return font


def pdf_bytes(about: About, pages: Sequence[Page], palette: Palette = PALETTE) -> bytes:
    """Return the pages as a PDF 1.4 file in the colours of a palette; all lengths in mm, y up.

    With ``about.full_size`` the file asks the reader's program not to scale the print.
    """
    out = io.BytesIO()
    book = _Book(_canvas(out, about, fixed=False), palette=palette)
    _write_pages(book, pages)
    book.canvas.save()
    return out.getvalue()


def fitted_pdf(about: About, pages: Sequence[Page], numbers: Numbers = told_as) -> bytes:
    """Return the same as a file in ASCII whose numbers may be told anew, each in its own place.

    ``numbers`` tells every place and every figure in words.
    """
    out, slots = io.BytesIO(), Slots(numbers)
    signs = _SIGNS + _LETTERS.get(spoken(about.language).split("-", maxsplit=1)[0], "")
    book = _Book(_canvas(out, about, fixed=True), slots, signs=signs)
    _write_pages(book, pages)
    for each in book.drawings.values():
        shown = Replay(x=0.0, y=0.0, drawing=each.drawing)
        _draw(book, shown, each.scale)
        _hold(book, each.name, (each.drawing.width, each.drawing.height))
    for marks, (name, page) in book.marks.items():
        for mark in marks:
            _write(book, mark)
        _hold(book, name, (page.width, page.height))
    _spell_in_ascii(book.canvas._doc)
    book.canvas.save()
    return slots.told(_HEAD.sub(_head_in_ascii, out.getvalue(), count=1).decode("ascii")).encode()


_HEAD = re.compile(rb"(?<=\n%)[^\n]+")
"""The comment in the second line, which tells a file of bytes from one of text."""


def _head_in_ascii(found: re.Match[bytes]) -> bytes:
    return b"text".ljust(len(found[0]))


def _spell_in_ascii(document: Any) -> None:
    """Have fonts packed and spelt in ASCII (ASCII85Decode, ISO 32000-1, 7.4.3)."""
    for font in document.delayedFonts:
        font.addObjects(document)
    document.delayedFonts = []
    for each in document.idToObject.values():
        if isinstance(each, pdfdoc.PDFStream):
            each.filters = [_SPELT, pdfdoc.PDFZCompress]


_SPELT = SimpleNamespace(
    pdfname=pdfdoc.PDFBase85Encode.pdfname,
    encode=lru_cache(maxsize=32)(pdfdoc.PDFBase85Encode.encode),
)
"""The library's filter of that name; what many files hold is spelt once."""


def _write_pages(book: _Book, pages: Sequence[Page]) -> None:
    for page in pages:
        _write_page(book, page)
    book.structure.write(book.canvas._doc)


def _canvas(out: io.BytesIO, about: About, *, fixed: bool) -> Any:
    # an embedded face to begin with, else the library names one that is not
    face = _font(Face.SANS, fixed=fixed)
    canvas: Any = Canvas(
        out,
        pageCompression=int(not fixed),
        invariant=1,
        pdfVersion=(1, 4),
        initialFontName=face.fontName,
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
        if passage.once and book.slots is not None:
            known = (f"marks-{len(book.marks) + 1}", page)
            _show(book, book.marks.setdefault(passage.marks, known)[0])
        else:
            for mark in passage.marks:
                _write(book, mark)
        book.say(["EMC"])
    if book.slots is not None:
        canvas._code.append(book.said())
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
            pen = f"{book.colour(mark.ink, 'RG')} {points(mark.width)} w {dashed(mark.dash)}"
            line = f"{spot((mark.x, mark.y))} m {spot((mark.to_x, mark.to_y))} l S"
            book.say([pen, line])
        case Panel():
            box = f"{spot((mark.x, mark.y))} {points(mark.width)} {points(mark.height)} re f"
            book.say([book.colour(mark.ink, "rg"), box])
        case Image():
            _image(book, mark)
        case Replay():
            _replay(book, mark)


def _text(book: _Book, text: Text, place: Place = spot) -> None:
    across, up = cos(radians(text.angle)), sin(radians(text.angle))
    share = {Anchor.START: 0.0, Anchor.MIDDLE: 0.5, Anchor.END: 1.0}[text.anchor]
    along = -share * width(text.runs)
    for run in text.runs:
        at = (text.x + along * across, text.y + along * up)
        book.say(_set_run(book, run, place(at), (across, up)))
        along += width((run,))
        if run.link:
            _link(book, run, at)


def _set_run(book: _Book, run: Run, at: str, way: Point) -> Iterator[str]:
    """Yield the operators that set a run, kerned, in every face its letters need.

    Figures that may be told anew are not kerned.
    """
    turn = " ".join(number(each) for each in (way[0], way[1], -way[1], way[0]))
    tracking = run.style.tracking / 1000 * run.style.points
    yield f"BT {book.colour(run.style.ink, 'rg')} {number(tracking)} Tc {turn} {at} Tm"
    face = ""
    for operator in _set_parts(book, run):
        if operator != face:
            yield operator
        face = operator if operator.endswith("Tf") else face
    yield "ET"


def _set_parts(book: _Book, run: Run) -> Iterator[str]:
    for is_figure, parts in groupby(_parts(book, run), lambda part: isinstance(part, Figure)):
        if is_figure:
            for part in parts:
                yield from _set_figure(book, part, run.style)
            continue
        for face, letters in in_faces(run.style.face, "".join(map(str, parts))):
            key = (face, letters, run.style.points)
            if key not in book.parts:  # the same words stand on page after page
                book.parts[key] = tuple(_set_part(book, *key))
            yield from book.parts[key]


def _parts(book: _Book, run: Run) -> tuple[Any, ...]:
    """Return words and figures; where numbers are not told anew all of it is words."""
    return parts_of(run.text) if book.slots else (str(run.text),)


def _set_figure(book: _Book, figure: Figure, style: Style) -> Iterator[str]:
    assert book.slots is not None, "figures are told with the words where nothing is held back"
    name = book.font(style.face).getSubsetInternalName(0, book.canvas._doc)
    yield f"{name} {number(style.points)} Tf"
    yield f"[{book.slots.figure(figure)}] TJ"


def _set_part(book: _Book, face: Face, part: str, size: float) -> Iterator[str]:
    document = book.canvas._doc
    font, subset, row = book.font(face), -1, ""
    for letter, after in zip(part, kerns(face, part), strict=True):
        ((used, code),) = font.splitString(letter, document)
        if used != subset:
            if row:
                yield f"[{row}] TJ"
            yield f"{font.getSubsetInternalName(used, document)} {number(size)} Tf"
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
    book.say(["q 1 J 1 j"])
    if replay.clip:
        x, y, right, top = replay.clip
        book.say([f"{spot((x, y))} {points(right - x)} {points(top - y)} re W n"])
    if replay.once and book.slots is not None:
        name = f"drawing-{len(book.drawings) + 1}"
        held = book.drawings.setdefault(id(replay.drawing), _Held(name, replay.drawing))
        held.scale = max(held.scale, replay.scale)
        book.say([f"{_turned(replay)} {spot((replay.x, replay.y))} cm"])
        _show(book, held.name)
    else:
        _draw(book, replay, replay.scale)
    book.say(["Q"])


def _turned(replay: Replay) -> str:
    across, up = cos(radians(replay.angle)), sin(radians(replay.angle))
    return " ".join(number(replay.scale * each) for each in (across, up, -up, across))


def _draw(book: _Book, replay: Replay, fine: float) -> None:
    """Say a drawing's items where they are shown, curves as for a scale of ``fine``."""
    drawing, scale = replay.drawing, replay.scale
    left, bottom = drawing.box[:2]
    written = spot if replay.still else book.drawn_spot

    def at(point: Point) -> Point:
        return replay.x + (point[0] - left) * scale, replay.y + (point[1] - bottom) * scale

    def place(point: Point) -> str:
        return written(at(point))

    for each in (part for item in drawing.items for part in expanded(item)):
        if isinstance(each, Label):
            _text(book, _label(each, at, scale), written)
        else:
            book.say(stroke_path(each, fine, place, book.palette))


def _show(book: _Book, name: str) -> None:
    book.say([f"/{book.canvas._doc.getXObjectName(name)} Do"])
    book.canvas._formsinuse.append(name)


def _hold(book: _Book, name: str, size: Point) -> None:
    """Put what was said into the file by itself (a form XObject, ISO 32000-1, 8.10)."""
    form = pdfdoc.PDFFormXObject(0, 0, *_in_points(size))
    form.setStreamList(book.said())
    book.canvas._doc.addForm(name, form)


def _label(label: Label, at: Callable[[Point], Point], scale: float) -> Text:
    face = Face.SANS_STRONG if label.strong else Face.SANS
    style = Style(face=face, points=label.height * scale / MM_PER_POINT, ink=label.ink)
    x, y = at(label.at)
    return Text(x=x, y=y, runs=(Run(label.text, style),), anchor=label.anchor, angle=label.angle)
