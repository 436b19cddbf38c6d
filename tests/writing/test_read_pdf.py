"""Pages come back in mm: lines with their pens, arcs as arcs, letters; pdfium reads the same."""

from __future__ import annotations

import io
from datetime import date
from math import inf, sqrt

import pikepdf
import pypdfium2
import pytest

from kerfolio.drawing.palette import PALETTE
from kerfolio.drawing.vocabulary import Anchor, Drawing, Ink, Label, Stroke
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.measure import area, bounds, length
from kerfolio.geometry.shapes import circle, polygon
from kerfolio.writing.page import About, Page, Passage, Replay, Role, Rule
from kerfolio.writing.pdf import pdf_bytes
from kerfolio.writing.read_back import UnreadableError
from kerfolio.writing.read_pdf import Pen, curve_bulge, read_pdf

ABOUT = About(title="t", author="a", subject="s", language="en", date=date(2026, 1, 2))
SHAPE = polygon([(0, 0, 0), (90, 0, 0), (90, 50, 12), (0, 50, 0)])
ITEMS = (
    Stroke(contour=SHAPE, width=0.35, fill=Ink.WASTE),
    Stroke(contour=circle((30, 20), 6.6), width=0.18, ink=Ink.ACCENT),
    Stroke(contour=Contour(((5.0, 5.0, 0.0), (9.0, 7.0, 0.0)), closed=False), width=0.18),
    Label(text="Slot 17.8 mm, “A” Ø", at=(10.0, 40.0), height=4.0, anchor=Anchor.START),
)


def printed(scale: float = 1.0) -> bytes:
    drawing = Drawing(box=(0, 0, 90, 50), items=ITEMS)
    replay = Replay(x=20, y=30, drawing=drawing, scale=scale, clip=(10, 10, 190, 150))
    rule = Rule(x=5, y=5, to_x=105, to_y=5, width=0.13)
    passages = (Passage(marks=(rule,)), Passage(marks=(replay,), role=Role.FIGURE, alt="x"))
    return pdf_bytes(ABOUT, (Page(width=200, height=160, passages=passages),))


def test_lines_pens_and_letters_come_back() -> None:
    (page,) = read_pdf(printed())
    assert page.size == pytest.approx((200, 160), abs=1e-4)
    assert page.clip == pytest.approx((10, 10, 190, 150), abs=1e-4)
    rule, shape, ring, line = page.lines
    assert not rule.inset
    assert all(each.inset for each in (shape, ring, line))
    assert shape.pen == Pen(0.35, PALETTE[Ink.INK], PALETTE[Ink.WASTE])
    assert ring.pen == Pen(0.18, PALETTE[Ink.ACCENT], "")
    assert length(shape.contour) == pytest.approx(length(SHAPE), abs=1e-3)
    assert area(shape.contour) == pytest.approx(area(SHAPE), abs=0.05)
    assert bounds(shape.contour).x0 == pytest.approx(20.0, abs=1e-4)
    assert bounds(shape.contour).y1 == pytest.approx(80.0, abs=1e-4)
    assert ring.contour.closed
    assert not line.contour.closed
    (word,) = page.words
    assert word.at == pytest.approx((30, 70), abs=1e-4)
    document = pypdfium2.PdfDocument(printed())
    assert document[0].get_textpage().get_text_range() == word.text == "Slot 17.8 mm, “A” Ø"
    document.close()


def test_a_matrix_and_a_unit_of_the_page_count() -> None:
    out = io.BytesIO()
    with pikepdf.open(io.BytesIO(printed())) as document:
        page = document.pages[0]
        page.obj.UserUnit = 2
        page.contents_add(b"2 0 0 2 10 20 cm", prepend=True)
        document.save(out)
    (found,) = read_pdf(out.getvalue())
    assert found.size == pytest.approx((400, 320), abs=1e-3)
    (x, y, _), (u, v, _) = found.lines[0].contour.vertices
    point = 25.4 / 72
    assert (x, y) == pytest.approx((4 * 5 + 20 * point, 4 * 5 + 40 * point), abs=1e-3)
    assert (u - x, v - y) == pytest.approx((400, 0), abs=1e-3)


def test_a_curve_is_the_arc_it_stands_for_or_none() -> None:
    """A quarter of a circle of radius 10 has handles of 4/3 (sqrt 2 - 1) radii."""
    reach = 10 * 4 / 3 * (sqrt(2) - 1)
    quarter = ((10.0, 0.0), (10.0, reach), (reach, 10.0), (0.0, 10.0))
    assert curve_bulge(*quarter) == pytest.approx(sqrt(2) - 1, abs=1e-9)
    assert curve_bulge(*quarter[::-1]) == pytest.approx(1 - sqrt(2), abs=1e-9)
    assert curve_bulge(quarter[0], (10.0, reach + 1), (reach + 1, 10.0), quarter[3]) == inf
    assert curve_bulge(quarter[0], (10.0, 3.0), (3.0, 20.0), quarter[3]) == inf
    assert curve_bulge((0, 0), (1, 0), (2, 0), (3, 0)) == inf
    assert curve_bulge((0, 0), (1, 0), (2, 1), (0, 0)) == inf


@pytest.mark.parametrize("content", [b"", b"%PDF-1.4\n", printed()[:900]])
def test_what_is_no_pdf_is_said(content: bytes) -> None:
    with pytest.raises(UnreadableError, match="it is no PDF file"):
        read_pdf(content)
