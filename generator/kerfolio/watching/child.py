"""A run of the program in a process of its own, ended as soon as it is not wanted any more."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager, suppress
from time import sleep

PAUSE = 0.1
"""How often it is asked whether something newer was saved, s."""


_GRACE = 10.0
"""How long a run may take to end, s."""


@contextmanager
def child(
    module: str, words: Sequence[str], *, is_asked: bool = False
) -> Iterator[subprocess.Popen[bytes]]:
    """Run a module of ours; what it writes is for the caller. Ends it on the way out.

    One that ``is_asked`` reads what the caller writes.

    It stands apart from the terminal, whose Ctrl-C is for its parent alone.
    """
    running = subprocess.Popen(
        [sys.executable, "-m", module, *words],
        stdin=subprocess.PIPE if is_asked else subprocess.DEVNULL,
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
        start_new_session=True,
    )
    try:
        yield running
    finally:
        _end(running)


def _end(running: subprocess.Popen[bytes]) -> None:
    """End a run with all that it started, by force where it does not end by itself."""
    for force in (signal.SIGTERM, signal.SIGKILL):
        if running.poll() is None:
            with suppress(ProcessLookupError):
                os.killpg(running.pid, force)
        with suppress(subprocess.TimeoutExpired):
            running.communicate(timeout=_GRACE)
            return


def ended(running: subprocess.Popen[bytes], is_over: Callable[[], bool]) -> bool:
    """Wait for a run that writes little; tell whether it ended well before it ``is_over``."""
    while running.poll() is None:
        if is_over():
            return False
        sleep(PAUSE)
    return running.returncode == 0
