"""The opening and what one needs, against the lists they are told from and sums done by hand."""

from __future__ import annotations

import math
from dataclasses import replace
from datetime import date

import pytest

from kerfolio.chapters.need import need
from kerfolio.chapters.opening import opening
from kerfolio.document.blocks import Paragraph, Table
from kerfolio.document.picture import Art, Shot
from kerfolio.document.words import plain
from kerfolio.edition import difficulty
from kerfolio.edition.difficulty import Difficulty, Level, difficulty_of
from kerfolio.edition.edition import Edition
from kerfolio.edition.hands import heaviest_sheet, heaviest_step
from kerfolio.edition.sheet_count import piece_enough
from kerfolio.edition.tools import tools_of, used_up
from kerfolio.layouts.boards import board_plan
from kerfolio.model.plan import Release
from tests.chapters.told import locked, names_in, rack, words_of
from tests.paper.editions import stool
from tests.paper.sample_editions import sample


def facts(edition: Edition) -> dict[str, str]:
    told = opening(edition).facts
    return {each.head: " / ".join(plain(w) for line in each.lines for w in line) for each in told}


def test_the_facts_that_decide() -> None:
    found = facts(rack())
    # The rail, 300 mm, hangs between two sides of 17.6 mm, 200 mm deep and 120 mm high.
    assert found["Size"].startswith("335.2 × 200 × 120 mm (13 3/16 × 7 7/8 × 4 23/32 in)")
    assert "about 1.0 kg (2.2 lb)" in found["Size"]
    assert found["Material"].startswith("1 × Birch plywood 18 mm / 2440 × 1220 mm")
    assert found["Sheet thickness"].startswith("17.6 to 18.2 mm (0.693 to 0.717 in)")
    assert "drawn at 17.6 mm" in found["Sheet thickness"]
    assert "4 sets of files" in found["Sheet thickness"]
    assert found["Cost"] == "no prices known"
    assert found["How hard"].startswith("Easy / 3 pieces in 1 step")
    assert found["Router’s bed"].startswith("350 × 140 mm (about 14 × 5 1/2 in)")
    assert "660 × 220 mm (about 26 × 8 1/2 in)" in found["Router’s bed"]
    assert found["Tools"].startswith("3 tools")


def test_a_cost_that_is_known_in_part_says_so() -> None:
    # A sheet of 92.50 EUR; the pine beside it has no price.
    assert facts(stool())["Cost"] == "from 92.50 EUR / no price is known for 1 line of the list"


def test_a_piece_of_sheet_is_enough_where_little_of_it_is_used() -> None:
    # The pieces reach from 22.4 to 660 mm and from 20 to 220 mm; 10 mm of margin on each side.
    edition = rack()
    margin = edition.settled.sheet("ply").margin
    wide, high = 637.6 + 2 * margin, 200 + 2 * margin
    found = piece_enough(edition, "ply")
    assert found is not None
    assert all(each % 10 == 0 for each in found)
    assert found[0] - wide == pytest.approx(0, abs=12)
    assert found[0] >= wide
    assert found[1] - high == pytest.approx(0, abs=12)
    assert found[1] >= high
    assert f"a piece of {found[0]:.0f} × {found[1]:.0f} mm" in facts(edition)["Material"]


def test_corrections_stand_in_the_opening_and_the_maker_below() -> None:
    edition = rack()
    day = date(2026, 10, 3)
    told = Release(version="2.0.0", date=day, changed="The slot was off.", errata=True)
    wrong = replace(edition, plan=replace(edition.plan, releases=(*edition.plan.releases, told)))
    assert opening(edition).notices == ()
    (notice,) = opening(wrong).notices
    assert notice.startswith("Files from before release 2.0.0 (3 October 2026) were wrong.")
    assert notice.endswith("The slot was off.")
    small = " ".join(opening(edition).small)
    assert "Ada Example" in small
    assert "Release 1.0.0, 2 October 2026" in small
    assert "Licence: CC-BY-SA-4.0" in small


def test_the_picture_is_the_photo_else_the_whole_put_together() -> None:
    assert isinstance(opening(stool()).picture, Shot)
    drawn = opening(rack()).picture
    assert isinstance(drawn, Art)
    assert drawn.name == "assembled"


def hard(name: str) -> Difficulty:
    found = difficulty_of(replace(sample(name), parts=stool().parts))
    assert found is not None
    return found


def test_how_hard_it_is_follows_its_reasons() -> None:
    found = hard("tool-tote")
    assert found.level is Level.CARE
    words = " ".join(each.words for each in found.reasons)
    for each in ("finger joints", "glued", "depth must be right"):
        assert each in words
    assert hard("window-shelf").level is Level.EASY


