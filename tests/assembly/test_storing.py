"""Storing and carrying: side by side, on top of each other, by one person or two."""

from __future__ import annotations

import pytest

from kerfolio.assembly.stability import pile_of, stability_of
from kerfolio.assembly.storing import OnTop, carried_by, laid_flat, lifted, on_top
from kerfolio.assembly.storing_words import carriers, set_rows, whole_rows
from kerfolio.basis.reader import METRIC
from tests.assembly.hand_made import across, box, level, plan, stool


def test_small_pieces_lie_side_by_side() -> None:
    """400 x 300 below; 200 x 150 four times in one layer above it; 18 mm each."""
    large = level("large", 0.0, box(0, 0, 400, 300))
    small = [level(f"small.{n}", 0.0, box(0, 0, 200, 150)) for n in range(4)]
    assert pile_of([large, *small]) == pytest.approx((400, 300, 90))
    assert laid_flat([large, *small]) == pytest.approx((400, 300, 36))
    assert laid_flat([large, *small, small[0]]) == pytest.approx((400, 300, 54))


def test_a_long_piece_turns_where_its_breadth_has_room() -> None:
    """Beside 250 of 400 x 300 there is a strip of 150 x 300: what is 300 long lies across."""
    large, wide = level("a", 0.0, box(0, 0, 400, 300)), level("b", 0.0, box(0, 0, 250, 300))
    turned = level("c", 0.0, box(0, 0, 300, 140))
    assert laid_flat([large, wide, turned]) == pytest.approx((400, 300, 36))


def test_a_stool_stacks_on_its_full_height() -> None:
    found = on_top(stool(), stability_of(stool()))
    assert found.lift == pytest.approx(418)
    assert (found.rests, found.nests) == (True, False)


def test_what_bears_beside_the_middle_falls_off() -> None:
    """A mast at one end of a foot: the next one's foot lies on the mast's top alone."""
    mast = plan(
        [level("foot", 0.0, box(0, 0, 400, 200)), across("mast", 0.0, box(0, 18, 200, 300))], []
    )
    found = on_top(mast, stability_of(mast))
    assert found.lift == pytest.approx(300)
    assert not found.rests


@pytest.mark.parametrize(
    ("deep", "kg"), [(100, 23.0), (200, 23 * 0.83), (400, 23 * 0.63), (600, 11.5), (800, 23 * 0.42)]
)
def test_one_person_lifts_less_the_farther_out(deep: float, kg: float) -> None:
    """H 25, 30, 40, 50, 60 cm: 1.00, 0.83, 0.63, 0.50, 0.42 (published table of the equation)."""
    assert lifted((900, deep, 500)) == pytest.approx(kg, rel=0.01)


@pytest.mark.parametrize(
    ("mass", "size", "count"),
    [
        (14.0, (900, 400, 500), 1),
        (15.0, (900, 400, 500), 2),
        (3.0, (1900, 100, 100), 2),
        (3.0, (900, 900, 100), 2),
        (46.0, (900, 400, 500), 2),
        (47.0, (900, 400, 500), 3),
    ],
)
def test_one_person_or_two(mass: float, size: tuple[float, float, float], count: int) -> None:
    assert carried_by(mass, size) == count


@pytest.mark.parametrize(
    ("mass", "size", "words"),
    [
        (5.0, (900, 400, 500), "one person: up to 14 kg so far from the body"),
        (15.0, (900, 400, 500), "two persons: over 14 kg so far from the body"),
        (3.0, (1900, 100, 100), "two persons: over 1800 mm (70 7/8 in) long"),
        (3.0, (900, 900, 100), "two persons: too deep for one"),
        (60.0, (900, 400, 500), "more than two, or in pieces: over 46 kg, twice 23 kg"),
    ],
)
def test_who_carries_it_in_words(mass: float, size: tuple[float, float, float], words: str) -> None:
    assert carriers(mass, size, METRIC).startswith(words)


@pytest.mark.parametrize(
    ("top", "words"),
    [
        (
            OnTop(lift=46.0, saved=354.0, rests=True),
            "nests: it stands 46 mm (1 13/16 in) higher, which saves 354 mm (13 15/16 in)",
        ),
        (
            OnTop(lift=400.0, saved=0.0, rests=True),
            "stacks, and adds its full height, 400 mm (15 3/4 in)",
        ),
        (
            OnTop(lift=400.0, saved=0.0, rests=False),
            "does not stay there by itself: clamp the two to each other.",
        ),
    ],
)
def test_what_is_told_of_a_second_one(top: OnTop, words: str) -> None:
    whole = stool()
    rows = dict(whole_rows(whole.pieces, stability_of(whole), top, METRIC))
    assert rows["A second one on top of it"] == words
    assert rows["Put together, carried by"].startswith("one person: ")


def test_a_set_is_told_flat() -> None:
    rows = dict(set_rows(stool().pieces, 5.0, METRIC))
    assert rows["Flat, all of it in one pile"].startswith("418 × 300 × 72 mm (")
    assert "Flat, small pieces side by side" not in rows, "nothing is gained"
    assert rows["Flat, carried by"] == (
        "one person: up to 23 kg so far from the body (NIOSH lifting equation)"
    )
