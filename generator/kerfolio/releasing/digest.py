"""A short hash of what a record need not hold whole."""

from __future__ import annotations

import hashlib

_SIGNS = 16


def digest(text: str) -> str:
    """Return the first 16 hexadecimal digits of a text's SHA-256: it tells texts apart."""
    return hashlib.sha256(text.encode()).hexdigest()[:_SIGNS]
