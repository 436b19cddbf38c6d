"""Kills a publish at a hundred moments, and watching at fifty; by hand: ``pytest -m bench -s``.

Every other two begin with nothing kept. Half of them fall on calls that change the disk, spread
over all that a publish makes, half on moments spread over its time. After each, what the next
command finds must be the old site or the new one, with the supporters' bundle that belongs to it,
what others laid in, a store of sound entries, and nothing left over.
``BENCH_KILLS=8`` takes so many moments of both.

Watching is killed after a save, at moments spread over the time it takes to show and make all.
Workshop, site and store must be as they were, its processes gone, and what it made beside sound.
"""

from __future__ import annotations

import os
import shutil
import signal
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pytest

from kerfolio.disk.hand_over import take_up
from kerfolio.keeping.store import Store
from kerfolio.publishing import plan_drawn  # noqa: F401 - loaded once, not in every child
from kerfolio.publishing.begin import begin_workshop
from kerfolio.publishing.build import Request, publish
from kerfolio.publishing.sources import KEPT
from kerfolio.writing.webfont import web_fonts
from tests.conftest import files_of
from tests.disk.killing import killed_at
from tests.publishing.small_shop import small_shop
from tests.publishing.test_side_by_side import runs

_MOMENTS = int(os.environ.get("BENCH_KILLS", "100"))
_WATCHED = int(os.environ.get("BENCH_KILLS", "50"))
_LAID = {"CNAME": b"bench.example", "plans/notes.txt": b"mine"}


def _plan(shop: Path) -> Path:
    return shop / "plans" / "standing-cross" / "plan.yaml"


def _killed_after(seconds: float, request: Request) -> None:
    child = _begun(request)
    time.sleep(seconds)
    os.kill(child, signal.SIGKILL)
    os.waitpid(child, 0)


def _begun(request: Request) -> int:
    """Begin a publish in a child.

    The test itself never publishes: what sets booklets holds threads, which no fork takes along.
    """
    child = os.fork()
    if child:
        return child
    done = False
    try:
        done = publish(request).published
    finally:
        os._exit(0 if done else 1)


def _published(request: Request) -> None:
    _, status = os.waitpid(_begun(request), 0)
    assert os.waitstatus_to_exitcode(status) == 0


def made_in(made: Callable[[int], object], shop: Path | None = None) -> float:
    """Return how many seconds a publish takes; of a ``shop`` it is given, with nothing kept."""
    if shop:
        shutil.rmtree(shop / KEPT)
    began = time.perf_counter()
    made(200)
    return time.perf_counter() - began


def check_store(shop: Path) -> None:
    """Look that every entry of the store is whole; reading one that is not drops it."""
    kept = shop / KEPT
    there = kept.iterdir() if kept.exists() else ()
    names = [each.name for each in there if not each.name.startswith(".")]
    store = Store(kept)
    assert [name for name in names if store.get(name) is None] == []


