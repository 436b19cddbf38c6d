"""Words of one meaning in what a maker wrote, whatever language of the catalogue that is in."""

from __future__ import annotations

import re
from collections.abc import Mapping

Sought = Mapping[str, str]
"""What words of one meaning look like (a regular expression), by the languages of the catalogue."""


def first_told(sought: Sought, text: str) -> str:
    """Return the first of some words that a text has, large or small; empty where it has none.

    All languages are looked through: nothing says which one a plan is in.
    """
    matches = (re.search(each, text, re.IGNORECASE) for each in sought.values())
    return next((match.group() for match in matches if match), "")
