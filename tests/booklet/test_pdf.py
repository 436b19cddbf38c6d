"""The booklet as a file: read back by programs that did not write it."""

from __future__ import annotations

import hashlib
import os
import subprocess
import sys
from dataclasses import replace

import pytest

from kerfolio.booklet.pdf import booklet_pdfs
from kerfolio.document.blocks import Figure, Paragraph, Size
from kerfolio.document.chapter import Chapter, Document
from kerfolio.document.picture import Art
from kerfolio.drawing.hardware_view import hardware_views
from kerfolio.model.look import Look
from kerfolio.model.stock import HardwareStock, PaperStock
from tests.booklet.accessible import faults, tree
from tests.booklet.reading import bookmarks, font_names, letter_sizes, runs, texts
from tests.booklet.sample import A4, DOCUMENT, LETTER, pictures

_LEAST_POINTS = 7.5


def printed(document: Document = DOCUMENT, paper: PaperStock = A4) -> bytes:
    return booklet_pdfs(document, {"one": paper}, pictures(), Look())["one"]


@pytest.fixture(scope="module", params=[A4, LETTER], ids=lambda paper: paper.name)
def booklet(request: pytest.FixtureRequest) -> bytes:
    return printed(paper=request.param)


def test_it_keeps_what_a_machine_can_tell_of_pdf_ua(booklet: bytes) -> None:
    assert faults(booklet) == []


def test_every_picture_says_what_it_shows(booklet: bytes) -> None:
    told = [words for kind, words in tree(booklet) if kind == "Figure"]
    boards = ["cover", "whole", "left", "right", "long", *(f"step-{at}" for at in range(1, 5))]
    assert sorted(told) == sorted([*(f"The board {each}" for each in boards), "The bird at home"])


def test_everything_is_told_in_its_order(booklet: bytes) -> None:
    whole = " ".join(texts(booklet))
    at = 0
    for words in _ORDER:
        found = whole.find(words, at)
        assert found >= 0, f"{words!r} is missing after {whole[max(0, at - 60) : at]!r}"
        at = found
    for words in ("Nothing in it", "Unseen", "Never shown"):
        assert words not in whole


def test_its_own_words_are_those_of_its_language() -> None:
    document = replace(DOCUMENT, language="de", chapters=DOCUMENT.chapters[:3])
    whole = " ".join(texts(printed(document)))
    for words in ("Bitte beachten", "Seite 1 von", " (Seite ", "Ohne CNC-Fräse", "Vorsicht"):
        assert words in whole
    for words in ("Please note", "page ", "Without a router", "Caution"):
        assert words not in whole


_ORDER = (
    "The Aviary",
    "Shelf bird",
    "A bird that sits on a shelf and does nothing else",
    "Release 1.0.0 had too long a beak.",
    "1.1.0 3 May 2031",
    "Choose your wood 2",
    "Drawn by nobody in particular.",
    "Choose your wood",
    "Measure before you choose.",
    "Where it stands: the boards (page ",
    "); elsewhere: nothing of it.",
    "Loud and small.",
    "For this bird",
    "Keep the beak away. Wear shoes.",
    "Also with a saw.",
    "a square a knife",
    "1. first this 2. then that",
    "a clamp of 600 mm (23 5/8″)",
    "What the boards weigh",
    "Mark Board Pieces kg",
    "A1 wing of birch 2 0.5",
    "B body 1 12.25",
    "Together 3 12.75",
    "value 2",
    "The boards",
    "The whole, put together.",
    "Words beside a small picture.",
    "A photo.",
    "Left, A1",
    "Right.",
    "A long one.",
    "Instead of a model.",
    "Putting it together",
    "The bird",
    "1 Join board 1",
    "Add A1 wing B body",
    "Join 1.",
    "Lay the board on the bench",
    "Without a router Chisel the corners square.",
    "Caution Mind your fingers.",
    "4 Join board 4",
    "The maker’s words",
    "She said “it fits”, really, with 8x4 code and 800 × 600 mm of 3/4″ ply, see the newest.",
    "A new line.",
    "7. seven",
    "8. eight",
    "– inner",
    "☐ to tick",
    "Measure twice.",
    "if dry:",
    "glue()",
    "white 30 brown 45",
    "Can it fly? No.",
    "3 May 2031",
    "A correction The beak was too long.",
    "How it was reckoned",
    "In lists/parts.csv ?? stands all.",
    "Strong, typed, led.",
)


