"""One number, one source: the sheet's thickness measured back out of every file made from it."""

from __future__ import annotations

import json
import re

import pypdfium2
import pytest

from kerfolio.bundles.archive import unzipped
from kerfolio.geometry.measure import bounds
from kerfolio.writing.read_dxf import read_dxf
from kerfolio.writing.read_svg import read_svg
from tests.plans import READY
from tests.publishing.bundles import bundle

SLOT = "opening_through"


@pytest.fixture(scope="module")
def files() -> dict[str, bytes]:
    packed = unzipped(bundle(READY).content)
    return {name.split("/", 1)[1]: data for name, data in packed.items()}


@pytest.mark.parametrize("thickness", [17.6, 18.2])
def test_the_slot_is_as_wide_in_every_cut_file(files: dict[str, bytes], thickness: float) -> None:
    fit = f"{thickness}mm"
    for kind, read in (("svg", read_svg), ("dxf", read_dxf)):
        layers = dict(read(files[f"cut/{fit}/parts/side-{fit}.{kind}"]).layers)
        box = bounds(layers[SLOT][0])
        # A dog-bone of radius r opens r (1 - 1/sqrt 2) past each wall: 0.29289322 x 3.05 mm.
        assert box.width == pytest.approx(thickness + 0.2 + 2 * 0.29289322 * 3.05, abs=2e-3)


@pytest.mark.parametrize("thickness", [17.6, 18.2])
def test_the_plan_file_gives_the_width_with_its_reason(
    files: dict[str, bytes], thickness: float
) -> None:
    facts = json.loads(files["plan.json"])
    variant = next(each for each in facts["variants"] if each["fit"] == f"{thickness}mm")
    slot = next(each for each in variant["parts"][0]["features"] if each["name"] == "rail-slot")
    assert slot["width"] == {
        "value": pytest.approx(thickness + 0.2),
        "reason": f"{thickness} mm sheet + 2 x 0.1 mm fit",
    }


@pytest.mark.parametrize("thickness", [17.6, 18.2])
def test_the_template_says_the_width_it_draws(files: dict[str, bytes], thickness: float) -> None:
    fit = f"{thickness}mm"
    document = pypdfium2.PdfDocument(files[f"templates/{fit}-roll.pdf"])
    text = " ".join(page.get_textpage().get_text_range() for page in document)
    document.close()
    assert re.search(rf"{thickness + 0.2:.2f} mm", text), text


def test_the_booklet_and_the_first_page_name_every_published_thickness(
    files: dict[str, bytes],
) -> None:
    document = pypdfium2.PdfDocument(files["booklet-a4.pdf"])
    booklet = " ".join(page.get_textpage().get_text_range() for page in document)
    document.close()
    page = files["start-here.html"].decode()
    for fit in ("17.6mm", "17.8mm", "18.0mm", "18.2mm"):
        assert f"cut/{fit}" in booklet
        assert f"cut/{fit}" in page
