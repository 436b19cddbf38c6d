"""Whether a long run was asked to end, by Ctrl-C or by whoever started it."""

from __future__ import annotations

import signal
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from threading import Event
from types import FrameType

_ASKS = (signal.SIGINT, signal.SIGTERM)


@contextmanager
def asked_to_end() -> Iterator[Callable[[], bool]]:
    """Give what tells whether an end was asked for; KeyboardInterrupt is raised, too.

    The exception alone is not enough: one that comes while an object is cleared away is swallowed.
    """
    asked = Event()

    def ask(_number: int, _at: FrameType | None) -> None:
        asked.set()
        raise KeyboardInterrupt

    before = {each: signal.signal(each, ask) for each in _ASKS}
    try:
        yield asked.is_set
    finally:
        for each, how in before.items():
            signal.signal(each, how)
