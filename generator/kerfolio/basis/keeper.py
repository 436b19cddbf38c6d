"""Keeps what pure functions find beyond the process, where somebody does; else they are run.

A function that is kept must be named in its module and find the same for the same inputs.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from typing import Protocol, TypeVar

Found = TypeVar("Found")


class Keeper(Protocol):
    """Whoever keeps what functions find."""

    def value(self, make: Callable[..., Found], *inputs: object) -> Found:
        """Return what a function finds for some inputs: as it is kept, else found and kept."""


_KEEPER: ContextVar[Keeper | None] = ContextVar("keeper", default=None)


@contextmanager
def kept_by(keeper: Keeper) -> Iterator[None]:
    """Let a keeper keep what is found from here on, in this thread."""
    before = _KEEPER.set(keeper)
    try:
        yield
    finally:
        _KEEPER.reset(before)


def kept(make: Callable[..., Found], *inputs: object) -> Found:
    """Return what a function finds for some inputs, kept where there is a keeper.

    It is for what takes much longer than to hash the inputs and to read the result.
    """
    keeper = _KEEPER.get()
    return make(*inputs) if keeper is None else keeper.value(make, *inputs)
