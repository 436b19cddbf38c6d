"""What holds for every page alike."""

from __future__ import annotations

import posixpath
import re
from dataclasses import replace
from itertools import pairwise
from urllib.parse import unquote, urlsplit

import pytest

from kerfolio.edition.public import shown_to_all
from kerfolio.pages.all_pages import site_texts
from kerfolio.pages.plan import plan_page
from kerfolio.pages.start import start_here
from tests.pages.invented import CONTENTS, edition, locked, pictures, site, whole_log, workshop
from tests.pages.markup import Tree

SITE = site()
TEXTS = site_texts(SITE)
ALONE = {
    "start-here.html": start_here(edition(), CONTENTS, pictures(edition())),
    "log.html": whole_log(workshop()),
    "404.html": TEXTS["404.html"],
}
PAGES = {name: text for name, text in TEXTS.items() if name.endswith(".html")} | ALONE
every_page = pytest.mark.parametrize("name", sorted(PAGES))


def tree(name: str) -> Tree:
    return Tree(PAGES[name])


def test_the_site_has_the_pages_of_the_contract() -> None:
    assert set(TEXTS) == {
        *("index.html", "plans/index.html", "404.html", "feed.xml", "sitemap.xml"),
        *("robots.txt", "assets/mark.svg", "assets/unseal.js"),
        *("plans/harbour-stool/index.html", "plans/harbour-stool/steps/index.html"),
        *("plans/potting-bench/index.html", "plans/potting-bench/steps/index.html"),
        "plans/harbour-stool/yard/index.html",
        *(
            "about/index.html",
            "log/index.html",
            "stock/index.html",
            "assets/style.css",
            "assets/viewer.js",
            "assets/document.js",
            "assets/fitting.js",
            "assets/plans.js",
            "assets/yard.js",
        ),
    }


@every_page
def test_every_element_is_closed(name: str) -> None:
    assert tree(name).faults == []
    assert PAGES[name].startswith("<!doctype html>")


@every_page
def test_one_h1_a_language_a_title_and_landmarks(name: str) -> None:
    found = tree(name)
    assert len(found.all("h1")) == 1
    assert found.all("html")[0].attributes["lang"] == "en"
    assert found.all("title")[0].text.strip()
    assert [len(found.all(tag)) for tag in ("header", "main", "footer")] == [1, 1, 1]
    skip = found.all("a")[0].attributes
    assert skip["href"] == f"#{found.all('main')[0].attributes['id']}"


@every_page
def test_headings_skip_no_rank(name: str) -> None:
    ranks = [int(each.tag[1]) for each in tree(name).all("h1", "h2", "h3", "h4", "h5", "h6")]
    steps = [after - before for before, after in pairwise(ranks)]
    assert ranks[0] == 1
    assert max(steps, default=0) <= 1


@every_page
def test_ids_are_unique_and_inner_links_arrive(name: str) -> None:
    found = tree(name)
    ids = found.values("id")
    assert len(ids) == len(set(ids))
    inner = {href[1:] for href in found.values("href") if href.startswith("#")}
    assert inner <= set(ids)


@every_page
def test_every_image_has_words(name: str) -> None:
    for image in tree(name).all("img"):
        assert image.attributes["alt"].strip()
    for drawing in tree(name).all("svg"):
        silent = drawing.attributes.get("class") == "house-mark"  # its name stands beside it
        assert silent or drawing.attributes["aria-label"].strip()


@every_page
def test_nothing_is_fetched_from_elsewhere(name: str) -> None:
    found = tree(name)
    fetched = [e.attributes.get("src", "") for e in found.elements]
    fetched += [e.attributes["href"] for e in found.all("link") if _is_fetched(e.attributes)]
    fetched += [part.split()[0] for each in found.values("srcset") for part in each.split(",")]
    for address in fetched:
        assert urlsplit(address).scheme in ("", "data")
        assert not address.startswith("//")
    assert not re.search(r"@import|url\(\s*['\"]?(https?:|//)", PAGES[name])


def _is_fetched(attributes: dict[str, str]) -> bool:
    return attributes["rel"] in ("stylesheet", "icon", "preload", "modulepreload")


def test_the_style_sheet_fetches_only_its_own_fonts() -> None:
    addresses = re.findall(r"url\(([^)]*)\)", TEXTS["assets/style.css"])
    assert len(addresses) == 5
    assert all(re.fullmatch(r'"fonts/source-[a-z-]+\.woff2"', each) for each in addresses)
    assert "@import" not in TEXTS["assets/style.css"]


