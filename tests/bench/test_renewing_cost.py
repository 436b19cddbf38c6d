"""What a publish costs when little changed, and as plans grow in number.

Run by hand with ``pytest -m bench -n 0 -s``. Every run is a process of its own; what is compared is
its processor time, start-up apart (that of a workshop without plans), and its greatest memory.
``BENCH_PLANS=10,100,300,1000`` measures growth over so many plans; the first is the unit.
"""

from __future__ import annotations

import math
import os
import re
import shutil
import sys
import time
from collections.abc import Callable
from dataclasses import dataclass
from itertools import pairwise
from pathlib import Path

import pytest

from kerfolio.publishing.build import Request, publish
from kerfolio.publishing.sources import KEPT
from tests.conftest import copy_of_sample, files_of
from tests.publishing.quick_work import worked
from tests.publishing.small_shop import another, small_shop

PLANS = [int(each) for each in os.environ.get("BENCH_PLANS", "4,16").split(",")]
LESS = 0.35
UNCHANGED, ONE_STEP, GROWTH, MEMORY, TWO_CORES = 0.02, 0.01, 1.05, 1.3, 1.7


@dataclass(frozen=True)
class Cost:
    """Seconds of processor and of the clock, and greatest memory in MB."""

    cpu: float
    wall: float
    memory: float


def cost_of(*words: str | Path) -> Cost:
    """Run the command line in a process of its own."""
    began = time.perf_counter()
    child = os.fork()
    if not child:
        quiet = os.open(os.devnull, os.O_WRONLY)
        os.dup2(quiet, 1)
        os.dup2(quiet, 2)
        os.execv(sys.executable, [sys.executable, "-m", "kerfolio", *map(str, words)])
    _, status, used = os.wait4(child, 0)
    assert os.WEXITSTATUS(status) == 0
    wall = time.perf_counter() - began
    return Cost(used.ru_utime + used.ru_stime, wall, used.ru_maxrss / 1024)


def shop_of(folder: Path, plans: int) -> Path:
    """Write a workshop of so many plans, each of its own size."""
    shop = small_shop(folder)
    for number in range(1, plans):
        plan = another(shop, f"board-{number:04d}")
        size = 200 + number % 90
        plan.write_text(plan.read_text("utf-8").replace("w: 200", f"w: {size}"), "utf-8")
    return shop


def start_up(folder: Path, command: str) -> float:
    shop = small_shop(folder)
    (shop / "plans" / "board").rename(shop / "plans" / "_board")
    (shop / "log" / "day.yaml").unlink()
    cost_of(command, shop, "--workers", "1")
    return cost_of(command, shop, "--workers", "1").cpu


@pytest.mark.bench
def test_what_did_not_change_costs_next_to_nothing(tmp_path: Path) -> None:
    shop = shop_of(tmp_path / "shop", PLANS[-1])
    for command in ("layout", "prove", "publish"):
        begin = start_up(tmp_path / command, command)
        full = cost_of(command, shop, "--workers", "1")
        again = cost_of(command, shop, "--workers", "1")
        share = (again.cpu - begin) / (full.cpu - begin)
        print(
            f"\n{command} of {PLANS[-1]} plans: {full.cpu:.1f} s, unchanged {again.cpu:.2f} s "
            f"({again.wall:.2f} s by the clock), {share:.2%} start-up apart",
            flush=True,
        )
        assert share < UNCHANGED
    plan = shop / "plans" / "board" / "plan.yaml"
    plan.write_text(re.sub("text: Done", "text: Well done", plan.read_text("utf-8")), "utf-8")
    step = cost_of("publish", shop, "--workers", "1")
    share = (step.cpu - begin) / (full.cpu - begin)
    print(f"one step's text: {step.cpu:.2f} s, {share:.2%}, {share * PLANS[-1]:.2f} plans")
    assert share < max(ONE_STEP, 3.5 / PLANS[-1])  # a plan, the engine and fonts that it loads


