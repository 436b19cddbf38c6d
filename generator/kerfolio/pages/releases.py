"""Releases in the order readers want them."""

from __future__ import annotations

from collections.abc import Iterable

from kerfolio.model.plan import Release
from kerfolio.pages.site import Listed


def newest_first(releases: Iterable[Release]) -> tuple[Release, ...]:
    """Sort by day, newest first; of one day the higher version (1.10 above 1.9) first."""
    return tuple(sorted(releases, key=lambda each: each.order, reverse=True))


def all_releases(plans: Iterable[Listed]) -> tuple[tuple[Listed, Release], ...]:
    """Return the releases of all plans, newest first; those of one day by the plans' titles."""
    titled = sorted(plans, key=lambda each: (each.title, each.name))
    found = [(plan, release) for plan in titled for release in plan.releases]
    return tuple(sorted(found, key=lambda each: each[1].date, reverse=True))
