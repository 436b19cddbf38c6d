"""Two entries of a folder change places in one step, where the system can do that."""

from __future__ import annotations

import ctypes
import errno
import os
import sys
from pathlib import Path

_HERE = -100
"""``AT_FDCWD`` of Linux: paths count from the current folder."""

_EXCHANGE = 2
"""``RENAME_EXCHANGE`` of Linux (renameat2(2), since 3.15), ``RENAME_SWAP`` of macOS (rename(2))."""

_CANNOT = {errno.ENOSYS, errno.EINVAL, errno.ENOTSUP, errno.EOPNOTSUPP}


def exchange(one: Path, other: Path) -> bool:
    """Let two entries change places at once; False where this system or its disk cannot.

    Both must exist and lie on one file system. Raises OSError when the disk refuses.
    """
    ends = os.fsencode(one), os.fsencode(other)
    try:
        library = ctypes.CDLL(None, use_errno=True)
        if sys.platform == "darwin":
            failed = library.renamex_np(*ends, _EXCHANGE)
        else:
            failed = library.renameat2(_HERE, ends[0], _HERE, ends[1], _EXCHANGE)
    except (AttributeError, OSError, TypeError):  # no such library or function
        return False
    if not failed:
        return True
    number = ctypes.get_errno()
    if number in _CANNOT:
        return False
    raise OSError(number, os.strerror(number), str(one), None, str(other))
