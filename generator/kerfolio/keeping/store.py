"""Results kept in a folder under the hash of what they were made from; safe to delete at any time.

An entry is bytes and nothing else: nothing in it is run or unpickled. Before its content stands a
sum over the folder it was written in (its inode), its key and its content. So one that is damaged,
that bears another's name, or that came with a folder copied from elsewhere is no entry. Entries are
written beside their places and moved there, so that runs side by side need not wait for each other:
what two of them write under one key is the same.
"""

from __future__ import annotations

import os
import time
from collections.abc import Collection
from contextlib import suppress
from hashlib import sha256
from pathlib import Path
from secrets import token_hex

MOST_BYTES = 2_000_000_000
"""What a store may hold besides what the last run used."""

_SUM = 32  # bytes of a SHA-256
_DAY = 86_400.0  # s: what was begun so long ago was left by a killed run


class Store:
    """A folder of entries. Reading one makes it the youngest; ``trim`` drops the oldest."""

    def __init__(self, folder: Path, most: int = MOST_BYTES) -> None:
        """``most`` is how many bytes may stay besides what was used in this run."""
        self.folder = folder
        self._most = most
        self._used: set[str] = set()

    def get(self, key: str) -> bytes | None:
        """Return what is kept under a key, or None where nothing sound is; what is unsound goes."""
        file = self.folder / key
        try:
            found = file.read_bytes() if file.is_file() and not file.is_symlink() else None
        except OSError:
            return None
        if found is None:
            return None
        content = found[_SUM:]
        if found[:_SUM] != self._sum(key, content):
            with suppress(OSError):
                file.unlink()
            return None
        self._used.add(key)
        with suppress(OSError):
            os.utime(file)
        return content

    def holds(self, key: str) -> bool:
        """Tell whether there is an entry, sound or not, and count it as used."""
        self._used.add(key)
        return (self.folder / key).is_file()

    def put(self, key: str, content: bytes) -> None:
        """Keep bytes under a key; what the disk refuses is not kept."""
        fresh = self.folder / f".{key}.{token_hex(8)}"
        with suppress(OSError):
            self._open()
            try:
                fresh.write_bytes(self._sum(key, content) + content)
                fresh.replace(self.folder / key)
            except BaseException:
                fresh.unlink(missing_ok=True)
                raise
            self._used.add(key)

    def _open(self) -> None:
        """Make the folder, which is nothing for a repository to keep. Raises OSError."""
        if not self.folder.is_dir():
            self.folder.mkdir(parents=True)
            (self.folder / ".gitignore").write_text("*\n")

    def trim(self) -> None:
        """Drop what was used longest ago until the rest is within bounds; never what this run used.

        What the disk will not let go stays.
        """
        with suppress(OSError):
            self._drop_left_over(time.time() - _DAY)
            found = sorted(_aged(self.folder, self._used))
            excess = sum(size for _, size, _ in found) - self._most
            for _, size, name in found:
                if excess <= 0:
                    return
                (self.folder / name).unlink(missing_ok=True)
                excess -= size

    def _drop_left_over(self, before: float) -> None:
        for each in self.folder.glob(".*.*"):
            if each.lstat().st_mtime < before:
                each.unlink(missing_ok=True)

    def _sum(self, key: str, content: bytes) -> bytes:
        made = sha256(f"{self.folder.stat().st_ino} {key} ".encode())
        made.update(content)
        return made.digest()


def _aged(folder: Path, used: Collection[str]) -> list[tuple[float, int, str]]:
    """Return when each entry that was not used in this run was used last, its size and its name."""
    found = []
    with os.scandir(folder) as entries:
        for each in entries:
            if each.name not in used and not each.name.startswith("."):
                state = each.stat(follow_symlinks=False)
                found.append((state.st_mtime, state.st_size, each.name))
    return found
