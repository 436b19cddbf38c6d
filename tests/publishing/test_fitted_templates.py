"""Templates of whole plans for any sheet: filled in, they are what is settled and written there."""

from __future__ import annotations

import io
from functools import cache

import pikepdf
import pypdfium2
import pytest

from kerfolio.basis.style import told_as
from kerfolio.edition.edition import Edition
from kerfolio.fitted.fill import fill
from kerfolio.fitted.form import Fitted, Number, Point
from kerfolio.paper.template_choices import Templates
from kerfolio.publishing.edition import edition_of
from kerfolio.publishing.examine import LaidOut
from kerfolio.publishing.fitted_files import Settling, variant_at, with_templates
from kerfolio.writing.read_pdf import read_pdf
from tests.plans import proved, workshop
from tests.publishing.fitted_plans import PLANS, side_by_side


def number(name: str, least: float, most: float, drawn: float) -> Number:
    decimals = 2 if name.startswith("thickness") else 3
    return Number(name=name, least=least, most=most, drawn=drawn, decimals=decimals)


NUMBERS = {
    "one sheet": (
        number("thickness.ply", 17.6, 18.2, 17.8),
        number("fit.ply", 0.05, 0.2, 0.1),
        number("cutter.ply", 3.0, 8.0, 6.0),
    ),
    "two sheets": (
        number("thickness.ply", 17.4, 18.4, 17.7),
        number("thickness.thin", 11.6, 12.4, 12.0),
    ),
    "inches": (
        number("thickness.ply", 11.91, 13.1, 12.3),
        number("fit.ply", 0.051, 0.203, 0.102),
    ),
}


@cache
def case(name: str) -> tuple[Edition, Templates, Fitted]:
    """Return a small plan's edition, what is chosen for its templates, and those fitted alone."""
    text = PLANS[name]
    proof = proved(text)
    assert proof.drawn is not None
    found = LaidOut(proof=proof, layout=side_by_side(proof.drawn), fresh="")
    edition = edition_of(workshop(text), found)
    templates = Templates.of(edition)
    none = Fitted(numbers=NUMBERS[name], files=())
    return edition, templates, with_templates(none, Settling(edition.settled), templates)


def filled(name: str, at: Point) -> dict[str, bytes]:
    return {each: text.encode() for each, text in fill(case(name)[2], at)}


def afresh(name: str, at: Point) -> dict[str, bytes]:
    edition, templates, _ = case(name)
    settled = Settling(edition.settled).at(variant_at(edition.settled, at))
    assert settled is not None
    return {str(each.name): each.write(told_as) for each in templates.at(settled)}


POINTS: dict[str, list[Point]] = {
    "one sheet": [
        {"thickness.ply": 17.6, "fit.ply": 0.05},
        {"thickness.ply": 18.2, "fit.ply": 0.2},
        {"thickness.ply": 17.87, "fit.ply": 0.083},
    ],
    "two sheets": [
        {"thickness.ply": 17.4, "thickness.thin": 12.4},
        {"thickness.ply": 18.13, "thickness.thin": 11.77},
    ],
    "inches": [
        {"thickness.ply": 12.34, "fit.ply": 0.151},
        {"thickness.ply": 13.03, "fit.ply": 0.127},
    ],
}


@pytest.mark.parametrize("name", POINTS)
def test_templates_filled_in_are_those_written_there(name: str) -> None:
    for at in POINTS[name]:
        known = {each.name: at.get(each.name, each.drawn) for each in case(name)[2].numbers}
        assert filled(name, at) == afresh(name, known)
        assert len(filled(name, at)) == 3


def test_no_template_follows_the_cutter() -> None:
    at = {"thickness.ply": 17.87}
    assert filled("one sheet", {**at, "cutter.ply": 3.175}) == filled("one sheet", at)


def test_other_programs_open_them_and_the_slot_is_as_wide_as_stated() -> None:
    at = {"thickness.ply": 17.87, "fit.ply": 0.083}
    wide = 17.87 + 2 * 0.083
    for name, content in filled("one sheet", at).items():
        with pikepdf.open(io.BytesIO(content)) as document:
            assert document.check_pdf_syntax() == []
        document = pypdfium2.PdfDocument(content)
        words = " ".join(page.get_textpage().get_text_range() for page in document)
        document.close()
        assert "17.87 mm ply" in words
        assert "17.87 mm sheet + 2 x 0.083 mm fit" in words
        assert f"{wide:.2f} mm" in words
        if name.endswith("roll.pdf"):
            assert wide in [pytest.approx(each, abs=0.002) for each in widths(content)]
            assert 17.8 + 0.2 not in [pytest.approx(each, abs=0.002) for each in widths(content)]


def widths(content: bytes) -> list[float]:
    """Return how far apart the long walls are of every oblong that is drawn."""
    found = []
    for page in read_pdf(content):
        for line in page.lines:
            xs, ys, _ = zip(*line.contour.vertices, strict=True)
            if line.inset and len(xs) == 4:
                found.append(min(max(xs) - min(xs), max(ys) - min(ys)))
    return found
