"""Brings what others laid in a folder over into another one."""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterable
from pathlib import Path

from kerfolio.disk.trouble import told


def carry_over(names: Iterable[str], source: Path, target: Path, whole: str) -> None:
    """Link or copy entries of ``source`` to the same places in ``target``, where nothing stands.

    A file is the same file in both folders where the disk can link. Raises DiskError, which says
    ``whole``, when the disk refuses.
    """
    for name in names:
        old, new = source / name, target / name
        if os.path.lexists(new) or not os.path.lexists(old):
            continue
        with told(old, whole):
            new.parent.mkdir(parents=True, exist_ok=True)
            _carried(old, new)


def _carried(old: Path, new: Path) -> None:
    if old.is_symlink():
        new.symlink_to(old.readlink())
    elif old.is_dir():
        new.mkdir()
        shutil.copystat(old, new)
    else:
        try:
            os.link(old, new)
        except OSError:  # a disk without links, or another one's file
            shutil.copy2(old, new)


def in_the_way(foreign: Iterable[str], files: Iterable[str]) -> tuple[str, ...]:
    """Return what others laid where a file of ours, or a folder for one, is to stand."""
    ours = set(files)
    folders = {str(folder) for name in ours for folder in Path(name).parents} - {"."}
    laid = set(foreign)
    blocked = {each for each in laid if each in ours or each in folders}
    blocked |= {each for each in laid if any(str(up) in ours for up in Path(each).parents)}
    return tuple(sorted(blocked))
