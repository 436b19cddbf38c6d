"""Numbers of a PDF file told anew: nothing moves, and the file is the one written for them."""

from __future__ import annotations

import io
import re
from dataclasses import replace
from datetime import date

import pikepdf
import pypdfium2
import pytest

from kerfolio.basis.figured import Figure, figured
from kerfolio.basis.style import Rule, Style, told_as
from kerfolio.drawing.vocabulary import Drawing, Label, Stroke
from kerfolio.geometry.shapes import rectangle
from kerfolio.writing.page import About, Page, Passage, Replay, Role, Run, Text
from kerfolio.writing.pdf import fitted_pdf
from kerfolio.writing.read_pdf import read_pdf
from kerfolio.writing.typeface import Face
from kerfolio.writing.typeface import Style as Type

ABOUT = About(
    title="Slots", author="A. Maker", subject="A test", language="en", date=date(2026, 10, 2)
)
WIDE = Style(rule=Rule.FIXED, decimals=2, after=" mm")
MARK = re.compile("\x02([0-9]+)\x03")


def pages(width: float) -> tuple[Page, ...]:
    """Return two pages that show one slot, at full size and half, with words about it."""
    words = figured("{} wide – ø ½", Figure(width, WIDE))
    drawing = Drawing(
        box=(0.0, 0.0, 80.0, 40.0),
        items=(
            Stroke(contour=rectangle(10, 10, 60, 10 + width)),
            Label(text=words, at=(10, 4), height=4),
        ),
    )
    style = Type(face=Face.SERIF, points=10)
    told = figured("A slot, {} wide", Figure(width, WIDE))
    line = Passage(marks=(Text(x=20, y=120, runs=(Run(told, style), Run(".", style))),))

    def shown(scale: float) -> Passage:
        replay = Replay(x=20, y=30, drawing=drawing, scale=scale, once=True)
        return Passage(marks=(replay,), role=Role.FIGURE, alt="A slot")

    return tuple(Page(width=120, height=150, passages=(line, shown(scale))) for scale in (1.0, 0.5))


class Marks:
    """Puts a mark for each number, and keeps them."""

    def __init__(self) -> None:
        self.kept: list[tuple[float | None, Style]] = []

    def __call__(self, value: float | None, style: Style) -> str:
        self.kept.append((value, style))
        return f"\x02{len(self.kept) - 1}\x03"


def filled_in(width: float) -> bytes:
    """Return the file found from two others, each number a line between theirs."""
    low, high = Marks(), Marks()
    text = fitted_pdf(ABOUT, pages(17.2), low).decode("ascii")
    assert MARK.sub("", text) == MARK.sub("", fitted_pdf(ABOUT, pages(18.6), high).decode("ascii"))
    share = (width - 17.2) / (18.6 - 17.2)

    def told(found: re.Match[str]) -> str:
        (a, style), (b, _) = low.kept[int(found[1])], high.kept[int(found[1])]
        assert a is not None
        assert b is not None
        return told_as(a + share * (b - a), style)

    return MARK.sub(told, text).encode("ascii")


@pytest.mark.parametrize("width", [17.2, 17.63, 18.0, 18.6])
def test_a_file_filled_in_is_the_file_written(width: float) -> None:
    """Digits in whatever order: 17.63, 17.2 and 18 use other letters of the face first."""
    assert filled_in(width) == fitted_pdf(ABOUT, pages(width))


@pytest.mark.parametrize("width", [17.2, 17.63, 18.0])
def test_it_opens_elsewhere_and_the_slot_is_what_is_stated(width: float) -> None:
    content = filled_in(width)
    with pikepdf.open(io.BytesIO(content)) as document:
        assert document.check_pdf_syntax() == []
        assert len(document.pages) == 2
    document = pypdfium2.PdfDocument(content)
    words = [page.get_textpage().get_text_range() for page in document]
    document.close()
    assert all(f"A slot, {width:.2f} mm wide." in each for each in words)
    assert all(f"{width:.2f} mm wide – ø ½" in each for each in words)
    for page, scale in zip(read_pdf(content), (1.0, 0.5), strict=True):
        (contour,) = (line.contour for line in page.lines if line.inset)
        ys = [y for _, y, _ in contour.vertices]
        assert (max(ys) - min(ys)) / scale == pytest.approx(width, abs=0.002)