def test_each_foot_names_the_release_and_the_page(booklet: bytes) -> None:
    pages = texts(booklet)
    for number, page in enumerate(pages, start=1):
        assert page.endswith(f"Shelf bird, release 1.1.0 Page {number} of {len(pages)}")


def test_contents_bookmarks_and_references_lead_to_the_same_pages(booklet: bytes) -> None:
    chapters = {title: page for depth, title, page in bookmarks(booklet) if depth == 0}
    pages = texts(booklet)
    assert list(chapters) == [each.title.replace("'", "’") for each in DOCUMENT.chapters]
    for title, page in chapters.items():
        assert f"{title} {page}" in pages[0]
        assert title in pages[page - 1]
    assert f"the boards (page {chapters['The boards']})" in " ".join(pages)


def test_faces_are_true_type_cut_down_to_what_is_used(booklet: bytes) -> None:
    names = font_names(booklet)
    assert all(names.values())
    assert all(name[7:8] == "+" for name in names)  # ISO 32000-1, 9.6.4: six letters and a plus
    families = {name[8:].split("-")[0] for name in names}
    assert families == {"SourceSansPro", "SourceSerifPro"}


def test_nothing_is_too_small_to_read(booklet: bytes) -> None:
    assert min(letter_sizes(booklet)) >= _LEAST_POINTS


def test_a_step_stands_whole_on_a_page_and_some_share_one(booklet: bytes) -> None:
    pages = texts(booklet)
    ends = {1: "Join 1.", 2: "Mind your fingers.", 3: "Join 3.", 4: "Join 4."}
    places = []
    for number, end in ends.items():
        here = [at for at, page in enumerate(pages) if f"{number} Join board {number}" in page]
        assert here == [at for at, page in enumerate(pages) if end in page]
        places += here
    assert len(set(places)) < len(places)


def test_a_document_of_almost_nothing_is_a_booklet() -> None:
    bare = replace(
        DOCUMENT,
        opening=replace(DOCUMENT.opening, picture=None, facts=(), notices=(), small=(), kicker=""),
        chapters=(DOCUMENT.chapters[1],),
        address="",
        day="",
    )
    made = printed(bare)
    assert faults(made) == []
    assert "Words beside" in " ".join(texts(made))


def test_the_same_document_makes_the_same_bytes_in_any_process() -> None:
    told = {_made_with_seed(seed) for seed in ("1", "2")}
    assert told == {hashlib.sha256(printed()).hexdigest()}


_PROGRAM = """
import hashlib
from tests.booklet.test_pdf import printed
print(hashlib.sha256(printed()).hexdigest())
"""


def _made_with_seed(seed: str) -> str:
    here = {**os.environ, "PYTHONHASHSEED": seed, "PYTHONPATH": os.pathsep.join(sys.path)}
    run = subprocess.run(
        [sys.executable, "-c", _PROGRAM], env=here, capture_output=True, text=True, check=True
    )
    return run.stdout.strip()


@pytest.mark.parametrize("paper", [A4, LETTER], ids=lambda paper: paper.name)
def test_hardware_is_true_to_size_on_paper(paper: PaperStock) -> None:
    """Measured in what pdfium makes of the page, at ten dots a mm: a bolt M6 by 50 with its head of
    6 mm (ISO 4762, memory) is 56 mm long, and the line to check is 50 mm; outlines of 0.35 mm and
    ticks of 0.25 mm stand half outside."""
    bolt = HardwareStock(name="bolt", title="Bolt", kind="bolt", thread=6.0, length=50.0)
    (drawing,) = hardware_views([(bolt, 1)])
    picture = Art(name="hardware-1", draw=lambda _: drawing, scale=1.0)
    words = Paragraph(words="Lay yours on it.")
    blocks = (words, Figure(picture=picture, size=Size.TALL))
    chapter = Chapter(id="need", title="What you need", blocks=blocks)
    found = runs(printed(replace(DOCUMENT, chapters=(chapter,)), paper))
    assert min(abs(each - 56.35) for each in found) < 0.15
    assert min(abs(each - 50.25) for each in found) < 0.15
