"""What pure functions of the program make of values, taken from a store where it is kept there."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import suppress
from typing import Protocol, TypeVar

from kerfolio.keeping.content import ContentError, Contents
from kerfolio.keeping.program import key_of
from kerfolio.keeping.values import value_bytes, value_of

Found = TypeVar("Found")


class Keeps(Protocol):
    """Where bytes are kept under keys."""

    def get(self, key: str) -> bytes | None:
        """Return what is kept under a key, None where nothing is."""

    def put(self, key: str, content: bytes) -> None:
        """Keep bytes under a key."""


class Kept:
    """Gives what functions make: kept bytes where there are some, else made and kept.

    A function must be named in its module and make the same from the same inputs: the key is the
    hash of the program, its name and what the inputs hold.
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

    def value(self, make: Callable[..., Found], *inputs: object) -> Found:
        """Return what a function finds for some inputs; what are no plain values is not kept."""
        if self._store is None:
            return make(*inputs)
        try:
            key = key_of("found", self._contents.hash_of((make, inputs)))
        except ContentError:
            return make(*inputs)
        kept = self._store.get(key)
        if kept is not None:
            found: Found = value_of(kept)
            return found
        found = make(*inputs)
        with suppress(ContentError):
            self._store.put(key, value_bytes(found))
        return found


NOTHING_KEPT = Kept()
