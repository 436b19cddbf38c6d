"""The site's own pages: home, all plans, the maker's pages, and the one for a lost reader."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date

from markupsafe import Markup

from kerfolio.basis.saying import say
from kerfolio.model.plan import Release
from kerfolio.model.workshop import Page
from kerfolio.pages.badge import held_badge
from kerfolio.pages.frame import site_frame
from kerfolio.pages.listed import listed, site_image
from kerfolio.pages.photos import ShownPhoto, shown
from kerfolio.pages.policy import lone_policy
from kerfolio.pages.releases import all_releases
from kerfolio.pages.running_text import chapters
from kerfolio.pages.site import Listed, Site
from kerfolio.pages.theme import inline_style, render

_LATEST = 6


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanEntry:
    """A plan in a list: ``picture`` is inline SVG where there is no photo, or empty."""

    title: str
    summary: str
    href: str
    version: str
    day: date
    line: str
    open: bool
    cover: ShownPhoto | None
    picture: Markup


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
    entries = _entries(site, "")
    return render(
        "home.html",
        site.identity.reader,
        frame=frame,
        identity=identity,
        entries=entries,
        changes=_changes(site),
    )


def plans_index(site: Site) -> str:
    """Return ``plans/index.html``."""
    reader = site.identity.reader
    words = say(reader, "pagehome-all", house=site.identity.title)
    frame = site_frame(site, "plans/", say(reader, "pagehome-plans"), words, site_image(site))
    return render("plans.html", site.identity.reader, frame=frame, entries=_entries(site, "../"))


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


def _entries(site: Site, root: str) -> list[PlanEntry]:
    return [_entry(each, root) for each in listed(site)]


def _entry(plan: Listed, root: str) -> PlanEntry:
    files = {plan.cover.file: plan.cover_files} if plan.cover else {}
    return PlanEntry(
        title=plan.title,
        summary=plan.summary,
        href=f"{root}plans/{plan.name}/index.html",
        version=plan.version,
        day=plan.released,
        line=plan.line,
        open=plan.is_open,
        cover=shown(plan.cover, files, root),
        picture=Markup(plan.picture),
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
