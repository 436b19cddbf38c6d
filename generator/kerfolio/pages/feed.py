"""The feed of releases: Atom (RFC 4287)."""

from __future__ import annotations

import uuid
from dataclasses import dataclass
from datetime import date

from kerfolio.basis.saying import say
from kerfolio.model.plan import Release
from kerfolio.pages.listed import listed, updated
from kerfolio.pages.releases import all_releases
from kerfolio.pages.site import Listed, Site
from kerfolio.pages.theme import render

_ENTRIES = 100


@dataclass(frozen=True, slots=True, kw_only=True)
class FeedEntry:
    """A release as a feed tells it; ``image`` is an absolute address with its ``alt``, or empty."""

    identifier: str
    title: str
    day: str
    href: str
    text: str
    image: str
    alt: str
    errata: bool


def feed_xml(site: Site) -> str:
    """Return ``feed.xml``: one entry for every release, the newest first, at most 100.

    Times are those of the releases, at the first second of the day in UTC.
    """
    releases = all_releases(listed(site))[:_ENTRIES]
    return render(
        "feed.xml",
        site.identity.reader,
        site=site,
        identity=site.identity,
        identifier=_identifier(site, ""),
        updated=_moment(updated(site)),
        entries=[_entry(site, *each) for each in releases],
    )


def _entry(site: Site, plan: Listed, release: Release) -> FeedEntry:
    path = f"plans/{plan.name}/#release-{release.version}"
    page = f"plans/{plan.name}/index.html#release-{release.version}"
    return FeedEntry(
        identifier=_identifier(site, path),
        title=say(
            site.identity.reader,
            "feed-correction" if release.errata else "feed-release",
            plan=plan.title,
            release=release.version,
        ),
        day=_moment(release.date),
        href=site.address(path) or page,
        text=" ".join(
            filter(None, (release.changed or plan.summary, plan.serving.get(release.version, "")))
        ),
        image=site.address(plan.image) if plan.image else "",
        alt=plan.cover.alt if plan.cover else plan.title,
        errata=release.errata,
    )


def _moment(day: date) -> str:
    """Return a date-time of RFC 3339."""
    return f"{day.isoformat()}T00:00:00Z"


def _identifier(site: Site, path: str) -> str:
    """Return an absolute identifier: the address, or a name-based UUID (RFC 4122, version 5)."""
    if site.base_url:
        return site.address(path)
    named = f"{site.identity.title}\n{site.identity.maker}\n{path}"
    return f"urn:uuid:{uuid.uuid5(uuid.NAMESPACE_URL, named)}"
