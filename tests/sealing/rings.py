"""Rings and sealed files for tests: keys stretched once, chance that can be foreseen."""

from __future__ import annotations

import io
from dataclasses import replace
from hashlib import sha256

from kerfolio.sealing.chunks import opened, sealed
from kerfolio.sealing.form import Head
from kerfolio.sealing.locks import lock, stretched
from kerfolio.sealing.ring import Ring, head_of, new_ring, sealing_of, with_key

WORDS = "acorn bridge candle daffodil elephant fiddle garlic"
OTHER = "harbour island jacket kettle lantern magnet noodle"
SALT = bytes(range(16))
CONTENT_KEY = bytes(range(32))
PREFIX = b"prefix!"


def quick_ring(*words: str, month: str = "2026-12") -> Ring:
    """Return a ring whose keys take no time to stretch."""
    ring = replace(new_ring("friends"), rounds=1)
    for each in words or (WORDS,):
        ring, _ = with_key(ring, month, each)
    return ring


def sealed_by(ring: Ring, content: bytes) -> bytes:
    """Return a content sealed for the keys of a ring, which forgets it."""
    _, how = sealing_of(ring, sha256(content).hexdigest(), len(content))
    return b"".join(sealed(head_of(ring, how), how.content_key, io.BytesIO(content)))


def small_head(size: int, chunk: int = 8, content_key: bytes = CONTENT_KEY) -> Head:
    """Return a head for small chunks, which ``WORDS`` open."""
    locks = (lock(stretched(WORDS, SALT, 1), content_key),)
    return Head(salt=SALT, size=size, prefix=PREFIX, locks=locks, rounds=1, chunk=chunk)


def small(content: bytes, chunk: int = 8, content_key: bytes = CONTENT_KEY) -> bytes:
    """Return a content sealed in small chunks."""
    head = small_head(len(content), chunk, content_key)
    return b"".join(sealed(head, content_key, io.BytesIO(content)))


def content_of(file: bytes, words: str = WORDS) -> bytes:
    """Return what a sealed file holds. Raises SealError."""
    return b"".join(opened(io.BytesIO(file), words))
