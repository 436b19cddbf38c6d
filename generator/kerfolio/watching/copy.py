"""A copy of a workshop's sources, from which the readers' pages are made.

Publishing writes beside plans what it lays out and the log for the maker alone. While a plan is
being written none of that is wanted; and a file that is saved meanwhile spoils nothing.
"""

from __future__ import annotations

import shutil
from pathlib import Path

from kerfolio.watching.saves import Stamps, touched


def follow(folder: Path, copy: Path, before: Stamps, after: Stamps) -> None:
    """Make a copy that was like the stamps ``before`` like those ``after``. Raises OSError.

    Links are copied as what they lead to, those out of the workshop not at all.
    """
    for name in sorted(touched(before, after)):
        source, target = folder / name, copy / name
        if name in after and source.resolve().is_relative_to(folder.resolve()):
            target.parent.mkdir(parents=True, exist_ok=True)
            shutil.copyfile(source, target)
        else:
            target.unlink(missing_ok=True)
    for each in sorted(copy.glob("plans/*"), reverse=True):
        if each.is_dir() and not (folder / "plans" / each.name).is_dir():
            shutil.rmtree(each)
