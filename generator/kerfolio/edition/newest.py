"""Where the newest release of a plan stands."""

from __future__ import annotations

from kerfolio.edition.edition import Edition


def address_of(edition: Edition) -> str:
    """Return where the newest release stands; empty where the workshop states no address."""
    base = edition.identity.base_url
    return f"{base.rstrip('/')}/plans/{edition.name}/" if base else ""
