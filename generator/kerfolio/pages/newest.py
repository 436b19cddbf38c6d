"""Where the newest release of a plan is found."""

from __future__ import annotations

from kerfolio.edition.edition import Edition
from kerfolio.pages.links import safe_href


def newest_address(edition: Edition) -> str:
    """Return the address of the plan's page, or empty without a base address."""
    base = safe_href(edition.identity.base_url, absolute=True)
    return f"{base.rstrip('/')}/plans/{edition.name}/" if base else ""
