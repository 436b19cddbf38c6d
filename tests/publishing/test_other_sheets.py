"""Layouts for other sheets and beds: computed once, frozen beside the first, told when stale."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from kerfolio.basis.finding import Finding
from kerfolio.layouts.effort import Effort
from kerfolio.layouts.panel_cuts import box_of
from kerfolio.publishing.asked import Asked
from kerfolio.publishing.examine import Examined, examine, silent
from kerfolio.publishing.examine_at import examine_at
from kerfolio.publishing.freeze import foretold, freeze_layouts
from kerfolio.publishing.laid_out import LaidOut
from kerfolio.publishing.other_sheets import asked_sheet
from kerfolio.settling.also_for import OtherSheet, label_of
from tests.plans import RACK, lay_down, workshop

ALSO = RACK.replace("joints:", "also-for: [500 x 400, 260 x 460 bed]\njoints:", 1)
BRIEF = Effort(moves=1)
MARGIN = 10.0


def looked_at(folder: Path) -> Examined:
    return examine(folder, effort=BRIEF)


@cache
def laid_out() -> LaidOut:
    with TemporaryDirectory() as folder:
        (found,) = looked_at(lay_down(Path(folder) / "shop", ALSO)).laid_out
    return found


def test_every_piece_lies_inside_the_margin_of_each_sheet() -> None:
    one = laid_out()
    assert [each.sheet.label for each in one.others] == ["500x400", "260x460-bed"]
    for other in one.others:
        pieces = [each.piece for sheet in other.layout.sheets for each in sheet.placements]
        assert sorted(pieces) == ["rail", "side.left", "side.right"]
        for sheet in other.layout.sheets:
            assert sorted(sheet.size) == sorted(other.sheet.size)
            boxes = [box_of(each, one.proof.points) for each in sheet.placements]
            assert min(min(each[:2]) for each in boxes) >= MARGIN - 1e-3
            assert max(each[2] for each in boxes) <= sheet.size[0] - MARGIN + 1e-3
            assert max(each[3] for each in boxes) <= sheet.size[1] - MARGIN + 1e-3


def test_what_is_cut_to_a_bed_may_lie_on_it_either_way() -> None:
    # The rail is 335 mm along the grain: on a bed of 260 x 460 it goes only along its long side.
    sheets = laid_out().others[1].layout.sheets
    (rail,) = (each for each in sheets if "rail" in {laid.part for laid in each.placements})
    assert rail.size == (460.0, 260.0)


def test_they_are_frozen_beside_the_first_kept_and_told_when_stale(tmp_path: Path) -> None:
    shop = lay_down(tmp_path / "shop", ALSO)
    frozen = freeze_layouts(shop, looked_at(shop).laid_out)
    names = ["layout.json", "layout-500x400.json", "layout-260x460-bed.json"]
    assert [each.file.name for each in frozen] == names
    again = looked_at(shop)
    assert freeze_layouts(shop, again.laid_out) == ()
    assert [each.layout for each in again.laid_out[0].others] == [
        each.layout for each in laid_out().others
    ]
    at = examine_at(shop, "rack", Asked(), silent, lambda *_: (), on="500 x 400")
    assert at.laid_out is not None
    assert {sheet.size for sheet in at.laid_out.layout.sheets} == {(500.0, 400.0)}
    assert at.laid_out.proof.drawn is not None
    assert at.laid_out.proof.drawn.laid_for == "500x400"
    plan = shop / "plans/rack/plan.yaml"
    plan.write_text(ALSO.replace("h: 120", "h: 118"), "utf-8")
    stale = [each for each in foretold(looked_at(shop)).findings if each.rule == "layout-stale"]
    assert {each.place.file for each in stale} == {f"plans/rack/{name}" for name in names}


def test_pieces_that_do_not_fit_are_named(tmp_path: Path) -> None:
    shop = lay_down(tmp_path / "shop", RACK.replace("joints:", "also-for: 130 x 300\njoints:", 1))
    found = looked_at(shop)
    assert found.laid_out == ()
    (fault,) = (each for each in found.findings if each.rule == "also-for-too-small")
    assert (fault.message, fault.advice) == (
        "`side` and `rail` find no room on `130x300`",
        "Leave it out of `also-for`, or state a larger one.",
    )


@pytest.mark.parametrize(
    ("text", "label"),
    [("500x400", "500x400"), ("260 × 460 bed", "260x460-bed"), ("500 X 400", "500x400")],
)
def test_a_sheet_is_asked_for_in_words(text: str, label: str) -> None:
    found = asked_sheet(text, workshop(ALSO).plans[0])
    assert isinstance(found, OtherSheet)
    assert found.label == label


def test_a_sheet_that_is_not_laid_out_for_is_refused_by_name() -> None:
    found = asked_sheet("500 x 450", workshop(ALSO).plans[0])
    assert isinstance(found, Finding)
    assert found.message == "it is not laid out for `500x450`"
    assert found.advice == "Did you mean `500x400`?"
    none = asked_sheet("500 x 450", workshop(RACK).plans[0])
    assert isinstance(none, Finding)
    assert none.advice == "State `also-for: [500 x 450]` in the plan, and lay it out."


def test_inches_are_named_as_they_are_sold() -> None:
    assert label_of((1219.2, 609.6), "in", bed=False) == "48x24in"
    assert label_of((609.6, 914.4), "in", bed=True) == "24x36in-bed"
