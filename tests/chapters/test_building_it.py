"""Chapters of the whole, its steps and what figures rest on: every fact, the edition's figures."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal

import pytest

from kerfolio.basis.adding_up import adding_up
from kerfolio.basis.figures import minutes_text, money_number
from kerfolio.basis.reader import METRIC
from kerfolio.chapters.about import about
from kerfolio.chapters.care import care
from kerfolio.chapters.costs import costs
from kerfolio.chapters.cutting import cutting
from kerfolio.chapters.files import file_blocks
from kerfolio.chapters.in_use import in_use
from kerfolio.chapters.loads import loads
from kerfolio.chapters.quantities import told
from kerfolio.chapters.questions import questions
from kerfolio.chapters.releases import correction, releases
from kerfolio.chapters.steps import steps
from kerfolio.chapters.story import story
from kerfolio.chapters.swaps import swaps
from kerfolio.chapters.trials import trials
from kerfolio.chapters.whole import whole
from kerfolio.document.blocks import (
    Caution,
    Cell,
    Dated,
    Figure,
    Figures,
    Folded,
    Live,
    Row,
    Step,
    Table,
)
from kerfolio.document.chapter import Chapter
from kerfolio.document.picture import Art, Shot
from kerfolio.document.words import Both, plain
from kerfolio.edition.cutting import cutting_of
from kerfolio.edition.edition import Edition
from kerfolio.edition.in_use import used_of
from kerfolio.edition.loads import loads_of
from kerfolio.edition.names import expected_names
from kerfolio.edition.swap import SwapRow, SwapTable
from kerfolio.model.climate import SHED
from kerfolio.model.finish import Finish
from kerfolio.model.outcome import Grade, Outcome
from kerfolio.model.plan import Photo
from kerfolio.model.statement import Named
from kerfolio.settling.surroundings import Surroundings
from kerfolio.shop.wear import CutterWear
from tests.chapters.told import rack, words_of
from tests.edition.carrying import carrying
from tests.edition.of_set import edition_of_set
from tests.edition.used import sat
from tests.pages.invented import edition
from tests.paper.sample_editions import sample
from tests.sets import SET
from tests.tools.docs_pictures import DOCS


def made(chapter: Chapter | None) -> Chapter:
    assert chapter is not None
    return chapter


def tables(chapter: Chapter | None) -> dict[str, list[list[str]]]:
    """Return the rows of every table by its title, the foot last."""
    found = (each for each in made(chapter).blocks if isinstance(each, Table))
    return {each.title: [*map(_cells, (*each.rows, *_foot(each)))] for each in found}


def _foot(table: Table) -> tuple[Row, ...]:
    return (table.foot,) if table.foot else ()


def _cells(row: Row) -> list[str]:
    return [plain(each.words if isinstance(each, Cell) else each) for each in row.cells]


def figures(chapter: Chapter | None) -> Iterator[Figure]:
    for block in made(chapter).blocks:
        match block:
            case Figure():
                yield block
            case Figures() | Step():
                yield from block.figures


@pytest.mark.parametrize(
    "text",
    [
        "360 × 450 mm (14 3/16 × 17 23/32 in)",
        "under 0.1 mm (under 0.01 in)",
        "96 × 48 in (2438.4 × 1219.2 mm)",
        "2440 × 1220 mm (about 96 × 48 in)",
        "0.693 to 0.709 in (17.6 to 18 mm)",
        "16 N (3.7 lbf)",
        "400 kg a metre (268 lb a foot)",
        "4500 mm/min (177 in/min)",
    ],
)
def test_a_quantity_in_both_units_is_one_piece(text: str) -> None:
    first, _, other = text.removesuffix(")").partition(" (")
    assert told(text) == (Both(first=first, other=other),)
    assert plain(told(f"It is {text} so.")) == f"It is {text} so."


def test_other_brackets_are_left_alone() -> None:
    for text in ("8750 N/mm² (mean value)", "step 4 (of 5)", "17 kg (NIOSH lifting equation)"):
        assert told(text) == text


def test_the_idea_has_the_maker_s_words_and_the_photos_besides_the_cover() -> None:
    found = edition()
    assert [each.kind for each in made(story(found)).blocks] == ["told"]
    more = Photo(file="photos/rail.jpg", alt="The rail", made="drawing")
    shown = story(replace(found, plan=replace(found.plan, photos=(*found.plan.photos, more))))
    (figure,) = figures(shown)
    assert (figure.alt, figure.caption) == ("The rail", "Drawing, not a photograph.")
    assert story(rack()) is None


def test_the_whole_is_drawn_measured_and_proved() -> None:
    found = made(whole(rack()))
    assert [each.picture.name for each in figures(found) if isinstance(each.picture, Art)] == [
        "assembled",
        "exploded",
    ]
    text = words_of(found)
    # The rail, 300 mm, hangs between two sides of 17.6 mm.
    assert "335.2 × 200 × 120 mm (13 3/16 × 7 7/8 × 4 23/32 in)" in text
    assert "comes home along a straight line" in text
    assert [each.name for each in found.blocks if isinstance(each, Live)] == ["model"]


def test_how_steady_it_stands_is_told_of_what_stands_on_the_floor() -> None:
    free = made(whole(rack()))
    (folded,) = (each for each in free.blocks if isinstance(each, Folded))
    assert "Tips, empty, when tilted by" in words_of(folded)
    assert "not approval" in words_of(folded)
    on_table = replace(rack(), plan=replace(rack().plan, placed="on a table"))
    assert "Tips" not in words_of(whole(on_table))


def test_a_step_tells_how_much_of_a_wedge_stands_out() -> None:
    """Of 120 mm, 60 and half a sheet of 17.7 mm are below the rail's face, 2.4 mm it is driven on.

    Of a tenon of 70 mm, 17.7 mm are in the post and 26.1 mm before the slot's end.
    Half the slot is 14.1 mm, of which the wedge fills 16 + 17 x 68.9 / 120 - 12 mm; 1 in 7.06.
    """
    text = (DOCS / "example" / "plans" / "trestle" / "plan.yaml").read_text("utf-8")
    _, second, _ = (e for e in made(steps(edition_of_set(text))).blocks if isinstance(e, Step))
    needs = {each.head: [plain(line[0]) for line in each.lines] for each in second.need}
    home = (
        "driven home it is about 2.4 mm (3/32 in) further in than drawn, and 48.7 mm (1 29/32 in) "
        "stand out at the thick end. 26.2 mm (1 1/32 in) of wood are left behind its slot"
    )
    assert needs["Wedges"] == [f"Left wedge: {home}", f"Right wedge: {home}"]


def test_a_set_is_told_once_and_then_each_of_its_things() -> None:
    found = made(whole(edition_of_set(SET)))
    text = words_of(found)
    assert text.count("A set: 2 × Foot and 1 × Board.") == 1
    assert "Foot: make 2" in text
    assert [each.name for each in found.blocks if isinstance(each, Live)] == ["model"]


def test_a_step_says_what_it_needs_and_shows_drawing_and_photo() -> None:
    found = edition()
    drawing = rack().drawings["step-1"]
    chapter = made(steps(replace(found, drawings={"step-1": drawing})))
    first, second = (each for each in chapter.blocks if isinstance(each, Step))
    needs = {each.head: [plain(line[0]) for line in each.lines] for each in first.need}
    assert needs["Pieces"] == ["A1 Left side", "B Rail", "A2 Right side"]
    assert needs["Tools"] == ["mallet", "scrap of wood"]
    assert needs["Time"] == ["about 5 minutes"]
    assert [type(each.picture) for each in first.figures] == [Art, Shot]
    assert first.caution == "Keep fingers out of the slot."
    hardware = {each.head: each.lines for each in second.need}["Hardware"]
    assert hardware == (("2 × Bolt M6 × 40, hexagon socket",),)
    text = words_of(chapter)
    assert "2 steps, about 13 minutes in all." in text
    assert "example.org/v/1" in text
    assert tables(chapter)["What is in the film"] == [["0:00", "The idea"], ["2:10", "Cutting"]]


def test_steps_of_a_set_say_what_begins() -> None:
    found = (each for each in made(steps(edition_of_set(SET))).blocks if isinstance(each, Step))
    assert [each.begins for each in found] == ["Foot: make 2", "Board: make 1"]


def test_costs_are_the_edition_s_line_by_line() -> None:
    found = edition()
    told_of = tables(costs(found))
    one = told_of["One copy, in EUR"]
    assert one[:-1] == [
        ["1", "Birch plywood 18 mm", "92.50", "92.50"],
        ["1", "Pine 45 × 45", "–", "–"],
    ]
    assert Decimal(one[-1][-1]) == found.copies[0].total
    several = told_of["Several copies, in EUR"]
    assert several == [
        [str(each.copies), str(each.sheets), money_number(each.total), money_number(each.each)]
        for each in found.copies
    ]
    assert "No price is known for 1 line of the list." in words_of(costs(found))
    unknown = replace(found.copies[0], lines=found.copies[0].lines[1:])
    assert costs(replace(found, copies=(unknown,))) is None


def test_times_add_up_by_sheet_and_by_cutter() -> None:
    """39 minutes are 23 and 16 by sheet, and 5, 22 and the 12 that no cutter is in the wood."""
    found = carrying()
    (time, *_) = found.times
    feeds = (4.6 * 60, 22.3 * 60)
    operations = tuple(
        replace(time.operations[0], cutter=name, feed_seconds=seconds, plunge_seconds=0.0)
        for name, seconds in zip(("down-cut-6", "compression-6"), feeds, strict=True)
    )
    longer = replace(time, operations=operations, rapid_seconds=7.6 * 60, change_seconds=4.0 * 60)
    wear: tuple[CutterWear, ...] = replace(found, times=(longer, found.times[1])).wear
    assert [each.minutes for each in wear] == pytest.approx([4.6, 22.3])
    told_of = tables(cutting(replace(found, times=(longer, found.times[1]))))
    *rows, foot = told_of["What each cutter does in the wood"]
    assert [row[-1] for row in rows] == ["5 minutes", "22 minutes", "12 minutes"]
    assert foot[-1] == minutes_text(longer.minutes) == "39 minutes"
    assert rows[-1][0] == "Moves above the sheet and changes of cutter"


def test_whole_figures_add_up_to_the_whole_sum() -> None:
    for values in ([22.5, 16.4], [0.4, 0.4, 0.4], [1.0, 2.0], [4.6, 22.3, 11.6], []):
        whole_ones = adding_up(values)
        assert sum(whole_ones) == math.floor(sum(values) + 0.5)
        assert all(abs(one - value) < 1 for one, value in zip(whole_ones, values, strict=True))


def test_what_the_time_rests_on_is_called_by_sheets() -> None:
    text = words_of(cutting(carrying()))
    assert "Birch plywood 18 mm, through" in text
    assert "1 of 2 sheets" in text
    words = cutting_of(carrying())
    assert words is not None
    assert words.remark in text
    assert words.wear_remark in text


@pytest.mark.parametrize("first", ["mm", "in"])
def test_every_span_has_its_figures_and_what_they_rest_on_once(first: str) -> None:
    found, text = loads_of(carrying(first)), words_of(loads(carrying(first)))
    assert found is not None
    for span in found.spans:
        for words in (span.title, span.asked, span.warning):
            assert words in text
        for figure in span.figures:
            assert f"{figure.head}\n{figure.value}" in text
            assert all(note in text for note in figure.notes)
        for bound in span.bounds if len(span.bounds) > 1 else ():
            assert bound.held in text
    assert text.index(found.cautions[0]) < text.index(found.spans[0].title)
    assert len(re.findall(r"^Growth with time", text, re.MULTILINE)) == 1


def test_in_use_begins_with_the_plain_sentence_and_its_caution() -> None:
    found, text = used_of(sat()), words_of(in_use(sat()))
    assert found is not None
    (thing,) = found.things
    assert text.index(thing.sentence) < text.index(found.cautions[0])
    for figure in thing.figures:
        assert f"{figure.head}\n{figure.value}" in text
        assert not re.search(r"\d", figure.head), "a head has no twin"
    assert all(str(each.value) in text for each in found.assumptions)


def test_another_material_says_what_no_longer_holds_before_the_table() -> None:
    table = SwapTable(
        before="Birch plywood 12 mm",
        after="MDF 12 mm",
        rows=(SwapRow(what="Weight", before="4.1 kg (9.0 lb)", after="4.6 kg (10.1 lb)"),),
        verdict="Refused: 1 thing no longer holds.",
        refused=("the board sags too far",),
        remarks=("its edges drink paint",),
    )
    found = made(swaps(replace(carrying(), swaps=(table,))))
    (caution,) = (each for each in found.blocks if isinstance(each, Caution))
    assert (caution.head, caution.lines) == (table.verdict, ("The board sags too far.",))
    assert "Its edges drink paint." in words_of(found)
    (rows,) = tables(found).values()
    assert rows == [["Weight", "4.1 kg (9.0 lb)", "4.6 kg (10.1 lb)"]]


def finished(of: str) -> Edition:
    found = rack()
    plan = replace(found.plan, climate=SHED, finish=Finish(of=Named(of), coats=2))
    settled = replace(found.settled, plan=plan, surroundings=Surroundings(coat=0.01))
    return replace(found, plan=plan, settled=settled)


def test_finishing_tells_of_every_edge_that_is_worked_on() -> None:
    found = care(sample("window-shelf"))
    assert found is not None
    told = words_of(found.blocks[0])
    for words in ("eased: ", "rounded over 3 mm", "banded: Birch veneer, iron-on"):
        assert words in told


def test_oil_brings_the_caution_on_rags_and_a_varnish_does_not() -> None:
    oiled = words_of(care(finished("oil")))
    assert "2 coats of oil" in oiled
    assert "catch fire by themselves" in oiled
    assert "It is made to live in a shed" in oiled
    assert "Sanding makes the finest dust" in oiled
    assert "catch fire" not in words_of(care(finished("varnish")))


def test_what_to_look_at_after_a_season_follows_what_is_there() -> None:
    text = words_of(care(rack()))
    assert "Turn every bolt" in text
    assert "another coat" not in text
    bare = replace(rack(), hardware=())
    assert care(bare) is None


def test_questions_are_the_readers_then_the_usual_ones() -> None:
    text = words_of(questions(edition()))
    assert text.index("Will it take an adult?") < text.index("May I sell what I make?")
    assert "17.6 to 18 mm (0.693 to 0.709 in)" in text
    assert "in 3 sets of files" in text
    assert "2440 × 1220 mm" in text
    assert "as SVG and as DXF" in text


def test_trials_come_with_settings_outcome_and_picture() -> None:
    text = words_of(trials(edition()))
    assert text.index("Slots in the new birch") < text.index("Same, one shallow pass more")
    for words in (
        "Clean.",
        "To mend: tear-out.",
        "18000 rpm",
        "4500 mm/min (177 in/min)",
        "17.8 mm",
    ):
        assert words in text
    assert [each.alt for each in figures(trials(edition()))] == ["A clean edge"]
    assert trials(rack()) is None
    untold = replace(edition().trials[1], outcome=Outcome())
    bare = made(trials(replace(edition(), trials=(untold,))))
    assert [each.words for each in bare.blocks if isinstance(each, Dated)] == [""]


def test_settings_as_cut_come_with_their_count_and_outcome() -> None:
    clean, _ = edition().trials
    ids = ("a", "b", "c", "d", "e")
    again = [replace(clean, id=each) for each in ids]
    sanded = replace(again[2], outcome=Outcome(whole=Grade.TO_SAND), feed_mm_per_min=3000)
    thick = replace(again[3], thickness=25.0)
    unfed = replace(again[4], feed_mm_per_min=None)
    found = replace(edition(), trials=(again[0], again[1], sanded, thick, unfed))
    (table,) = [each for each in made(trials(found)).blocks if isinstance(each, Table)]
    best, worst = (
        [plain(cell.words if isinstance(cell, Cell) else cell) for cell in row.cells]
        for row in table.rows
    )
    assert best == ["Birch plywood 18 mm", "18000 rpm", "2 × Clean"]
    assert worst == ["Birch plywood 18 mm", "18000 rpm", "1 × To sand"]
    text = words_of(trials(found))
    assert "Passes 8 mm (5/16 in) and 10.1 mm (25/64 in)" in text
    assert "Cut from 25 mm" in text
    assert "trial-a" in [each.id for each in made(trials(found)).blocks if isinstance(each, Dated)]
    bare = replace(edition(), trials=(unfed,))
    assert [each for each in made(trials(bare)).blocks if isinstance(each, Table)] == []


def test_an_entry_of_another_release_says_so() -> None:
    clean, _ = edition().trials
    versions = [each.version for each in edition().plan.releases]
    old = replace(clean, id="old", release=min(versions))
    gone = replace(clean, id="gone", release="0.0.1")
    text = words_of(trials(replace(edition(), trials=(old, gone))))
    assert f"since then came {max(versions)}" in text
    assert "Cut from release 0.0.1, which the plan no longer lists." in text


def test_releases_are_newest_first_and_corrections_say_so() -> None:
    newest, older = (each for each in releases(edition()).blocks if isinstance(each, Dated))
    assert (newest.id, newest.head, newest.iso) == ("release-1.2.0", "1.2.0", "2026-10-02")
    assert (older.flag, newest.flag) == (correction(METRIC), "")
    assert older.words == "Rail 2 mm longer."


def test_about_says_whose_it_is_and_where_corrections_stand() -> None:
    text = words_of(about(edition()))
    for words in (
        "sell what you make",
        "not legal advice",
        "Write to Ida Fernhill: ida@example.org",
        "The cover and step 1 are shown as a drawing, not a photograph.",
        "https://example.org/plans/harbour-stool/",
        "LICENCE.txt",
        "release 1.2.0 of 2 October 2026, designed by Ida Fernhill",
    ):
        assert words in text


def test_every_file_is_listed_and_what_to_read_comes_first() -> None:
    names = expected_names(rack())
    text = words_of(file_blocks(rack(), names))
    assert text.index("booklet-a4.pdf") < text.index("cut/")
    lines = set(text.splitlines())
    for name in names - {"start-here.html"}:
        assert any(name == line or name.endswith(f"/{line}") for line in lines), name
