"""What a save touches: the files of a workshop that are read, by time and size."""

from __future__ import annotations

import os
from collections.abc import Iterator, Mapping
from pathlib import Path

Stamps = Mapping[str, tuple[int, int]]
"""When each file was written (ns) and how large it is, by its path within the workshop."""

_READ = ("plans", "stock", "log", "pages")
_MOST = 20_000
"""Files looked at, at most: more are no workshop's."""


def stamps_of(folder: Path) -> Stamps:
    """Return the stamps of every file of a workshop that may be read; what is hidden is not."""
    found: dict[str, tuple[int, int]] = {}
    for path in _files(folder):
        if len(found) >= _MOST:
            break
        try:
            state = path.stat()
        except OSError:  # it went while we looked
            continue
        found[path.relative_to(folder).as_posix()] = (state.st_mtime_ns, state.st_size)
    return found


def touched(before: Stamps, after: Stamps) -> frozenset[str]:
    """Return the files that were written, came or went."""
    return frozenset(name for name in {*before, *after} if before.get(name) != after.get(name))


def _files(folder: Path) -> Iterator[Path]:
    try:
        entries = sorted(folder.iterdir())
    except OSError:
        return
    for each in entries:
        if each.is_file() and not each.name.startswith("."):
            yield each  # workshop.yaml, and a logo beside it
        elif each.is_dir() and each.name in _READ:
            yield from _below(each)


def _below(folder: Path) -> Iterator[Path]:
    for where, folders, files in os.walk(folder):
        folders[:] = sorted(name for name in folders if not name.startswith("."))
        for name in sorted(files):
            if not name.startswith(".") and not name.endswith("~"):
                yield Path(where) / name
