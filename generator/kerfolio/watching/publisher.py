"""Makes the readers' pages beside, of a copy of the workshop."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from kerfolio.watching.child import child, ended
from kerfolio.watching.copy import follow
from kerfolio.watching.saves import Stamps


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
        words = ("publish", str(self._copy), "--draft", "--out", str(self.site))
        with child("kerfolio", [*words, "--supporters-out", str(self._supporters)]) as running:
            return ended(running, is_over)
