"""What a board of many holes costs, and what is refused; run by hand with ``pytest -m bench -s``.

Each command runs in a process of its own under a limit of memory. The tables give seconds of
processor time, start-up included, and megabytes at the peak. Growth from 400 to 2,000 holes is to
stay near linear: beyond start-up five times the holes may take eight times as long.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.bench.large import BEYOND, HONEST, Spent, jagged, spent_by

pytestmark = pytest.mark.bench
COUNTS = (400, 1000, 2000)
GROWTH = 8.0
REFUSED_S, REFUSED_MB = 5.0, 400.0
LADDERS = ("18", "17.6 to 18.2 by 0.2")


def line(name: str, spent: Spent) -> str:
    return f"{name:36} {spent.code:4d} {spent.seconds:7.2f} {spent.megabytes:7.0f}"


@pytest.mark.parametrize("ladder", LADDERS)
@pytest.mark.parametrize("kind", HONEST)
def test_growth_with_the_holes(kind: str, ladder: str, tmp_path: Path) -> None:
    idle = spent_by("prove", str(HONEST[kind](2, ladder).laid_down(tmp_path / "idle")))
    print(f"\n{line(f'{kind}, 2 holes', idle)}")
    costs = {}
    for count in COUNTS:
        shop = HONEST[kind](count, ladder).laid_down(tmp_path / str(count))
        spent = spent_by("prove", str(shop))
        print(line(f"{kind}, {count} holes", spent))
        assert spent.code == 0, spent.words
        costs[count] = spent.seconds - idle.seconds
    ratio = costs[COUNTS[-1]] / costs[COUNTS[0]]
    print(f"{ratio:.1f} times as long for {COUNTS[-1] // COUNTS[0]} times as many")
    assert ratio < GROWTH


def test_growth_with_the_points_of_a_jagged_outline(tmp_path: Path) -> None:
    costs = {}
    for points in (20, 2_000, 10_000):
        spent = spent_by("prove", str(jagged(points).laid_down(tmp_path / str(points))))
        print(f"\n{line(f'jagged outline, {points} points', spent)}")
        assert spent.code == 0, spent.words
        costs[points] = spent.seconds
    assert costs[10_000] - costs[20] < GROWTH * (costs[2_000] - costs[20])


@pytest.mark.parametrize("name", BEYOND)
def test_what_is_too_large_is_refused_in_seconds(name: str, tmp_path: Path) -> None:
    spent = spent_by("prove", str(BEYOND[name]().laid_down(tmp_path / "shop")))
    told = next(each for each in spent.words.splitlines() if ": error: " in each)
    print(f"\n{line(name, spent)}  {told.partition(': error: ')[2]}")
    assert spent.code == 1
    assert spent.seconds < REFUSED_S
    assert spent.megabytes < REFUSED_MB
