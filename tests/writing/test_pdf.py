"""PDF pages read back with pdfium and pikepdf: sizes, faces, curves, structure, same bytes."""

from __future__ import annotations

import hashlib
import io
import math
import os
import subprocess
import sys
from datetime import date
from pathlib import Path

import pikepdf
import pypdfium2
import pytest
from PIL import Image as Picture

from kerfolio.basis.colour import rgb
from kerfolio.drawing.palette import PALETTE
from kerfolio.drawing.vocabulary import Anchor, Drawing, Ink, Label, Stroke
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.shapes import circle, rectangle
from kerfolio.writing.page import (
    About,
    Image,
    Mark,
    Page,
    Panel,
    Passage,
    Replay,
    Role,
    Rule,
    Run,
    Text,
)
from kerfolio.writing.pdf import pdf_bytes
from kerfolio.writing.pdf_path import quarter_error
from kerfolio.writing.setting import width
from kerfolio.writing.typeface import Face, Style, kern, width_of
from tests.paper.reading import MM, chains, fonts, sizes, texts

ABOUT = About(
    title="Harbour stool: booklet",
    author="Ida Fernhill",
    subject="Booklet, release 1.2.0",
    language="en",
    date=date(2026, 10, 2),
)
READ = Style(points=11)
ROOT = Path(__file__).resolve().parents[2]


def page(*marks: Mark, size: tuple[float, float] = (210.0, 297.0), **more: object) -> Page:
    return Page(width=size[0], height=size[1], passages=(Passage(marks=marks, **more),))  # type: ignore[arg-type]


def text(words: str, x: float = 20, y: float = 250, style: Style = READ, **more: object) -> Text:
    return Text(x=x, y=y, runs=(Run(words, style),), **more)  # type: ignore[arg-type]


def drawing(*items: Stroke | Label, size: tuple[float, float] = (100.0, 100.0)) -> Drawing:
    return Drawing(box=(0.0, 0.0, *size), items=items)


def rendered(content: bytes, dots_per_mm: float = 4.0) -> Picture.Image:
    document = pypdfium2.PdfDocument(content)
    image = document[0].render(scale=dots_per_mm * MM).to_pil().convert("RGB")
    document.close()
    return image


def test_a_page_has_the_size_asked_for() -> None:
    content = pdf_bytes(ABOUT, [page(text("A4")), page(text("Letter"), size=(215.9, 279.4))])
    assert sizes(content) == [(210.0, 297.0), (215.9, 279.4)]


def test_every_face_is_embedded_and_none_is_drawn_by_procedures() -> None:
    runs = tuple(Run(f"{face} Ab ", Style(face=face)) for face in Face)
    content = pdf_bytes(ABOUT, [page(Text(x=10, y=100, runs=runs))])
    assert fonts(content) == [("/TrueType", True)] * len(Face)


def test_the_document_says_what_it_is() -> None:
    with pikepdf.open(io.BytesIO(pdf_bytes(ABOUT, [page(text("x"))]))) as document:
        info, root = document.docinfo, document.Root
        assert str(info["/Title"]) == ABOUT.title
        assert str(info["/Author"]) == ABOUT.author
        assert str(info["/Subject"]) == ABOUT.subject
        assert str(info["/CreationDate"]) == "D:20261002000000+00'00'"
        assert str(root.Lang) == "en"
        assert "/PrintScaling" not in root.ViewerPreferences


def test_a_full_size_print_asks_not_to_be_scaled() -> None:
    about = About(
        title="t", author="a", subject="s", language="en", date=date(2026, 1, 1), full_size=True
    )
    with pikepdf.open(io.BytesIO(pdf_bytes(about, [page(text("x"))]))) as document:
        assert document.Root.ViewerPreferences.PrintScaling == "/None"


def test_bookmarks_lead_to_their_pages() -> None:
    pages = [
        page(text("one"), bookmark="Before you cut"),
        page(text("two")),
        page(text("three"), bookmark="Parts"),
    ]
    with pikepdf.open(io.BytesIO(pdf_bytes(ABOUT, pages))) as document:
        with document.open_outline() as outline:
            found = [(str(item.title), item.destination) for item in outline.root]
        assert [title for title, _ in found] == ["Before you cut", "Parts"]
        numbers = [document.pages.index(pikepdf.Page(where[0])) for _, where in found]
    assert numbers == [0, 2]


def test_text_comes_out_as_it_went_in() -> None:
    words = "AV To “fi” 14 3/16 in × 360 mm, ½ – Ångström, ø 8 ⌀ 漢 → end"
    runs = (Run(words, READ), Run(" CAPS", Style(face=Face.SANS, points=7, tracking=85)))
    content = pdf_bytes(ABOUT, [page(Text(x=20, y=200, runs=runs))])
    assert texts(content) == [words.replace("⌀", "Ø").replace("漢", "?") + " CAPS"]


