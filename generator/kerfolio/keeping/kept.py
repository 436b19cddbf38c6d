"""What pure functions of the program make of values, taken from a store where it is kept there."""

from __future__ import annotations

from collections.abc import Callable
from typing import Protocol

from kerfolio.keeping.content import Contents
from kerfolio.keeping.program import key_of


class Keeps(Protocol):
    """Where bytes are kept under keys."""

    def get(self, key: str) -> bytes | None:
        """Return what is kept under a key, None where nothing is."""

    def put(self, key: str, content: bytes) -> None:
        """Keep bytes under a key."""


class Kept:
    """Gives what functions make: kept bytes where there are some, else made and kept.

    A function must be named in its module and make bytes from its inputs alone: the key is the hash
    of the program, its name and what the inputs hold.
    """

    def __init__(self, store: Keeps | None = None) -> None:
        """Keep in a store; without one make everything."""
        self._store = store
        self._contents = Contents()

    def of(
        self, make: Callable[..., bytes], *inputs: object, helped_by: tuple[object, ...] = ()
    ) -> bytes:
        """Return what a function makes of some inputs.

        What it is ``helped_by`` comes after them: it may spare it work and must change nothing.
        Raises ContentError for inputs of which nobody can tell whether they are the same.
        """
        if self._store is None:
            return make(*inputs, *helped_by)
        key = key_of("made", self._contents.hash_of((make, inputs)))
        found = self._store.get(key)
        if found is None:
            found = make(*inputs, *helped_by)
            self._store.put(key, found)
        return found


NOTHING_KEPT = Kept()
