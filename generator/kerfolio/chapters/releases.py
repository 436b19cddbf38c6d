"""Releases: what changed when, newest first; corrections are named as such."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import day_text, say
from kerfolio.chapters.changes import blocks_of, holding
from kerfolio.document.blocks import Block, Dated
from kerfolio.document.chapter import Chapter, Soon
from kerfolio.edition.edition import Edition
from kerfolio.model.plan import Release


def release_id(version: str) -> str:
    """Return where a release is told, as an address within a page."""
    return f"release-{version}"


def releases(edition: Edition) -> Chapter | None:
    """Return the change list; None of a plan without releases."""
    reader = edition.reader
    newest_first = sorted(edition.plan.releases, key=lambda each: each.order, reverse=True)
    return Chapter(
        id="releases",
        title=say(reader, "releases-title"),
        blocks=tuple(block for each in newest_first for block in _blocks(each, edition)),
        soon=Soon.BACKGROUND,
    )


def _blocks(release: Release, edition: Edition) -> Iterator[Block]:
    """Yield a release, what who has it is to cut anew for the newest, and what changed in it."""
    yield _told(release, edition.reader)
    newest = edition.change(release.version, edition.plan.version)
    if newest is not None:
        yield holding(newest, edition)
    change = edition.change_to(release.version)
    if change is not None:
        yield from blocks_of(change, edition)


def correction(reader: Reader) -> str:
    """Return what is said of a release that puts files right."""
    return say(reader, "releases-correction")


def _told(release: Release, reader: Reader) -> Dated:
    return Dated(
        day=day_text(reader, release.date),
        iso=release.date.isoformat(),
        head=release.version,
        flag=correction(reader) if release.errata else "",
        words=release.changed,
        id=release_id(release.version),
    )
