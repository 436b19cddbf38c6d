"""The feed against RFC 4287 (Atom) and RFC 3339 (date and time)."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from dataclasses import replace

import pytest

from kerfolio.pages.feed import feed_xml
from kerfolio.pages.site import Site
from tests.pages.invented import site

ATOM = "{http://www.w3.org/2005/Atom}"
MOMENT = re.compile(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?(Z|[+-]\d\d:\d\d)")
"""RFC 3339 section 5.6, with the upper-case T and Z that RFC 4287 section 3.3 asks for."""
ABSOLUTE = re.compile(r"[a-z][a-z0-9+.-]*:.+")


def without_address() -> Site:
    found = site()
    return replace(found, identity=replace(found.identity, base_url=""))


feeds = pytest.mark.parametrize("feed", [feed_xml(site()), feed_xml(without_address())])


def text(parent: ET.Element, tag: str) -> str:
    """Return the text of the one child of a tag; exactly one is required."""
    found = parent.findall(ATOM + tag)
    assert len(found) == 1, f"{len(found)} x {tag}"
    assert found[0].text
    return found[0].text


@feeds
def test_feed_has_what_section_4_1_1_requires(feed: str) -> None:
    root = ET.fromstring(feed)
    assert root.tag == f"{ATOM}feed"
    assert ABSOLUTE.fullmatch(text(root, "id"))
    assert text(root, "title") == "Fernhill Bench"
    assert MOMENT.fullmatch(text(root, "updated"))
    author = root.find(f"{ATOM}author")
    assert author is not None
    assert text(author, "name") == "Ida Fernhill"
    links = [(each.get("rel"), each.get("type")) for each in root.findall(f"{ATOM}link")]
    assert links == [("self", "application/atom+xml"), ("alternate", "text/html")]


@feeds
def test_entries_have_what_section_4_1_2_requires(feed: str) -> None:
    entries = ET.fromstring(feed).findall(f"{ATOM}entry")
    assert [text(each, "title") for each in entries] == [
        "Harbour stool 1.2.0",
        "Harbour stool 1.1.0, a correction",
        "Potting bench 0.9.0",
    ]
    identifiers = [text(each, "id") for each in entries]
    assert len(set(identifiers)) == len(entries)
    assert all(ABSOLUTE.fullmatch(each) for each in identifiers)
    for entry in entries:
        assert MOMENT.fullmatch(text(entry, "updated"))
        assert MOMENT.fullmatch(text(entry, "published"))
        assert [each.get("rel") for each in entry.findall(f"{ATOM}link")] == ["alternate"]
        assert text(entry, "content")


def test_times_are_those_of_the_releases() -> None:
    root = ET.fromstring(feed_xml(site()))
    assert text(root, "updated") == "2026-10-02T00:00:00Z"
    assert [text(each, "updated") for each in root.findall(f"{ATOM}entry")] == [
        "2026-10-02T00:00:00Z",
        "2026-05-09T00:00:00Z",
        "2026-04-03T00:00:00Z",
    ]


def test_an_entry_leads_to_its_release() -> None:
    entry = ET.fromstring(feed_xml(site())).findall(f"{ATOM}entry")[0]
    link = entry.findall(f"{ATOM}link")[0]
    assert link.get("href") == "https://example.org/plans/harbour-stool/#release-1.2.0"
    content = entry.find(f"{ATOM}content")
    assert content is not None
    assert content.get("type") == "html"
    assert content.text == (
        '<p><img src="https://example.org/plans/harbour-stool/photos/finished-960.jpg" '
        'alt="The finished stool"></p><p>Slots moved 12 mm inward.</p>'
    )


def test_without_an_address_entries_are_words_alone() -> None:
    entry = ET.fromstring(feed_xml(without_address())).findall(f"{ATOM}entry")[0]
    assert text(entry, "content") == "Slots moved 12 mm inward."


def test_an_entry_keeps_its_identifier_when_another_release_comes() -> None:
    found = site()
    first = found.editions[0]
    older = replace(first, plan=replace(first.plan, releases=first.plan.releases[1:]))
    before = ET.fromstring(feed_xml(replace(found, editions=(older,))))
    after = ET.fromstring(feed_xml(replace(found, editions=(first,))))
    known = {text(each, "id") for each in before.findall(f"{ATOM}entry")}
    assert known < {text(each, "id") for each in after.findall(f"{ATOM}entry")}


def test_a_site_without_plans_has_a_valid_empty_feed() -> None:
    root = ET.fromstring(feed_xml(replace(site(), editions=(), files={})))
    assert MOMENT.fullmatch(text(root, "updated"))
    assert root.findall(f"{ATOM}entry") == []
