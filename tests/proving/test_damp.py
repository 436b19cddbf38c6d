"""Sheets that film and damp make grow past their play, and boards that cannot move.

What a board moves is the Wood Handbook's coefficient (``tests/settling/damp_checks.py``).
"""

from __future__ import annotations

import pytest

from kerfolio.basis.finding import Finding, Severity
from tests.proving.test_play import joined
from tests.proving.two_panels import plan_text, remarks, told

RULES = ("swells-past-play", "board-held-across", "unknown-part")
PLAY = ("joint-too-tight", "joint-too-loose", "fit-too-loose", "fit-too-tight")
WIDE = "slot: {slot: {at: [200, 150], length: 60.2, angle: 90, width: 18}}"
BOARD = "boards: {{lip: {{stock: pine-21x95, length: 300, fixed: {{part: side, by: {by}}}}}}}"
PURPOSE = (
    "Write a purpose in place of the length, such as `fit: knock-down`: what film and damp want is "
    "added to it."
)
NO_GLUE = "slots across the board, {} longer than their screws are thick, and no glue."


def said(head: str, text: str) -> list[str]:
    found = remarks(f"{head}\n{text}", *RULES, *PLAY, "tab-loose-in-slot")
    assert all(each.severity is Severity.WARNING for each in found)
    return [_words(each) for each in found]


def _words(found: Finding) -> str:
    return f"{found.message} / {found.advice}"


@pytest.mark.parametrize("place", ["shed", "outdoors"])
@pytest.mark.parametrize("fit", ["", "knock-down", "press", "{purpose: drop-in}"])
def test_what_follows_a_fit_has_room_everywhere_and_its_play_is_judged_without(
    place: str, fit: str
) -> None:
    film = "finish: {of: varnish, coats: 3, when: before assembly, sanding: 0.05}"
    assert said(f"place: {place}\n{film}", joined(fit)) == []


@pytest.mark.parametrize("fit", ["", "knock-down"])
def test_a_thick_film_s_room_makes_no_tab_loose(fit: str) -> None:
    film = "finish: {of: paint, coats: 2, when: before assembly, film: 0.4}"
    assert said(film, joined(fit)) == []


def test_what_is_sanded_off_a_face_is_missing_of_a_housing_and_of_a_sheet() -> None:
    housing = "slot: {pocket: {at: [200, 150], length: 60, angle: 90, takes: ply, depth: 6}}"
    tab = "tab: {tabs: {edge: left, at: 30, width: 60, depth: 5.9}}"
    text = plan_text(housing, tab, "tab: rail.tab, into: side.slot")
    sanded = "finish: {of: oil, film: 0, sanding: 0.15}"
    assert told(f"{sanded}\n{text}", "tab-deeper-than-recess") == [
        "`rail.tab` stands 0.05 mm above its recess"
    ]
    assert told(text, "tab-deeper-than-recess") == []
    narrow = joined(side=WIDE.replace("width: 18", "width: 17.6"))
    assert told(f"{sanded}\n{narrow}", "sheet-thicker-than-slot") == []
    assert told(narrow, "sheet-thicker-than-slot") == [
        "slot `side.slot` is 0.2 mm too narrow for its sheet"
    ]


def test_a_length_of_its_own_is_grown_past() -> None:
    """8.00 % more moisture x 0.35 % x 17.8 mm / 2 = 0.249 mm on each side."""
    assert said("place: shed", joined("0.15")) == [
        "`rail` grows past its play in `side.slot`: 0.15 mm a side, and it wants 0.25 mm for the "
        f"damp of a shed / {PURPOSE} Or state 0.25 mm, with the play you want besides."
    ]
    assert said("place: shed", joined("{width: 0.35, ends: 0.1}")) == []
    assert said("place: shed", joined("{width: 0.75, ends: 0.1}")) == [
        "`side.slot` has 0.75 mm a side: loose / Did you mean `0.075 mm`?"
    ]


