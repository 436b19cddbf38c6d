"""How close layouts come to the best known; run by hand with ``pytest -m bench -s``.

Three tables: realistic part sets, sheets cut apart without waste (the best known is exact by
construction), and strips; and a plan of thirty pieces read, proved and laid out from cold. Sources
stand in the README of each folder under ``tests/data``.
Seconds are of processor time for the own placer, of the clock for engines of other libraries.
"""

from __future__ import annotations

from collections import Counter
from importlib.util import find_spec
from pathlib import Path
from time import perf_counter, process_time

import pytest
import shapely
from shapely import affinity

from kerfolio.layouts.bound import fewest_sheets
from kerfolio.layouts.effort import EFFORT
from kerfolio.layouts.engine import Job
from kerfolio.layouts.outside import OutsideEngine
from kerfolio.layouts.own_placer import OwnPlacer
from kerfolio.layouts.plan_layout import lay_out
from kerfolio.layouts.question import Answer, Question
from kerfolio.layouts.strip import strip_laid
from kerfolio.layouts.verify import packing_faults
from kerfolio.publishing.examine import examine
from kerfolio.publishing.freeze import freeze_layouts
from tests.layouts.plans import part_set
from tests.layouts.shared_sets import BINS, STRIPS, best_known, bin_job, strip_question
from tests.layouts.test_plan_layout import assert_correct
from tests.plans import lay_down

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
def test_strips() -> None:
    print("\ninstance  best-length length density best-density share seconds")
    shares = []
    for name, row in sorted(best_known(STRIPS).items()):
        question = strip_question(name, STRIP_SECONDS)
        start = perf_counter()
        answer = strip_laid(question)
        spent = perf_counter() - start
        solids = _solids(question, answer)
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


def _solids(question: Question, answer: Answer) -> list[shapely.Polygon]:
    ((_, places),) = answer
    return [
        affinity.translate(
            affinity.rotate(shapely.Polygon(question.kinds[kind].outer), turn, origin=(0, 0)), x, y
        )
        for kind, turn, x, y in places
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


_KINDS = {
    "side": ("polygon: [[0, 0], [540, 0], [540, 300], [380, 700], [0, 700]]", 4),
    "top": ("rectangle: [860, 350], round: 40", 4),
    "shelf": ("rectangle: [600, 270]", 8),
    "leg": ("polygon: [[0, 0], [60, 0], [110, 640], [0, 640]]", 8),
    "rail": ("rectangle: [620, 70]", 6),
}
_COLD = """\
plan: Thirty pieces
version: 1.0.0
summary: A plan of thirty pieces on two sheets.
sheets:
  ply: {stock: birch-plywood-18, size: 2440 x 1220, published-for: 17.6 to 18.2 by 0.2}
parts:
"""


@pytest.mark.bench
def test_a_plan_from_cold(tmp_path: Path) -> None:
    parts = (
        f"  {name}: {{sheet: ply, count: {count}, outline: {{{outline}}}}}\n"
        for name, (outline, count) in _KINDS.items()
    )
    release = "releases: {1.0.0: {date: 2026-10-02, changed: First release.}}\n"
    shop = lay_down(tmp_path / "shop", _COLD + "".join(parts) + release, "thirty")
    for name in ("cold", "frozen"):
        clock = perf_counter()
        examined = examine(shop)
        spent = perf_counter() - clock
        (laid,) = examined.laid_out
        freeze_layouts(shop, examined.laid_out)
        pieces = sum(len(sheet.placements) for sheet in laid.layout.sheets)
        print(f"\n{name}: {pieces} pieces on {len(laid.layout.sheets)} sheets, {spent:.1f} s")
        assert bool(laid.fresh) == (name == "cold")
