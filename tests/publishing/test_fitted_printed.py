"""What is printed of whole plans for any sheet: filled in, it is what is settled and written there.

Templates, layouts and setup sheets.
"""

from __future__ import annotations

import io
import re
from dataclasses import dataclass
from functools import cache

import pikepdf
import pypdfium2
import pytest

from kerfolio.basis.reader import METRIC
from kerfolio.basis.saying import say
from kerfolio.basis.style import told_as
from kerfolio.edition.edition import Edition
from kerfolio.fitted.fill import fill
from kerfolio.fitted.form import Fitted, Number, Point
from kerfolio.model.stock import PaperStock
from kerfolio.paper.sheet_choices import SheetPapers
from kerfolio.paper.template_choices import Templates
from kerfolio.publishing.edition import edition_of
from kerfolio.publishing.fitted_files import Printed, Settling, variant_at, with_printed
from kerfolio.publishing.laid_out import LaidOut
from kerfolio.writing.read_pdf import read_pdf
from tests.paper.editions import A4, LETTER
from tests.plans import proved, workshop
from tests.publishing.fitted_plans import PLANS, side_by_side

CUTS = """\
cuts:
  beds: {sheet: ply, cutter: compression-6, feed: 2000 mm/min, passes: [3]}
  profile: {sheet: ply, cutter: compression-6, feed: 3000 mm/min, passes: [t / 3, t / 2, rest]}
"""
TEXTS = {**PLANS, "two sheets": PLANS["two sheets"].replace("releases:", f"{CUTS}releases:")}
PAPERS: dict[str, dict[str, PaperStock]] = {
    "one sheet": {"a4": A4},
    "two sheets": {"a4": A4},
    "inches": {"letter": LETTER},
}


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


@dataclass(frozen=True, kw_only=True)
class Case:
    """A small plan's edition, what prints its files at a point, and those files fitted alone."""

    edition: Edition
    printed: tuple[Printed, ...]
    fitted: Fitted

    def afresh(self, at: Point) -> dict[str, bytes]:
        drawn = self.edition.settled
        settled = Settling(drawn).at(variant_at(drawn, at))
        assert settled is not None
        files = (each for printed in self.printed for each in printed(settled))
        return {str(each.name): each.write(told_as) for each in files}


@cache
def case(name: str) -> Case:
    text = TEXTS[name]
    proof = proved(text)
    assert proof.drawn is not None
    found = LaidOut(proof=proof, layout=side_by_side(proof.drawn), fresh="")
    edition = edition_of(workshop(text), found)
    settling = Settling(edition.settled, edition.corners)
    printed = (Templates.of(edition).at, SheetPapers(edition, settling.at, PAPERS[name]).at)
    fitted = Fitted(numbers=NUMBERS[name], files=())
    for each in printed:
        fitted = with_printed(fitted, settling, each)
    return Case(edition=edition, printed=printed, fitted=fitted)


def filled(name: str, at: Point) -> dict[str, bytes]:
    return {each: text.encode() for each, text in fill(case(name).fitted, at)}


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
def test_files_filled_in_are_those_written_there(name: str) -> None:
    for at in POINTS[name]:
        known = {each.name: at.get(each.name, each.drawn) for each in case(name).fitted.numbers}
        made, meant = filled(name, at), case(name).afresh(known)
        assert list(made) == list(meant)
        kinds = [each.split("/")[0] for each in made]
        assert kinds == [*["templates"] * 3, "layout", "setup"]
        for each, content in made.items():
            if each.startswith("templates/"):
                assert content == meant[each]
            else:
                assert apart(content.decode(), meant[each].decode()) == []


_NUMBER = re.compile(r"\d+(?:\.\d+)?")


def apart(one: str, other: str) -> list[tuple[str, str]]:
    """Return numbers more than a step of their last decimal apart; all else is the same."""
    assert _NUMBER.sub("#", one) == _NUMBER.sub("#", other)
    pairs = zip(_NUMBER.findall(one), _NUMBER.findall(other), strict=True)
    return [
        (a, b)
        for a, b in pairs
        if a != b and abs(float(a) - float(b)) > 1.01 * 10.0 ** -len(a.partition(".")[2])
    ]


def test_a_set_that_stands_ready_has_the_very_bytes() -> None:
    found = case("one sheet")
    drawn = {each.name: each.drawn for each in found.fitted.numbers}
    assert filled("one sheet", {}) == found.afresh(drawn)


def test_nothing_printed_follows_the_cutter_and_setup_sheets_say_so() -> None:
    at = {"thickness.ply": 17.87, "fit.ply": 0.1}
    otherwise = {**at, "cutter.ply": 3.175}
    assert filled("one sheet", otherwise) == filled("one sheet", at)
    papers = case("one sheet").afresh(otherwise)
    assert {name: papers[name] for name in papers if not name.startswith("templates/")} == {
        name: content
        for name, content in case("one sheet").afresh({**at, "cutter.ply": 6.0}).items()
        if not name.startswith("templates/")
    }
    with_settings = filled("two sheets", {})["setup/setup-ply-17.7mm_thin-12.0mm-a4.pdf"]
    assert say(METRIC, "printed-own-cutter") in words(with_settings)


def words(content: bytes) -> str:
    document = pypdfium2.PdfDocument(content)
    text = " ".join(page.get_textpage().get_text_range() for page in document)
    document.close()
    return " ".join(text.split())


def test_other_programs_open_them_and_the_slot_is_as_wide_as_stated() -> None:
    at = {"thickness.ply": 17.87, "fit.ply": 0.083}
    wide = 17.87 + 2 * 0.083
    for name, content in filled("one sheet", at).items():
        with pikepdf.open(io.BytesIO(content)) as document:
            assert document.check_pdf_syntax() == []
        assert "17.87 mm thick" in words(content)
        if name.startswith("templates/"):
            assert "17.87 mm sheet + 2 x 0.083 mm fit" in words(content)
            assert f"{wide:.2f} mm" in words(content)
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


def test_words_of_sheets_follow_what_was_measured() -> None:
    name = "setup/setup-ply-18.13mm_thin-11.77mm-a4.pdf"
    made = filled("two sheets", {"thickness.ply": 18.13, "thickness.thin": 11.77})
    setup = words(made[name])
    assert "measured 18.13 mm (0.714 in)" in setup
    sheets = "Birch plywood 18 mm at 18.13 mm and Birch plywood 12 mm at 11.77 mm"
    assert f"Goes with sheet-1 of the cut files for {sheets} only." in setup
    # a third and a half of 18.13 mm
    assert "passes to 6.04 mm (0.238 in) and 9.07 mm (0.357 in), then through" in setup
    assert "pocket, 6.04 mm: 1 contour" in setup
    layout = words(made[name.replace("setup", "layout")])
    # 300 less the thin sheet; 400 less two thick ones, and a tab of one; each over 25.4
    assert "288.2 × 200.0 mm (11.35 × 7.87 in)" in layout
    assert "381.9 × 180.0 mm (15.03 × 7.09 in)" in layout