def test_what_goes_home_at_once_and_what_is_lifted(monkeypatch: pytest.MonkeyPatch) -> None:
    # The rail's two tabs go home each with a side that comes on; a piece weighs a third of a kilo.
    monkeypatch.setattr(difficulty, "FEW_AT_ONCE", 0)
    monkeypatch.setattr(difficulty, "LIGHT", 0.1)
    found = difficulty_of(rack())
    assert found is not None
    words = [each.words for each in found.reasons if each.level is Level.CARE]
    assert words[0] == "1 joint that goes home at once in step\N{NO-BREAK SPACE}1"
    assert words[1].endswith("to be moved at once in step\N{NO-BREAK SPACE}1")


def test_who_lifts_what() -> None:
    # 2.44 m × 1.22 m × 17.6 mm of birch plywood; over 1.8 m long, so two carry it.
    edition = rack()
    sheet, step = heaviest_sheet(edition), heaviest_step(edition)
    assert sheet is not None
    assert step is not None
    density = edition.settled.sheet("ply").stock.density
    assert math.isclose(sheet.mass, 2.44 * 1.22 * 0.0176 * density)
    assert (sheet.people, step.people) == (2, 1)
    assert "two for the whole sheet" in facts(edition)["Hands"]


def test_one_list_of_tools_and_what_is_used_up() -> None:
    tools = {each.what: each.purpose for each in tools_of(sample("tool-tote"))}
    assert tools["Clamps"] == "steps 3, 5 and 6"
    assert tools["Drill bit, 3/32 in (2.38 mm)"].startswith("4 holes in handle: pilot holes for")
    assert "Glue" not in tools
    assert used_up(sample("tool-tote"))[0] == "Wood glue, for the joints"
    assert {"Cloth", "Hard wax oil"} <= set(used_up(sample("desk-rack")))


@pytest.mark.parametrize(
    ("plan", "bit", "told", "left"),
    [
        ("tool-tote", "3/32 in (2.38 mm)", ["4 holes in handle", "step 3"], "Drill"),
        ("tool-tote", "3/8 in (9.53 mm)", ["6 holes in end", "4 holes in pad"], "Mallet"),
        ("harbour-stool", "7 mm (9/32 in)", ["2 bores", "4 bores", "step 1"], "6.5 mm wood bit"),
    ],
)
def test_one_size_of_drill_stands_once(plan: str, bit: str, told: list[str], left: str) -> None:
    """Whoever drills by hand takes one bit for it; the maker's words for it name its size."""
    tools = tools_of(sample(plan))
    names = [each.what for each in tools]
    assert len(set(names)) == len(names)
    assert left in names
    assert not {"3/32 in bit", "7 mm wood bit"} & set(names)
    (found,) = [each for each in tools if each.what == f"Drill bit, {bit}"]
    for words, purpose in zip(told, (found.purpose, *found.more), strict=True):
        assert purpose.startswith(words)


@pytest.mark.parametrize(("plan", "bored"), [("desk-rack", False), ("tool-tote", True)])
def test_bits_are_spoken_of_where_something_is_bored(plan: str, bored: bool) -> None:
    notes = [words_of(each) for each in need(sample(plan)).blocks if isinstance(each, Paragraph)]
    assert any("Bits for holes" in each for each in notes) == bored


def tables(edition: Edition) -> dict[str, list[str]]:
    blocks = [each for each in need(edition).blocks if isinstance(each, Table)]
    return {each.title: [words_of(row) for row in each.rows] for each in blocks}


def test_what_to_buy_agrees_with_the_lists() -> None:
    edition = rack()
    found = tables(edition)
    (bolts,) = found["Hardware"]
    assert bolts.startswith("2")
    assert "Bolt M6 × 40 mm" in bolts
    assert "hexagon socket, ø 6 mm, 40 mm long" in bolts
    assert "Bolt 1/4-20 × 1 1/2 in" in bolts
    (sheet,) = found["Sheets"]
    assert "2440 × 1220 mm (about 96 × 48 in)" in sheet
    assert "17.6 mm (0.693 in)" in sheet


def test_boards_stand_in_the_lengths_they_are_sold_in() -> None:
    (row,) = tables(boarded())["Boards"]
    (plan,) = boarded().board_plans
    assert {each.length for each in plan.boards} == {1800.0}
    assert row.startswith("1")
    assert "1800 mm (70 7/8 in)" in row
    assert "for Wall batten, 900 mm" in row


def boarded() -> Edition:
    """Return the potting bench with its batten, which is cut from a board of 1.8 m."""
    edition = sample("potting-bench")
    return replace(edition, board_plans=board_plan(edition.settled))


def test_nothing_is_told_that_is_kept_back_and_no_name_is() -> None:
    assert [each.head for each in opening(locked()).facts] == ["Size"]
    assert need(locked()).blocks == ()
    for edition in (rack(), stool(), sample("tool-tote"), boarded()):
        assert names_in((opening(edition), need(edition))) == []
