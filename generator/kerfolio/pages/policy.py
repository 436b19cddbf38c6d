"""What a page allows itself to load, and no more (Content Security Policy Level 3, W3C).

A page of the site takes style, script, fonts and pictures from its own host alone. A page of one
file allows just the style and the script that stand in it, by their SHA-256. Neither loads
anything else, connects anywhere, or lets a ``style`` attribute or an inline handler work.
"""

from __future__ import annotations

from base64 import b64encode
from hashlib import sha256

_NOTHING_ELSE = "default-src 'none'; base-uri 'none'; form-action 'none'"
_PICTURES = "img-src 'self' data:"
"""Own files, and what stands in the page: the icon, a bundle's photos."""

_FONTS = "font-src data:"
"""Of a page of one file: what stands in it."""

SITE_POLICY = f"{_NOTHING_ELSE}; {_PICTURES}; style-src 'self'; script-src 'self'; font-src 'self'"


FETCHING_POLICY = f"{SITE_POLICY}; connect-src 'self'"
"""A page of the site that fetches more of its own host's files when it is asked to."""


def lone_policy(style: str, *scripts: str) -> str:
    """Return the policy of a page of one file with just this style and these scripts, if any.

    The texts must stand between their tags to the letter.
    """
    allowed = f"; script-src {' '.join(map(_hash, scripts))}" if scripts else ""
    return f"{_NOTHING_ELSE}; {_PICTURES}; {_FONTS}; style-src {_hash(style)}{allowed}"


def _hash(text: str) -> str:
    return f"'sha256-{b64encode(sha256(text.encode()).digest()).decode()}'"


WATCHING_POLICY = (
    "default-src 'none'; base-uri 'none'; form-action 'self'; "
    f"{_PICTURES}; style-src 'self'; script-src 'self'; font-src 'self'; connect-src 'self'; "
    "frame-src 'self'"
)
"""A page of the server that a maker watches with: its own style and script, and a frame of it."""
