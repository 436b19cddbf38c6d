"""The pages of the sample workshop as a publish writes them."""

from __future__ import annotations

import gzip
import posixpath
from pathlib import Path
from typing import Any
from urllib.parse import unquote, urlsplit

import pytest

from tests.conftest import Published
from tests.pages.markup import Tree

FIRST_VIEW = 320_000
"""Bytes that a first view may fetch; hosts send text packed, fonts and pictures as they are."""
PHONE = {"width": 390, "height": 844}
"""A common phone, px (from memory)."""
MOST_SCREENS = 14
_LETTERS = """() => Math.min(...[...document.querySelectorAll("svg text")].flatMap((each) => {
  if (!each.getBoundingClientRect().width) return [];
  const seat = each.getScreenCTM();
  return [parseFloat(getComputedStyle(each).fontSize) * Math.hypot(seat.a, seat.b)];
}))"""


def pages_of(folder: Path) -> dict[str, Tree]:
    return {
        path.relative_to(folder).as_posix(): Tree(path.read_text("utf-8"))
        for path in sorted(folder.rglob("*.html"))
    }


def test_every_page_is_well_formed(published: Published) -> None:
    pages = pages_of(published.out)
    assert len(pages) >= 10
    for name, page in pages.items():
        assert page.faults == [], name
        assert len(page.all("h1")) == 1, name
        ids = page.values("id")
        assert len(ids) == len(set(ids)), name


def test_every_link_leads_somewhere(published: Published) -> None:
    pages = pages_of(published.out)
    for name, page in pages.items():
        links = [*page.values("href"), *page.values("src")]
        links += [part.split()[0] for each in page.values("srcset") for part in each.split(",")]
        for link in links:
            parts = urlsplit(link)
            if parts.scheme or not parts.path:
                continue
            path = posixpath.normpath(posixpath.join(posixpath.dirname(name), unquote(parts.path)))
            assert (published.out / path).is_file(), f"{name} links to {link}"
            if parts.fragment and path in pages:
                assert parts.fragment in pages[path].values("id"), f"{name} links to {link}"


def test_a_first_view_is_light(published: Published) -> None:
    """Page and style packed, all five fonts, and every photo at the width a desktop takes."""
    style = len(gzip.compress((published.out / "assets/style.css").read_bytes()))
    fonts = sum(path.stat().st_size for path in (published.out / "assets/fonts").iterdir())
    for folder in sorted((published.out / "plans").iterdir()):
        if not folder.is_dir():
            continue
        text = (folder / "index.html").read_bytes()
        images = [each.attributes["src"] for each in Tree(text.decode()).all("img")]
        photos = sum((folder / source).resolve().stat().st_size for source in images)
        weight = len(gzip.compress(text)) + style + fonts + photos
        assert weight < FIRST_VIEW, f"{folder.name}: {weight} bytes"


@pytest.mark.parametrize("word", ["downloads/", 'role="img"'])
def test_pages_for_supporters_carry_no_files_and_no_drawings(
    published: Published, word: str
) -> None:
    locked = [
        path
        for path in sorted((published.out / "plans").glob("*/index.html"))
        if "The bundle of this plan is not on this site." in path.read_text("utf-8")
    ]
    assert locked
    assert [path for path in locked if word in path.read_text("utf-8")] == []


@pytest.mark.browser
def test_on_a_phone_a_plan_is_no_endless_roll_and_its_drawings_are_read(
    browser: Any, published: Published
) -> None:
    """What is folded stays folded for the height, and opens for the letters of every drawing."""
    page = browser.new_context(viewport=PHONE).new_page()
    for folder in sorted(each for each in (published.out / "plans").iterdir() if each.is_dir()):
        page.goto((folder / "index.html").as_uri())
        tall = page.evaluate("document.documentElement.scrollHeight")
        assert tall <= MOST_SCREENS * PHONE["height"], folder.name
        for each in [folder, *(folder / name for name in ("setup", "yard", "steps"))]:
            if (each / "index.html").is_file():
                page.goto((each / "index.html").as_uri())
                page.evaluate("for (const e of document.querySelectorAll('details')) e.open = true")
                assert page.evaluate(_LETTERS) >= 10.95, each
    page.context.close()
