"""Makes the readers' pages beside, in a process of its own that a newer save stops."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from time import sleep

from kerfolio.watching.copy import follow
from kerfolio.watching.saves import Stamps

_LOOK = 0.1
"""How often it is asked whether something newer was saved, s."""


class Publisher:
    """Publishes a copy of a workshop into a folder that nobody else knows of."""

    def __init__(self, folder: Path, beside: Path) -> None:
        """``beside`` is an empty folder for the copy and what is made of it."""
        self._folder, self._copy = folder, beside / "workshop"
        self._copied: Stamps = {}
        self._supporters = beside / "supporters"
        self.site = beside / "site"

    def publish(self, stamps: Stamps, is_over: Callable[[], bool]) -> bool:
        """Make the pages of the files as stamped; False where they were not made.

        ``is_over`` tells that they are not wanted any more. Raises OSError.
        """
        self._copy.mkdir(exist_ok=True)
        follow(self._folder, self._copy, self._copied, stamps)
        self._copied = stamps
        words = ("publish", str(self._copy), "--out", str(self.site))
        child = subprocess.Popen(
            [sys.executable, "-m", "kerfolio", *words, "--supporters-out", str(self._supporters)],
            stdin=subprocess.DEVNULL,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
            start_new_session=True,
        )
        try:
            while child.poll() is None:
                if is_over():
                    return False
                sleep(_LOOK)
        finally:
            if child.poll() is None:
                child.terminate()
                child.wait()
        return child.returncode == 0
