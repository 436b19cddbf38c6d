"""Named files as one piece of bytes, for what is kept."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from itertools import chain


def packed(files: Mapping[str, bytes]) -> bytes:
    """Return files as one piece: a line that tells names and sizes, then one after the other."""
    head = json.dumps([[name, len(content)] for name, content in files.items()])
    return b"".join(chain((head.encode(), b"\n"), files.values()))


def unpacked(content: bytes) -> Iterator[tuple[str, bytes]]:
    """Yield the files of what ``packed`` returned, in its order."""
    end = content.index(b"\n")
    start = end + 1
    for name, size in json.loads(content[:end]):
        yield name, content[start : start + size]
        start += size
