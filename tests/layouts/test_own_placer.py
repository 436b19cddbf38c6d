"""The search gives sheets up: results that laying pieces one by one does not reach."""

from __future__ import annotations

import random

import pytest

from kerfolio.geometry.packing import Flat
from kerfolio.layouts.engine import Bed, Blank, Job, Packed, Stack
from kerfolio.layouts.own_placer import OwnPlacer
from kerfolio.layouts.verify import packing_faults


def boards(*sizes: tuple[float, float], turns: tuple[float, ...] = (0.0, 90.0)) -> list[Blank]:
    return [
        Blank(
            label=f"board {number}",
            shape=Flat(((0, 0), (width, 0), (width, height), (0, height))),
            turns=turns,
        )
        for number, (width, height) in enumerate(sizes)
    ]


def job_of(
    blanks: list[Blank], *stacks: Stack, moves: int = 4_000_000, gap: float = 8.0, seed: int = 0
) -> Job:
    bed = Bed(stacks=stacks or (Stack(size=(1000.0, 600.0)),), margin=10.0, gap=gap)
    return Job(bed=bed, blanks=tuple(blanks), moves=moves, seed=seed)


def packed(job: Job) -> Packed:
    made = OwnPlacer().pack(job)
    assert packing_faults(job, made) == ()
    return made


def test_a_sheet_cut_apart_is_put_together_again() -> None:
    # Cut from one sheet of 1000 x 600 with cuts of 8 mm, and put in any order.
    sizes = [(478, 290), (486, 290), (300, 274), (300, 133), (300, 133), (348, 274), (972, 0)]
    pieces = [each for each in sizes if each[1]]
    random.Random(3).shuffle(pieces)
    assert len(packed(job_of(boards(*pieces, turns=(0.0, 180.0)))).sheets) == 1


def test_triangles_share_a_sheet_in_pairs() -> None:
    corner = Flat(((0, 0), (900, 0), (0, 560)))
    blanks = [Blank(label=f"{n}", shape=corner, turns=(0.0, 180.0)) for n in range(2)]
    assert len(packed(job_of(blanks)).sheets) == 1


def test_the_same_seed_gives_the_same_packing_and_another_may_not() -> None:
    rng = random.Random(5)
    sizes = [(rng.randrange(80, 420), rng.randrange(60, 300)) for _ in range(14)]
    job = job_of(boards(*sizes), moves=800_000)
    assert packed(job) == packed(job)


def test_labels_keep_together_by_their_order() -> None:
    blanks = boards(*[(470, 280)] * 8)
    made = packed(job_of(blanks))
    assert len(made.sheets) == 2
    sheets = {spot.label: spot.sheet for spot in made.spots}
    assert {sheets[f"board {n}"] for n in range(4)} == {0}


def test_the_last_sheet_leaves_a_large_offcut() -> None:
    made = packed(job_of(boards((300, 200), (300, 200), (300, 200))))
    blanks = {each.label: each for each in boards((300, 200), (300, 200), (300, 200))}
    ends = [blanks[s.label].shape.turned(s.turn).moved(s.x, s.y).box[2] for s in made.spots]
    tops = [blanks[s.label].shape.turned(s.turn).moved(s.x, s.y).box[3] for s in made.spots]
    # Two above one another and one beside them, or three side by side below: no better strip.
    left = max((1000 - max(ends)) * 600, (600 - max(tops)) * 1000)
    assert left >= min((1000 - 10 - 616) * 600, (600 - 10 - 200) * 1000) - 1_000


def test_what_no_sheet_holds_is_named() -> None:
    made = OwnPlacer().pack(job_of(boards((1200, 100), (300, 100))))
    assert made.too_large == ("board 0",)
    assert [spot.label for spot in made.spots] == ["board 1"]


@pytest.mark.parametrize("worth", [0.0, 0.3])
def test_a_cheaper_sheet_is_used_where_it_holds_the_pieces(worth: float) -> None:
    small = Stack(size=(520.0, 340.0), count=1, worth=worth)
    made = packed(job_of(boards((400, 300)), Stack(size=(1000.0, 600.0)), small))
    assert made.sheets == (1,)


def test_pieces_without_a_place_beside_a_zone_are_named() -> None:
    blocked = Stack(size=(1000.0, 600.0), barred=((450.0, 0.0, 550.0, 600.0),))
    made = OwnPlacer().pack(job_of(boards((700, 100), (300, 100)), blocked))
    assert made.too_large == ("board 0",)
