"""The process beside that proves plans: asked by lines of JSON, it answers in pickles.

``[number, name]`` asks for a plan, ``[number]`` says that this is not wanted any more. A proof that
is dropped leaves what was worked out for it known.
"""

from __future__ import annotations

import _thread
import json
import pickle
import signal
import sys
from collections.abc import Callable, Iterable, Iterator
from contextlib import suppress
from dataclasses import replace
from pathlib import Path
from queue import Queue
from threading import Thread

from kerfolio.basis.finding import Finding, in_order
from kerfolio.layouts import plan_layout  # noqa: F401 - loaded before anything is dropped
from kerfolio.model.stock import Stock
from kerfolio.proving.prove import Proof, prove_plan
from kerfolio.publishing.examine import examine_proved
from kerfolio.publishing.finding_pictures import finding_pictures
from kerfolio.publishing.fresh import foretold
from kerfolio.publishing.swapping import with_swaps
from kerfolio.reading.plan_folders import lies_in
from kerfolio.reading.workshop import read_shared, with_plans
from kerfolio.watching.prover import DONE, Proven


def proven(folder: Path, name: str) -> Iterator[Proven]:
    """Yield what proving finds, then its pictures, then what laying out and swaps tell with it."""
    shared, refused = read_shared(folder, pictures=False)
    workshop, more = with_plans(shared, [name]) if shared else (None, ())
    plan = next(iter(workshop.plans), None) if workshop else None
    if workshop is None or plan is None:
        yield _told(name, (*refused, *more), None, Stock(), is_all=True)
        return
    proof = prove_plan(plan, workshop.stock, workshop.trials)
    found = (*more, *proof.findings)
    yield _told(name, found, None, workshop.stock, is_all=False)  # pictures take their time
    proved = _told(name, found, proof, workshop.stock, is_all=False)
    if any(proved.pictures):
        yield proved
    examined = foretold(with_swaps(examine_proved(workshop, found, proof)))
    if set(examined.findings) == set(found):
        yield replace(proved, is_all=True)
    else:
        yield _told(name, examined.findings, proof, workshop.stock, is_all=True)


def _told(
    name: str, findings: Iterable[Finding], proof: Proof | None, stock: Stock, *, is_all: bool
) -> Proven:
    told = [each for each in in_order(findings) if lies_in(each, name)]
    pictures = finding_pictures(told, proof, stock)
    return Proven(name=name, findings=tuple(told), pictures=pictures, is_all=is_all)


class _Dropped(BaseException):
    """What is being worked out is not wanted any more."""


class _Asked:
    """What is asked for, line by line; work on what is dropped meanwhile is broken off.

    A word that comes too late, when the work is done or another is begun, does nothing.
    """

    def __init__(self) -> None:
        self._names: Queue[tuple[int, str] | None] = Queue()
        self._dropped, self._at, self._may_break = 0, 0, False
        signal.signal(signal.SIGINT, lambda *_: self._heed())
        Thread(target=self._listen, daemon=True).start()

    def _listen(self) -> None:
        for line in sys.stdin:
            number, *name = json.loads(line)
            if name:
                self._names.put((number, name[0]))
            else:
                self._drop(number)
        self._names.put(None)
        self._drop(sys.maxsize)

    def _drop(self, number: int) -> None:
        self._dropped = number
        _thread.interrupt_main()

    def _heed(self) -> None:
        if self._may_break and self._at <= self._dropped:
            raise _Dropped

    def each(self, work: Callable[[str], Iterator[Proven]]) -> None:
        """Work on all that is asked for, until nobody asks any more."""
        while (asked := self._names.get()) is not None:
            self._at, name = asked
            with suppress(_Dropped):
                self._work(work(name))
            self._may_break = False
            _write(DONE)

    def _work(self, made: Iterator[Proven]) -> None:
        while True:
            self._may_break = True
            self._heed()
            found = next(made, None)
            self._may_break = False
            if found is None:
                return
            _write(found)


def _write(told: Proven | str) -> None:
    pickle.dump(told, sys.stdout.buffer)
    sys.stdout.buffer.flush()


def main(folder: str) -> None:
    """Prove what is asked for on the one pipe that we were started with, and answer on the other.

    As a program this module has another name, and so would what it writes.
    """
    _Asked().each(lambda name: proven(Path(folder), name))


if __name__ == "__main__":
    main(sys.argv[1])
