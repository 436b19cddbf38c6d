"""Brings files of a site to a folder of this machine, or of a disk that it sees."""

from __future__ import annotations

import shutil
from collections.abc import Iterable, Sequence
from contextlib import suppress
from pathlib import Path
from typing import Any

from kerfolio.disk.out_folder import manifest_in
from kerfolio.disk.put import putting
from kerfolio.publishing.verifying import sum_of_file


class FolderCarrier:
    """Each file is brought whole or not at all, and only where another one stands."""

    def __init__(self, site: Path, target: Path) -> None:
        """``target`` is made when the first file is brought."""
        self._site, self._target = site, target

    def manifest(self) -> dict[str, Any]:
        """Return the manifest of what was brought before, empty where there is none."""
        return manifest_in(self._target) or {}

    def bring(self, names: Sequence[str], *, dry: bool) -> tuple[str, ...]:
        """Bring files; return those that were not there like that. Raises OSError."""
        other = tuple(each for each in names if not self._is_there(each))
        for name in () if dry else other:
            with (self._site / name).open("rb") as source, putting(self._target / name) as file:
                shutil.copyfileobj(source, file)
        return other

    def take_away(self, names: Iterable[str], *, dry: bool) -> tuple[str, ...]:
        """Remove files, and folders that are empty then; return those that were there."""
        there = tuple(each for each in names if (self._target / each).is_file())
        for name in () if dry else there:
            file = self._target / name
            file.unlink()
            with suppress(OSError):  # it holds something else
                for folder in file.relative_to(self._target).parents:
                    if folder != Path():
                        (self._target / folder).rmdir()
        return there

    def _is_there(self, name: str) -> bool:
        here, there = self._site / name, self._target / name
        same = there.is_file() and there.stat().st_size == here.stat().st_size
        return same and sum_of_file(there) == sum_of_file(here)
