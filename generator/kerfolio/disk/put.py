"""One file, written whole or not at all."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

from kerfolio.disk.alone import alone_in
from kerfolio.disk.trouble import told


def put(target: Path, content: bytes) -> None:
    """Write a file whole or not at all; who may read it is left to the user's mask.

    What a killed run left of it is written over. Raises DiskError when the disk refuses.
    """
    with _alone_at(target):
        _replace(target, content)


def change(target: Path, changed: Callable[[bytes | None], bytes | None]) -> bool:
    """Write what ``changed`` makes of a file, which is None where there is none yet.

    No other run changes it meanwhile. Nothing is written where ``changed`` returns None; tells
    whether it was. Raises DiskError when the disk refuses.
    """
    with _alone_at(target):
        content = changed(target.read_bytes() if target.is_file() else None)
        if content is not None:
            _replace(target, content)
        return content is not None


@contextmanager
def _alone_at(target: Path) -> Iterator[None]:
    with told(target, "It is as it was."):
        target.parent.mkdir(parents=True, exist_ok=True)
        with alone_in(target.parent):
            yield


def _replace(target: Path, content: bytes) -> None:
    fresh = target.with_name(f".{target.name}.kerfolio")
    try:
        fresh.write_bytes(content)
        fresh.replace(target)
    except BaseException:
        fresh.unlink(missing_ok=True)
        raise
