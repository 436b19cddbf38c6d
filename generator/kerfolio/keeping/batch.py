"""Small results of one piece of work, kept together as one entry of a store."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

from kerfolio.keeping.kept import Keeps
from kerfolio.keeping.pack import packed, unpacked
from kerfolio.keeping.program import key_of

SMALL = 50_000
"""Bytes: what is larger is an entry of its own."""

MOST = 20_000_000
"""Bytes that are kept together at most; beyond that what the last work did not ask for goes."""


class Batch:
    """What a store keeps, and small results read and written with it at once."""

    def __init__(self, store: Keeps, found: bytes | None) -> None:
        """Begin with what was kept together, if anything was."""
        self._store = store
        self._found = dict(unpacked(found)) if found else {}
        self._used: dict[str, bytes] = {}

    def get(self, key: str) -> bytes | None:
        """Return what is kept under a key, None where nothing is."""
        found = self._used.get(key, self._found.get(key))
        if found is None:
            return self._store.get(key)
        self._used[key] = found
        return found

    def put(self, key: str, content: bytes) -> None:
        """Keep bytes under a key."""
        if len(content) > SMALL:
            self._store.put(key, content)
        else:
            self._used[key] = content

    def together(self) -> bytes | None:
        """Return what is to be kept together; None where that is what was found."""
        if self._used.keys() <= self._found.keys():
            return None
        every = self._found | self._used
        within = sum(map(len, every.values())) <= MOST
        return packed(dict(sorted((every if within else self._used).items())))


@contextmanager
def batch_in(store: Keeps, name: str) -> Iterator[Batch]:
    """Open a store for a piece of work, by its name."""
    key = key_of("batch", name)
    batch = Batch(store, store.get(key))
    yield batch
    together = batch.together()
    if together is not None:
        store.put(key, together)
