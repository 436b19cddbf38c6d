"""How parts are measured for, cut by each way and told, against the plan's own numbers."""

from __future__ import annotations

from dataclasses import replace

import pytest

from kerfolio.basis.reader import METRIC
from kerfolio.basis.thickness import thickness_text
from kerfolio.chapters.coupon import coupon
from kerfolio.chapters.hand import hand
from kerfolio.chapters.measuring import measuring
from kerfolio.chapters.order import BOOKLET, PAGE, START, chapters_of
from kerfolio.chapters.parts import parts
from kerfolio.chapters.router import router
from kerfolio.chapters.saw import saw
from kerfolio.chapters.sheets import sheets
from kerfolio.chapters.shop import shop
from kerfolio.chapters.yard import yard
from kerfolio.document.blocks import Figure, Figures, Folded, Live, Table
from kerfolio.document.chapter import Chapter, Who
from kerfolio.document.picture import Art
from kerfolio.edition.by_hand import by_hand
from kerfolio.edition.edition import Edition
from kerfolio.edition.layers import layers_explained
from kerfolio.edition.names import expected_names
from kerfolio.layouts.boards import board_plan
from kerfolio.layouts.saw import saw_plan
from kerfolio.shop.places import spots_of
from tests.chapters.told import files_in, locked, names_in, rack, words_of
from tests.paper.editions import stool
from tests.paper.sample_editions import sample


def made(found: Chapter | None) -> Chapter:
    assert found is not None
    return found


def table(chapter: Chapter, title: str) -> list[str]:
    blocks = [each for each in chapter.blocks if isinstance(each, Table)]
    return [words_of(row) for each in blocks if each.title.startswith(title) for row in each.rows]


def test_every_folder_stands_beside_the_thickness_it_is_for() -> None:
    edition = rack()
    rows = table(made(measuring(edition)), "Folders")
    assert len(rows) == len(edition.variants) == 4
    for row, each in zip(rows, edition.variants, strict=True):
        assert row.startswith(f"cut/{each.variant.label}\n")
        assert thickness_text(dict(each.variant.thickness)["ply"], METRIC) in row


def test_where_a_screen_makes_files_paper_says_so() -> None:
    (live,) = [each for each in made(measuring(rack())).blocks if isinstance(each, Live)]
    assert live.name == "fitting"
    assert words_of(live.blocks).startswith("Open start-here.html, on a computer or a phone")
    unfitted = measuring(replace(rack(), fitted=False))
    (bare,) = [each for each in made(unfitted).blocks if isinstance(each, Live)]
    assert bare.blocks == ()


def test_each_step_of_the_coupon_names_what_to_take() -> None:
    edition = rack()
    (found,) = edition.settled.coupons
    rows = table(made(coupon(edition)), "Steps of the coupon")
    assert len(rows) == len(found.slots)
    for row, slot in zip(rows, found.slots, strict=True):
        number, width, thick, *take = row.split("\n")
        assert (number, width) == (str(slot.number), thickness_text(slot.width, METRIC))
        assert thick == thickness_text(slot.thickness, METRIC)
        assert take
    assert "cut/fit-coupon" in words_of(coupon(edition))


def test_the_router_is_told_its_files_sides_cutter_depth_and_layers() -> None:
    edition = rack()
    told = words_of(router(edition))
    for words in ("100 mm and 4 in", "Lines are the finished edge", "Zero z on the bed"):
        assert words in told
    assert edition.settled.sheets[0].cutter.title in told
    assert table(router(edition), "The layers")[0].startswith("engrave_0.5mm\n")
    assert len(table(router(edition), "The layers")) == len(layers_explained(edition))


def sawn() -> Edition:
    edition = stool()
    return replace(edition, saw=saw_plan(edition.settled))


def test_the_saw_has_its_sheets_drawn_and_its_caution() -> None:
    edition = sawn()
    figures = [each for each in saw(edition).blocks if isinstance(each, Figure)]
    assert [each.picture.name for each in figures if isinstance(each.picture, Art)] == ["saw-1"]
    told = words_of(saw(edition))
    for words in ("riving knife", "These sizes are for", "layout/saw-a4.pdf", "to spare"):
        assert words in told
    assert f"{len(edition.saw[0].cuts)} cuts from edge to edge" in told


def test_boards_are_trimmed_and_drawn() -> None:
    # A 1/8 in blade and 10 mm off one end: common practice, no single source.
    bench = sample("potting-bench")
    found = saw(replace(bench, board_plans=board_plan(bench.settled)))
    assert "Trim 10 mm (13/32 in) off one end" in words_of(found)
    assert "the saw takes 3.2 mm (1/8 in) beyond each length" in words_of(found)
    figures = [each for each in found.blocks if isinstance(each, Figure)]
    assert words_of(figures[0].caption).startswith("Pine 21 × 45 mm")


