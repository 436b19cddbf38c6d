"""Proves plans in a process of its own, so that the next save is looked at while it runs.

The process stays: what it has worked out of parts and spans that a save leaves as they are, it
knows (``lru_cache`` by content in `geometry` and `shop`). What is not wanted any more it drops.
"""

from __future__ import annotations

import json
import pickle
import subprocess
from collections.abc import Callable, Iterator, Sequence
from contextlib import ExitStack, suppress
from dataclasses import dataclass
from pathlib import Path
from queue import Empty, Queue
from threading import Thread
from types import TracebackType
from typing import Protocol, Self

from kerfolio.basis.finding import Finding
from kerfolio.watching.child import PAUSE, child

_GRACE = 5.0
"""How long the process may take to drop a proof, s; then it is ended."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Proven:
    """All that was found of a plan, reading included, each with inline SVG of its place or none.

    ``is_all`` tells that its sheets are laid out and its swaps are tried, too.
    """

    name: str
    findings: tuple[Finding, ...]
    pictures: tuple[str, ...]
    is_all: bool


class Prove(Protocol):
    """What proves the plans of a workshop while other things are done."""

    def begin(self, names: Sequence[str]) -> None:
        """Begin to prove plans, in this order; what was begun before is dropped."""

    def told(self, is_over: Callable[[], bool]) -> Iterator[Proven]:
        """Yield these plans as they are proven, each twice; none after it ``is_over``."""


DONE = "done"
"""What the process says when it has told all of a plan, or dropped it."""


class Prover:
    """Proves the plans of a workshop in a process beside, which it starts when it is asked first.

    It is a context: its process ends with it.
    """

    def __init__(self, folder: Path) -> None:
        """Prove plans of the workshop in ``folder``."""
        self._folder = folder
        self._held = ExitStack()
        self._running: subprocess.Popen[bytes] | None = None
        self._told: Queue[Proven | str | None] = Queue()
        self._asked, self._names = 0, list[str]()

    def __enter__(self) -> Self:
        """Begin without a process."""
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        fault: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        """End the process."""
        self._end()

    def begin(self, names: Sequence[str]) -> None:
        """Begin to prove plans, in this order; what was begun before is dropped."""
        self._drop()
        self._names = [*names]
        if names:
            self._ask(names[0])

    def told(self, is_over: Callable[[], bool]) -> Iterator[Proven]:
        """Yield these plans as they are proven; none after it ``is_over``, or the process fails."""
        while self._names:
            told = self._next(is_over)
            if isinstance(told, Proven):
                yield told
            elif told == DONE:
                self._names.pop(0)
                if self._names:
                    self._ask(self._names[0])
            else:
                self._drop()

    def _ask(self, name: str) -> None:
        if self._running is None:
            words = [str(self._folder)]
            started = child("kerfolio.watching.proving_child", words, is_asked=True)
            self._running = self._held.enter_context(started)
            self._told = Queue()
            Thread(target=_take, args=(self._running, self._told), daemon=True).start()
        self._asked += 1
        self._say(self._asked, name)

    def _say(self, *words: object) -> None:
        """Write a line to the process; one that is gone tells so where it is listened to."""
        line = self._running.stdin if self._running else None
        assert line is not None, "started when it is asked"
        with suppress(OSError):
            line.write(f"{json.dumps(words)}\n".encode())
            line.flush()

    def _next(self, is_over: Callable[[], bool]) -> Proven | str | None:
        while not is_over():
            try:
                return self._told.get(timeout=PAUSE)
            except Empty:
                continue
        return None

    def _drop(self) -> None:
        """Have the process drop what it is at, or end it where it does not."""
        if not self._names:
            return
        self._names = []
        self._say(self._asked)
        with suppress(Empty):
            while (told := self._told.get(timeout=_GRACE)) is not None:
                if told == DONE:
                    return
        self._end()

    def _end(self) -> None:
        self._held.close()
        self._running = None


def _take(running: subprocess.Popen[bytes], told: Queue[Proven | str | None]) -> None:
    """Take what our own process writes, until it ends."""
    assert running.stdout is not None
    try:
        while True:
            told.put(pickle.load(running.stdout))
    except Exception:  # it ended, or what it wrote is cut off: nothing more comes
        told.put(None)
