"""The site map for search engines (the protocol of sitemaps.org, version 0.9)."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from kerfolio.model.plan import NO_DAY
from kerfolio.pages.site import Site, SitePage
from kerfolio.pages.theme import render

SITEMAP = "sitemap.xml"

MOST_ADDRESSES = 50_000
"""The protocol's limit for one file."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Location:
    """An address and the day its content last changed; empty where no day is known."""

    address: str
    day: str


def sitemap_xml(site: Site, pages: Sequence[SitePage]) -> str | None:
    """Return ``sitemap.xml`` of some pages, or None for a site without a base address.

    The protocol demands absolute addresses. The days are those of the content, never of the build.
    """
    if not site.base_url:
        return None
    found = [_location(site, each) for each in pages[:MOST_ADDRESSES]]
    return render("sitemap.xml", site.identity.reader, locations=found)


def robots_text(site: Site) -> str:
    """Return ``robots.txt`` (RFC 9309): everything may be read, and where the map is."""
    return f"User-agent: *\nAllow: /\n\nSitemap: {site.address(SITEMAP)}\n"


def _location(site: Site, page: SitePage) -> Location:
    day = "" if page.day == NO_DAY else page.day.isoformat()
    return Location(address=site.address(page.path), day=day)
