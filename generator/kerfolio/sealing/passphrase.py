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


def slip_in(words: str) -> str:
    """Return what cannot be right about a plain key, in words that tell nothing of it; or nothing.

    Keys of other programs may have other words: this is asked only once a key did not open.
    """
    typed, known = words.split(), set(KEY_WORDS)
    if len(typed) != WORDS:
        return f"A key has {WORDS} words, this one {len(typed)}."
    odd = [str(number) for number, word in enumerate(typed, start=1) if word not in known]
    return f"No key has such a word as number {' and '.join(odd)} of it." if odd else ""
