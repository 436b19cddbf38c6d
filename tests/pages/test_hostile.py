"""Hostile text in every field of every record: nothing of it may become markup.

The cases follow the contexts of the OWASP cross-site scripting prevention cheat sheet: element
content, quoted attributes, addresses, script data.
"""

from __future__ import annotations

import dataclasses
import json
import xml.etree.ElementTree as ET
from dataclasses import replace
from datetime import date
from typing import Any

import pytest

from kerfolio.model.prose import Paragraph, Prose, Span
from kerfolio.pages.all_pages import site_texts
from kerfolio.pages.site import Site
from kerfolio.pages.start import start_here
from tests.pages.invented import edition, pictures, site, whole_log, workshop
from tests.pages.markup import Tree

EVIL = "\"'><script>alert(1)</script><img src=x onerror=alert(1)>&\u2028</title></style>\x07\x00"
KEPT = frozenset(
    {"name", "file", "version", "base_url", "units_first", "access", "kind", "label"}
) | {"look", "sheet"}
"""Fields that the reader holds to a grammar of their own, or that this program writes."""


def poisoned(value: Any) -> Any:
    """Return the record with the hostile text put at the end of every text in it."""
    if isinstance(value, tuple):
        return tuple(poisoned(each) for each in value)
    if isinstance(value, str) and type(value) is str:
        return value + EVIL
    if not dataclasses.is_dataclass(value) or isinstance(value, type):
        return value
    changed = {
        each.name: poisoned(getattr(value, each.name))
        for each in dataclasses.fields(value)
        if each.name not in KEPT
    }
    return replace(value, **changed)


def hostile_site() -> Site:
    found = site()
    editions = []
    for each in found.editions:
        plan, identity = poisoned(each.plan), poisoned(each.identity)
        rows = {
            name: poisoned(getattr(each, name))
            for name in ("hardware", "sheets", "boards", "copies", "parts", "trials")
        }
        changed = replace(each, plan=plan, identity=identity, **rows)
        editions.append(replace(changed, settled=replace(each.settled, plan=plan)))
    return replace(
        found,
        identity=poisoned(found.identity),
        editions=tuple(editions),
        pages=poisoned(found.pages),
        trials=poisoned(found.trials),
    )


HOSTILE = hostile_site()


def hostile_pages() -> dict[str, str]:
    texts = {name: text for name, text in site_texts(HOSTILE).items() if name.endswith(".html")}
    first = HOSTILE.editions[0]
    bad = ('cut/17.8mm/"><script>alert(1)</script>.svg', "booklet-a4.pdf", 'x" onclick="y')
    texts["start-here.html"] = start_here(first, bad, pictures(edition()))
    log = workshop()
    texts["private"] = whole_log(
        replace(log, identity=HOSTILE.identity, trials=poisoned(log.trials))
    )
    return texts


PAGES = hostile_pages()
OWN_SCRIPTS: tuple[dict[str, str], ...] = (
    {"type": "application/ld+json"},
    {"type": "application/json", "data-fit": "data"},
    {"src": "../assets/document.js"},
    {"src": "../../assets/document.js"},
    {"src": "../../../assets/document.js"},
    {"src": "../../assets/fitting.js"},
    {"src": "../../../assets/yard.js"},
    {},  # the start page's own, which its policy allows by the hash
)


@pytest.mark.parametrize("name", sorted(PAGES))
def test_hostile_text_stays_text(name: str) -> None:
    found = Tree(PAGES[name])
    assert found.faults == []
    scripts = [dict(each.attributes) for each in found.all("script")]
    for each in scripts:
        each |= {"src": each["src"].partition("?")[0]} if "src" in each else {}
    assert [each for each in scripts if each not in OWN_SCRIPTS] == []
    assert not [each for each in found.elements if each.attributes.keys() & {"onerror", "onclick"}]
    assert [each for each in found.all("img") if each.attributes["src"] == "x"] == []
    assert "<script>alert" in found.text_of("html")
    assert not {"\x07", "\x00"} & set(PAGES[name])


def test_structured_data_cannot_end_its_script() -> None:
    page = Tree(PAGES["plans/harbour-stool/index.html"])
    data = json.loads(page.all("script")[0].text)
    assert data["name"].startswith("Harbour stool\"'><script>alert(1)")


def test_feed_and_site_map_stay_well_formed() -> None:
    texts = site_texts(HOSTILE)
    feed = ET.fromstring(texts["feed.xml"])
    title = feed.find("{http://www.w3.org/2005/Atom}title")
    assert title is not None
    assert title.text is not None
    assert title.text.startswith("Fernhill Bench\"'><script>")
    contents = feed.iter("{http://www.w3.org/2005/Atom}content")
    told = [each.text or "" for each in contents if each.get("type") == "html"]
    assert told
    assert "<script>" not in "".join(told), "escaped once more inside HTML"
    ET.fromstring(texts["sitemap.xml"])


@pytest.mark.parametrize(
    "address",
    [
        "javascript:alert(1)",
        "JaVaScRiPt:alert(1)",
        "java\tscript:alert(1)",
        "\x01javascript:alert(1)",
        " javascript:alert(1)",
        "vbscript:x",
        "data:text/html,<script>alert(1)</script>",
        "file:///etc/passwd",
        "//example.org/elsewhere",
        "\\\\example.org\\elsewhere",
        "x:y",
        "http:alert",
    ],
)
def test_addresses_that_do_more_than_lead_somewhere_are_not_linked(address: str) -> None:
    text = Prose(blocks=(Paragraph(spans=(Span(text="press here", link=address),)),))
    found = site()
    first = found.editions[0]
    plan = replace(first.plan, story=text, video=replace(first.plan.video, url=address))
    identity = replace(first.identity, contact=address)
    changed = replace(first, plan=plan, identity=identity)
    pages = site_texts(replace(found, identity=identity, editions=(changed,)))
    page = Tree(pages["plans/harbour-stool/index.html"])
    assert "press here" in page.text_of("main")
    assert "press here" not in [each.text for each in page.all("a")]
    assert "Watch the build" not in page.text_of("main")
    assert "Something wrong?" not in page.text_of("main")
    assert not [each for each in page.values("href") if "alert" in each]


def test_a_wrong_language_tag_is_not_passed_on() -> None:
    found = site()
    page = site_texts(replace(found, identity=replace(found.identity, language='x" onload="y')))
    assert Tree(page["index.html"]).all("html")[0].attributes == {"lang": "en"}


def test_a_day_far_back_is_still_a_day() -> None:
    found = site()
    trial = replace(found.trials[0], date=date(1, 1, 1))
    assert 'datetime="0001-01-01"' in site_texts(replace(found, trials=(trial,)))["log/index.html"]
