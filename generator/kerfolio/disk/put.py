"""One file, written whole or not at all."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import BinaryIO

from kerfolio.disk.alone import alone_in
from kerfolio.disk.trouble import told

_NEW = os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0)
_OWN, _ANY = 0o600, 0o666
"""Who may read and write a file: its owner alone, or whom the user's mask lets."""


def put(target: Path, content: bytes, *, private: bool = False) -> None:
    """Write a file whole or not at all; see ``putting``. Raises DiskError when the disk refuses."""
    with putting(target, private=private) as file:
        file.write(content)


@contextmanager
def putting(target: Path, *, private: bool = False) -> Iterator[BinaryIO]:
    """Give a file to write to, which stands at its place once it is whole, and not before.

    Who may read it is left to the user's mask, unless it is ``private``. Whatever is raised
    meanwhile leaves everything as it was. What a killed run left of it is written over. Raises
    DiskError when the disk refuses.
    """
    with _alone_at(target), _replacing(target, private=private) as file:
        yield file


def change(target: Path, changed: Callable[[bytes | None], bytes | None]) -> bool:
    """Write what ``changed`` makes of a file, which is None where there is none yet.

    No other run changes it meanwhile. Nothing is written where ``changed`` returns None; tells
    whether it was. Raises DiskError when the disk refuses.
    """
    with _alone_at(target):
        content = changed(target.read_bytes() if target.is_file() else None)
        if content is not None:
            with _replacing(target) as file:
                file.write(content)
        return content is not None


@contextmanager
def _alone_at(target: Path) -> Iterator[None]:
    with told(target, "It is as it was."):
        target.parent.mkdir(parents=True, exist_ok=True)
        with alone_in(target.parent):
            yield


@contextmanager
def _replacing(target: Path, *, private: bool = False) -> Iterator[BinaryIO]:
    fresh = target.with_name(f".{target.name}.kerfolio")
    try:
        fresh.unlink(missing_ok=True)
        with os.fdopen(os.open(fresh, _NEW, _OWN if private else _ANY), "wb") as file:
            yield file
        fresh.replace(target)
    except BaseException:
        fresh.unlink(missing_ok=True)
        raise
