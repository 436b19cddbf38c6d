"""Work side by side: over the cores of this machine, or over a cluster that is named.

Whatever does the work is an ``Executor`` of the standard library; the results do not hang on it.
"""

from __future__ import annotations

import os
import signal
import threading
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import FIRST_COMPLETED, Executor, Future, ProcessPoolExecutor, wait
from contextlib import contextmanager
from dataclasses import dataclass
from itertools import islice
from multiprocessing import get_context
from multiprocessing.connection import Connection
from typing import TypeVar

from kerfolio.basis.collector import collect_seldom

Order = TypeVar("Order")
Made = TypeVar("Made")

_AHEAD = 2
"""Orders handed out for each worker: one is worked on, one waits. Results are few at any time."""


@dataclass(frozen=True, slots=True)
class Workers:
    """How many work side by side on this machine, or the ``address`` of who shares work out."""

    count: int = 1
    address: str = ""


def cores() -> int:
    """Return how many cores this process may use."""
    if hasattr(os, "sched_getaffinity"):
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1


def workers_from(text: str) -> Workers:
    """Return what ``--workers`` states: a count, an address, or nothing for every core.

    Raises ValueError where a count is none.
    """
    if ":" in text:
        return Workers(address=text)
    count = int(text) if text else cores()
    if not 1 <= count <= 1000:
        raise ValueError(text)
    return Workers(count=count)


def works_here(workers: Workers, most: int) -> bool:
    """Tell whether so many orders are worked on in this process: one alone, or by a lone worker."""
    return not workers.address and min(workers.count, most) < 2


def each_made(
    work: Callable[[Order], Made],
    orders: Iterable[Order],
    workers: Workers,
    most: int,
    meanwhile: Callable[[], None] | None = None,
) -> Iterator[tuple[Order, Made]]:
    """Yield every order with what was made of it, in the order in which they are done.

    ``most`` is how many orders there are at most. They are taken one by one as work goes on.
    ``meanwhile`` is done here once others work.
    """
    if works_here(workers, most):
        yield from ((each, work(each)) for each in orders)
        return
    waiting: dict[Future[Made], Order] = {}
    with _executor(workers, most) as (executor, width):
        coming = iter(orders)
        while True:
            for each in islice(coming, width * _AHEAD - len(waiting)):
                waiting[executor.submit(work, each)] = each
            if not waiting:
                return
            if meanwhile is not None:
                meanwhile()
                meanwhile = None
            done, _ = wait(waiting, return_when=FIRST_COMPLETED)
            yield from ((waiting.pop(each), each.result()) for each in done)


@contextmanager
def _executor(workers: Workers, most: int) -> Iterator[tuple[Executor, int]]:
    """Open an executor and tell how many work in it; whatever ends this run ends its workers."""
    if workers.address:
        with _cluster(workers.address) as found:
            yield found
        return
    width = min(workers.count, most)
    context = get_context("spawn")
    ours, theirs = context.Pipe(duplex=False)
    pool = ProcessPoolExecutor(width, context, initializer=_begin, initargs=(ours,))
    try:
        yield pool, width
    except BaseException:
        theirs.close()  # which ends them where they are
        pool.shutdown(wait=False, cancel_futures=True)
        raise
    else:
        theirs.close()  # all is handed over; to clear up after itself takes a worker a second
        pool.shutdown()
    finally:
        theirs.close()
        ours.close()


def _begin(lasting: Connection) -> None:
    """Begin a worker, which ends with the run it works for, however that ends."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    collect_seldom()
    threading.Thread(target=_end_with, args=(lasting,), daemon=True).start()


def _end_with(lasting: Connection) -> None:
    try:
        lasting.recv()
    except (EOFError, OSError):
        os._exit(1)


@contextmanager
def _cluster(address: str) -> Iterator[tuple[Executor, int]]:
    from distributed import Client

    with Client(address) as client:
        yield client.get_executor(pure=False), max(1, sum(client.nthreads().values()))
