"""One run at a time in a folder."""

from __future__ import annotations

import os
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

try:
    import fcntl
except ImportError:  # a system without locks on folders
    fcntl = None  # type: ignore[assignment]


@contextmanager
def alone_in(folder: Path) -> Iterator[None]:
    """Wait until no other run is at work in a folder, and keep others waiting.

    The lock is on the folder itself and ends with its process: nothing is left lying. Where the
    system or the disk knows no such locks, nobody waits. Not to be nested. Raises OSError.
    """
    if fcntl is None:
        yield
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        with suppress(OSError):
            fcntl.flock(handle, fcntl.LOCK_EX)
        yield
    finally:
        os.close(handle)
