"""What the plans of a workshop share, read once for all plans that a process works on."""

from __future__ import annotations

import errno
from functools import lru_cache
from pathlib import Path

from kerfolio.reading.workshop import Shared, read_shared


@lru_cache(maxsize=1)
def shared_once(folder: Path, _: str, *, pictures: bool = True) -> Shared:
    """Return what plans share; its hash comes second. Raises OSError where it is not there."""
    shared, refused = read_shared(folder, pictures=pictures)
    if shared is None:
        raise OSError(errno.ENOENT, f"a worker does not see the workshop: {refused[0]}")
    return shared
