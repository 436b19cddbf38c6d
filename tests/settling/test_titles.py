"""What readers know things by: of stated titles, and of names by the rule that README states."""

from __future__ import annotations

from dataclasses import replace

import pytest

from kerfolio.basis.reader import INCHES, METRIC, Reader
from kerfolio.settling.measured import measured_for, sheet_measured, sheets_measured
from kerfolio.settling.titles import (
    board_title,
    feature_title,
    part_title,
    piece_title,
    plainly,
    sheet_title,
    within,
)
from tests.plans import RACK, settled_at, workshop
from tests.sets import SET

TWO = (("ply", 17.6), ("tops", 12.0))
THREE = (*TWO, ("back", 6.5))
STATED = RACK.replace("  side:\n", "  side:\n    title: Cheek\n").replace(
    "ply: {stock:", "ply: {title: The good sheet, stock:"
)


@pytest.mark.parametrize(
    ("label", "title"),
    [
        ("rail", "Rail"),
        ("side.left", "Left side"),
        ("side.lower-left", "Lower left side"),
        ("divider.2", "Divider 2"),
        ("leg.a", "Leg A"),
        ("back-rest", "Back rest"),
    ],
)
def test_what_names_say(label: str, title: str) -> None:
    assert piece_title(workshop(RACK).plans[0], label) == title


def test_a_piece_of_a_thing_made_twice_says_of_which() -> None:
    plan = workshop(SET).plans[0]
    assert piece_title(plan, "2/lower") == "Lower of foot 2"
    assert piece_title(plan, "board") == "Board"


def test_a_stated_title_stands_for_the_name() -> None:
    plan = workshop(STATED).plans[0]
    assert part_title(plan, "side") == "Cheek"
    assert piece_title(plan, "side.left") == "Left cheek"
    assert sheet_title(settled_at(17.6, STATED), "ply") == "The good sheet"


def test_sheets_of_one_stock_are_told_apart_by_their_words() -> None:
    settled = settled_at(17.6, RACK)
    title = settled.sheets[0].stock.title
    assert sheet_title(settled, "ply") == title
    twin = replace(settled, sheets=(*settled.sheets, replace(settled.sheets[0], name="tops")))
    assert [sheet_title(twin, each) for each in ("ply", "tops")] == [
        f"{title}, ply",
        f"{title}, tops",
    ]


def test_what_sheets_measure_is_told_with_titles_where_there_are_several() -> None:
    one = settled_at(17.6, STATED)
    assert sheet_measured(one, "ply", METRIC) == measured_for(one, METRIC) == "17.60 mm thick"
    assert sheets_measured(one, INCHES) == "sheets 0.693 in thick"
    two, three = (
        replace(one, variant=replace(one.variant, thickness=each)) for each in (TWO, THREE)
    )
    assert sheet_measured(two, "tops", METRIC) == "Tops at 12.00 mm"
    assert measured_for(two, METRIC) == "The good sheet at 17.60 mm, Tops at 12.00 mm"
    assert sheets_measured(two, METRIC) == "The good sheet at 17.60 mm and Tops at 12.00 mm"
    assert measured_for(three, METRIC) == "17.60 mm, 12.00 mm, 6.50 mm thick"


def test_features_and_test_joints() -> None:
    assert (feature_title("rear-tabs"), feature_title("bolts.2")) == ("Rear tabs", "Bolts 2")
    assert part_title(workshop(RACK).plans[0], "test-joint-ply") == "Test joint"


def test_boards_and_titles_within_a_sentence() -> None:
    assert (board_title("batten"), board_title("foot.2")) == ("Batten", "Foot 2")
    assert [within(each) for each in ("Left side", "MDF back", "T-nut")] == [
        "left side",
        "MDF back",
        "T-nut",
    ]


def test_they_are_told_in_the_readers_language() -> None:
    """German nouns keep their capitals; what a piece is called by stands behind its part."""
    german, plan = Reader(language="de"), workshop(SET).plans[0]
    assert piece_title(plan, "2/lower", german) == "Lower von Foot 2"
    assert piece_title(workshop(RACK).plans[0], "side.left", german) == "Side left"
    assert within("Rail", german) == "Rail"
    assert part_title(plan, "test-joint", german) == "Probeverbindung"
    assert plainly("`rail.left-tabs`", workshop(RACK).plans[0], german) == "left tabs (Rail)"
    one = settled_at(17.6, STATED)
    assert sheets_measured(one, german) == "Platten von 17,60 mm Dicke"
    two = replace(one, variant=replace(one.variant, thickness=TWO))
    assert sheets_measured(two, german) == "The good sheet mit 17,60 mm und Tops mit 12,00 mm"
