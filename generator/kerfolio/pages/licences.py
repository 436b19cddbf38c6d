"""What a licence lets a reader do, in plain words, and where its own text stands."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.edition.edition import Edition
from kerfolio.edition.licence_words import contact_address, licence_sentence
from kerfolio.pages.links import contact_href

RULES = "This sentence is a summary, not legal advice; the text of the licence rules."

_COMMONS = "https://creativecommons.org/"
_LISTED = "https://spdx.org/licenses/"


@dataclass(frozen=True, slots=True, kw_only=True)
class LicenceNote:
    """A licence as a page names it, and whom to ask.

    ``address`` is empty where no known licence is stated, ``contact`` where the maker states none,
    ``contact_href`` where that can be no link.
    """

    identifier: str
    sentence: str
    address: str
    maker: str
    contact: str
    contact_href: str


def licence_note(edition: Edition) -> LicenceNote:
    """Return the plan's licence, else the workshop's."""
    identity = edition.identity
    identifier = edition.plan.licence or identity.licence
    return LicenceNote(
        identifier=identifier,
        sentence=licence_sentence(identifier),
        address=licence_address(identifier),
        maker=identity.maker,
        contact=contact_address(identity),
        contact_href=contact_href(identity.contact),
    )


def licence_address(identifier: str) -> str:
    """Return where the licence can be read: a Creative Commons deed, else SPDX's page.

    Empty for an id that ``licence_sentence`` does not know.
    """
    if licence_sentence(identifier) == licence_sentence(""):
        return ""
    if identifier == "CC0-1.0":
        return f"{_COMMONS}publicdomain/zero/1.0/"
    if identifier.startswith("CC-"):
        kind, version = identifier.removeprefix("CC-").lower().rsplit("-", 1)
        return f"{_COMMONS}licenses/{kind}/{version}/"
    return f"{_LISTED}{identifier}.html"
