"""The pages of a site: one list, which its files, its map and its menu are made from."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from functools import partial

from kerfolio.basis.saying import say
from kerfolio.edition.edition import Edition
from kerfolio.pages.badge import MARK_FILE, mark_svg
from kerfolio.pages.feed import feed_xml
from kerfolio.pages.fitting import FITTING_SCRIPT, fitting_script
from kerfolio.pages.home import home_page, not_found_page, own_page
from kerfolio.pages.listed import listed, listed_of, updated
from kerfolio.pages.log import log_page
from kerfolio.pages.page_script import PAGE_SCRIPT, page_script
from kerfolio.pages.plan import plan_page, steps_page
from kerfolio.pages.plans import PLANS_SCRIPT, plans_index, plans_script
from kerfolio.pages.setup import setup_page
from kerfolio.pages.site import STYLESHEET, Listed, Site, SitePage
from kerfolio.pages.sitemap import SITEMAP, robots_text, sitemap_xml
from kerfolio.pages.stock import stock_page
from kerfolio.pages.theme import stylesheet
from kerfolio.pages.unsealing import UNSEAL_SCRIPT, unseal_script
from kerfolio.pages.viewer import VIEWER_SCRIPT, viewer_script
from kerfolio.pages.yard import YARD_SCRIPT, yard_page, yard_script


def site_pages(site: Site) -> Iterator[SitePage]:
    """Yield every page of a site, in the order of its map.

    Without stock there is no page of the library, without public trials none of test cuts. The
    site's own pages come first in the menu, then the maker's in the order they state.
    """
    newest, reader = updated(site), site.identity.reader
    yield SitePage(path="", make=home_page, day=newest)
    plans = say(reader, "pagehome-plans")
    yield SitePage(path="plans/", make=plans_index, day=newest, label=plans, rank=(0,))
    editions = {each.name: each for each in site.editions}
    for plan in listed(site):
        yield from _pages_of_plan(plan, editions.get(plan.name))
    for page in site.pages:
        rank = (2, page.order, page.title, page.name)
        make = partial(own_page, page=page)
        yield SitePage(path=f"{page.name}/", make=make, label=page.title, rank=rank)
    if site.has_stock:
        yield SitePage(path="stock/", make=stock_page)
    if site.trials:
        day = max(each.date for each in site.trials)
        label = say(reader, "pagelog-title")
        yield SitePage(path="log/", make=log_page, day=day, label=label, rank=(1,))


def _pages_of_plan(plan: Listed, edition: Edition | None) -> Iterator[SitePage]:
    for inner in plan.pages:
        make = partial(_OF_PLAN[inner], edition=edition) if edition else None
        yield SitePage(path=f"plans/{plan.name}/{inner}", make=make, day=plan.day)


_OF_PLAN = {"": plan_page, "steps/": steps_page, "setup/": setup_page, "yard/": yard_page}
"""How each page of a plan is made, by its path below the first."""


def site_texts(site: Site) -> dict[str, str]:
    """Return every text file of a site by its path."""
    return texts_of(site, tuple(site_pages(site)))


def texts_of(site: Site, pages: Sequence[SitePage]) -> dict[str, str]:
    """Return some pages, the feed, the map, style sheet and scripts, as text by path.

    Without a base address there is no map, and nothing that leads to it.
    """
    site = replace(site, menu=_menu(pages))
    texts = _made(site, pages)
    texts |= {
        "404.html": not_found_page(site),
        "feed.xml": feed_xml(site),
        STYLESHEET: stylesheet(site.identity.look),
        VIEWER_SCRIPT: viewer_script(site.identity.reader),
        PAGE_SCRIPT: page_script(site.identity.reader),
        FITTING_SCRIPT: fitting_script(site.identity.reader),
        UNSEAL_SCRIPT: unseal_script(site.identity.reader),
        PLANS_SCRIPT: plans_script(site.identity.reader),
        YARD_SCRIPT: yard_script(),
    }
    if site.identity.look.logo is None:
        texts[MARK_FILE] = mark_svg(site.identity.title, site.identity.look)
    sitemap = sitemap_xml(site, pages)
    if sitemap is not None:
        texts |= {SITEMAP: sitemap, "robots.txt": robots_text(site)}
    return texts


def plan_texts(site: Site, edition: Edition) -> dict[str, str]:
    """Return the pages of one plan alone, as text by path, as they stand in the site."""
    pages = tuple(site_pages(site))
    return _made(
        replace(site, menu=_menu(pages)), _pages_of_plan(listed_of(site, edition), edition)
    )


def _menu(pages: Iterable[SitePage]) -> tuple[SitePage, ...]:
    return tuple(sorted((each for each in pages if each.label), key=lambda each: each.rank))


def _made(site: Site, pages: Iterable[SitePage]) -> dict[str, str]:
    """Return those pages that do not stand already."""
    return {f"{each.path}index.html": each.make(site) for each in pages if each.make is not None}
