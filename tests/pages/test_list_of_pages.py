"""A page more is an entry of the list: here an invented one, found in site, map and menu."""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import date

from kerfolio.pages.all_pages import site_pages, site_texts, texts_of
from kerfolio.pages.frame import site_frame
from kerfolio.pages.site import Site, SitePage
from kerfolio.pages.theme import render
from kerfolio.reading.page import TAKEN
from tests.pages.invented import PAGE, site
from tests.pages.markup import Tree


def lathe_page(found: Site) -> str:
    """Any template of the theme will do."""
    frame = site_frame(found, "tools/lathe/", "The lathe", "What the lathe turned.")
    return render(
        "missing.html", found.identity.reader, frame=frame, plans="../../plans/index.html"
    )


LATHE = SitePage(
    path="tools/lathe/", make=lathe_page, day=date(2026, 9, 7), label="Lathe", rank=(1, 5)
)


def menu(text: str) -> list[tuple[str, str]]:
    """Return label and link of every line of a page's menu."""
    (nav,) = re.findall(r'<nav aria-label="Site">.*?</nav>', text, re.DOTALL)
    return [(each.text, each.attributes["href"]) for each in Tree(nav).all("a")]


def here(text: str) -> list[str]:
    links = Tree(text).all("a")
    return [each.text for each in links if "aria-current" in each.attributes]


def test_a_page_more_is_in_site_map_and_menu() -> None:
    found = site()
    before, pages = site_texts(found), tuple(site_pages(found))
    texts = texts_of(found, (*pages, LATHE))
    assert set(texts) - set(before) == {"tools/lathe/index.html"}
    line = "<url><loc>https://example.org/tools/lathe/</loc><lastmod>2026-09-07</lastmod></url>\n"
    assert texts["sitemap.xml"].replace(line, "") == before["sitemap.xml"] != texts["sitemap.xml"]
    for name, text in texts.items():
        if name.endswith(".html"):
            labels = [label for label, _ in menu(text)]
            assert labels == ["Plans", "Test cuts", "Lathe", PAGE.title], name
    assert menu(texts["index.html"])[2] == ("Lathe", "tools/lathe/index.html")
    assert menu(texts["log/index.html"])[2] == ("Lathe", "../tools/lathe/index.html")
    assert here(texts["tools/lathe/index.html"]) == ["Lathe"]


def test_a_page_less_is_nowhere() -> None:
    found = site()
    texts = texts_of(found, [each for each in site_pages(found) if each.path != "log/"])
    assert "log/index.html" not in texts
    assert "/log/" not in texts["sitemap.xml"]
    assert "Test cuts" not in dict(menu(texts["index.html"]))


def test_a_page_without_a_label_is_not_in_the_menu() -> None:
    found = site()
    pages = (*site_pages(found), replace(LATHE, label=""))
    texts = texts_of(found, pages)
    assert "tools/lathe/index.html" in texts
    assert "/tools/lathe/" in texts["sitemap.xml"]
    assert menu(texts["index.html"]) == menu(site_texts(found)["index.html"])


def test_the_makers_pages_follow_in_the_order_stated() -> None:
    pages = tuple(
        replace(PAGE, name=name, title=title, order=order)
        for name, title, order in (("a", "Last", 300), ("b", "Two", 20), ("c", "One", 20))
    )
    text = site_texts(replace(site(), pages=pages))["plans/index.html"]
    assert [label for label, _ in menu(text)] == ["Plans", "Test cuts", "One", "Two", "Last"]
    assert here(text) == ["Plans"]


def test_the_log_is_called_what_the_menu_calls_it() -> None:
    page = Tree(site_texts(site())["log/index.html"])
    assert [each.text.strip() for each in page.all("h1")] == ["Test cuts"]
    assert page.all("title")[0].text == f"Test cuts · {site().identity.title}"


def test_no_page_of_the_makers_may_take_the_sites_own_folders() -> None:
    """Reading knows no pages, so it has the folders' names itself."""
    texts = site_texts(replace(site(), pages=()))
    assert {name.split("/")[0] for name in texts if "/" in name} == set(TAKEN)
