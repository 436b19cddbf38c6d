"""A key's lock on a content key: PBKDF2-HMAC-SHA256 (RFC 8018), then AES key wrap (RFC 3394).

The key a person types is stretched once for a file, whatever the number of its locks.
"""

from __future__ import annotations

from cryptography.hazmat.primitives import hashes
from cryptography.hazmat.primitives.kdf.pbkdf2 import PBKDF2HMAC
from cryptography.hazmat.primitives.keywrap import (
    InvalidUnwrap,
    aes_key_unwrap,
    aes_key_wrap,
)

from kerfolio.sealing.fault import SealError
from kerfolio.sealing.form import Head
from kerfolio.sealing.passphrase import slip_in

KEY = 32
"""Bytes of a content key and of what a typed key is stretched to: AES-256."""


def stretched(words: str, salt: bytes, rounds: int) -> bytes:
    """Return what a key in words, as ``plain`` returns it, is stretched to."""
    kdf = PBKDF2HMAC(algorithm=hashes.SHA256(), length=KEY, salt=salt, iterations=rounds)
    return kdf.derive(words.encode("ascii"))


def lock(opener: bytes, content_key: bytes) -> bytes:
    """Wrap a content key; the same again gives the same bytes."""
    return aes_key_wrap(opener, content_key)


def content_key_of(head: Head, words: str) -> bytes:
    """Return the content key of a sealed file, by a key as ``plain`` returns it.

    Raises SealError where no lock opens.
    """
    opener = stretched(words, head.salt, head.rounds)
    for each in head.locks:
        try:
            return aes_key_unwrap(opener, each)
        except InvalidUnwrap:
            continue
    advice = "Look for a slip in typing it; it may also have been withdrawn: ask for a new one."
    raise SealError("the key does not open this file", f"{slip_in(words)} {advice}".strip())
