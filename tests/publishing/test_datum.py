"""Where 0,0 lies in the cut files of a packed bundle, and that the agreement check looks at it."""

from __future__ import annotations

import io

import ezdxf
import pytest

from kerfolio.edition.names import art_name, cut_sheet_name
from kerfolio.publishing.bundle import Bundle
from tests.plans import ONE
from tests.publishing.bundles import bundle
from tests.publishing.spoiling import faults_of, files_of, repacked

CENTRED = ONE.replace("fit: 0.1}", "fit: 0.1, datum: centre}")
SHEET = cut_sheet_name("17.6mm", 1, "dxf")
ART = art_name("side.mark", "svg")


@pytest.fixture(scope="module")
def corner() -> Bundle:
    return bundle(ONE)


@pytest.fixture(scope="module")
def centred() -> Bundle:
    return bundle(CENTRED)


def edge_box(content: bytes) -> tuple[float, float, float, float]:
    """Return the box of the sheet's edge, read by ezdxf."""
    space = ezdxf.read(io.StringIO(content.decode())).modelspace()
    (edge,) = [each for each in space if each.dxf.layer == "sheet-edge"]
    xs, ys = zip(*edge.get_points("xy"), strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def spoiled(packed: Bundle, name: str, content: bytes) -> list[str]:
    made = repacked(packed.edition, {**files_of(packed), name: content})
    return [each.message for each in faults_of(made)]


def test_zero_lies_where_the_plan_says(corner: Bundle, centred: Bundle) -> None:
    assert edge_box(files_of(corner)[SHEET]) == pytest.approx((0, 0, 2440, 1220))
    assert edge_box(files_of(centred)[SHEET]) == pytest.approx((-1220, -610, 1220, 610))
    assert faults_of(corner) == faults_of(centred) == ()


def test_a_file_with_another_datum_is_named(corner: Bundle, centred: Bundle) -> None:
    assert spoiled(centred, SHEET, files_of(corner)[SHEET]) == [
        f"`{SHEET}` and the settled plan disagree: "
        "everything lies elsewhere, by 1220 mm across and 610 mm up",
        f"`{SHEET}` and what it is for disagree: "
        "it does not say “Units: mm. Middle of the sheet is 0,0.”",
        f"`{SHEET}` and what it is for disagree: "
        "it says “Units: mm. Lower left corner of the sheet is 0,0.” on layer `note`",
    ]


def test_an_engraving_that_is_not_centred_is_named(corner: Bundle) -> None:
    moved = files_of(corner)[ART].replace(b'data-origin="0 ', b'data-origin="1 ')
    assert spoiled(corner, ART, moved) == [
        f"`{ART}` and the settled plan disagree: "
        "everything lies elsewhere, by 1 mm across and 0 mm up",
        f"`{ART}` and its datum disagree: 0,0 lies elsewhere",
    ]
