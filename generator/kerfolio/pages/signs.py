"""Signs that no page and no feed may hold."""

from __future__ import annotations

import re

_UNFIT = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\ufdd0-\ufdef\ufffe\uffff\ud800-\udfff]")
"""Characters that neither HTML nor XML 1.0 may hold."""


def cleaned(text: str) -> str:
    """Return the text without the characters that no page or feed may hold."""
    return _UNFIT.sub("", text)
