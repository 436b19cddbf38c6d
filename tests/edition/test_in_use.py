"""A thing in use in words: the plain sentence, and figures that page and booklet share."""

from __future__ import annotations

from dataclasses import replace

import pytest

from kerfolio.assembly.in_use import Fit
from kerfolio.basis.reader import METRIC
from kerfolio.edition.in_use import Used, sentence_of, used_of
from tests.edition.of_set import edition_of_set
from tests.edition.used import sat
from tests.sets import changed

JOINTS_ALONE = "nothing but its joints resists pushing"


@pytest.mark.parametrize(
    ("judged", "said"),
    [
        (
            (Fit(use="sit in the middle"), Fit(use="stand things on"), Fit(use="plane along")),
            "For sitting, carrying and planing.",
        ),
        (
            (
                Fit(use="sit in the middle"),
                Fit(use="stand things on"),
                Fit(use="plane along", why=JOINTS_ALONE),
            ),
            "For sitting and carrying; not for planing: nothing but its joints resists pushing.",
        ),
        (
            (Fit(use="lean on", why="it slides"), Fit(use="plane along", why="it slides")),
            "Not for leaning on or planing: it slides.",
        ),
    ],
)
def test_the_plain_sentence(judged: tuple[Fit, ...], said: str) -> None:
    assert sentence_of(judged, METRIC) == said


def test_figures_in_words() -> None:
    found = used_of(sat())
    assert found is not None
    (thing,) = found.things
    told = {each.head: each for each in thing.figures}
    sag = told["Seat with a person in its middle sags"]
    # 4.57 mm by hand (tests/assembly/in_use_checks.py).
    assert sag.value == "4.6 mm (0.18 in) on the first day"
    assert sag.notes[0].endswith(" after years")
    edge = next(each for head, each in told.items() if head.startswith("A load on its edge"))
    # m b / o = 6.54 kg x 358.9 / 141.2 mm beyond the outer face of a side.
    assert edge.value.startswith("16 kg (36 lb) to the ")
    assert edge.notes[0] == "there it reaches 141 mm (5 9/16 in) beyond the feet"
    lean = told["It leans to the left or right"]
    assert lean.notes == (f"no tab there; {JOINTS_ALONE}",)
    assert thing.sentence.startswith("For sitting and carrying; not for ")
    assert "no rating" in " ".join(found.cautions)
    assert all(each.label and each.value and each.source for each in found.assumptions)


def test_without_a_span_the_sag_is_not_known() -> None:
    (thing,) = sat().in_use
    found = used_of(replace(sat(), in_use=(replace(thing, sat_on=None),)))
    assert found is not None
    figure = found.things[0].figures[0]
    assert figure.value == "not known"
    assert figure.notes == ("no span of the seat is stated",)


def test_without_uses_nothing_is_told() -> None:
    assert used_of(replace(sat(), in_use=())) is None


def of_set(*changes: tuple[str, str]) -> Used:
    """Return what is told of a set in use."""
    text = changed(("sheets:", "uses: [stand things on, lean on]\nsheets:"), *changes)
    used = used_of(edition_of_set(text))
    assert used is not None
    return used


def test_a_board_that_lies_on_feet_is_told_with_them() -> None:
    used = of_set()
    thing, foot = used.things
    assert foot.title == "Foot, by itself"
    assert foot.sentence.startswith("Not for carrying: no panel of it lies flat; not for leaning")
    assert thing.title == "Board on 2 × Foot"
    told = {each.head: each for each in thing.figures}
    # By hand (tests/assembly/in_use_checks.py): 2.25 kg x 346 / 254.
    edge = told["A load on its edge tips it off, from"]
    assert edge.value == "3 kg (6.7 lb) to the front left"
    assert edge.notes[0] == "there it reaches 180 mm (7 1/16 in) beyond what it lies on"
    pushed = told["Pushed to the left or right, empty, it"]
    assert pushed.value.startswith("slides on what it lies on at 7 N")
    assert thing.sentence == (
        "For carrying; not for leaning on: it slides to the left or right before it takes the push."
    )
    assert "It lies loose on what bears it" in [each.label for each in used.assumptions]


def test_a_board_that_is_clamped_is_one_body_with_its_feet() -> None:
    used = of_set(("overhang: 110}", "overhang: 110, held: clamped}"))
    heads = [each.head for each in used.things[0].figures]
    assert "A load on its edge tips it, from" in heads
    held = next(each for each in used.assumptions if each.label == "It is held on what bears it")
    assert held.value == "by clamps: all move as one body"
