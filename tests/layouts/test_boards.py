from __future__ import annotations

import subprocess
import sys
from collections import Counter
from collections.abc import Iterable
from dataclasses import replace
from itertools import product
from math import ceil

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from kerfolio.layouts.board_job import Job, Scale
from kerfolio.layouts.board_knapsack import Knapsack
from kerfolio.layouts.board_patterns import by_size, cheap_patterns
from kerfolio.layouts.boards import (
    KERF,
    TRIM,
    BoardPiece,
    BoardPlan,
    board_faults,
    board_plan,
    cut_boards,
)
from kerfolio.model.plan import BoardUse
from kerfolio.model.statement import Named
from kerfolio.model.stock import BoardStock
from kerfolio.settling.settled import SettledBoard, SettledPlan
from tests.layouts.instances import board_pieces, known
from tests.layouts.plans import part_of, plan_of, window_frame

KNOWN = known("boards1d")
LONG = [each for each in sorted(KNOWN) if each.startswith("fal_u250")][4:]
"""Instances of the largest kind beyond the first few, which take seconds each."""
QUICK = [each for each in sorted(KNOWN) if each not in LONG]


def pieces_of(*lengths: float) -> list[BoardPiece]:
    return [BoardPiece(label=f"p{n}", length=length) for n, length in enumerate(lengths)]


def holds(plan: BoardPlan, pieces: list[BoardPiece], left_out: Iterable[BoardPiece] = ()) -> None:
    """Every piece is cut once, and a board gives no more than it has."""
    cut = [piece for board in plan.boards for piece in board.pieces]
    assert Counter(cut) + Counter(left_out) == Counter(pieces)
    for board in plan.boards:
        kerfs = plan.kerf * (len(board.pieces) - 1)
        used = sum(piece.length for piece in board.pieces) + kerfs
        rest = board.length - plan.trim - used
        assert rest >= -1e-5
        assert board.waste == pytest.approx(max(0.0, rest - plan.kerf), abs=1e-5)


# Falkenauer, "A hybrid grouping genetic algorithm for bin packing", Journal of Heuristics 2, 1996;
# the optimum of each instance stands in tests/data/boards1d/best_known.csv.
@pytest.mark.parametrize(
    "name", [*QUICK, *(pytest.param(each, marks=pytest.mark.bench) for each in LONG)]
)
def test_instances_of_known_optimum_are_solved_and_proven(name: str) -> None:
    pieces, length = board_pieces(name)
    plan = cut_boards(pieces, [length], kerf=0.0)
    holds(plan, pieces)
    assert len(plan.boards) == int(KNOWN[name]["best_known_boards"])
    assert plan.proven
    assert plan.bound == plan.bought


def test_a_piece_is_its_length_and_a_kerf_save_the_last() -> None:
    four = pieces_of(597.6, 597.6, 597.6, 597.6)
    flush = cut_boards(four, [2400.0], kerf=3.2)
    assert len(flush.boards) == 1  # 4 x 597.6 + 3 x 3.2 = 2400: three cuts, the last piece is free
    assert flush.boards[0].waste == 0.0
    assert len(cut_boards(four, [2400.0], kerf=3.3).boards) == 2
    assert len(cut_boards(four, [2400.0], kerf=3.2, trim=0.1).boards) == 2


def test_lengths_in_inches_meet_exactly() -> None:
    thirds = pieces_of(*[(96 - 2 / 8) / 3 * 25.4] * 3)
    assert len(cut_boards(thirds, [96 * 25.4], kerf=25.4 / 8).boards) == 1


def test_the_least_length_is_bought_of_several() -> None:
    plan = cut_boards(pieces_of(1700.0, 1700.0, 500.0), [1800.0, 2400.0, 3600.0], kerf=3.0)
    assert plan.to_buy == ((2400.0, 1), (1800.0, 1))  # not 3600 + 1800, nor two of 2400
    assert plan.bought == 4200.0
    assert plan.proven


def test_of_two_plans_as_long_the_one_of_fewer_boards_is_taken() -> None:
    plan = cut_boards(pieces_of(1000.0, 1000.0, 1000.0, 1000.0), [1200.0, 2400.0], kerf=3.0)
    assert plan.to_buy == ((2400.0, 2),)


def test_pieces_that_no_board_holds_are_left_out() -> None:
    pieces = pieces_of(2391.0, 500.0)
    holds(cut_boards(pieces, [2400.0], kerf=3.0, trim=10.0), pieces, left_out=pieces[:1])
    assert cut_boards(pieces, [], kerf=3.0).boards == ()


def cheapest(pieces: list[BoardPiece], lengths: list[float], kerf: float, trim: float) -> float:
    """Try every way to put the pieces on at most one board a piece."""
    best = float("inf")
    for spots in product(range(len(pieces)), repeat=len(pieces)):
        total = 0.0
        for board in set(spots):
            own = [p.length + kerf for p, spot in zip(pieces, spots, strict=True) if spot == board]
            sold = [each for each in lengths if sum(own) - kerf <= each - trim + 1e-7]
            total += min(sold, default=float("inf"))
        best = min(best, total)
    return best


