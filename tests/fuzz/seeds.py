"""The files that are spoiled: those of the sample workshop and of the good workshop of tests."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from tests.broken.good_workshop import GOOD
from tests.conftest import BUILT, SAMPLE


@cache
def texts(*patterns: str) -> tuple[str, ...]:
    """Return the texts of both workshops' files of these patterns, ``plans/*/plan.yaml``."""
    return tuple(path.read_text("utf-8") for path in paths(*patterns))


def paths(*patterns: str) -> tuple[Path, ...]:
    """Return the source files of both workshops of these patterns."""
    return tuple(
        path
        for folder in (GOOD, SAMPLE)
        for pattern in patterns
        for path in sorted(folder.glob(pattern))
        if path.relative_to(folder).parts[0] not in BUILT
    )
