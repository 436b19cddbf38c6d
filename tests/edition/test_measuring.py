"""The words for measuring a sheet and choosing its files: one rule, wherever a reader meets it."""

from __future__ import annotations

from dataclasses import astuple, replace

import pytest

from kerfolio.basis.digits import rounded
from kerfolio.chapters.document_of import booklet_document
from kerfolio.edition.edition import Edition
from kerfolio.edition.folder import folder_choice
from kerfolio.edition.measuring import measuring_of
from kerfolio.pages.plan import plan_page
from kerfolio.pages.start import start_here
from tests.chapters.told import words_of
from tests.pages.invented import CONTENTS, edition, site
from tests.pages.markup import Tree
from tests.paper.sample_editions import sample


def said(found: Edition) -> dict[str, str]:
    """Return what readers are told on the start page, on the plan's page and in the booklet."""
    around = replace(site(), editions=(found,))
    return {
        "start": Tree(start_here(found, CONTENTS, {})).text_of("main"),
        "plan": Tree(plan_page(around, found)).text_of("main"),
        "booklet": words_of(booklet_document(found)),
    }


@pytest.mark.parametrize("unit", ["mm", "in"])
def test_page_and_paper_say_the_same(unit: str) -> None:
    found = replace(edition(unit), fitted=True)
    told = [each for each in astuple(measuring_of(found)) if isinstance(each, str)]
    left = {
        (place, each)
        for place, text in said(found).items()
        for each in told
        if " ".join(each.split()) not in " ".join(text.split())
    }
    words = measuring_of(found)
    assert left == {
        ("booklet", words.type),
        *((place, words.points) for place in ("start", "plan")),
        ("start", words.lies),  # these stand under pictures, which this one has not
    }


def test_the_set_is_that_of_the_thickest_reading_rounded_else_the_next_thicker() -> None:
    found = edition()
    assert "Rounded to 0.1 mm, the thickest reading names the set" in measuring_of(found).take
    known = [dict(each.variant.thickness)["ply"] for each in found.variants]
    assert known == [17.6, 17.8, 18.0]
    for hundredths in range(1756, 1805):
        if hundredths % 10 == 5:
            continue  # half way between two sets the words leave it open
        reading = hundredths / 100
        by_the_words = min(each for each in known if each >= rounded(reading, 1))
        assert folder_choice(found, "ply", reading).thickness == by_the_words, reading


def test_the_example_of_a_wide_cut_is_one_of_the_plan_s_own_cutter() -> None:
    rack, tote = (measuring_of(sample(each)) for each in ("desk-rack", "tool-tote"))
    assert "a cutter of 3 mm may cut 3.2 mm" in rack.coupon
    assert "that diameter, 3.2 mm for 3 mm," in rack.rule
    assert "a cutter of 1/4 in may cut 0.258 in" in tote.coupon  # 6.35 + 0.2 = 6.55 mm


def test_files_that_are_made_are_told_of_only_where_they_are() -> None:
    ready, made = measuring_of(edition()), measuring_of(replace(edition(), fitted=True))
    assert ready.take.endswith("where there is none of just that thickness, take the next thicker.")
    assert made.take.endswith("just that thickness, files are made for what you measured.")
    assert (ready.makes, made.makes) == (False, True)


def test_one_set_alone_is_told_as_what_it_is() -> None:
    found = edition()
    ready = replace(found, variants=found.variants[1:2])
    assert measuring_of(ready).take == (
        "Every slot follows the thickness of your sheet. Ready-made is one set of cut files, for "
        "17.8 mm: on a thicker sheet its joints will not go in, on a thinner one they will be "
        "loose."
    )
    sheets = tuple(replace(each, published=(17.8, 17.8)) for each in found.settled.sheets)
    one = replace(ready, settled=replace(found.settled, sheets=sheets))
    assert not measuring_of(one).makes
    assert measuring_of(one).take == (
        "Every slot of this plan is drawn for one thickness: 17.8 mm. On a thicker sheet the "
        "joints will not go in, on a thinner one they will be loose."
    )
    assert "table" not in measuring_of(one).coupon
