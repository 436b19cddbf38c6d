"""Licence texts: every id a plan may carry has its whole text."""

from __future__ import annotations

import pytest

from kerfolio.bundles.licence import licence, licence_file

# SPDX licence list, ids as stated in the list (release 3.29).
IDS = (
    *("CC0-1.0", "CC-BY-4.0", "CC-BY-SA-4.0", "CC-BY-NC-4.0", "CC-BY-NC-SA-4.0", "CC-BY-ND-4.0"),
    *("CC-BY-NC-ND-4.0", "CERN-OHL-P-2.0", "CERN-OHL-W-2.0", "CERN-OHL-S-2.0", "TAPR-OHL-1.0"),
    *("MIT", "Apache-2.0", "GPL-3.0-only", "GPL-3.0-or-later", "OFL-1.1", "0BSD", "Unlicense"),
)


@pytest.mark.parametrize("identifier", IDS)
def test_each_licence_has_its_text(identifier: str) -> None:
    found = licence(identifier)
    assert found is not None
    assert len(found.text) > 500


def test_the_deeds_own_words_stand_in_the_text() -> None:
    found = licence("CC-BY-SA-4.0")
    assert found is not None
    # Section 3(b) of the Creative Commons Attribution-ShareAlike 4.0 legal code.
    assert "ShareAlike" in found.text
    assert "Adapted Material" in found.text
    assert found.address == "https://creativecommons.org/licenses/by-sa/4.0/legalcode"


def test_an_unknown_id_is_none() -> None:
    assert licence("CC-BY-5.0") is None


def test_the_file_says_who_gives_what_in_plain_words_first() -> None:
    found = licence("CC0-1.0")
    assert found is not None
    text = licence_file("Desk rack", "Ada Example", "You may do anything with it.", found)
    assert text.startswith(
        "Desk rack, by Ada Example, is shared under Creative Commons Zero v1.0\n"
        "Universal (CC0-1.0).\n\nYou may do anything with it.\n"
    )
    assert text.endswith("\n")
