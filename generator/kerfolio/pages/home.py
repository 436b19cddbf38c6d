"""The site's own pages: home, the maker's pages, and the one for a lost reader."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date

from kerfolio.basis.saying import say
from kerfolio.model.plan import Release
from kerfolio.model.workshop import Page
from kerfolio.pages.badge import held_badge
from kerfolio.pages.frame import site_frame
from kerfolio.pages.listed import listed, site_image
from kerfolio.pages.plans import entries_of
from kerfolio.pages.policy import lone_policy
from kerfolio.pages.releases import all_releases
from kerfolio.pages.running_text import chapters
from kerfolio.pages.site import Listed, Site
from kerfolio.pages.theme import inline_style, render

_LATEST = 6
"""So many plans and releases are the newest that home shows."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """A release in the list of what is new."""

    title: str
    href: str
    version: str
    day: date
    changed: str
    errata: bool


def home_page(site: Site) -> str:
    """Return ``index.html``."""
    identity = site.identity
    words = identity.tagline or say(identity.reader, "pagehome-by", maker=identity.maker)
    frame = site_frame(site, "", identity.title, words, site_image(site))
    plans = listed(site)
    return render(
        "home.html",
        identity.reader,
        frame=frame,
        identity=identity,
        entries=entries_of(plans[:_LATEST], "", identity.reader),
        count=len(plans),
        changes=_changes(site),
    )


def own_page(site: Site, page: Page) -> str:
    """Return ``NAME/index.html``, a page of the maker's own."""
    words = page.text.plain()[:200] or page.title
    frame = site_frame(site, f"{page.name}/", page.title, words, site_image(site))
    return render(
        "own.html", site.identity.reader, frame=frame, page=page, page_parts=chapters(page.text)
    )


def not_found_page(site: Site) -> str:
    """Return ``404.html``; shown at any depth, it stands alone and links outright."""
    reader = site.identity.reader
    title, words = say(reader, "pagehome-missing-title"), say(reader, "pagehome-missing-about")
    frame = site_frame(site, "", title, words)
    base = site.base_url
    style = inline_style(site.identity.look)
    frame = replace(
        frame,
        canonical="",
        badge=held_badge(site.identity),
        touch_icon="",
        style=style,
        policy=lone_policy(style),
        home=f"{base}index.html",
        feed=f"{base}feed.xml",
        stock=f"{base}{frame.stock}" if frame.stock else "",
        menu=tuple(replace(each, href=f"{base}{each.href}", here=False) for each in frame.menu),
    )
    return render(
        "missing.html", site.identity.reader, frame=frame, plans=f"{base}plans/index.html"
    )


def _changes(site: Site) -> list[Change]:
    return [_change(*each) for each in all_releases(listed(site))[:_LATEST]]


def _change(plan: Listed, release: Release) -> Change:
    return Change(
        title=plan.title,
        href=f"plans/{plan.name}/index.html#release-{release.version}",
        version=release.version,
        day=release.date,
        changed=release.changed,
        errata=release.errata,
    )
