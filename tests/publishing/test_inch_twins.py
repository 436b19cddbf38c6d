"""``cut-files: [mm, in]``: every cut file has a twin in inches, read back like any other."""

from __future__ import annotations

import pytest

from kerfolio.basis.reader import METRIC
from kerfolio.bundles.archive import unzipped
from kerfolio.edition.edition import Edition
from kerfolio.edition.format_words import format_words
from kerfolio.publishing.bundle import Bundle, bundle_of
from kerfolio.publishing.edition import edition_of
from kerfolio.publishing.laid_out import LaidOut
from tests.plans import ONE, proved, small_layout, workshop
from tests.publishing.spoiling import faults_of, repacked

BOTH = ONE + "cut-files: [mm, in]\n"


@pytest.fixture(scope="module")
def bundle() -> Bundle:
    return bundle_of(edition(BOTH))


def edition(text: str) -> Edition:
    found = LaidOut(proof=proved(text), layout=small_layout(), fresh="")
    return edition_of(workshop(text), found)


def test_every_cut_file_has_its_twin(bundle: Bundle) -> None:
    names = {name.split("/", 1)[1] for name in unzipped(bundle.content)}
    usual = {name for name in names if name.endswith((".svg", ".dxf")) and ".in." not in name}
    assert usual
    for name in usual:
        stem, _, ending = name.rpartition(".")
        assert f"{stem}.in.{ending}" in names
    assert faults_of(bundle) == ()


def test_a_twin_in_the_wrong_unit_is_named(bundle: Bundle) -> None:
    files = {name.split("/", 1)[1]: data for name, data in unzipped(bundle.content).items()}
    twin = "cut/17.6mm/parts/rail-17.6mm.in.dxf"
    millimetres = files[twin].replace(b"$INSUNITS\n 70\n1\n", b"$INSUNITS\n 70\n4\n")
    assert millimetres != files[twin]
    spoiled = repacked(bundle.edition, {**files, twin: millimetres})
    found = [each.message for each in faults_of(spoiled)]
    assert any(f"`{twin}`" in each for each in found), found


def test_without_the_word_there_is_none() -> None:
    assert [each.ending for each in edition(ONE).formats] == ["svg", "dxf"]


def test_readers_are_told_of_the_twins() -> None:
    words = format_words(edition(BOTH).formats, METRIC)
    assert words.each == "one SVG, one DXF, one SVG in inches and one DXF in inches"
    assert words.units == "in millimetres, but for those in inches"
    assert words.coming == (
        "as SVG, as DXF, as SVG in inches and as DXF in inches; those without a unit are in "
        "millimetres"
    )
    assert words.sent == "DXF"
