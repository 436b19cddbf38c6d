"""Which folder suits a sheet, and what a licence lets a reader do."""

from __future__ import annotations

import pytest

from kerfolio.edition.folder import folder_choice, folders_of
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


@pytest.mark.parametrize(("measured", "thicker"), [(17.3, False), (18.4, True)])
def test_outside_the_ladder_there_is_none(measured: float, thicker: bool) -> None:
    choice = folder_choice(stool(), "ply", measured)
    assert (choice.thickness, choice.thicker) == (None, thicker)


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
    sentence = licence_sentence(identifier)
    assert all(words in sentence for words in said)
    assert sentence.endswith(f"Licence: {identifier}.")


def test_without_a_licence_the_maker_must_be_asked() -> None:
    assert "ask the maker" in licence_sentence("")
    assert licence_sentence("Nobody-1.0") == licence_sentence("")
