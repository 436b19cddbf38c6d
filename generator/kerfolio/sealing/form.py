"""The head of a sealed file: everything that opening it takes, but a key.

``docs/sealed-files.md`` states the whole form for others; numbers are unsigned, the highest byte
first.
"""

from __future__ import annotations

import struct
from dataclasses import dataclass
from hashlib import sha256
from typing import BinaryIO

from kerfolio.sealing.fault import SealError

MAGIC = b"kerfolio sealed\n"
VERSION = 1
ROUNDS = 600_000
"""Of PBKDF2-HMAC-SHA256, as OWASP's Password Storage Cheat Sheet states them."""

CHUNK = 1024 * 1024
SALT, PREFIX, LOCK, TAG = 16, 7, 40, 16
"""Bytes of a salt, of the fixed part of a nonce, of a wrapped content key, of a chunk's tag."""

_FIXED = struct.Struct(f">16sHI{SALT}sIQ{PREFIX}sH")
_MOST_ROUNDS, _MOST_CHUNK, _MOST_CHUNKS = 10_000_000, 16 * 1024 * 1024, 2**32
_MOST_LOCKS = 2**16 - 1
DAMAGED = "Fetch it again; if that does not help, ask the maker for it."


@dataclass(frozen=True, slots=True, kw_only=True)
class Head:
    """What stands before the chunks.

    ``size`` are the bytes of the content, ``chunk`` those of every chunk of it but the last;
    ``locks`` hold the content key, wrapped once for every key that opens it.
    """

    salt: bytes
    size: int
    prefix: bytes
    locks: tuple[bytes, ...]
    rounds: int = ROUNDS
    chunk: int = CHUNK

    @property
    def chunks(self) -> int:
        """How many chunks follow: one at least."""
        return max(1, -(-self.size // self.chunk))

    @property
    def bound(self) -> bytes:
        """What every chunk is bound to: the SHA-256 of the head as written."""
        return sha256(head_bytes(self)).digest()

    def nonce(self, number: int) -> bytes:
        """Return the nonce of a chunk, counted from 0; the last one's says that it is the last."""
        last = number == self.chunks - 1
        return self.prefix + struct.pack(">I?", number, last)

    def length(self, number: int) -> int:
        """Return the bytes of content in a chunk, counted from 0."""
        return min(self.chunk, self.size - number * self.chunk)


def head_bytes(head: Head) -> bytes:
    """Return a head as it is written. Raises ValueError for more than 65 535 locks."""
    if not 0 < len(head.locks) <= _MOST_LOCKS:
        raise ValueError(f"a sealed file has 1 to {_MOST_LOCKS} locks")
    numbers = (head.salt, head.chunk, head.size, head.prefix, len(head.locks))
    return _FIXED.pack(MAGIC, VERSION, head.rounds, *numbers) + b"".join(head.locks)


def read_head(source: BinaryIO) -> Head:
    """Read a head. Raises SealError where it is none, or states what no sealed file may."""
    fixed = exactly(source, _FIXED.size)
    if not fixed.startswith(MAGIC):
        raise SealError("this is no sealed file")
    if len(fixed) < _FIXED.size:
        raise SealError("the sealed file is cut short", DAMAGED)
    _, version, rounds, salt, chunk, size, prefix, locks = _FIXED.unpack(fixed)
    if version != VERSION:
        words = f"the sealed file is of version {version}, and this program opens {VERSION}"
        raise SealError(words, "Take a newer release of Kerfolio.")
    sound = 0 < rounds <= _MOST_ROUNDS and 0 < chunk <= _MOST_CHUNK and locks
    if not sound or size > chunk * _MOST_CHUNKS:
        raise SealError("the head of the sealed file is damaged", DAMAGED)
    wrapped = exactly(source, LOCK * locks)
    if len(wrapped) < LOCK * locks:
        raise SealError("the sealed file is cut short", DAMAGED)
    found = tuple(wrapped[at : at + LOCK] for at in range(0, len(wrapped), LOCK))
    return Head(salt=salt, size=size, prefix=prefix, locks=found, rounds=rounds, chunk=chunk)


def exactly(source: BinaryIO, count: int) -> bytes:
    """Read so many bytes, fewer only where the source ends. Raises OSError."""
    parts, left = [], count
    while left and (part := source.read(left)):
        parts.append(part)
        left -= len(part)
    return b"".join(parts)
