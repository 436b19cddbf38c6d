"""Lots: pieces that hang together, one with the next."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence

Pairs = Collection[tuple[str, str]]
"""The labels of pieces that hold each other."""


def lot_of(first: str, pairs: Pairs) -> tuple[str, ...]:
    """Return all that hangs together with a piece, itself first, in the order of a walk."""
    lot, todo = [first], [first]
    while todo:
        here = todo.pop()
        for a, b in pairs:
            if here in (a, b):
                other = a if b == here else b
                if other not in lot:
                    lot.append(other)
                    todo.append(other)
    return tuple(lot)


def lots(labels: Sequence[str], pairs: Pairs) -> Iterator[tuple[str, ...]]:
    """Yield labels in lots of those that hang together, in their own order."""
    left = list(labels)
    while left:
        lot = {*lot_of(left[0], pairs)}
        yield tuple(each for each in left if each in lot)
        left = [each for each in left if each not in lot]
