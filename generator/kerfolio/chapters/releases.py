"""Releases: what changed when, newest first; corrections are named as such."""

from __future__ import annotations

from kerfolio.basis.words import day_text
from kerfolio.document.blocks import Dated
from kerfolio.document.chapter import Chapter, Soon
from kerfolio.edition.edition import Edition
from kerfolio.model.plan import Release

CORRECTION = "Correction: files before this release were wrong"


def release_id(version: str) -> str:
    """Return where a release is told, as an address within a page."""
    return f"release-{version}"


def releases(edition: Edition) -> Chapter | None:
    """Return the change list; None of a plan without releases."""
    newest_first = sorted(edition.plan.releases, key=lambda each: each.order, reverse=True)
    return Chapter(
        id="releases",
        title="Releases",
        blocks=tuple(_told(each) for each in newest_first),
        soon=Soon.BACKGROUND,
    )


def _told(release: Release) -> Dated:
    return Dated(
        day=day_text(release.date),
        iso=release.date.isoformat(),
        head=release.version,
        flag=CORRECTION if release.errata else "",
        words=release.changed,
        id=release_id(release.version),
    )