def test_who_wants_a_chapter() -> None:
    edition = rack()
    ways = {each.id: each.who for each in (router(edition), saw(edition), shop(edition))}
    assert ways == {"router": {Who.ROUTER}, "saw": {Who.SAW}, "shop": {Who.SHOP}}
    assert hand(edition).who == {Who.HAND, Who.SAW}


def test_every_file_that_is_named_is_in_the_bundle() -> None:
    edition = rack()
    known = expected_names(edition)
    folders = {name.rsplit("/", n)[0] for name in known for n in range(1, name.count("/") + 1)}
    for chapter in chapters_of(edition, BOOKLET):
        assert files_in(chapter) <= {*known, *folders}, chapter.id
    assert any(name.startswith("templates/") for name in files_in(hand(edition)))


def test_parts_are_listed_drawn_at_one_scale_and_marked_out() -> None:
    edition = rack()
    found = made(parts(edition))
    side, rail = table(found, "Parts")
    assert "A1 A2" in side
    assert "Side" in side
    assert "335.2 × 120 mm (13 3/16 × 4 23/32 in)" in rail
    (pictures,) = [each for each in found.blocks if isinstance(each, Figures)]
    arts = [each.picture for each in pictures.figures if isinstance(each.picture, Art)]
    assert len({art.scale for art in arts}) == 1
    widths = {art.name: art.draw((80.0, 60.0)).width for art in arts}
    assert widths["part-rail"] > 335.2 * arts[0].scale
    (places,) = [each for each in found.blocks if isinstance(each, Folded)]
    told = words_of(places)
    assert "Hole\n30\n30\n6.6\n\nthrough" in told
    assert "Slot\n100\n60\n60.2\n17.8\nthrough\nupright" in told


def test_places_count_from_the_edges_of_the_whole_part() -> None:
    # The stool's rail is drawn from its shoulders; its tabs stand 17.8 mm out on the left, so that
    # the barrel nut's hole, 25 mm from the shoulder, is 42.8 mm from the left edge.
    settled = sample("harbour-stool").settled
    *nuts, left, right = spots_of(settled, settled.part("rail"))
    bores = (left, right)
    assert [each.left for each in nuts] == pytest.approx([42.8, 320 - 42.8])
    assert {each.up for each in (*nuts, *bores)} == {50.0}
    # The bores for its bolts begin at the shoulders.
    assert [each.left for each in bores] == pytest.approx([17.8, 320 - 17.8])
    assert {each.depth for each in bores} == {35.0}
    # So do the bench's worktop's, whose first slot is stated at 200, 60 from the same corner.
    bench = sample("potting-bench").settled
    slot = spots_of(bench, bench.part("worktop"))[0]
    assert (slot.left, slot.up) == pytest.approx((217.8, 60.0))
    bore, hole = spots_of(settled, settled.part("seat"))[:2]
    assert (bore.width, bore.depth) == (13.0, 8.0)
    assert hole.width == pytest.approx(6.6)


def test_sheets_have_their_pieces_and_their_file() -> None:
    edition = rack()
    found = made(sheets(edition))
    rows = table(found, "Pieces on sheet 1")
    assert [row.split("\n")[:2] for row in rows] == [
        ["A1", "Left side"],
        ["A2", "Right side"],
        ["B", "Rail"],
    ]
    assert [row.split("\n")[-1] for row in rows] == ["90°", "90°", "–"]
    assert "cut/17.6mm/sheet-1 is for Birch plywood 18 mm measuring 17.6 mm only" in words_of(found)


def test_the_yard_card_is_whole_on_paper() -> None:
    told = words_of(yard(rack()))
    for words in ("Birch plywood 18 mm", "13 plies", "no heavier than 25.0 kg", "ask what a sheet"):
        assert words in told


@pytest.mark.parametrize("order", [BOOKLET, PAGE, START])
def test_no_name_of_a_plan_file_reaches_a_reader(order: tuple[object, ...]) -> None:
    for edition in (rack(), sawn(), sample("tool-tote"), sample("potting-bench")):
        for chapter in chapters_of(edition, order):  # type: ignore[arg-type]
            assert names_in(chapter) == [], chapter.id


def test_what_is_kept_back_is_neither_drawn_nor_measured() -> None:
    # What it looks like put together, and its size, everybody may see.
    found = tuple(each for each in chapters_of(locked(), PAGE) if each.id != "whole")
    told = words_of(found)
    assert "335.2" not in told
    assert not any(
        isinstance(block, Figure | Figures | Table) for each in found for block in each.blocks
    )
    shown = parts(locked("sizes"))
    assert not [each for each in made(shown).blocks if isinstance(each, Figures | Folded)]
    assert "335.2 × 120 mm" in words_of(shown)


def test_whether_hands_can_cut_it_stands_first() -> None:
    found = by_hand(rack())
    told = words_of(hand(rack()))
    assert told.index(found.words) < told.index("In this order")
    assert found.effort in told
    assert all(each.text in told for each in found.reasons)
