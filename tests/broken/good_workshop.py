"""One small good workshop, laid out on disk for tests to break."""

from __future__ import annotations

import shutil
import struct
import zlib
from pathlib import Path

GOOD = Path(__file__).resolve().parent / "good"
PICTURE = "plans/rack/photos/rack.png"


def png(width: int = 8, height: int = 6) -> bytes:
    """Return a plain grey PNG picture."""

    def chunk(kind: bytes, content: bytes) -> bytes:
        sum_ = zlib.crc32(kind + content)
        return struct.pack(">I", len(content)) + kind + content + struct.pack(">I", sum_)

    head = struct.pack(">IIBBBBB", width, height, 8, 0, 0, 0, 0)
    rows = (b"\0" + b"\x80" * width) * height
    parts = ((b"IHDR", head), (b"IDAT", zlib.compress(rows)), (b"IEND", b""))
    return b"\x89PNG\r\n\x1a\n" + b"".join(chunk(kind, content) for kind, content in parts)


def lay_out(target: Path) -> Path:
    """Write the good workshop into a folder that does not exist yet, and return it."""
    shutil.copytree(GOOD, target)
    picture = target / PICTURE
    picture.parent.mkdir(parents=True)
    picture.write_bytes(png())
    return target
