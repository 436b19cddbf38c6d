"""The site map against the protocol of sitemaps.org, version 0.9."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from dataclasses import replace

from kerfolio.pages.all_pages import site_pages
from kerfolio.pages.site import Site
from kerfolio.pages.sitemap import MOST_ADDRESSES, sitemap_xml
from tests.pages.invented import PAGE, site

MAP = "{http://www.sitemaps.org/schemas/sitemap/0.9}"
W3C_DATE = re.compile(r"\d{4}-\d\d-\d\d")
"""The complete date of the W3C note "Date and Time Formats"."""


def map_of(found: Site) -> str | None:
    return sitemap_xml(found, tuple(site_pages(found)))


def entries(text: str | None) -> dict[str, str]:
    assert text is not None
    root = ET.fromstring(text)
    assert root.tag == f"{MAP}urlset"
    found = {}
    for each in root:
        assert each.tag == f"{MAP}url"
        assert [child.tag for child in each][:1] == [f"{MAP}loc"]
        assert {child.tag for child in each} <= {f"{MAP}loc", f"{MAP}lastmod"}
        found[each[0].text or ""] = (each[1].text or "") if len(each) > 1 else ""
    return found


def test_every_page_with_the_day_of_its_content() -> None:
    home = "https://example.org/"
    assert entries(map_of(site())) == {
        home: "2026-10-02",
        f"{home}plans/": "2026-10-02",
        f"{home}plans/harbour-stool/": "2026-10-02",
        f"{home}plans/harbour-stool/steps/": "2026-10-02",
        f"{home}plans/harbour-stool/yard/": "2026-10-02",
        f"{home}plans/potting-bench/": "2026-04-03",
        f"{home}plans/potting-bench/steps/": "2026-04-03",
        f"{home}about/": "",
        f"{home}stock/": "",
        f"{home}log/": "2026-09-30",
    }


def test_days_are_w3c_dates_and_addresses_lie_under_the_site() -> None:
    for address, day in entries(map_of(site())).items():
        assert address.startswith("https://example.org/")
        assert len(address) < 2048
        assert day == "" or W3C_DATE.fullmatch(day)


def test_a_base_address_in_a_folder_keeps_the_folder() -> None:
    found = site()
    inside = replace(found, identity=replace(found.identity, base_url="https://example.org/a&b"))
    text = map_of(inside)
    assert text is not None
    assert "<loc>https://example.org/a&amp;b/plans/</loc>" in text
    assert "https://example.org/a&b/plans/" in entries(text)


def test_without_a_base_address_there_is_none() -> None:
    found = site()
    assert map_of(replace(found, identity=replace(found.identity, base_url=" "))) is None


def test_no_more_addresses_than_the_protocol_allows() -> None:
    assert MOST_ADDRESSES == 50_000
    many = tuple(replace(PAGE, name=f"p{n}") for n in range(MOST_ADDRESSES + 5))
    found = entries(map_of(replace(site(), pages=many)))
    assert len(found) == MOST_ADDRESSES