@pytest.mark.parametrize("name", sorted(set(TEXTS) - {"feed.xml", "sitemap.xml", "404.html"}))
def test_links_lead_to_files_of_the_site(name: str) -> None:
    if not name.endswith(".html"):
        return
    written = set(TEXTS) | {
        file.href
        for each in (*(SITE.files[e.name].photos for e in SITE.editions), SITE.log_photos)
        for files in each.values()
        for file in files
    }
    written.add("plans/harbour-stool/downloads/harbour-stool-1.2.0.zip")
    found = tree(name)
    links = [*found.values("href"), *found.values("src")]
    links += [part.split()[0] for each in found.values("srcset") for part in each.split(",")]
    for link in links:
        parts = urlsplit(link)
        if parts.scheme or not parts.path:
            continue
        assert not parts.path.startswith("/"), f"{link} would fail in a sub-folder"
        target = posixpath.normpath(posixpath.join(posixpath.dirname(name), unquote(parts.path)))
        assert target in written, f"{name} links to {link}"
        if parts.fragment and target.endswith(".html"):
            assert parts.fragment in Tree(TEXTS[target]).values("id")


def test_links_of_the_bundles_page_lead_to_files_of_the_bundle() -> None:
    for link in tree("start-here.html").values("href"):
        parts = urlsplit(link)
        if not parts.scheme and parts.path:
            assert unquote(parts.path) in CONTENTS
    linked = {unquote(link) for link in tree("start-here.html").values("href")}
    assert set(CONTENTS) - {"start-here.html"} <= linked


def test_the_lost_reader_is_led_home_from_any_depth() -> None:
    assert all(
        urlsplit(each).scheme or each.startswith("#") for each in tree("404.html").values("href")
    )


def test_pages_are_the_same_on_every_run() -> None:
    assert site_texts(site()) == TEXTS


def test_a_site_without_plans_still_has_its_pages() -> None:
    empty = replace(SITE, editions=(), files={}, trials=(), pages=())
    texts = site_texts(empty)
    assert set(texts) == {
        *("index.html", "plans/index.html", "404.html", "stock/index.html"),
        *("feed.xml", "sitemap.xml", "robots.txt", "assets/style.css", "assets/viewer.js"),
        "assets/unseal.js",
        *("assets/document.js", "assets/fitting.js", "assets/yard.js", "assets/mark.svg"),
        "assets/plans.js",
    }
    assert "No plan is published yet." in texts["index.html"]


def test_first_view_stays_light() -> None:
    """Text, style and six fonts; photos come on top (budget 300 kB for a first view)."""
    page = len(TEXTS["plans/harbour-stool/index.html"]) + len(TEXTS["assets/style.css"])
    assert page < 150_000


def test_inches_come_first_where_the_workshop_says_so() -> None:
    text = site_texts(site("in"))["plans/harbour-stool/index.html"]
    assert '<span class="in">14 3/16 × 17 23/32 in</span>' in text
    assert '<span class="in">0.701 in</span><i> (</i><span class="mm">17.8 mm</span>' in text


def test_a_locked_page_names_no_place_of_the_bundle() -> None:
    text = TEXTS["plans/potting-bench/index.html"]
    assert "The bundle of this plan is not on this site." in text
    told = " ".join(Tree(text).text_of("main").split())
    assert "Sawdust What each gives 3 EUR a month What each gets Every bundle." in told
    assert "How to join Put a coin in the jar." in told
    assert 'href="https://example.org/jar"' in text
    assert "Shavings What each gives 9 EUR a month" in told
    assert "downloads/" not in text
    assert text.count("<svg") == 1, "the workshop's mark alone"


def test_a_locked_page_shows_no_width_of_a_slot() -> None:
    """Odd widths, that no thickness or size of the plan has, would be found in the text."""
    settled = locked(edition()).settled
    coupons = tuple(
        replace(each, slots=tuple(replace(s, width=s.number + 0.37) for s in each.slots))
        for each in settled.coupons
    )
    odd = shown_to_all(replace(locked(edition()), settled=replace(settled, coupons=coupons)))
    text = plan_page(replace(SITE, editions=(odd,)), odd)
    assert re.findall(r"\b[1-4]\.(?:37|4)\b", text) == []
