"""Releases in the order readers want them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from kerfolio.edition.edition import Edition
from kerfolio.model.plan import Release


@dataclass(frozen=True, slots=True, kw_only=True)
class Released:
    """A release and the edition it belongs to."""

    edition: Edition
    release: Release


def newest_first(releases: Iterable[Release]) -> tuple[Release, ...]:
    """Sort by day, newest first; of one day the higher version (1.10 above 1.9) first."""
    return tuple(sorted(releases, key=lambda each: each.order, reverse=True))


def all_releases(editions: Iterable[Edition]) -> tuple[Released, ...]:
    """Return the releases of all plans, newest first; those of one day by the plans' titles."""
    titled = sorted(editions, key=lambda each: (each.plan.title, each.name))
    found = [
        Released(edition=edition, release=release)
        for edition in titled
        for release in newest_first(edition.plan.releases)
    ]
    return tuple(sorted(found, key=lambda each: each.release.date, reverse=True))
