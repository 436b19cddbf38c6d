"""What stands for a workshop at the head of its pages: its drawn mark, or its logo."""

from __future__ import annotations

import re
from base64 import b64decode
from dataclasses import replace

import pytest

from kerfolio.model.look import Logo, Look, TypePair
from kerfolio.model.workshop import Identity
from kerfolio.pages.all_pages import site_texts
from kerfolio.pages.theme import stylesheet
from kerfolio.pages.typefaces import files_of
from kerfolio.writing.webfont import web_fonts
from tests.pages.invented import site, whole_log, workshop
from tests.pages.markup import Tree

SVG = b'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 60 20"><path d="M0 0h9v9z"/></svg>'
LOGO = Logo(file="logo.svg", width=60, height=20, svg=SVG)


def icon(page: Tree) -> str:
    return next(e.attributes["href"] for e in page.all("link") if e.attributes["rel"] == "icon")


def with_logo(identity: Identity) -> Identity:
    return replace(identity, look=Look(logo=LOGO))


@pytest.mark.parametrize(("path", "root"), [("index.html", ""), ("stock/index.html", "../")])
def test_the_mark_leads_home_and_is_the_picture_of_the_tab(path: str, root: str) -> None:
    texts = site_texts(site())
    page = Tree(texts[path])
    assert icon(page) == f"{root}assets/mark.svg"
    assert "prefers-color-scheme:dark" in texts["assets/mark.svg"]
    mark = next(e for e in page.all("svg") if e.attributes.get("class") == "house-mark")
    assert mark.attributes["aria-hidden"] == "true", "the name stands beside it"


def test_a_logo_says_the_name_itself() -> None:
    found = site()
    texts = site_texts(replace(found, identity=with_logo(found.identity)))
    page = Tree(texts["stock/index.html"])
    (logo,) = (e for e in page.all("img") if e.attributes.get("class") == "house-logo")
    assert logo.attributes["src"] == icon(page) == "../assets/logo.svg"
    assert logo.attributes["alt"] == found.identity.title
    assert (logo.attributes["width"], logo.attributes["height"]) == ("120", "40")
    assert "assets/mark.svg" not in texts
    assert "house-mark" not in texts["stock/index.html"]


def test_a_page_of_one_file_holds_either() -> None:
    found = workshop()
    drawn = Tree(whole_log(found))
    assert icon(drawn).startswith("data:image/svg+xml;base64,")
    own = Tree(whole_log(replace(found, identity=with_logo(found.identity))))
    assert b64decode(icon(own).partition(",")[2]) == SVG


def test_shared_links_have_a_picture_and_robots_find_the_map() -> None:
    found = replace(site(), touch_icon="assets/touch-icon.png")
    texts = site_texts(found)
    for name in ("index.html", "plans/index.html", "log/index.html", "about/index.html"):
        (image,) = (
            e.attributes["content"]
            for e in Tree(texts[name]).all("meta")
            if e.attributes.get("property") == "og:image"
        )
        assert image.startswith(found.base_url)
    assert texts["robots.txt"].endswith(f"Sitemap: {found.base_url}sitemap.xml\n")
    assert "robots.txt" not in site_texts(
        replace(found, identity=replace(found.identity, base_url=""))
    )


@pytest.mark.parametrize("pair", list(TypePair))
def test_a_site_has_the_fonts_that_its_style_sheet_names(pair: TypePair) -> None:
    found = re.findall(r'url\("fonts/([^"]+)"\)', stylesheet(Look(type=pair)))
    assert tuple(found) == files_of(pair)
    assert set(found) < set(web_fonts())
    assert ("source-serif-regular.woff2" in found) == (pair is not TypePair.ALL_SANS)
    assert ("source-sans-italic.woff2" in found) == (not pair.reads_in_serif)
