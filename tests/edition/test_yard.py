"""The yard card: what to ask for in words, and where the yard's saw cuts.

A sheet of 2.44 m by 1.22 m and 17.6 mm weighs 35.9 kg by the mill's own density of 685 kg/m3.
"""

from __future__ import annotations

from dataclasses import replace

from kerfolio.basis.reader import METRIC
from kerfolio.edition.edition import Edition
from kerfolio.edition.yard import YardCard, yard_card
from kerfolio.model.carrying import Carries
from kerfolio.pages.theme import render
from kerfolio.pages.yard import yard_of
from tests.layouts.yard_edition import edition_in
from tests.pages.markup import Tree
from tests.plans import small_layout, small_settled


def card(edition: Edition) -> YardCard:
    found = yard_card(edition)
    assert found is not None
    return found


def rack(
    carries: Carries | None = None, bed: tuple[float, float] | None = None, units: str = "mm"
) -> Edition:
    return edition_in(carries or Carries(), small_settled(), small_layout(), bed, units)


def test_what_to_ask_for() -> None:
    (ask,) = card(rack()).asks
    assert (ask.count, ask.title) == (1, "Birch plywood 18 mm")
    assert ask.details == (
        "2440 × 1220 mm (about 96 × 48 in)",
        "grade BB/BB",
        "13 plies",
        "from 17.6 to 18.2 mm (0.693 to 0.717 in) thick",
    )
    assert ask.weight == "35.9 kg (79.1 lb)"
    assert card(rack(units="in")).asks[0].weight == "79.1 lb (35.9 kg)"


def test_a_cut_is_told_from_a_named_edge_with_what_it_leaves() -> None:
    (sheet,) = card(rack()).sheets
    assert sheet.words.startswith("1 straight cut, through no piece: 1 blank. What is left over: ")
    (text,) = sheet.cuts
    assert text.endswith(" from its lower edge, straight along") or "left edge" in text
    (blank,) = sheet.blanks
    assert blank.corner == "the sheet’s own"
    assert set(blank.marks) == {"A1", "A2", "B"}


def test_weight_alone_may_ask_for_a_cut() -> None:
    large = Carries(size=(2500.0, 1300.0), kg=40)
    assert card(rack(large)).sheets[0].words == "It needs no cut: it can be taken as it is."
    light = card(rack(replace(large, kg=20))).sheets[0]
    assert len(light.cuts) == 1


def test_what_is_too_large_by_itself_is_named() -> None:
    small = card(rack(Carries(size=(210.0, 210.0)))).sheets[0]
    assert small.words == "It must come whole: B would be too large by itself."
    assert small.cuts == ()


def test_a_bed_too_small_for_any_cut_is_told_beside_the_cuts() -> None:
    (sheet,) = card(rack(bed=(210.0, 210.0))).sheets
    assert sheet.words.endswith(
        " Blank 1 is still larger than the bed: no straight cut passes between the pieces."
    )
    assert len(card(rack(bed=(500.0, 400.0))).sheets[0].cuts) > 1


def test_nothing_to_buy_has_no_card() -> None:
    assert yard_card(replace(rack(), sheets=())) is None


def test_without_a_script_prices_are_blank_lines() -> None:
    frame = {"style": "", "root": "../"}
    page = render("yard-card.html", yard=yard_of(rack()), frame=frame, pictures={}, reader=METRIC)
    found = Tree(page)
    assert [each.attributes["data-count"] for each in found.all("li") if each.attributes] == ["1"]
    assert found.text_of("output").startswith("________")
    assert len(found.all("input")) == 1


def test_limits_are_told_with_whom_they_are_for() -> None:
    assert card(rack(Carries(size=(1600.0, 900.0), kg=20))).limits == (
        "Blanks are to be no larger than 1600 × 900 mm (about 63 × 35 1/2 in) and no heavier than "
        "20.0 kg (44.1 lb), for a car and one person."
    )
    assert card(rack(bed=(1300.0, 900.0))).limits.endswith(
        "for a car and one person; where that can be had, no larger than the bed of "
        "1300 × 900 mm (about 51 × 35 1/2 in)."
    )
