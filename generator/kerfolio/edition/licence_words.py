"""What a licence lets a reader do, in one plain sentence; the licence's own text decides."""

from __future__ import annotations

from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.edition.edition import Edition
from kerfolio.model.workshop import Identity

_COMMONS = "https://creativecommons.org/"
_LISTED = "https://spdx.org/licenses/"

_ASKS: dict[str, str] = {
    "CC0-1.0": "nothing",
    "0BSD": "nothing",
    "Unlicense": "nothing",
    "CC-BY-4.0": "name",
    "CC-BY-SA-4.0": "name-same",
    "CC-BY-NC-4.0": "no-profit",
    "CC-BY-NC-SA-4.0": "no-profit-same",
    "CC-BY-ND-4.0": "unchanged",
    "CC-BY-NC-ND-4.0": "unchanged-no-profit",
    "CERN-OHL-P-2.0": "keep",
    "CERN-OHL-W-2.0": "keep-share",
    "CERN-OHL-S-2.0": "keep-built",
    "TAPR-OHL-1.0": "keep-share",
    "MIT": "keep",
    "Apache-2.0": "keep-say",
    "OFL-1.1": "keep-not-sold",
    "GPL-3.0-only": "keep-changed",
    "GPL-3.0-or-later": "keep-changed",
}
"""What each licence asks, by the name of its sentence."""


def licence_sentence(identifier: str, reader: Reader) -> str:
    """Return the sentence for an SPDX id; without a known one, that the maker must be asked."""
    asks = _ASKS.get(identifier)
    if asks is None:
        return say(reader, "licencewords-none")
    sentence = say(reader, f"licencewords-asks-{asks}")
    return f"{sentence} {say(reader, 'licencewords-called', licence=identifier)}"


def licence_rules(reader: Reader) -> str:
    """Return that the sentence decides nothing, but the text of the licence."""
    return say(reader, "licencewords-rules")


def licence_of(edition: Edition) -> str:
    """Return the SPDX id of the plan's licence, else the workshop's."""
    return edition.plan.licence or edition.identity.licence


def licence_address(identifier: str) -> str:
    """Return where the licence can be read: a Creative Commons deed, else SPDX's page.

    Empty for an id that ``licence_sentence`` does not know.
    """
    if identifier not in _ASKS:
        return ""
    if identifier == "CC0-1.0":
        return f"{_COMMONS}publicdomain/zero/1.0/"
    if identifier.startswith("CC-"):
        kind, version = identifier.removeprefix("CC-").lower().rsplit("-", 1)
        return f"{_COMMONS}licenses/{kind}/{version}/"
    return f"{_LISTED}{identifier}.html"


def contact_address(identity: Identity) -> str:
    """Return how readers reach the maker, as it is read; empty where nothing is stated."""
    return identity.contact.strip().removeprefix("mailto:")


def contact_words(identity: Identity) -> str:
    """Return where the maker is asked: ``Write to Ada: ada@example.org``; empty without one."""
    address = contact_address(identity)
    if not address:
        return ""
    return say(identity.reader, "licencewords-write", maker=identity.maker, address=address)