def test_streams_are_as_long_as_they_say_and_objects_where_they_are_said_to_be() -> None:
    content = filled_in(17.63)
    streams = re.findall(rb"/Length ([0-9]+)[^>]*>>\nstream\n((?s:.*?))endstream", content)
    assert len(streams) > 3
    for length, rest in streams:
        assert len(rest.rstrip(b"\n")) <= int(length) <= len(rest)
    start = int(content[content.rindex(b"startxref") :].split()[1])
    rows = content[start:].split(b"\n")
    places = [int(row[:10]) for row in rows if row.rstrip().endswith(b" n")]
    assert len(places) > 10
    for number, place in enumerate(places, 1):
        assert content[place:].startswith(b"%d 0 obj" % number)


def test_a_drawing_stands_in_the_file_once() -> None:
    content = fitted_pdf(ABOUT, pages(18.0))
    assert content.count(b"/Subtype /Form") == 1
    assert content.count(b" Do\n") == 2
    assert content.isascii()


def unmarked(pages: tuple[Page, ...]) -> str:
    return MARK.sub("", fitted_pdf(ABOUT, pages, Marks()).decode())


def test_a_figure_that_takes_another_sign_moves_nothing() -> None:
    def page(width: float) -> tuple[Page, ...]:
        told = Run(figured("A slot, {}", Figure(width, WIDE)), Type(face=Face.SERIF, points=10))
        line = Passage(marks=(Text(x=9, y=9, runs=(told,)),))
        return (Page(width=90, height=90, passages=(line,)),)

    assert len({unmarked(page(width)) for width in (9.99, 10.0, 99.994, 1000.0)}) == 1
    document = pypdfium2.PdfDocument(fitted_pdf(ABOUT, page(9.99)))
    assert document[0].get_textpage().get_text_range() == "A slot, 9.99 mm"
    document.close()


def test_another_decimal_mark_is_one_of_the_signs_of_every_face() -> None:
    told = Figure(9.99, replace(WIDE, mark=","))
    run = Run(figured("A slot, {}", told), Type(face=Face.SERIF, points=10))
    page = Page(width=90, height=90, passages=(Passage(marks=(Text(x=9, y=9, runs=(run,)),)),))
    content = fitted_pdf(ABOUT, (page,))
    assert b"(9,99 mm)" in content
    document = pypdfium2.PdfDocument(content)
    assert document[0].get_textpage().get_text_range() == "A slot, 9,99 mm"
    document.close()


def test_words_moved_by_a_figure_that_takes_another_sign_are_seen() -> None:
    """9.99 mm and 10 mm are not of one width: a full stop behind them stands elsewhere."""
    one, other = (unmarked(pages(width)) for width in (9.99, 10.0))
    assert one != other


@pytest.mark.parametrize("after", [" (in)", " ½"])
def test_a_figure_that_is_no_plain_text_is_refused(after: str) -> None:
    (page, _) = pages(18.0)
    odd = figured("{}", Figure(18.0, replace(WIDE, after=after)))
    text = Text(x=20, y=120, runs=(Run(odd, Type(face=Face.SANS, points=10)),))
    with pytest.raises(ValueError, match="no figure that a PDF file can tell anew"):
        fitted_pdf(ABOUT, [replace(page, passages=(Passage(marks=(text,)),))])


def test_a_drawing_held_once_may_be_turned() -> None:
    drawing = Drawing(box=(0.0, 0.0, 40.0, 20.0), items=(Stroke(contour=rectangle(0, 0, 40, 10)),))
    replay = Replay(x=60, y=30, drawing=drawing, scale=0.5, once=True, angle=90.0)
    page = Page(width=100, height=100, passages=(Passage(marks=(replay,), role=Role.FIGURE),))
    (read,) = read_pdf(fitted_pdf(ABOUT, (page,)))
    (line,) = read.lines
    xs, ys, _ = zip(*line.contour.vertices, strict=True)
    assert (min(xs), max(xs)) == (pytest.approx(55, abs=0.001), pytest.approx(60, abs=0.001))
    assert (min(ys), max(ys)) == (pytest.approx(30, abs=0.001), pytest.approx(50, abs=0.001))


def test_files_of_other_words_have_the_same_fonts() -> None:
    def fonts(words: str) -> list[str]:
        line = Passage(marks=(Text(x=20, y=120, runs=(Run(words, Type(face=Face.SANS)),)),))
        page = Page(width=100, height=150, passages=(line,))
        text = fitted_pdf(ABOUT, (page,)).decode()
        return [each for each in text.splitlines() if len(each) > 5000]

    assert fonts("360 × 450 mm") == fonts("– Page 1 · 9 cm²") != []
