"""How close layouts come to the best known; run by hand with ``pytest -m bench -s``.

Three tables: realistic part sets, sheets cut apart without waste (the best known is exact by
construction), and strips. Sources stand in the README of each folder under ``tests/data``.
Seconds are of processor time for the own placer, of the clock for engines of other libraries.
"""

from __future__ import annotations

from collections import Counter
from importlib.util import find_spec
from time import perf_counter, process_time

import numpy as np
import pytest
import shapely
from shapely import affinity

from generator.geometry.packing import Flat
from generator.geometry.slabs import NO_SLABS
from generator.layouts.bound import fewest_sheets
from generator.layouts.easing import snug
from generator.layouts.effort import EFFORT
from generator.layouts.engine import Job
from generator.layouts.outside import OutsideEngine, answered
from generator.layouts.own_placer import OwnPlacer
from generator.layouts.plan_layout import lay_out
from generator.layouts.pose import pose_of
from generator.layouts.question import Question
from generator.layouts.room import Room
from generator.layouts.verify import packing_faults
from tests.layouts.plans import part_set
from tests.layouts.shared_sets import BINS, STRIPS, best_known, bin_job, strip_question
from tests.layouts.test_plan_layout import assert_correct

SETS = (1, 3, 4, 6, 8)
BIN_MOVES = 10_000_000
STRIP_SECONDS = 60


@pytest.mark.bench
def test_part_sets() -> None:
    engines = {"own": OwnPlacer()}
    if find_spec("packingsolver"):
        engines["packingsolver"] = OutsideEngine("packingsolver", spaced=True)
    print("\nset engine         pieces bound seen sheets ratio last-used seconds")
    totals: Counter[str] = Counter()
    for number in SETS:
        stated, settled = part_set(number)
        for name, engine in engines.items():
            cpu, clock = process_time(), perf_counter()
            layout, _ = lay_out([settled], EFFORT, engine)
            spent = process_time() - cpu if name == "own" else perf_counter() - clock
            assert layout is not None
            assert_correct(layout, settled)
            used, seen = len(layout.sheets), stated["fewest_sheets_seen"]
            pieces = sum(part["count"] for part in stated["parts"])
            bound = dict(layout.bounds)["ply"]
            last = len(layout.sheets[-1].placements)
            print(
                f"{number:3d} {name:14s} {pieces:6d} {bound:5d} {seen:4d} {used:6d} "
                f"{used / seen:5.2f} {last:9d} {spent:7.1f}"
            )
            totals[name] += used
    print("total", dict(totals))


@pytest.mark.bench
def test_sheets_cut_apart() -> None:
    print("\ninstance     pieces bound best sheets ratio seconds")
    ratios = []
    for name, row in sorted(best_known(BINS).items()):
        job: Job = bin_job(name, BIN_MOVES)
        start = process_time()
        made = OwnPlacer().pack(job)
        spent = process_time() - start
        assert packing_faults(job, made) == ()
        best, used = int(row["optimal_sheets"]), len(made.sheets)
        ratios.append(used / best)
        print(
            f"{name:12s} {len(job.blanks):6d} {fewest_sheets(job):5d} {best:4d} {used:6d} "
            f"{used / best:5.2f} {spent:7.1f}"
        )
    print(f"mean ratio {sum(ratios) / len(ratios):.3f}")


@pytest.mark.bench
@pytest.mark.skipif(not find_spec("spyrrow"), reason="spyrrow is not installed")
def test_strips() -> None:
    print("\ninstance  best-length length density best-density share seconds")
    shares = []
    for name, row in sorted(best_known(STRIPS).items()):
        question = strip_question(name, STRIP_SECONDS)
        start = perf_counter()
        solids = _drawn_together(question)
        spent = perf_counter() - start
        boxes = [solid.bounds for solid in solids]
        length = max(box[2] for box in boxes) - min(box[0] for box in boxes)
        _assert_free(solids, question.rooms[0].height, [kind.count for kind in question.kinds])
        best = float(row["density"])
        density = 100 * sum(s.area for s in solids) / (question.rooms[0].height * length)
        shares.append(density / best)
        print(
            f"{name:9s} {float(row['best_known_length']):11.2f} {length:6.1f} {density:7.2f} "
            f"{best:12.2f} {density / best:5.3f} {spent:7.1f}"
        )
    print(f"mean share of the best known density {100 * sum(shares) / len(shares):.2f} %")


def _drawn_together(question: Question) -> list[shapely.Polygon]:
    """Return the pieces as the library lays them, drawn together as every layout is."""
    ((_, answer),) = answered(question)
    strip = question.rooms[0]
    room = Room(
        stack=0,
        width=strip.width,
        height=strip.height,
        worth=1.0,
        zones=(),
        barred=NO_SLABS,
        area=strip.width * strip.height,
    )
    poses = [pose_of(Flat(question.kinds[kind].outer), turn) for kind, turn, _, _ in answer]
    before = [
        (x + pose.corner[0], y + pose.corner[1])
        for pose, (_, _, x, y) in zip(poses, answer, strict=True)
    ]
    places = snug(poses, np.array(before), room, strip.height / 20).tolist()
    return [
        affinity.translate(
            affinity.rotate(shapely.Polygon(question.kinds[kind].outer), turn, origin=(0, 0)),
            x - pose.corner[0],
            y - pose.corner[1],
        )
        for pose, (kind, turn, _, _), (x, y) in zip(poses, answer, places, strict=True)
    ]


def _assert_free(solids: list[shapely.Polygon], height: float, counts: list[int]) -> None:
    """Check what a strip holds with shapely alone: count, inside, no overlap."""
    assert len(solids) == sum(counts)
    tree = shapely.STRtree(solids)
    for one, other in tree.query(solids, predicate="intersects").T.tolist():
        if one < other:
            shared = solids[one].intersection(solids[other])
            assert shared.area <= 1e-3 * max(shared.length, 1e-3)
    low, high = min(s.bounds[1] for s in solids), max(s.bounds[3] for s in solids)
    assert high - low <= height + 0.002
