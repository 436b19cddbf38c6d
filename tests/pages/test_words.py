"""How pages say numbers, against published definitions."""

from __future__ import annotations

from decimal import Decimal

import pytest

from kerfolio.basis.figures import bytes_text, minutes_text, money_text
from kerfolio.basis.reader import METRIC
from kerfolio.basis.words import listed
from kerfolio.edition.licence_words import licence_address, licence_sentence
from kerfolio.pages.links import contact_href, safe_href, web_href
from kerfolio.pages.running_text import chapters
from tests.pages.invented import PAGE, heading, paragraph

LISTED = (
    *("CC0-1.0", "CC-BY-4.0", "CC-BY-SA-4.0", "CC-BY-NC-4.0", "CC-BY-NC-SA-4.0"),
    *("CC-BY-ND-4.0", "CC-BY-NC-ND-4.0", "CERN-OHL-P-2.0", "CERN-OHL-W-2.0", "CERN-OHL-S-2.0"),
    *("TAPR-OHL-1.0", "MIT", "Apache-2.0", "GPL-3.0-only", "GPL-3.0-or-later", "OFL-1.1"),
    *("0BSD", "Unlicense"),
)


@pytest.mark.parametrize(
    ("minutes", "text"),
    [(0.2, "1 minute"), (25, "25 minutes"), (60, "1 h"), (80, "1 h 20 min"), (119.6, "2 h")],
)
def test_minutes(minutes: float, text: str) -> None:
    assert minutes_text(minutes) == text


@pytest.mark.parametrize(
    ("size", "text"),
    [(1, "1 byte"), (999, "999 bytes"), (640_400, "640 kB"), (2_345_678, "2.3 MB")],
)
def test_sizes_of_files_by_the_si_prefixes(size: int, text: str) -> None:
    assert bytes_text(size) == text


def test_days_money_and_lists() -> None:
    assert money_text(Decimal("92.5"), "EUR") == "92.50 EUR"
    assert listed(["a", "b", "c"]) == "a, b and c"
    assert listed([]) == ""


@pytest.mark.parametrize("identifier", LISTED)
def test_every_listed_licence_has_a_sentence_and_an_address(identifier: str) -> None:
    """The ids are those of the SPDX licence list."""
    assert licence_sentence(identifier, METRIC) != licence_sentence("no such licence", METRIC)
    assert licence_address(identifier).startswith("https://")


def test_addresses_of_licences() -> None:
    """As the deeds and the SPDX list are addressed by those who publish them."""
    assert licence_address("CC-BY-NC-SA-4.0") == (
        "https://creativecommons.org/licenses/by-nc-sa/4.0/"
    )
    assert licence_address("CC0-1.0") == "https://creativecommons.org/publicdomain/zero/1.0/"
    assert licence_address("CERN-OHL-S-2.0") == "https://spdx.org/licenses/CERN-OHL-S-2.0.html"
    assert licence_address("") == ""


@pytest.mark.parametrize(
    ("address", "link"),
    [
        ("https://example.org/a b", "https://example.org/ab"),
        ("https://example.org/ü?q=1&r=[x]#y", "https://example.org/%C3%BC?q=1&r=%5Bx%5D#y"),
        ("https://bücher.example/x", "https://xn--bcher-kva.example/x"),
        ("https://[2001:db8::1]:8080/x", "https://[2001:db8::1]:8080/x"),
        ("https://example.org/100%", "https://example.org/100%25"),
        ("mailto:a@example.org", "mailto:a@example.org"),
        ("../plans/index.html#x", "../plans/index.html#x"),
        ("#here", "#here"),
        ("https://[broken", ""),
    ],
)
def test_addresses_fit_for_a_link(address: str, link: str) -> None:
    """Host of other letters: RFC 3492's own prefix form; IPv6 host: RFC 3986 section 3.2.2."""
    assert safe_href(address) == link


def test_only_addresses_with_a_scheme_leave_a_lone_page() -> None:
    assert safe_href("about/index.html", absolute=True) == ""
    assert web_href("mailto:a@example.org") == ""
    assert contact_href("ida@example.org") == "mailto:ida@example.org"
    assert contact_href("just ask") == ""


def test_a_page_is_cut_at_its_highest_headings() -> None:
    found = chapters(PAGE.text)
    assert ["".join(span.text for span in each.head) for each in found] == ["", "Who", "Licence"]
    assert [len(each.text.blocks) for each in found] == [1, 3, 4]
    assert found[1].text.blocks[1] == heading("Tools", 1)
    plain = type(PAGE.text)(blocks=(paragraph(),))
    assert [each.head for each in chapters(plain)] == [()]
