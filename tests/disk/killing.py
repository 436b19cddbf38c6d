"""Work in a child process that is killed at a chosen call that changes the disk."""

from __future__ import annotations

import os
import shutil
from collections.abc import Callable
from pathlib import Path

from kerfolio.disk import hand_over

CALLS: tuple[tuple[object, str], ...] = (
    (Path, "write_bytes"),
    (Path, "write_text"),
    (Path, "mkdir"),
    (Path, "rename"),
    (Path, "replace"),
    (Path, "unlink"),
    (Path, "symlink_to"),
    (os, "link"),
    (os, "unlink"),
    (os, "rmdir"),
    (shutil, "copymode"),
    (hand_over, "exchange"),
)
"""Every call by which a hand-over changes the disk."""


def killed_at(number: int, work: Callable[[], object]) -> bool:
    """Run ``work`` in a child that is killed before its disk call of that number; tell whether.

    A child that makes fewer calls ends by itself.
    """
    child = os.fork()
    if child:
        _, status = os.waitpid(child, 0)
        assert os.WIFSIGNALED(status) or os.WEXITSTATUS(status) == 0
        return os.WIFSIGNALED(status)
    left = [number]

    def counted(call: Callable[..., object]) -> Callable[..., object]:
        def inner(*args: object, **named: object) -> object:
            left[0] -= 1
            if left[0] < 0:
                os.kill(os.getpid(), 9)
            return call(*args, **named)

        return inner

    for owner, name in CALLS:
        setattr(owner, name, counted(getattr(owner, name)))
    try:
        work()
    finally:
        os._exit(0)
