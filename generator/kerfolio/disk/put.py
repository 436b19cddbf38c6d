"""One file, written whole or not at all."""

from __future__ import annotations

from pathlib import Path

from kerfolio.disk.alone import alone_in
from kerfolio.disk.trouble import told


def put(target: Path, content: bytes) -> None:
    """Write a file whole or not at all; who may read it is left to the user's mask.

    What a killed run left of it is written over. Raises DiskError when the disk refuses.
    """
    with told(target, "It is as it was."):
        target.parent.mkdir(parents=True, exist_ok=True)
        fresh = target.with_name(f".{target.name}.kerfolio")
        with alone_in(target.parent):
            try:
                fresh.write_bytes(content)
                fresh.replace(target)
            except BaseException:
                fresh.unlink(missing_ok=True)
                raise
