"""What a licence lets a reader do, in plain words, and where its own text stands."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.edition.edition import Edition
from kerfolio.edition.licence_words import (
    contact_address,
    licence_address,
    licence_of,
    licence_sentence,
)
from kerfolio.pages.links import contact_href


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
    identifier = licence_of(edition)
    return LicenceNote(
        identifier=identifier,
        sentence=licence_sentence(identifier),
        address=licence_address(identifier),
        maker=identity.maker,
        contact=contact_address(identity),
        contact_href=contact_href(identity.contact),
    )
