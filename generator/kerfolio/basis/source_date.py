"""What the environment says of the day to build for: libraries that write files look at it.

Files of ours carry the days of releases. All that it decides is which day a site is published for,
where nobody says another: plans open to all by it. A malformed value must stop a build (the
specification of SOURCE_DATE_EPOCH, reproducible-builds.org: "the build process SHOULD exit with a
non-zero error code"), and stops libraries with no clear word.
"""

from __future__ import annotations

import re
from datetime import UTC, datetime

NAME = "SOURCE_DATE_EPOCH"
_LAST = 253_402_300_799  # 9999-12-31T23:59:59Z


def source_date_fault(stated: str | None) -> str:
    """Return what is wrong with the variable, or nothing."""
    if stated is None or (re.fullmatch("[0-9]{1,12}", stated) and int(stated) <= _LAST):
        return ""
    return f"{NAME} is {stated!r}: it must be whole seconds since 1970, up to {_LAST}; or unset it"


def source_day(stated: str | None) -> str:
    """Return the day that a sound variable states, in ISO 8601 and UTC; empty for none."""
    return datetime.fromtimestamp(int(stated), UTC).date().isoformat() if stated else ""
