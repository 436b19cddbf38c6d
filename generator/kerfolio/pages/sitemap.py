"""The site map for search engines (the protocol of sitemaps.org, version 0.9)."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from kerfolio.edition.edition import Edition
from kerfolio.model.plan import NO_DAY
from kerfolio.pages.setup import has_setup
from kerfolio.pages.site import Site, last_day
from kerfolio.pages.theme import render

MOST_ADDRESSES = 50_000
"""The protocol's limit for one file."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Location:
    """An address and the day its content last changed; empty where no day is known."""

    address: str
    day: str


def sitemap_xml(site: Site) -> str | None:
    """Return ``sitemap.xml``, or None for a site without a base address.

    The protocol demands absolute addresses. The days are those of the content, never of the build.
    """
    if not site.base_url:
        return None
    newest = site.updated if site.editions else NO_DAY
    found = [_at(site, "", newest), _at(site, "plans/", newest)]
    for edition in site.newest_first():
        found += _of_plan(site, edition)
    found += [_at(site, f"{page.name}/", NO_DAY) for page in site.pages]
    if site.has_stock:
        found.append(_at(site, "stock/", NO_DAY))
    if site.trials:
        found.append(_at(site, "log/", max(each.date for each in site.trials)))
    return render("sitemap.xml", locations=found[:MOST_ADDRESSES])


def _of_plan(site: Site, edition: Edition) -> list[Location]:
    path = f"plans/{edition.name}/"
    pages = [path, f"{path}steps/"] if edition.plan.steps else [path]
    pages += [f"{path}setup/"] if has_setup(site, edition) else []
    return [_at(site, each, last_day(edition)) for each in pages]


def _at(site: Site, path: str, day: date) -> Location:
    return Location(address=site.address(path), day="" if day == NO_DAY else day.isoformat())
