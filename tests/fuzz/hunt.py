"""Feeds a reader with mutated files: a few in the suite, for minutes when asked by hand.

    FUZZ_MINUTES=10 .venv/bin/python -m pytest -m fuzz -n 0 -s tests/fuzz/test_drawn_svg.py

takes every target of the file for so long, with new inputs on each run. It goes on after a find,
prints how much it did, and fails at the end with one line for each kind of find. The shortest
input of each lies in a folder that the line names; from there it goes into an ordinary test.
"""

from __future__ import annotations

import os
import signal
import sys
import tempfile
import traceback
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass, field
from pathlib import Path
from random import SystemRandom
from time import monotonic, process_time
from typing import Any

import hypothesis
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis.strategies import SearchStrategy

MINUTES = float(os.environ.get("FUZZ_MINUTES", "0"))
FEW = 15
"""Inputs for each target in the suite."""

MOST_SECONDS = 20.0
"""Of processor time for one input, where it is measured: only by hand, never in the suite."""

MOST_MB = 700
"""By which one input may raise the most memory that was ever in use."""

Check = Callable[[Any], None]


class TooLongError(BaseException):
    """Stops a reader that takes too long; no ``except Exception`` holds it."""


def hunt(inputs: SearchStrategy[Any], check: Check) -> None:
    """Give inputs to ``check``, which raises where its reader fails."""
    if MINUTES:
        _for_minutes(inputs, check)
    else:
        quiet = settings(max_examples=FEW, suppress_health_check=list(HealthCheck))
        quiet(given(inputs)(check))()


@dataclass
class _Hunt:
    """What a hunt has found: by the kind of fault, how often, and the shortest input."""

    check: Check
    done: int = 0
    slowest: float = 0.0
    finds: dict[str, list[Any]] = field(default_factory=dict)

    def one(self, given_input: Any) -> None:
        """Check one input; a fault is raised when it is new, and then only counted."""
        before, start = _peak_mb(), process_time()
        try:
            with _stopped_after(MOST_SECONDS):
                self.check(given_input)
            self.done += 1
            spent, grown = process_time() - start, _peak_mb() - before
            self.slowest = max(self.slowest, spent)
            assert spent < MOST_SECONDS, "takes too long"
            assert grown < MOST_MB, "takes too much memory"
        except (Exception, TooLongError) as fault:
            self._keep(_kind(fault), given_input)

    def _keep(self, kind: str, given_input: Any) -> None:
        known = self.finds.setdefault(kind, [0, given_input])
        known[0] += 1
        known[1] = min(known[1], given_input, key=lambda each: len(_content(each)))


def _for_minutes(inputs: SearchStrategy[Any], check: Check) -> None:
    until, found = monotonic() + 60 * MINUTES, _Hunt(check)
    how = settings(
        max_examples=500,
        database=None,
        phases=[Phase.generate, Phase.target],
        suppress_health_check=list(HealthCheck),
    )
    while monotonic() < until:

        def one(given_input: Any) -> None:
            if monotonic() < until:
                found.one(given_input)

        hypothesis.seed(SystemRandom().randrange(2**63))(how(given(inputs)(one)))()
    print(f"\n{found.done} inputs in {MINUTES:g} minutes, slowest {found.slowest:.2f} s")
    kept = Path(tempfile.mkdtemp(prefix="fuzz-")) if found.finds else Path()
    lines = []
    for number, (kind, (count, shortest)) in enumerate(found.finds.items()):
        (kept / str(number)).write_bytes(_content(shortest))
        lines.append(f"{count} x {kind}: {kept / str(number)}")
    assert not lines, "\n".join(lines)


def _content(given_input: Any) -> bytes:
    if isinstance(given_input, bytes):
        return given_input
    text = given_input if isinstance(given_input, str) else repr(given_input)
    return text.encode("utf-8", "surrogatepass")


def _kind(fault: BaseException) -> str:
    """Return what tells one fault from another: its class, its words, where it was raised."""
    frames = traceback.extract_tb(fault.__traceback__)
    own = [each for each in frames if "kerfolio" in each.filename] or frames
    words = str(fault).split("\n")[0][:80] if isinstance(fault, AssertionError) else ""
    where = f"{Path(own[-1].filename).name}:{own[-1].lineno}"
    return f"{type(fault).__name__} {words} ({where})"


def _peak_mb() -> float:
    import resource

    per_mb = 1024 if sys.platform != "darwin" else 1024 * 1024
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / per_mb


@contextmanager
def _stopped_after(seconds: float) -> Iterator[None]:
    """Raise TooLongError after so much processor time, in Python code at least."""

    def stop(*_: object) -> None:
        raise TooLongError

    before = signal.signal(signal.SIGPROF, stop)
    signal.setitimer(signal.ITIMER_PROF, seconds)
    try:
        yield
    finally:
        with suppress(TooLongError):
            signal.setitimer(signal.ITIMER_PROF, 0)
        signal.signal(signal.SIGPROF, before)
