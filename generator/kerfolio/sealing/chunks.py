"""Content sealed and opened chunk by chunk (AES-256-GCM, NIST SP 800-38D), one held at a time.

A chunk's nonce counts it and tells the last one, and every chunk is bound to the head: so chunks
can be neither changed, left out, swapped, repeated nor brought into another file.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import BinaryIO

from cryptography.exceptions import InvalidTag
from cryptography.hazmat.primitives.ciphers.aead import AESGCM

from kerfolio.sealing.fault import SealError
from kerfolio.sealing.form import DAMAGED, TAG, Head, exactly, head_bytes, read_head
from kerfolio.sealing.locks import content_key_of


def sealed(head: Head, content_key: bytes, source: BinaryIO) -> Iterator[bytes]:
    """Yield a sealed file: its head, then its chunks.

    A content key serves one content alone. Raises ValueError where the source is not as long as
    the head says, OSError.
    """
    yield head_bytes(head)
    cipher, bound = AESGCM(content_key), head.bound
    for number in range(head.chunks):
        part = exactly(source, head.length(number))
        if len(part) != head.length(number):
            raise ValueError("the content is shorter than its head says")
        yield cipher.encrypt(head.nonce(number), part, bound)
    if source.read(1):
        raise ValueError("the content is longer than its head says")


def opened(source: BinaryIO, words: str) -> Iterator[bytes]:
    """Yield the content of a sealed file, each chunk once it is proved.

    ``words`` is the key as ``plain`` returns it. What was yielded is whole only when no SealError
    came: whoever keeps it waits for the end. Raises OSError.
    """
    head = read_head(source)
    content_key = content_key_of(head, words)
    cipher, bound = AESGCM(content_key), head.bound
    for number in range(head.chunks):
        wanted = head.length(number) + TAG
        part = exactly(source, wanted)
        if len(part) < wanted:
            raise SealError("the sealed file is cut short", DAMAGED)
        try:
            content = cipher.decrypt(head.nonce(number), part, bound)
        except InvalidTag:
            told = f"the sealed file is damaged in chunk {number + 1} of {head.chunks}"
            raise SealError(told, DAMAGED) from None
        yield content
    if source.read(1):
        raise SealError("the sealed file is longer than it says", DAMAGED)
