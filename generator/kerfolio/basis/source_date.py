"""What the environment says of the day to build for: libraries that write files look at it.

No file of ours depends on it, yet a malformed value must stop a build (the specification of
SOURCE_DATE_EPOCH, reproducible-builds.org: "the build process SHOULD exit with a non-zero error
code"), and stops libraries with no clear word.
"""

from __future__ import annotations

import re

NAME = "SOURCE_DATE_EPOCH"
_LAST = 253_402_300_799  # 9999-12-31T23:59:59Z


def source_date_fault(stated: str | None) -> str:
    """Return what is wrong with the variable, or nothing."""
    if stated is None or (re.fullmatch("[0-9]{1,12}", stated) and int(stated) <= _LAST):
        return ""
    return f"{NAME} is {stated!r}: it must be whole seconds since 1970, up to {_LAST}; or unset it"