def test_a_kerned_pair_stands_closer() -> None:
    # Negative by the face's own design; that A and V are the classic pair is common knowledge.
    assert kern(Face.SERIF, "A", "V") < -50
    assert width_of("AV", READ) < width_of("A", READ) + width_of("V", READ)


@pytest.mark.parametrize(("anchor", "left"), [(Anchor.START, 0.0), (Anchor.END, 1.0)])
def test_text_stands_where_it_was_measured_to_stand(anchor: Anchor, left: float) -> None:
    words = "Havn Wood To AVAIL"
    content = pdf_bytes(ABOUT, [page(text(words, x=100, anchor=anchor))])
    document = pypdfium2.PdfDocument(content)
    found = document[0].get_textpage()
    boxes = [found.get_charbox(index) for index in range(found.count_chars())]
    document.close()
    begin, end = boxes[0][0] * MM, boxes[-1][2] * MM
    reach = width_of(words, READ)
    assert begin == pytest.approx(100 - left * reach, abs=0.3)  # side bearings of H and L
    assert end == pytest.approx(100 + (1 - left) * reach, abs=0.3)


def test_turned_text_runs_upward() -> None:
    content = pdf_bytes(ABOUT, [page(text("Upward", x=50, y=100, angle=90))])
    document = pypdfium2.PdfDocument(content)
    found = document[0].get_textpage()
    first, last = found.get_charbox(0), found.get_charbox(5)
    document.close()
    assert last[1] - first[1] > 4 / MM
    assert abs(last[2] - first[2]) < 1.5 / MM


@pytest.mark.parametrize("radius", [3.0, 80.0, 1200.0])
@pytest.mark.parametrize("scale", [1.0, 0.1])
def test_curves_keep_to_their_circle(radius: float, scale: float) -> None:
    ring = Stroke(contour=circle((radius, radius), 2 * radius))
    shown = Drawing(box=(0, 0, 2 * radius, 2 * radius), items=(ring,))
    replay = Replay(x=10, y=10, drawing=shown, scale=scale)
    content = pdf_bytes(ABOUT, [page(replay, size=(2500.0, 2500.0))])
    (chain,) = chains(content, 0)
    centre, reach = 10 + radius * scale, radius * scale
    off = [abs(math.dist(point, (centre, centre)) - reach) for point in chain]
    assert len(chain) > 100
    assert max(off) < 0.002


@pytest.mark.parametrize("sweep", [math.pi / 2, math.pi / 3, 0.2])
def test_the_formula_of_the_curves_error_is_right(sweep: float) -> None:
    handle = 4 / 3 * math.tan(sweep / 4)
    p0, p3 = complex(1, 0), complex(math.cos(sweep), math.sin(sweep))
    p1, p2 = p0 + handle * 1j * p0, p3 - handle * 1j * p3
    worst = 0.0
    for step in range(1001):
        t = step / 1000
        at = (1 - t) ** 3 * p0 + 3 * t * (1 - t) ** 2 * p1 + 3 * t * t * (1 - t) * p2 + t**3 * p3
        worst = max(worst, abs(abs(at) - 1))
    assert worst == pytest.approx(quarter_error(sweep), rel=0.02)


def test_holes_are_left_out_of_a_fill() -> None:
    face = Stroke(
        contour=rectangle(0, 0, 100, 100),
        holes=(rectangle(40, 40, 60, 60),),
        fill=Ink.WOOD,
        width=None,
    )
    image = rendered(
        pdf_bytes(ABOUT, [page(Replay(x=0, y=0, drawing=drawing(face)), size=(100, 100))])
    )
    assert image.getpixel((50 * 4, 50 * 4)) == (255, 255, 255)
    assert image.getpixel((20 * 4, 50 * 4)) == rgb(PALETTE[Ink.WOOD])


def test_the_ground_of_a_print_is_the_paper() -> None:
    image = rendered(
        pdf_bytes(ABOUT, [page(Panel(x=0, y=0, width=50, height=50, ink=Ink.PAPER), size=(50, 50))])
    )
    assert image.getpixel((100, 100)) == (255, 255, 255)


def test_what_lies_outside_a_clip_is_hidden() -> None:
    face = Stroke(contour=rectangle(0, 0, 100, 100), fill=Ink.ACCENT, width=None)
    replay = Replay(x=0, y=0, drawing=drawing(face), clip=(10.0, 10.0, 50.0, 90.0))
    image = rendered(pdf_bytes(ABOUT, [page(replay, size=(100, 100))]))
    assert image.getpixel((30 * 4, 50 * 4)) == rgb(PALETTE[Ink.ACCENT])
    assert image.getpixel((70 * 4, 50 * 4)) == (255, 255, 255)
    assert image.getpixel((30 * 4, 96 * 4)) == (255, 255, 255)


