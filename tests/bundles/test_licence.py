"""Licence texts: every id a plan may carry has its whole text."""

from __future__ import annotations

import pytest

from kerfolio.bundles.licence import licence, licence_file
from kerfolio.reading.licences import LICENCES

# Words near the beginning and the last words of each text as its steward publishes it (Creative
# Commons, CERN, TAPR, OSI, Apache Software Foundation, FSF, SIL): a text cut short shows here.
CC_END = "Creative Commons may be contacted at creativecommons.org."
CERN_END = "third party beneficiary rights are specifically excluded."
GPL_END = "please read <https://www.gnu.org/philosophy/why-not-lgpl.html>."
CC = {
    "CC-BY-4.0": "Attribution 4.0 International",
    "CC-BY-SA-4.0": "Attribution-ShareAlike 4.0 International",
    "CC-BY-NC-4.0": "Attribution-NonCommercial 4.0 International",
    "CC-BY-NC-SA-4.0": "Attribution-NonCommercial-ShareAlike 4.0 International",
    "CC-BY-ND-4.0": "Attribution-NoDerivatives 4.0 International",
    "CC-BY-NC-ND-4.0": "Attribution-NonCommercial-NoDerivatives 4.0 International",
}
CERN = {
    "CERN-OHL-P-2.0": "CERN Open Hardware Licence Version 2 - Permissive",
    "CERN-OHL-W-2.0": "CERN Open Hardware Licence Version 2 - Weakly Reciprocal",
    "CERN-OHL-S-2.0": "CERN Open Hardware Licence Version 2 - Strongly Reciprocal",
}
WORDS = {
    **{name: (f"Creative Commons {title}", CC_END) for name, title in CC.items()},
    **{name: (title, CERN_END) for name, title in CERN.items()},
    "CC0-1.0": ("CC0 1.0 Universal", "with respect to this CC0 or use of the Work."),
    "TAPR-OHL-1.0": ("Version 1.0 (May 25, 2007)", "pursuant to this Agreement. ####"),
    "MIT": ("Permission is hereby granted, free of charge", "OTHER DEALINGS IN THE SOFTWARE."),
    "Apache-2.0": ("Version 2.0, January 2004", "limitations under the License."),
    "GPL-3.0-only": ("Version 3, 29 June 2007", GPL_END),
    "GPL-3.0-or-later": ("Version 3, 29 June 2007", GPL_END),
    "OFL-1.1": ("Version 1.1 - 26 February 2007", "OTHER DEALINGS IN THE FONT SOFTWARE."),
    "0BSD": ("Permission to use, copy, modify, and/or", "PERFORMANCE OF THIS SOFTWARE."),
    "Unlicense": ("free and unencumbered software", "refer to <http://unlicense.org/>"),
}


def test_every_licence_a_maker_may_choose_is_looked_at() -> None:
    assert set(WORDS) == set(LICENCES)


@pytest.mark.parametrize("identifier", LICENCES)
def test_each_licence_has_its_whole_text(identifier: str) -> None:
    found = licence(identifier)
    assert found is not None
    begins, ends = WORDS[identifier]
    text = " ".join(found.text.split())
    assert begins in text[:200]
    assert text.endswith(ends)
    assert len(text) > 500
    assert found.address.startswith("http")


def test_the_deeds_own_words_stand_in_the_text() -> None:
    found = licence("CC-BY-SA-4.0")
    assert found is not None
    # Section 3(b) of the Creative Commons Attribution-ShareAlike 4.0 legal code.
    assert "ShareAlike" in found.text
    assert "Adapted Material" in found.text
    assert "Section 8 – Interpretation." in found.text, "the last section"
    assert found.address == "https://creativecommons.org/licenses/by-sa/4.0/legalcode"


def test_an_unknown_id_is_none() -> None:
    assert licence("CC-BY-5.0") is None


def test_the_file_says_who_gives_what_in_plain_words_first() -> None:
    found = licence("CC0-1.0")
    assert found is not None
    sentence, contact = "You may do anything with it.", "Write to Ada Example: ada@example.org"
    text = licence_file("Desk rack", "Ada Example", sentence, contact, found)
    assert text.startswith(
        "Desk rack, by Ada Example, is shared under Creative Commons Zero v1.0\n"
        "Universal (CC0-1.0).\n\nYou may do anything with it.\n\n"
        "Write to Ada Example: ada@example.org\n\nhttp"
    )
    assert text.endswith("\n")
