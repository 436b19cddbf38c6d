"""Work side by side gives what work in turn gives, and ends with the run it is for."""

from __future__ import annotations

import os
import re
import time
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path

import pytest

from kerfolio.commands.telling import Progress
from kerfolio.keeping.program import program
from kerfolio.publishing.renewing import work_alike
from kerfolio.publishing.side_by_side import Workers, each_made, workers_from


def squared(number: int) -> tuple[int, int]:
    return number * number, os.getpid()


def sleeping(file: str) -> None:
    Path(file).write_text(str(os.getpid()))
    time.sleep(60)


def failing(_: str) -> None:
    raise ValueError("as a plan may")


@pytest.mark.parametrize("count", [1, 2])
def test_every_order_is_worked_on_once(count: int) -> None:
    found = dict(each_made(squared, range(7), Workers(count=count), 7))
    assert {order: made[0] for order, made in found.items()} == {n: n * n for n in range(7)}
    others = {pid for _, pid in found.values()} - {os.getpid()}
    assert bool(others) == (count > 1)
    assert len(others) <= 2


def test_orders_are_taken_as_work_goes_on() -> None:
    taken: list[int] = []

    def orders() -> Iterator[int]:
        for number in range(20):
            taken.append(number)
            yield number

    done = each_made(squared, orders(), Workers(count=2), 20)
    next(done)
    assert len(taken) <= 4
    assert len(list(done)) == 19


def test_one_order_alone_is_worked_on_here() -> None:
    assert list(each_made(squared, [3], Workers(count=9), 1)) == [(3, (9, os.getpid()))]


def test_a_fault_of_a_worker_is_raised_here() -> None:
    with pytest.raises(ValueError, match="as a plan may"):
        list(each_made(failing, ["a", "b"], Workers(count=2), 2))


def test_workers_end_with_the_run(tmp_path: Path) -> None:
    files = [str(tmp_path / "a"), str(tmp_path / "b")]
    child = os.fork()
    if not child:
        with suppress(BaseException):
            list(each_made(sleeping, files, Workers(count=2), 2))
        os._exit(0)
    deadline = time.monotonic() + 60
    while not all(Path(each).exists() and Path(each).read_text() for each in files):
        assert time.monotonic() < deadline
        time.sleep(0.05)
    workers = [int(Path(each).read_text()) for each in files]
    os.kill(child, 9)
    os.waitpid(child, 0)
    while any(map(runs, workers)):
        assert time.monotonic() < deadline, "workers outlive their run"
        time.sleep(0.05)


def runs(pid: int) -> bool:
    try:
        return Path(f"/proc/{pid}/stat").read_text().split()[2] not in "ZX"
    except OSError:
        return False


def test_a_worker_of_another_release_does_nothing() -> None:
    assert work_alike(squared, program(), 3) == (9, os.getpid())
    with pytest.raises(OSError, match="another release"):
        work_alike(squared, "another", 3)


def test_plans_done_and_left_are_told(capsys: pytest.CaptureFixture[str]) -> None:
    Progress().tally(0, 1)
    Progress().tally(3, 40)
    assert capsys.readouterr().err == "3 of 40 plans done, 37 left\n"


def test_what_workers_may_be() -> None:
    assert workers_from("3") == Workers(count=3)
    assert workers_from("host:8786") == Workers(address="host:8786")
    assert workers_from("").count >= 1
    for wrong in ("0", "-1", "many", "2.5"):
        with pytest.raises(ValueError, match=rf"{re.escape(wrong)}|invalid"):
            workers_from(wrong)


def test_a_cluster_gives_the_same(monkeypatch: pytest.MonkeyPatch) -> None:
    distributed = pytest.importorskip("distributed")
    with distributed.LocalCluster(
        n_workers=2, threads_per_worker=1, host="127.0.0.1", dashboard_address=None
    ) as cluster:
        address = cluster.scheduler_address.removeprefix("tcp://")
        found = dict(each_made(squared, range(5), Workers(address=address), 5))
    assert {order: made[0] for order, made in found.items()} == {n: n * n for n in range(5)}
    assert os.getpid() not in {pid for _, pid in found.values()}
