"""Every text file of a site by its path: the one list of what the pages room makes."""

from __future__ import annotations

from kerfolio.pages.feed import feed_xml
from kerfolio.pages.home import home_page, not_found_page, own_page, plans_index
from kerfolio.pages.log import log_page
from kerfolio.pages.plan import plan_page, steps_page
from kerfolio.pages.setup import has_setup, setup_page
from kerfolio.pages.site import Site
from kerfolio.pages.sitemap import sitemap_xml
from kerfolio.pages.stock import stock_page
from kerfolio.pages.theme import stylesheet


def site_texts(site: Site) -> dict[str, str]:
    """Return all pages, the feed, the site map and the style sheet, as text by path.

    Without a base address there is no site map; without public trials there is no log,
    without stock no page of the library.
    """
    texts = {f"{page.name}/index.html": own_page(site, page) for page in site.pages}
    texts |= {
        "index.html": home_page(site),
        "plans/index.html": plans_index(site),
        "404.html": not_found_page(site),
        "feed.xml": feed_xml(site),
        site.stylesheet: stylesheet(),
    }
    for edition in site.editions:
        texts[f"plans/{edition.name}/index.html"] = plan_page(site, edition)
        if edition.plan.steps:
            texts[f"plans/{edition.name}/steps/index.html"] = steps_page(site, edition)
        if has_setup(site, edition):
            texts[f"plans/{edition.name}/setup/index.html"] = setup_page(site, edition)
    if site.trials:
        texts["log/index.html"] = log_page(site)
    if site.has_stock:
        texts["stock/index.html"] = stock_page(site)
    sitemap = sitemap_xml(site)
    return texts if sitemap is None else {**texts, "sitemap.xml": sitemap}
