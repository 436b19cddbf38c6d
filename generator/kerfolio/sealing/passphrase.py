"""Keys as people have them: words drawn by chance, typed as people type."""

from __future__ import annotations

import re
import secrets
import unicodedata

from kerfolio.sealing.key_words import KEY_WORDS

WORDS = 7
"""Of each key. Drawn from 1024 words, each adds ten bits: 70 in all."""


def new_key() -> str:
    """Draw a key by chance that nobody can foresee."""
    return " ".join(secrets.choice(KEY_WORDS) for _ in range(WORDS))


def plain(typed: str) -> str:
    """Return a typed key as it is stretched: words of small letters, parted by one blank.

    Capitals, blanks, hyphens and line ends are no matter; what is no letter of ASCII parts words.
    """
    small = unicodedata.normalize("NFKC", typed).lower()
    return re.sub("[^a-z]+", " ", small).strip(" ")
