"""Loose lines and arcs joined end to end."""

from __future__ import annotations

import random

import pytest

from kerfolio.geometry import shapes
from kerfolio.geometry.arc import edges, reversed_contour
from kerfolio.geometry.canonical import tidy
from kerfolio.geometry.chain import chained, doubles
from kerfolio.geometry.contour import Contour


def line(*points: tuple[float, float]) -> Contour:
    return Contour(tuple((*p, 0.0) for p in points), closed=False)


def loose(contour: Contour) -> list[Contour]:
    return [Contour(((*e.start, e.bulge), (*e.end, 0.0)), closed=False) for e in edges(contour)]


@pytest.mark.parametrize("seed", range(20))
def test_shuffled_and_reversed_pieces_become_their_contour_again(seed: int) -> None:
    whole = shapes.polygon([(0, 0, 5), (100, 0, 8), (30, 70, 12), (40, 25, 6)])
    pieces, dice = loose(whole), random.Random(seed)
    dice.shuffle(pieces)
    pieces = [reversed_contour(each) if dice.random() < 0.5 else each for each in pieces]
    (chain,) = chained(pieces)
    assert chain.contour.closed
    assert sorted(chain.members) == list(range(len(pieces)))
    for found, known in zip(tidy(chain.contour).vertices, whole.vertices, strict=True):
        assert found == pytest.approx(known, abs=1e-8)


def test_ends_meet_within_a_hundredth_and_no_more() -> None:
    near = [line((0, 0), (10, 0)), line((10.008, 0), (10, 10)), line((10, 10), (0, 0.005))]
    assert chained(near)[0].contour.closed
    far = [line((0, 0), (10, 0)), line((10.02, 0), (10, 10))]
    assert [chain.members for chain in chained(far)] == [(0,), (1,)]


def test_an_open_run_is_joined_but_stays_open() -> None:
    (chain,) = chained([line((10, 0), (20, 0)), line((10, 0), (0, 0)), line((20, 0), (20, 5))])
    assert not chain.contour.closed
    assert [v[:2] for v in chain.contour.vertices] == [(0, 0), (10, 0), (20, 0), (20, 5)]


def test_where_three_lines_meet_nothing_is_joined() -> None:
    star = [line((0, 0), (10, 0)), line((0, 0), (0, 10)), line((0, 0), (-10, 0))]
    assert len(chained(star)) == 3


def test_two_lines_between_the_same_points_are_one_loop() -> None:
    arc = Contour(((0, 0, 1.0), (10, 0, 0.0)), closed=False)
    (chain,) = chained([line((0, 0), (10, 0)), arc])
    assert chain.contour.closed
    assert len(chain.contour.vertices) == 2


def test_repeated_paths_are_found_either_way_round() -> None:
    first = line((0, 0), (10, 0))
    assert doubles([first, line((0, 0), (9, 0)), reversed_contour(first), first]) == (2, 3)