def test_dashes_have_their_length_on_paper() -> None:
    dashed = Stroke(
        contour=Contour(((0, 50, 0), (100, 50, 0)), closed=False), width=1.0, dash=(10.0, 10.0)
    )
    image = rendered(
        pdf_bytes(ABOUT, [page(Replay(x=0, y=0, drawing=drawing(dashed)), size=(100, 100))])
    )
    row = [image.getpixel((round(x * 4), 200)) != (255, 255, 255) for x in (5, 15, 25, 35, 45)]
    assert row == [True, False, True, False, True]


def test_a_picture_keeps_its_shape() -> None:
    out = io.BytesIO()
    Picture.new("RGB", (300, 100), "#b5532a").save(out, "PNG")
    image = Image(x=10, y=10, width=80, height=80, content=out.getvalue())
    shown = rendered(pdf_bytes(ABOUT, [page(image, size=(100, 100))]))
    inked = [
        (x, y)
        for x in range(0, 400, 2)
        for y in range(0, 400, 2)
        if shown.getpixel((x, y)) != (255, 255, 255)
    ]
    wide = max(x for x, _ in inked) - min(x for x, _ in inked)
    high = max(y for _, y in inked) - min(y for _, y in inked)
    assert wide == pytest.approx(80 * 4, abs=4)
    assert high == pytest.approx(80 * 4 / 3, abs=4)


def test_a_link_lies_over_its_words() -> None:
    link = Run("the newest release", READ, "https://example.org/plans/stool/")
    marks = Text(x=20, y=100, runs=(Run("See ", READ), link))
    with pikepdf.open(io.BytesIO(pdf_bytes(ABOUT, [page(marks)]))) as document:
        (annotation,) = document.pages[0].Annots
        box = [float(each) * MM for each in annotation.Rect]
        assert str(annotation.A.URI) == "https://example.org/plans/stool/"
    assert box[0] == pytest.approx(20 + width_of("See ", READ), abs=0.01)
    assert box[2] - box[0] == pytest.approx(width((link,)), abs=0.01)


def test_those_who_listen_hear_passages_in_order() -> None:
    passages = (
        Passage(marks=(text("Parts"),), role=Role.TITLE),
        Passage(marks=(text("first line", y=240),)),
        Passage(marks=(text("second line", y=230),), continues=True),
        Passage(marks=(Rule(x=0, y=0, to_x=9, to_y=9),), role=Role.DECORATION),
        Passage(marks=(Rule(x=0, y=0, to_x=9, to_y=9),), role=Role.FIGURE, alt="A line"),
    )
    content = pdf_bytes(ABOUT, [Page(width=210, height=297, passages=passages)])
    with pikepdf.open(io.BytesIO(content)) as document:
        root = document.Root
        assert bool(root.MarkInfo.Marked)
        kids = list(root.StructTreeRoot.K.K)
        assert [str(kid.S) for kid in kids] == ["/H1", "/P", "/Figure"]
        assert [len(kid.K) for kid in kids] == [1, 2, 1]
        assert str(kids[2].Alt) == "A line"
        owners = root.StructTreeRoot.ParentTree.Nums[1]
        assert [str(owner.S) for owner in owners] == ["/H1", "/P", "/P", "/Figure"]


_RUN_ELSEWHERE = """
import hashlib
from tests.drawing.templates import templates_of
from tests.paper.editions import A4, stool
from tests.paper.printed import layout_pdf
from kerfolio.paper.seams import tiled_on
from kerfolio.paper.template import template_pdf
edition = stool()
print(hashlib.sha256(layout_pdf(edition, A4)).hexdigest())
drawings = templates_of(edition.settled)
content = template_pdf(edition.settled, drawings, tiled_on((drawings,), A4), edition.identity)
print(hashlib.sha256(content).hexdigest())
"""


def test_every_run_and_every_machine_gives_the_same_bytes() -> None:
    def run(zone: str, seed: str, epoch: str) -> str:
        around = {**os.environ, "TZ": zone, "PYTHONHASHSEED": seed, "SOURCE_DATE_EPOCH": epoch}
        return subprocess.run(
            [sys.executable, "-W", "error", "-c", _RUN_ELSEWHERE],
            check=True,
            capture_output=True,
            text=True,
            env=around,
            cwd=ROOT,
        ).stdout

    first = run("Pacific/Auckland", "1", "")
    assert len(first.split()) == 2
    assert first == run("America/St_Johns", "77", "1700000000")


def test_the_same_pages_twice_in_one_run_give_the_same_bytes() -> None:
    pages = [page(text("Twice"), text("é", style=Style(face=Face.SANS)))]
    one, other = (hashlib.sha256(pdf_bytes(ABOUT, pages)).hexdigest() for _ in range(2))
    assert one == other
