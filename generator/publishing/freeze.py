"""Writes frozen layouts beside their plans."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from generator.layouts.frozen import freeze
from generator.publishing.examine import LaidOut
from generator.publishing.swap import put


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
