"""A run of the program in a process of its own, ended as soon as it is not wanted any more."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from time import sleep

PAUSE = 0.1
"""How often it is asked whether something newer was saved, s."""


@contextmanager
def child(module: str, words: Sequence[str]) -> Iterator[subprocess.Popen[bytes]]:
    """Run a module of ours; what it writes is for the caller. Ends it on the way out.

    It stands apart from the terminal, whose Ctrl-C is for its parent alone.
    """
    running = subprocess.Popen(
        [sys.executable, "-m", module, *words],
        stdin=subprocess.DEVNULL,
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
        start_new_session=True,
    )
    try:
        yield running
    finally:
        if running.poll() is None:
            running.terminate()
        running.communicate()


def ended(running: subprocess.Popen[bytes], is_over: Callable[[], bool]) -> bool:
    """Wait for a run that writes little; tell whether it ended well before it ``is_over``."""
    while running.poll() is None:
        if is_over():
            return False
        sleep(PAUSE)
    return running.returncode == 0
