"""One quantity, one rounding: the same words for it on page and paper, in drawings and lists."""

from __future__ import annotations

import csv
import io
from dataclasses import replace
from functools import cache
from xml.etree import ElementTree

import pytest

from kerfolio.assembly.stability import stability_of
from kerfolio.basis.lengths import both_text, inch_number, mm_number, size_numbers, size_text
from kerfolio.basis.masses import mass_number, mass_unit
from kerfolio.basis.reader import Reader
from kerfolio.bundles.archive import unzipped
from kerfolio.drawing.build_views import ASSEMBLED
from kerfolio.edition.edition import Edition
from kerfolio.pages.plan import plan_page
from kerfolio.publishing.bundle import bundle_of
from kerfolio.publishing.edition import edition_of
from kerfolio.publishing.laid_out import LaidOut
from kerfolio.publishing.pictures import inline_pictures
from kerfolio.writing.svg import svg_bytes
from tests.pages.invented import plan_files, site
from tests.pages.markup import Tree
from tests.paper.reading import texts
from tests.plans import RACK, proved, small_layout, workshop

UNITS = ("mm", "in")
# Lengths near the middle between two fractions and two tenths, where a second rounding shows.
ODD = RACK.replace("w: 300, h: 120", "w: 299.45, h: 189.67").replace(
    "drawn-for: 17.6", "drawn-for: 17.8"
)


@cache
def edition(first: str) -> Edition:
    shop = workshop(ODD)
    shop = replace(shop, identity=replace(shop.identity, units_first=first))
    return edition_of(shop, LaidOut(proof=proved(ODD), layout=small_layout(), fresh=""))


@cache
def files(first: str) -> dict[str, bytes]:
    packed = unzipped(bundle_of(edition(first)).content)
    return {name.split("/", 1)[1]: data for name, data in packed.items()}


@cache
def words(first: str) -> dict[str, str]:
    """Return what each of a plan's outputs says, white space made single."""
    found = edition(first)
    around = replace(site(), identity=found.identity, editions=(found,))
    packed = files(first)
    page = Tree(plan_page(replace(around, files={found.name: plan_files(found)}), found))
    said = {
        "page": _all(page),
        "booklet": " ".join(texts(packed["booklet-a4.pdf"])),
        "start": _all(Tree(packed["start-here.html"].decode())),
        "drawing": _lettering(svg_bytes(found.drawings[ASSEMBLED])),
    }
    return {name: " ".join(text.split()) for name, text in said.items()}


def _all(page: Tree) -> str:
    return page.all("body")[0].text


def _lettering(content: bytes) -> str:
    """Return a drawing's labels; the last line is its description."""
    root = ElementTree.fromstring(content)
    return " ".join(each.text or "" for each in root.iter() if each.tag.endswith(("text", "desc")))


@pytest.mark.parametrize("first", UNITS)
def test_the_overall_size_reads_alike(first: str) -> None:
    build = edition(first).made[0].build
    assert build is not None
    size, said = stability_of(build.drawn.assembled).size, words(first)
    assert any(mm_number(side, 1) != mm_number(side, 0) for side in size)
    for where in ("page", "booklet"):
        assert size_text(size, Reader(unit=first)) in said[where], where
    for side in size:
        assert both_text(side, Reader(unit=first)) in said["drawing"]


@pytest.mark.parametrize("first", UNITS)
def test_the_size_of_a_part_reads_alike(first: str) -> None:
    (row,) = [each for each in edition(first).parts if each.part == "rail"]
    sides, said = (row.width, row.height), words(first)
    one, other = size_numbers(sides, Reader(unit=first))
    for where in ("page", "booklet"):
        assert one in said[where], where
        assert other in said[where], where
    reader = Reader(unit=first)
    size = f"{both_text(row.width, reader)} wide, {both_text(row.height, reader)} high"
    assert size in inline_pictures(edition(first))["part-rail"]
    rows = csv.DictReader(io.StringIO(files(first)["lists/parts.csv"].decode()))
    (listed,) = [each for each in rows if each["part"] == "rail"]
    assert [listed["width_mm"], listed["height_mm"]] == [mm_number(each) for each in sides]
    assert [listed["width_in"], listed["height_in"]] == [inch_number(each) for each in sides]


@pytest.mark.parametrize("first", UNITS)
def test_the_mass_of_a_part_reads_alike(first: str) -> None:
    for row in edition(first).parts:
        told = mass_number(row.mass, Reader(unit=first))
        assert f"{told} {mass_unit(Reader(unit=first))}" in words(first)["page"]
        assert told in words(first)["booklet"]


def test_the_thickness_reads_alike_wherever_inches_stand_beside_it() -> None:
    for first in UNITS:
        for where in ("page", "booklet", "start"):
            assert "0.701 in" in words(first)[where], (first, where)