def test_a_film_alone_may_be_too_much_at_faces_and_ends() -> None:
    film = "finish: {of: varnish, coats: 3, when: before assembly, film: 0.04}"
    assert said(film, joined("0.1")) == [
        f"`rail` grows past its play in `side.slot`: 0.1 mm {where}, and it wants 0.24 mm for film "
        f"/ {PURPOSE} Or state 0.24 mm, with the play you want besides."
        for where in ("a side", "at either end")
    ]
    assert said(film.replace("before", "after"), joined("0.1")) == []


def test_an_opening_of_a_stated_width_is_looked_at_too() -> None:
    assert said("place: shed", joined(side=WIDE)) == [
        "`rail` grows past its play in `side.slot`: 0.1 mm a side, and it wants 0.25 mm for the "
        "damp of a shed / Write `takes: ply` in place of its size: that allows for both."
    ]
    assert said("place: shed", joined(side=WIDE.replace("18", "18.3"))) == []
    assert said("", joined(side=WIDE)) == []


def test_a_housed_shelf_of_mdf_grows_past_the_ends_of_its_housing() -> None:
    """MDF grows by 0.3 % in its plane, plywood by 0.168 %: 0.04 mm on either end of 60 mm."""
    text = joined("{purpose: knock-down, ends: 0.02}").replace("takes: ply", "takes: board", 1)
    text = text.replace("rail:\n    sheet: ply", "rail:\n    sheet: board")
    text = text.replace("sheets:\n", "sheets:\n  board: {stock: mdf-18, size: 2440 x 1220}\n")
    assert said("place: shed", text) == [
        "`rail` grows past its play in `side.slot`: 0.02 mm at either end, and it wants 0.04 mm "
        f"for the damp of a shed / {PURPOSE} Or state 0.04 mm, with the play you want besides."
    ]


@pytest.mark.parametrize(
    ("head", "by", "words"),
    [
        # pine across the grain: 0.267 % x (12.00 - 6.19) x 95 mm; x (23.94 - 9.27) x 40 mm
        (
            "",
            "glue",
            "`lip` is held by glue over 95 mm of its width on `side`, and moves by 1.5 mm in a "
            f"heated room / Write `by: slotted holes`: {NO_GLUE.format('1.5 mm')}",
        ),
        (
            "place: outdoors",
            "screws, apart: 40",
            "`lip` is held by screws over 40 mm of its width on `side`, and moves by 1.6 mm in the "
            f"open air / Write `by: slotted holes`: {NO_GLUE.format('1.6 mm')} Or keep the screws "
            "within 12.8 mm across it.",
        ),
    ],
)
def test_a_board_that_cannot_move_is_told(head: str, by: str, words: str) -> None:
    assert said(head, f"{BOARD.format(by=by)}\n{joined()}") == [words]


@pytest.mark.parametrize("by", ["slotted holes", "screws, apart: 0", "screws, apart: 30"])
def test_a_board_that_may_move_is_not(by: str) -> None:
    assert said("", f"{BOARD.format(by=by)}\n{joined()}") == []


def test_a_board_lies_on_a_part_of_the_plan() -> None:
    text = f"{BOARD.format(by='glue')}\n{joined()}".replace("part: side", "part: sid")
    assert [_words(each) for each in remarks(text, *RULES)] == [
        "no part `sid` / Did you mean `side`?"
    ]


@pytest.mark.parametrize(
    ("place", "stock", "words"),
    [
        ("shed", "mdf-18", "`ply` is `mdf-18`, which is not for a shed"),
        ("outdoors", "osb-18", "`ply` is `osb-18`, which is not for the open air"),
        ("shed", "osb-18", ""),
        ("outdoors", "birch-plywood-18", ""),
        ("heated room", "mdf-18", ""),
    ],
)
def test_a_sheet_that_is_not_for_the_place_is_told(place: str, stock: str, words: str) -> None:
    text = joined().replace("birch-plywood-18", stock)
    advice = "Take plywood for it, or state the `place` that it really lives in."
    found = remarks(f"place: {place}\n{text}", "sheet-too-damp")
    assert [_words(each) for each in found] == ([f"{words} / {advice}"] if words else [])
