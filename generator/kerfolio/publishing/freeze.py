"""Writes frozen layouts beside their plans."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from pathlib import Path

from kerfolio.disk.put import put
from kerfolio.layouts.effort import EFFORT, Effort, effort_for
from kerfolio.layouts.frozen import freeze
from kerfolio.publishing.examine import LaidOut


def effort_of(seconds: float | None, seed: int) -> Effort:
    """Return the effort for a number of seconds; without one, what a publish takes."""
    return replace(EFFORT, seed=seed) if seconds is None else effort_for(seconds, seed)


def freeze_layouts(folder: Path, found: Iterable[LaidOut]) -> tuple[Path, ...]:
    """Write ``layout.json`` of every plan whose layout was computed anew; return the files.

    Raises OSError when the disk refuses.
    """
    written = []
    for each in found:
        if each.reused:
            continue
        target = folder / "plans" / each.proof.plan.name / "layout.json"
        put(target, freeze(each.layout).encode())
        written.append(target)
    return tuple(written)
