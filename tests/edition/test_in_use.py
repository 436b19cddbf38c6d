"""A thing in use in words: the plain sentence, and figures that page and booklet share."""

from __future__ import annotations

from dataclasses import replace

import pytest

from kerfolio.assembly.in_use import JOINTS_ALONE, Fit
from kerfolio.edition.in_use import CAUTIONS, sentence_of, used_of
from tests.edition.used import sat


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
    assert sentence_of(judged) == said


def test_figures_in_words() -> None:
    found = used_of(sat())
    assert found is not None
    told = {each.head: each for each in found.figures}
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
    assert found.sentence.startswith("For sitting and carrying; not for ")
    assert found.cautions == CAUTIONS
    assert "no rating" in " ".join(CAUTIONS)
    assert all(each.label and each.value and each.source for each in found.assumptions)


def test_without_a_span_the_sag_is_not_known() -> None:
    found = used_of(replace(sat(), sat_on=None))
    assert found is not None
    assert found.figures[0].value == "not known"
    assert found.figures[0].notes == ("no span of `seat` tells",)


def test_without_uses_nothing_is_told() -> None:
    assert used_of(replace(sat(), in_use=None)) is None