@settings(deadline=None)
@given(
    st.lists(st.integers(60, 1190), min_size=1, max_size=5),
    st.lists(st.sampled_from([1200.0, 1500.0, 1800.0, 2400.0]), min_size=1, max_size=3),
    st.sampled_from([0.0, 3.2]),
    st.sampled_from([0.0, 10.0]),
)
def test_small_lists_are_cut_from_the_least_length_there_is(
    sizes: list[int], lengths: list[float], kerf: float, trim: float
) -> None:
    pieces = pieces_of(*map(float, sizes))
    plan = cut_boards(pieces, lengths, kerf=kerf, trim=trim)
    holds(plan, pieces)
    least = cheapest(pieces, lengths, kerf, trim)
    assert plan.bound <= least + 1e-6
    assert plan.bought == pytest.approx(least)
    assert plan.proven


@settings(deadline=None)
@given(
    st.lists(st.integers(200, 70_000), min_size=1, max_size=40),
    st.lists(st.sampled_from([2400.0, 2438.4, 3000.0, 3048.0]), min_size=1, max_size=1),
)
def test_every_list_is_cut_and_never_under_its_bound(
    sizes: list[int], lengths: list[float]
) -> None:
    pieces = pieces_of(*(size / 32 for size in sizes))
    plan = cut_boards(pieces, lengths, kerf=3.175, trim=10.0)
    holds(plan, pieces)
    total = sum(each.length + 3.175 for each in pieces)
    assert ceil(total / (lengths[0] - 10 + 3.175) - 1e-9) * lengths[0] <= plan.bound + 1e-6
    assert plan.bound <= plan.bought + 1e-6
    assert plan == cut_boards(pieces, lengths, kerf=3.175, trim=10.0)


def test_the_knapsack_finds_the_most_valuable_filling() -> None:
    sizes, counts, values = (7, 5, 3), (1, 2, 4), (9.0, 6.5, 3.5)
    knapsack = Knapsack(sizes, counts, values, 20)
    for room in range(21):
        best = max(
            sum(n * v for n, v in zip(take, values, strict=True))
            for take in product(*(range(n + 1) for n in counts))
            if sum(n * s for n, s in zip(take, sizes, strict=True)) <= room
        )
        index = knapsack.best(room)
        take = knapsack.take(index)
        assert sum(n * v for n, v in zip(take, values, strict=True)) == pytest.approx(best)
        assert sum(n * s for n, s in zip(take, sizes, strict=True)) == knapsack.sizes[index]
        assert knapsack.values[index] == pytest.approx(best)


def test_patterns_that_no_cheap_choice_uses_are_left_out() -> None:
    job = Job(sizes=(6, 5, 4), counts=(2, 2, 2), rooms=(10,), prices=(10,))
    scale = Scale.of(job)
    plain = by_size(job, scale)
    found = cheap_patterns(job, scale, plain, 3, 10_000)
    assert found is not None
    assert sorted(each.take for each in found) == [(0, 2, 0), (1, 0, 1)]  # three boards, all full
    assert cheap_patterns(job, scale, plain, 3, 2) is None


STUD = BoardStock(
    name="stud", title="Planed pine", thickness=45, width=95, lengths=(2400.0, 3000.0), density=480
)


def with_boards(*stated: tuple[str, float, int]) -> SettledPlan:
    settled = plan_of((part_of("frame", window_frame(), ("a",)),))
    boards = tuple(
        SettledBoard(
            use=BoardUse(name=name, stock=Named(name="stud"), length=None, count=count),
            stock=STUD,
            length=length,
            mass=1.0,
        )
        for name, length, count in stated
    )
    return replace(settled, boards=boards)


def test_a_plan_s_boards_are_cut_by_stock() -> None:
    (plan,) = board_plan(with_boards(("leg", 700.0, 4), ("rail", 1100.0, 1)))
    assert (plan.stock, plan.section, plan.kerf, plan.trim) == ("stud", (45, 95), KERF, TRIM)
    labels = [piece.label for board in plan.boards for piece in board.pieces]
    assert sorted(labels) == ["leg.1", "leg.2", "leg.3", "leg.4", "rail"]
    assert board_plan(with_boards()) == ()
    assert board_faults(with_boards(("leg", 700.0, 4))) == ()


def test_a_board_longer_than_any_sold_is_an_error() -> None:
    (fault,) = board_faults(with_boards(("beam", 2995.0, 1)))
    assert fault.message == "`beam` is longer than any board sold"
    assert fault.advice == (
        "It is 2995 mm long; `stud` is sold up to 3000 mm, of which 10 mm are trimmed off."
    )


def test_scipy_is_loaded_only_when_a_programme_is_solved() -> None:
    """Its start-up is a large share of a second, which no other command should pay for."""
    code = "import sys, kerfolio.layouts.boards; sys.exit('scipy' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
