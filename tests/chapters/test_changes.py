"""What holders of an older release are told: which pieces to cut anew, in both languages."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from kerfolio.basis.reader import Reader
from kerfolio.chapters.changes import blocks_of, draft_of, letter, pieces_told, serving
from kerfolio.drawing.change_view import change_view
from kerfolio.drawing.vocabulary import Ink, Stroke
from kerfolio.model.plan import Release
from kerfolio.releasing.change import ReleaseChange, without_shapes
from tests.pages.invented import edition
from tests.plans import workshop
from tests.releasing.pairs import CASES
from tests.releasing.test_pairs import compared, with_changes

ENGLISH, GERMAN = Reader(language="en"), Reader(language="de")


def told(name: str, reader: Reader = ENGLISH) -> str:
    case = CASES[name]
    text = with_changes(with_changes(case.plan, case.base), case.change)
    return serving(compared(case), workshop(text).plans[0], reader)


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("slot moved", "Cut anew: side. These fit as they are: rail, stretcher and top."),
        ("text only", "All older pieces fit as they are."),
        ("larger box", "Cut all pieces anew."),
        (
            "another sheet",
            "1.0.0 was for sheets of another thickness. Cut all pieces anew.",
        ),
        (
            "a part more",
            "Cut anew: side. These fit as they are: rail, stretcher and top. "
            "Cut besides, as they are new: brace.",
        ),
        (
            "mirrored",
            "All older pieces fit as they are. Turn over as you put it together: side.",
        ),
        (
            "tabs further apart",
            "All older pieces fit as they are. These fit only one another as they were, "
            "so cut all of them anew or none: side and top.",
        ),
    ],
)
def test_it_is_told_which_pieces_still_serve(name: str, words: str) -> None:
    assert told(name) == words


def test_it_is_told_in_german() -> None:
    assert told("slot moved", GERMAN) == (
        "Neu zu schneiden: Side. So, wie sie sind, passen: Rail, Stretcher und Top."
    )


def test_some_pieces_of_a_part_are_named_one_by_one() -> None:
    case = CASES["slot moved"]
    plan = workshop(case.plan).plans[0]
    assert pieces_told(["side.left", "top"], compared(case), plan, ENGLISH) == "left side and top"


def test_the_letter_says_what_is_new_and_what_to_do() -> None:
    case = CASES["slot moved"]
    plan = workshop(case.plan).plans[0]
    release = Release(version="1.0.1", date=date(2026, 11, 30), changed="The rail sat too low.")
    head, changed, *rest = letter(compared(case), plan, release, ENGLISH).split("\n\n")
    assert head == "Probe stand 1.0.1 is out (30 November 2026), and you have 1.0.0."
    assert changed == "The rail sat too low."
    assert rest == [told("slot moved"), "Not every piece of 1.0.0 fits this release."]


def test_a_draft_names_the_parts_that_changed() -> None:
    case = CASES["wider"]
    plan = workshop(case.plan).plans[0]
    assert draft_of(compared(case), plan, ENGLISH).startswith("Changed: Rail, Stretcher and Top. ")


def words_of_slot_moved(change: ReleaseChange) -> str:
    plan = workshop(CASES["slot moved"].plan).plans[0]
    return repr([*blocks_of(change, replace(edition(), plan=plan, exact=False))])


def test_who_may_not_see_shapes_is_not_told_that_nothing_moved() -> None:
    change = compared(CASES["slot moved"])
    assert "Side: what meets other pieces lies elsewhere (rail slot)." in words_of_slot_moved(
        change
    )
    hidden = words_of_slot_moved(without_shapes(change))
    assert "Side: of another shape." in hidden
    assert "rail slot" not in hidden


def test_what_moved_is_ringed_over_the_older_outline() -> None:
    side = next(each for each in compared(CASES["slot moved"]).parts if each.name == "side")
    drawing = change_view(side, (170.0, 105.0), ENGLISH)
    strokes = [each for each in drawing.items if isinstance(each, Stroke)]
    rings = [each for each in strokes if each.ink is Ink.ACCENT and each.contour.closed]
    dashed = [each for each in strokes if each.dash]
    assert (len(rings), len(dashed)) == (1, 1)  # one slot moved; what did not is drawn once
    assert drawing.height <= 61.2
