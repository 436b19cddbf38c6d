"""A disk that refuses, told so that a person knows what stands and what to do."""

from __future__ import annotations

import errno
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

_FULL = {errno.ENOSPC, errno.EDQUOT, errno.EFBIG}
_BARRED = {errno.EACCES, errno.EPERM, errno.EROFS}


class DiskError(OSError):
    """A disk refused; ``whole`` says what is whole all the same, ``advice`` what to do."""

    def __init__(self, trouble: OSError, file: Path, whole: str) -> None:
        super().__init__(trouble.errno, trouble.strerror or str(trouble), str(file))
        self.whole = whole
        self.advice = _advice(trouble.errno)


def _advice(number: int | None) -> str:
    if number in _FULL:
        return "Free some space there and run it again."
    if number in _BARRED:
        return "See that you may write there, or name another folder, and run it again."
    return "Look at the disk and run it again."


@contextmanager
def told(file: Path, whole: str) -> Iterator[None]:
    """Raise what the disk refuses as DiskError about ``file``, where it is not one already."""
    try:
        yield
    except DiskError:
        raise
    except OSError as trouble:
        raise DiskError(trouble, Path(trouble.filename or file), whole) from trouble


class Stopped(KeyboardInterrupt):
    """A person stopped the run; ``whole`` says what is whole."""

    def __init__(self, whole: str) -> None:
        super().__init__(whole)
        self.whole = whole


@contextmanager
def if_stopped(whole: str) -> Iterator[None]:
    """Raise an interruption as Stopped with ``whole``, where it does not say already.

    A fault of the program takes it along as its first note.
    """
    try:
        yield
    except Stopped:
        raise
    except KeyboardInterrupt as stop:
        raise Stopped(whole) from stop
    except Exception as fault:
        if not getattr(fault, "__notes__", ()):
            fault.add_note(whole)
        raise
