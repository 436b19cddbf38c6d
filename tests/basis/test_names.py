"""Names: those that are near by letters and by numbers, and names made of other words."""

from __future__ import annotations

import pytest

from kerfolio.basis.names import begins, did_you_mean, name_of, nearest, set_name

PLYWOOD = [f"birch-plywood-{number}" for number in (4, 6, 9, 12, 15, 18, 21, 27, 50)]


@pytest.mark.parametrize(
    ("name", "known", "advice"),
    [
        (
            "birch-plywood-10",
            PLYWOOD,
            "Did you mean `birch-plywood-9` or `birch-plywood-12`?",
        ),
        (
            "brich-plywood-10",
            PLYWOOD,
            "Did you mean `birch-plywood-9` or `birch-plywood-12`?",
        ),
        ("brich-plywood-18", PLYWOOD, "Did you mean `birch-plywood-18`?"),
        ("birch-plywood-40", PLYWOOD, "Did you mean `birch-plywood-50` or `birch-plywood-27`?"),
        ("wedge.5", ["wedge.3", "wedge.4", "rib.5"], "Did you mean `wedge.4` or `wedge.3`?"),
        ("m6x45", ["m6x40", "m6x50", "m8x45"], "Did you mean `m6x40` or `m6x50`?"),
        ("side-2.left", ["side.left", "side.right"], "Did you mean `side.left`?"),
        ("atan3", ["atan", "atan2", "tan"], "Did you mean `atan2`?"),
        ("wedge.9", ["wedge.1", "wedge.2"], "Known here: `wedge.1`, `wedge.2`."),
    ],
)
def test_numbers_go_by_their_size_and_words_by_likeness(
    name: str, known: list[str], advice: str
) -> None:
    assert did_you_mean(name, known) == advice
    assert did_you_mean(name, reversed(known)) == advice


def test_a_number_ten_times_too_large_is_not_answered_with_another() -> None:
    assert nearest("birch-plywood-180", PLYWOOD) is None


def test_a_long_list_is_cut_to_the_likeliest() -> None:
    known = [f"slot-{letter}" for letter in "abcdefghijklmnopqrstuvwxyz"] + ["peg"]
    advice = did_you_mean("q", known)
    assert advice.startswith("Known here: ")
    assert advice.endswith(" and 19 more.")
    assert advice.count("`") == 16
    assert "`slot-q`" in advice


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("Brücke", "bruecke"),
        ("Bru\u0308cke", "bruecke"),
        ("Große Brücke 2", "grosse-bruecke-2"),
        ("Łódź", "lodz"),
        ("Café à côté", "cafe-a-cote"),
        ("Ærø", "aeroe"),
        ("Мост", ""),
        ("橋", ""),
    ],
)
def test_letters_outside_ascii_are_spelt_and_never_dropped(text: str, name: str) -> None:
    # Spellings of ä, ö, ü, ß, æ and ø: ICAO Doc 9303-3, section 6, table A (from memory).
    assert name_of(text) == name


@pytest.mark.parametrize(
    ("name", "owner", "does"),
    [("rail", "rail", True), ("rail.tabs.2", "rail.tabs", True), ("rails.tabs", "rail", False)],
)
def test_a_dotted_name_begins_with_whole_names_alone(name: str, owner: str, does: bool) -> None:
    assert begins(name, owner) is does


def test_a_set_is_called_as_its_copies_are_without_their_number() -> None:
    assert [set_name(each) for each in ("slots.3", "slots", "slots.rear", "4")] == [
        "slots",
        "slots",
        "slots.rear",
        "4",
    ]
