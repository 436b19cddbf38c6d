"""Which folder suits a sheet, and what a licence lets a reader do."""

from __future__ import annotations

from dataclasses import replace

import pytest

from kerfolio.basis.reader import METRIC
from kerfolio.edition.folder import Choice, file_words, folder_choice, folders_of, sizes_words
from kerfolio.edition.licence_words import licence_sentence
from tests.paper.editions import stool


@pytest.mark.parametrize(
    ("measured", "taken", "exact"),
    [
        *((17.6, 17.6, True), (17.64, 17.6, True), (17.7, 17.8, False), (17.76, 17.8, True)),
        *((17.56, 17.6, True), (18.05, 18.0, True), (17.9, 18.0, False)),
    ],
)
def test_the_folder_is_the_nearest_or_the_next_thicker(
    measured: float, taken: float, exact: bool
) -> None:
    choice = folder_choice(stool(), "ply", measured)
    assert (choice.thickness, choice.exact) == (taken, exact)


def test_a_tab_of_the_measured_sheet_always_enters_the_slots_taken() -> None:
    edition = stool()
    for step in range(1756, 1806):
        measured = step / 100
        choice = folder_choice(edition, "ply", measured)
        assert choice.thickness is not None
        slot = choice.thickness + 2 * edition.settled.sheet("ply").fit
        assert slot > measured


@pytest.mark.parametrize("fitted", [False, True])
@pytest.mark.parametrize(("measured", "side"), [(17.3, "thinner"), (18.4, "thicker")])
def test_outside_what_is_published_there_is_none(measured: float, side: str, fitted: bool) -> None:
    choice = folder_choice(replace(stool(), fitted=fitted), "ply", measured)
    assert choice == Choice(thickness=None, instead=f"none: {side} than the plan is published for")


@pytest.mark.parametrize("measured", [17.6, 17.7, 17.9, 18.0])
def test_within_it_nothing_is_called_unpublished(measured: float) -> None:
    alone = replace(stool(), variants=stool().variants[1:2])
    assert dict(alone.variants[0].variant.thickness) == {"ply": 17.8}
    assert folder_choice(alone, "ply", measured).instead == "none is ready-made"
    made = folder_choice(replace(alone, fitted=True), "ply", measured)
    assert made == Choice(thickness=None, instead=f"files made for {measured:g} mm")
    assert folder_choice(replace(alone, fitted=True), "ply", 17.8).exact


def test_a_drawing_of_one_thickness_says_what_to_take_for_another() -> None:
    alone = replace(stool(), variants=stool().variants[1:2])
    assert file_words(alone, 1).endswith(
        "is for Birch plywood 18 mm measuring 17.8 mm and no other thickness."
    )
    assert sizes_words(alone).endswith(
        "are for Birch plywood 18 mm measuring 17.8 mm and no other thickness."
    )
    for more in (stool(), replace(alone, fitted=True)):
        assert file_words(more, 1).endswith(
            "is for Birch plywood 18 mm measuring 17.8 mm only. If your sheet measures otherwise, "
            "take sheet-1 of the files for its thickness."
        )
        assert "compare every piece with its template" in sizes_words(more)


def test_a_thickness_names_its_folders() -> None:
    assert folders_of(stool(), "ply", 17.8) == ("17.8mm",)


@pytest.mark.parametrize(
    ("identifier", "said"),
    [
        # The terms named are those of the Creative Commons deeds.
        ("CC0-1.0", ("nothing is asked",)),
        ("CC-BY-4.0", ("sell what you make", "name the maker")),
        ("CC-BY-SA-4.0", ("sell what you make", "same licence")),
        ("CC-BY-NC-4.0", ("without profit", "ask the maker before you sell")),
        ("CC-BY-ND-4.0", ("unchanged", "not to be shared")),
        ("CC-BY-NC-ND-4.0", ("unchanged", "without profit")),
    ],
)
def test_a_licence_in_a_sentence(identifier: str, said: tuple[str, ...]) -> None:
    sentence = licence_sentence(identifier, METRIC)
    assert all(words in sentence for words in said)
    assert sentence.endswith(f"Licence: {identifier}.")


def test_without_a_licence_the_maker_must_be_asked() -> None:
    assert "ask the maker" in licence_sentence("", METRIC)
    assert licence_sentence("Nobody-1.0", METRIC) == licence_sentence("", METRIC)
