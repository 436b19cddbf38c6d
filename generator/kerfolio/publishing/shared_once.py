"""What the plans of a workshop share, read once for all plans that a process works on."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

from kerfolio.reading.workshop import Shared, read_shared


@lru_cache(maxsize=1)
def shared_once(folder: Path, _: str, *, pictures: bool = True) -> Shared:
    """Return what plans share; its hash comes second."""
    shared, refused = read_shared(folder, pictures=pictures)
    assert shared is not None, refused
    return shared