@pytest.mark.bench
def test_a_hundred_kills(tmp_path: Path) -> None:
    from datetime import date

    shop, out, handed = tmp_path / "shop", tmp_path / "site", tmp_path / "handed"
    begin_workshop(shop, date(2026, 10, 2))
    web_fonts()  # once, not in every child
    text = _plan(shop).read_text("utf-8").replace("access: open", "access: supporters")
    request = Request(folder=shop, out=out, supporters_out=handed)

    def made(wide: int) -> tuple[dict[str, bytes], dict[str, bytes]]:
        _plan(shop).write_text(text.replace("wide: 200", f"wide: {wide}"), "utf-8")
        (shop / "plans" / "standing-cross" / "layout.json").unlink(missing_ok=True)
        _published(request)
        for name, content in _LAID.items():
            (out / name).write_bytes(content)
        return files_of(out), files_of(handed)

    new = made(210)
    old = made(200)
    long, short = made_in(made, shop), made_in(made)
    calls = 0
    _plan(shop).write_text(text.replace("wide: 200", "wide: 210"), "utf-8")
    while killed_at(calls, lambda: publish(request)):  # how many disk calls it makes
        take_up(out)
        calls += 40
    old = made(200)
    outcomes: dict[str, int] = {}
    for moment in range(_MOMENTS):
        _plan(shop).write_text(text.replace("wide: 200", "wide: 210"), "utf-8")
        afresh = moment % 4 < 2
        if afresh:
            shutil.rmtree(shop / KEPT, ignore_errors=True)  # one killed at once left none
        if moment % 2:
            killed_at(calls * moment // _MOMENTS, lambda: publish(request))
        else:
            _killed_after((long if afresh else short) * 1.1 * moment / _MOMENTS, request)
        take_up(out)
        found = files_of(out), files_of(handed)
        assert found in (old, new), moment
        check_store(shop)
        assert sorted(each.name for each in tmp_path.iterdir()) == ["handed", "shop", "site"]
        outcome = "old" if found == old else "new"
        outcomes[outcome] = outcomes.get(outcome, 0) + 1
        print(f"{moment}: {outcome}", flush=True)
        if outcome == "new":
            assert made(200) == old
    _plan(shop).write_text(text.replace("wide: 200", "wide: 210"), "utf-8")
    _published(request)
    assert files_of(out) == new[0]
    assert not list(tmp_path.rglob("*?.kerfolio"))
    over = f"{long:.1f} and {short:.1f} s and some {calls} disk calls"
    print(f"\n{_MOMENTS} kills over {over}: {outcomes}")


def _children(pid: int) -> list[int]:
    """Return the processes that a process began, and those that they began."""
    own = [int(each) for each in Path(f"/proc/{pid}/task/{pid}/children").read_text().split()]
    return [*own, *(further for each in own for further in _children(each))]


def _watching(shop: Path, beside: Path) -> subprocess.Popen[str]:
    """Begin to watch, and return once it follows."""
    beside.mkdir()
    running = subprocess.Popen(
        [sys.executable, "-m", "kerfolio", "watch", str(shop)],
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
        text=True,
        env={**os.environ, "TMPDIR": str(beside), "PYTHONUNBUFFERED": "1"},
    )
    assert running.stdout is not None
    assert running.stdout.readline().startswith("Watching")
    return running


def _site(beside: Path) -> Path:
    return next(iter(beside.glob("kerfolio-watch-*"))) / "site"


@pytest.mark.bench
def test_fifty_kills_of_watching(tmp_path: Path) -> None:
    shop = small_shop(tmp_path / "shop")
    request = Request(folder=shop, out=shop / "site", supporters_out=shop / "supporters")
    _published(request)
    plan = shop / "plans" / "board" / "plan.yaml"
    text = plan.read_text("utf-8")
    began = time.perf_counter()
    running = _watching(shop, tmp_path / "whole")
    while not (_site(tmp_path / "whole") / "index.html").exists():
        assert time.perf_counter() - began < 300
        time.sleep(0.05)
    whole = time.perf_counter() - began
    running.send_signal(signal.SIGINT)
    running.communicate()
    made = 0
    for moment in range(_WATCHED):
        beside = tmp_path / f"beside-{moment}"
        running = _watching(shop, beside)
        plan.write_text(text.replace("w: 200", f"w: {201 + moment}"), "utf-8")
        before = files_of(shop)
        time.sleep(whole * 1.2 * moment / _WATCHED)
        children = _children(running.pid)
        running.kill()
        running.communicate()
        end = time.monotonic() + 30
        while any(map(runs, children)):
            assert time.monotonic() < end, "its processes outlive it"
            time.sleep(0.05)
        assert files_of(shop) == before, moment
        for copy in beside.glob("kerfolio-watch-*/workshop"):
            check_store(copy)
        site = _site(beside)
        made += site.exists()
        assert not site.exists() or (site / "manifest.json").exists()
        shutil.rmtree(beside)
    check_store(shop)
    print(f"\n{_WATCHED} kills of watching over {whole:.1f} s: {made} had made readers' pages")
    _published(request)
