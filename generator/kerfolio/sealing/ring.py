"""The keys of one circle, and what was sealed with them: pure values, drawn by chance once.

A key is kept as what its words are stretched to, never as words: it opens what is sealed for the
circle, and cannot be read out. For each content and set of keys the content key and the fixed part
of the nonces are kept, so that the same sealed again is the same file; another content, or other
keys, get new ones.
"""

from __future__ import annotations

import re
import secrets
from collections.abc import Callable
from dataclasses import dataclass, field, replace

from kerfolio.sealing.form import PREFIX, ROUNDS, SALT, Head
from kerfolio.sealing.locks import KEY, lock, stretched

MONTH = re.compile("[0-9]{4}-(0[1-9]|1[0-2])")
"""A month as it is written: ``2026-12``."""

Chance = Callable[[int], bytes]


@dataclass(frozen=True, slots=True, kw_only=True)
class RingKey:
    """A key: ``name`` is its month, with a count where the month has several.

    What opens files is not in what it is shown as, here and below.

    ``opener`` is what its words are stretched to; empty once it is withdrawn.
    """

    name: str
    opener: bytes = field(repr=False)

    @property
    def holds(self) -> bool:
        """Whether it opens what is sealed from now on."""
        return bool(self.opener)

    @property
    def month(self) -> str:
        """Its month."""
        return self.name.partition(".")[0]


@dataclass(frozen=True, slots=True, kw_only=True)
class Sealed:
    """How one content was sealed: its SHA-256 and size, the names of the keys that open it."""

    sha256: str
    size: int
    keys: tuple[str, ...]
    content_key: bytes = field(repr=False)
    prefix: bytes


@dataclass(frozen=True, slots=True, kw_only=True)
class Ring:
    """The keys of a circle; all of them are stretched with one salt."""

    circle: str
    salt: bytes
    keys: tuple[RingKey, ...] = ()
    sealed: tuple[Sealed, ...] = ()
    rounds: int = ROUNDS

    @property
    def holding(self) -> tuple[RingKey, ...]:
        """The keys that open what is sealed from now on."""
        return tuple(each for each in self.keys if each.holds)


def new_ring(circle: str, chance: Chance = secrets.token_bytes) -> Ring:
    """Return a ring without a key."""
    return Ring(circle=circle, salt=chance(SALT))


def with_key(ring: Ring, month: str, words: str) -> tuple[Ring, RingKey]:
    """Add a key for a month; return it as well."""
    count = sum(each.month == month for each in ring.keys)
    name = month if not count else f"{month}.{count + 1}"
    made = RingKey(name=name, opener=stretched(words, ring.salt, ring.rounds))
    return replace(ring, keys=(*ring.keys, made)), made


def without_key(ring: Ring, name: str) -> Ring:
    """Withdraw a key, and forget how content was sealed for it. Raises KeyError for no such key."""
    if not any(each.name == name and each.holds for each in ring.keys):
        raise KeyError(name)
    keys = tuple(replace(each, opener=b"") if each.name == name else each for each in ring.keys)
    return replace(ring, keys=keys, sealed=tuple(s for s in ring.sealed if name not in s.keys))


def sealing_of(
    ring: Ring, sha256: str, size: int, chance: Chance = secrets.token_bytes
) -> tuple[Ring, Sealed]:
    """Return how a content is sealed for all keys that hold: as it was, or drawn by chance.

    Raises ValueError where no key holds.
    """
    keys = tuple(each.name for each in ring.holding)
    if not keys:
        raise ValueError("no key holds")
    for each in ring.sealed:
        if (each.sha256, each.size, each.keys) == (sha256, size, keys):
            return ring, each
    made = Sealed(
        sha256=sha256, size=size, keys=keys, content_key=chance(KEY), prefix=chance(PREFIX)
    )
    return replace(ring, sealed=(*ring.sealed, made)), made


def head_of(ring: Ring, how: Sealed) -> Head:
    """Return the head of a file sealed so; the same again is the same."""
    openers = {each.name: each.opener for each in ring.keys}
    return Head(
        salt=ring.salt,
        size=how.size,
        prefix=how.prefix,
        locks=tuple(lock(openers[name], how.content_key) for name in how.keys),
        rounds=ring.rounds,
    )
