"""The form of a release's record as a file: its name, its version, its sum."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping
from typing import Any

RECORD_FORMAT = "kerfolio-release/1"
"""The form of ``plans/NAME/releases/VERSION.json``, with its number."""

RECORDS = "releases"
"""The folder of a plan that its records lie in."""

SUM = "sum"
"""The key of the sum over all the others."""


def sum_of(content: Mapping[str, Any]) -> str:
    """Return the SHA-256 of what a record's file holds besides its sum, however it is laid out.

    It is that of JSON with keys in order, no blanks, and numbers as Python writes floats.
    """
    kept = {key: value for key, value in content.items() if key != SUM}
    told = json.dumps(kept, sort_keys=True, separators=(",", ":"), ensure_ascii=True)
    return hashlib.sha256(told.encode()).hexdigest()
