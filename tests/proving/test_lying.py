"""Steps whose words and pictures lie differently; pieces that lie before they are there."""

from __future__ import annotations

import pytest

from tests.plans import proved
from tests.tray_plan import TRAY

RULES = (
    *("step-lies-otherwise", "piece-lies-early", "beside-joined"),
    *("piece-held-early", "order-of-one"),
)


def told(text: str = "Lay it down.", more: str = "", later: str = "") -> list[str]:
    found = proved(TRAY.format(text=text, more=more, later=later, fit="")).findings
    return [each.rule for each in found if each.rule in RULES]


@pytest.mark.parametrize(
    "text",
    [
        "Lay the top face down.",
        "Put it face-down on the bench.",
        "Turn it upside down.",
        "Lay it on its side.",
        "Lay it on a blanket.",
        "Mit der Sichtseite nach unten legen.",
        "Auf den Kopf stellen.",
        "Auf die linke Seite legen.",
        "Auf eine Decke legen.",
    ],
)
def test_words_that_the_picture_does_not_show_are_asked_about(text: str) -> None:
    assert told(text) == ["step-lies-otherwise"]
    assert told(text, ", lies: {top: face down}") == []


@pytest.mark.parametrize(
    "text",
    ["Lay it down.", "Face up.", "Round the edges on the outside.", "Auf den Tisch legen.",
     "The rib goes on the left side."],
)  # fmt: skip
def test_other_words_are_not(text: str) -> None:
    assert told(text) == []


def test_a_piece_cannot_lie_before_it_is_there() -> None:
    assert told(more=", lies: {rib: face down}") == ["piece-lies-early"]
    assert told(later=", lies: {top: upside down}") == []


def test_only_what_is_there_is_held_or_comes_in_turn() -> None:
    assert told(more=", holds: [rib]") == ["piece-held-early"]
    assert told(more=", order: [top, rib]") == ["piece-held-early"]
    assert told(later=", holds: [top]") == []


def test_an_order_is_of_lots_that_move_by_themselves() -> None:
    """In the second step one move brings the rib and the top together."""
    assert told(later=", order: [top, rib]") == ["order-of-one"]


def test_what_meets_what_stands_is_not_made_apart() -> None:
    assert told(later=", beside: true") == ["beside-joined"]
    assert told(more=", beside: true") == []


def test_how_work_lies_is_one_piece_and_a_word_from_the_list() -> None:
    for more, part in (
        (", lies: {top: sideways}", "`sideways` is not how a piece lies"),
        (", lies: face down", "one piece, and what is joined to it"),
        (", lies: {top: face down, rib: face up}", "one piece, and what is joined to it"),
    ):
        with pytest.raises(AssertionError, match=part):
            told(more=more)


def test_a_step_bores_only_what_there_is() -> None:
    found = proved(TRAY.format(text="Bore.", more=", bores: [rib.hole]", later="", fit="")).findings
    assert [each.rule for each in found if each.rule == "step-bores"] == ["step-bores"]
