"""Proves plans in a process of its own, so that the next save is looked at while it runs."""

from __future__ import annotations

import pickle
import subprocess
import sys
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from queue import Empty, Queue
from threading import Thread

from kerfolio.basis.finding import Finding
from kerfolio.watching.child import PAUSE, child


@dataclass(frozen=True, slots=True, kw_only=True)
class Proven:
    """All that was found of a plan, reading included, each with inline SVG of its place or none."""

    name: str
    findings: tuple[Finding, ...]
    pictures: tuple[str, ...]


Prove = Callable[[Path, Sequence[str], Callable[[], bool]], Iterator[Proven]]
"""Yields the plans of a workshop as they are proven, until it is over."""


def proven_beside(
    folder: Path, names: Sequence[str], is_over: Callable[[], bool]
) -> Iterator[Proven]:
    """Yield plans as they are proven in a process beside; none after it ``is_over``."""
    if not names:
        return
    with child("kerfolio.watching.prover", [str(folder), *names]) as running:
        told: Queue[Proven | None] = Queue()
        Thread(target=_take, args=(running, told), daemon=True).start()
        for _ in names:
            made = _next(told, is_over)
            if made is None:
                return
            yield made


def proven(folder: Path, name: str) -> Proven:
    """Return what proving a plan finds."""
    from kerfolio.publishing.examine import examine
    from kerfolio.publishing.report import finding_picture

    examined = examine(folder, name, pictures=False)
    own = f"plans/{name}/"
    findings = [each for each in examined.findings if f"{each.place.file}/".startswith(own)]
    proof = next(iter(examined.proofs), None)
    pictures = [finding_picture(each, proof, number) for number, each in enumerate(findings)]
    return Proven(name=name, findings=tuple(findings), pictures=tuple(pictures))


def _take(running: subprocess.Popen[bytes], told: Queue[Proven | None]) -> None:
    """Take what our own process writes, until it ends."""
    assert running.stdout is not None
    try:
        while True:
            told.put(pickle.load(running.stdout))
    except Exception:  # it ended, or what it wrote is cut off: nothing more comes
        told.put(None)


def _next(told: Queue[Proven | None], is_over: Callable[[], bool]) -> Proven | None:
    while not is_over():
        try:
            return told.get(timeout=PAUSE)
        except Empty:
            continue
    return None


def main(folder: str, *names: str) -> None:
    """Write what proving each plan finds to the pipe that we were started with.

    As a program this module has another name, and so would what it writes.
    """
    from kerfolio.watching.prover import proven

    for name in names:
        pickle.dump(proven(Path(folder), name), sys.stdout.buffer)
        sys.stdout.buffer.flush()


if __name__ == "__main__":
    main(*sys.argv[1:])
