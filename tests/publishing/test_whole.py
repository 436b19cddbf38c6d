"""The whole put together, as a reader meets it: pages, booklet, model, step drawings."""

from __future__ import annotations

import io
import json
import re
import struct
import zipfile

import pypdfium2
import pytest

from tests.conftest import Published
from tests.pages.markup import Tree

OPEN = ("desk-rack", "potting-bench", "tool-tote")
ON_THE_FLOOR = OPEN[1:]
"""Of what stands on a table nobody asks when it tips."""
WORKED_ON = {"desk-rack": {1}, "potting-bench": {1, 9, 11}, "tool-tote": {4}}
"""Steps that add no piece and have a picture: they bore, sand, or put in hardware."""


def bundle(published: Published, name: str) -> zipfile.ZipFile:
    (path,) = (published.out / "plans" / name / "downloads").glob("*.zip")
    return zipfile.ZipFile(path)


def member(archive: zipfile.ZipFile, ending: str) -> bytes:
    (name,) = [each for each in archive.namelist() if each.endswith(ending)]
    return archive.read(name)


@pytest.mark.parametrize("name", OPEN)
def test_the_plan_page_shows_the_whole(published: Published, name: str) -> None:
    text = (published.out / "plans" / name / "index.html").read_text("utf-8")
    page = Tree(text)
    assert "whole" in page.values("id")
    assert "Put together, with its overall sizes." in text
    for told in ("Tips, empty, when tilted by", "local codes and licensed practice come first"):
        assert (told in text) == (name in ON_THE_FLOOR)
    assert "Look at it in 3-D" in text


@pytest.mark.parametrize("name", OPEN)
def test_every_step_that_adds_pieces_has_its_drawing(published: Published, name: str) -> None:
    steps = (published.out / "plans" / name / "steps" / "index.html").read_text("utf-8")
    plan = json.loads(member(bundle(published, name), "plan.json"))
    adding = {n for n, step in enumerate(plan["steps"], start=1) if step["add"]}
    assert adding
    shown = sorted(adding | WORKED_ON.get(name, set()))
    start = member(bundle(published, name), "start-here.html").decode()
    for page in (steps, start):
        drawn = re.findall(rf'<svg[^>]*aria-label="{plan["title"]}, step (\d+): ([^"]*)"', page)
        titles = {n: plan["steps"][n - 1]["title"] for n in shown}
        # A step has a picture more for each kind of work by hand in it.
        assert list(dict.fromkeys(drawn)) == [(str(n), title) for n, title in titles.items()]


@pytest.mark.parametrize("name", OPEN)
def test_a_fitted_file_is_one_text_and_another_without_a_cutter(
    published: Published, name: str
) -> None:
    """Nothing that is chosen for one size alone tears a file apart within the range."""
    fitted = json.loads((published.out / "plans" / name / "fitted.json").read_text("utf-8"))
    assert len(fitted["files"]) > 10
    for file in fitted["files"]:
        first, *others = (cell["box"] for cell in file["cells"])
        assert all(None not in first.values() and None in box.values() for box in others)
        assert len(others) <= 1


def test_pages_for_supporters_tell_the_numbers_and_show_nothing(published: Published) -> None:
    text = (published.out / "plans" / "harbour-stool" / "index.html").read_text("utf-8")
    assert "Tips, empty, when tilted by" in text
    assert "<canvas" not in text
    assert 'class="viewer"' not in text


@pytest.mark.parametrize("name", OPEN)
def test_the_model_lies_in_the_bundle(published: Published, name: str) -> None:
    """glTF 2.0, section 4.4: the header is magic, version 2, length of the whole."""
    content = member(bundle(published, name), f"model/{name}.glb")
    magic, version, length = struct.unpack("<4sII", content[:12])
    assert (magic, version, length) == (b"glTF", 2, len(content))


@pytest.mark.parametrize("name", OPEN)
def test_the_booklet_has_a_chapter_of_the_whole(published: Published, name: str) -> None:
    document = pypdfium2.PdfDocument(io.BytesIO(member(bundle(published, name), "booklet-a4.pdf")))
    pages = [page.get_textpage().get_text_bounded() for page in document]
    (at,) = (n for n, each in enumerate(pages) if "Put together, with its overall sizes" in each)
    told = " ".join(" ".join(pages[at : at + 2]).split())
    assert "Put together, width × depth × height" in told, "its numbers come next to its pictures"