@pytest.mark.bench
def test_what_hangs_on_less_than_a_plan_is_not_made_for_the_rest(tmp_path: Path) -> None:
    """A large plan: a step's text, a price and a line of the log leave files and drawings alone."""
    begin = start_up(tmp_path / "empty", "publish")
    shop = copy_of_sample(tmp_path / "shop", ["potting-bench"])
    command = ("publish", shop, "--workers", "1")
    plan, log = shop / "plans" / "potting-bench" / "plan.yaml", shop / "log" / "2026-09-19.yaml"

    def edit(file: Path, old: str, new: str) -> Callable[[], object]:
        return lambda: file.write_text(file.read_text("utf-8").replace(old, new, 1), "utf-8")

    edits: dict[str, Callable[[], object]] = {
        "first": lambda: None,
        "a step's text": edit(plan, "is the foot.", "is the foot, as ever."),
        "a price": edit(shop / "stock" / "sheets.yaml", "92.50", "93.50"),
        "a line of the log": edit(log, "title: ", "title: Once more, "),
    }
    costs = {}
    for name, change in edits.items():
        change()
        costs[name] = cost_of(*command).cpu - begin
        kept = sum(each.stat().st_size for each in (shop / KEPT).iterdir()) / 1e6
        share = costs[name] / costs["first"]
        print(f"\n{name}: {costs[name]:.1f} s, {share:.0%}; kept {kept:.1f} MB", flush=True)
    assert max(cost for name, cost in costs.items() if name != "first") < LESS * costs["first"]


@pytest.mark.bench
def test_time_and_memory_grow_as_they_must(tmp_path: Path) -> None:
    begin = start_up(tmp_path / "empty", "publish")
    costs = {}
    for count in PLANS:
        costs[count] = cost_of("publish", shop_of(tmp_path / str(count), count), "--workers", "1")
        print(
            f"\n{count} plans: {costs[count].cpu:.1f} s, {costs[count].memory:.0f} MB", flush=True
        )
    for fewer, more in pairwise(PLANS):
        ratio = (costs[more].cpu - begin) / (costs[fewer].cpu - begin)
        exponent = math.log(ratio) / math.log(more / fewer)
        print(f"{fewer} to {more} plans: exponent {exponent:.3f}")
        assert exponent <= GROWTH
    assert max(each.memory for each in costs.values()) <= MEMORY * costs[PLANS[0]].memory


@pytest.mark.bench
def test_a_thousand_plans_take_no_more_room_than_ten(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What does not lie in workers: here the work on a plan is quick, and little is left of it."""
    worked(monkeypatch)
    costs = {}
    for count in (10, 100, 1000):
        shop = shop_of(tmp_path / str(count), count)
        began = time.perf_counter()
        child = os.fork()
        if not child:
            made = publish(Request(folder=shop, out=shop / "site", supporters_out=shop / "given"))
            os._exit(0 if made.published else 1)
        _, status, used = os.wait4(child, 0)
        assert os.WEXITSTATUS(status) == 0
        wall = time.perf_counter() - began
        costs[count] = Cost(used.ru_utime + used.ru_stime, wall, used.ru_maxrss / 1024)
        print(
            f"\n{count} plans: {costs[count].cpu:.1f} s, {costs[count].memory:.0f} MB", flush=True
        )
    exponent = math.log10(costs[1000].cpu / costs[100].cpu)
    print(f"100 to 1000 plans: exponent {exponent:.3f}")
    assert exponent <= GROWTH
    assert costs[1000].memory <= MEMORY * costs[10].memory


@pytest.mark.bench
@pytest.mark.skipif((os.cpu_count() or 1) < 2, reason="one core alone")
def test_two_cores_are_nearly_twice_as_fast(tmp_path: Path) -> None:
    """Plans as large as the smaller samples: a process takes some seconds to load what it needs."""
    shop = copy_of_sample(tmp_path / "shop", ["desk-rack"])
    for number in range(1, 8):
        made = shop / "plans" / f"rack-{number}"
        shutil.copytree(
            shop / "plans" / "desk-rack", made, ignore=shutil.ignore_patterns("layout*")
        )
        plan = made / "plan.yaml"
        text = plan.read_text("utf-8").replace("plan: Desk rack", f"plan: Desk rack {number}")
        plan.write_text(text.replace("runner: 50", f"runner: {50 + number / 2}"), "utf-8")
    cost_of("publish", shop, "--workers", "2")  # which freezes layouts
    seconds, files = {}, {}
    for workers in (1, 2):
        for each in (shop / KEPT).iterdir():
            each.unlink()
        seconds[workers] = cost_of("publish", shop, "--workers", str(workers)).wall
        files[workers] = files_of(shop / "site")
    assert files[1] == files[2]
    ratio = seconds[1] / seconds[2]
    print(f"\neight plans: {seconds[1]:.1f} s by one, {seconds[2]:.1f} s by two, {ratio:.2f}")
    assert ratio >= TWO_CORES
