"""What readers are told of finish and damp, on page and paper and as data."""

from __future__ import annotations

import json
from dataclasses import replace
from functools import cache

import pytest

from kerfolio.basis.reader import METRIC
from kerfolio.chapters.document_of import booklet_document
from kerfolio.edition.damp_words import room_words, surroundings_words
from kerfolio.edition.edition import Edition
from kerfolio.edition.joint_fits import joint_fits
from kerfolio.layouts.layout import Layout
from kerfolio.pages.fitting import fitting_of
from kerfolio.pages.start import start_here
from kerfolio.publishing.plan_json import plan_json
from kerfolio.shop.swelling import swelling_words
from tests.chapters.told import words_of
from tests.pages.invented import CONTENTS
from tests.pages.markup import Tree
from tests.paper.sample_editions import edition
from tests.plans import RACK, settled_at, workshop

OILED = "finish: {of: oil, coats: 2, when: before assembly, sanding: 0.05}"
SHED = f"place: shed\n{OILED}"


def damp_words(edition: Edition) -> tuple[str, ...]:
    """Return what is told of finish and damp, and last of the room for them."""
    return tuple(filter(None, (*surroundings_words(edition), room_words(edition))))


@cache
def rack(head: str = "", joint_fit: str = "") -> Edition:
    """Return the probe rack settled as drawn, with what it says of its place and finish."""
    stated = f"joint-fit: {joint_fit}\n" if joint_fit else ""
    text = RACK.replace("joints:", f"{head}\n{stated}joints:", 1)
    settled = settled_at(17.6, text)
    none = Layout(sheets=(), engine="by hand", computed_from="")
    return replace(edition(settled, none), identity=workshop(text).identity)


@pytest.mark.parametrize(
    ("head", "words"),
    [
        (
            SHED,
            (
                "It is made to live in a shed, in air of 50 to 85 % humidity. Birch plywood 18 mm "
                "is at 10 % moisture when it is bought; there it comes to 18 % and is 0.5 mm "
                "thicker.",
                "It is finished before assembly, with 2 coats of oil: a film of 0.01 mm in all. "
                "That lies on every face and wall, so that each side of a joint has it twice. "
                "Sanding takes 0.05 mm off each face before.",
                "Joints have room for that besides their fit: bare and dry they go together more "
                "loosely than they will stay.",
            ),
        ),
        (
            "place: dry",
            (
                "It is made to live in a dry room, in air of 30 to 50 % humidity. Birch plywood 18 "
                "mm is at 10 % moisture when it is bought; there it stays below that, and swells "
                "by nothing.",
            ),
        ),
        (
            "finish: {of: varnish}",
            (
                "It is finished after assembly, with 1 coat of varnish: a film of 0.033 mm in all. "
                "None of it lies in the joints.",
            ),
        ),
        ("", ()),
    ],
)
def test_readers_are_told_in_words(head: str, words: tuple[str, ...]) -> None:
    assert damp_words(rack(head)) == words


def test_the_film_is_kept_off_what_is_glued() -> None:
    mask = "Keep the film off what is glued: mask the faces that meet."
    assert mask in damp_words(rack(OILED, "glued"))[0]
    assert mask not in " ".join(damp_words(rack(OILED, "knock-down")))


def test_a_material_is_told_by_how_it_swells_there() -> None:
    for head, words in (
        (SHED, "0.5 mm thicker in a shed"),
        ("", "0.35 % thicker for each % of moisture"),
    ):
        settled = rack(head).settled
        assert swelling_words(settled, settled.sheets[0], METRIC) == words


def test_numbers_stand_beside_the_fit_of_every_joint() -> None:
    """0.1 + (2 x 0.01 - 0.05 + 0.25) on each side, 0.1 + 2 x 0.01 at the ends."""
    found = joint_fits(rack(SHED))
    assert found is not None
    assert found.heads == ("Joints", "For", "Each side", "Finish and damp", "At the ends")
    assert [each.cells for each in found.rows] == [
        ("rail into side", "–", "0.32 mm", "0.22 mm", "0.12 mm")
    ]


def test_the_plan_as_data_has_them_too() -> None:
    told = json.loads(plan_json(rack(SHED)))
    assert (told["place"], told["finish"]) == (
        "shed",
        {"of": "oil", "coats": 2, "when": "before assembly", "film": 0.01, "sanded": 0.05},
    )
    assert told["swelling"]["ply"] == {
        "moisture": [9.2711, 18.0024],
        "bought": 10,
        "thickness": 0.028009,
        "plane": 0.001681,
    }
    (room,) = (
        feature["clearance"]
        for part in told["variants"][0]["parts"]
        for feature in part["features"]
        if feature["name"] == "rail-slot"
    )
    sides = {"width": 0.32, "ends": 0.12, "purpose": None, "fit": 0.1}
    assert room == {**sides, "film": 0.02, "sanded": 0.05, "swelling": 0.25}


def test_a_plan_that_says_nothing_gives_nothing() -> None:
    told = json.loads(plan_json(rack()))
    assert not {"place", "finish", "swelling"} & told.keys()
    assert joint_fits(rack()) is None


def test_the_fitting_page_knows_how_much_more_a_slot_has() -> None:
    for head, more in ((SHED, 0.22), ("place: dry", None), ("", None)):
        found = rack(head)
        other = replace(found.settled, variant=settled_at(18.0).variant)
        page = fitting_of(replace(found, variants=(found.settled, other)))
        assert page is not None
        (sheet,) = json.loads(page.data)["sheets"]
        assert sheet.get("more") == more


def test_page_and_paper_tell_the_same() -> None:
    told = rack(SHED)
    fits = joint_fits(told)
    assert fits is not None
    page = Tree(start_here(told, CONTENTS, {})).text_of("main")
    paper = words_of(booklet_document(told))
    for paragraph in (*damp_words(told), fits.words, *fits.rows[0].cells):
        assert paragraph in page
        assert all(word in paper for word in paragraph.split())
