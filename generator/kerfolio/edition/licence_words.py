"""What a licence lets a reader do, in one plain sentence; the licence's own text decides."""

from __future__ import annotations

from kerfolio.edition.edition import Edition
from kerfolio.model.workshop import Identity

RULES = "This sentence is a summary, not legal advice; the text of the licence rules."

_COMMONS = "https://creativecommons.org/"
_LISTED = "https://spdx.org/licenses/"

_NAME = "if you name the maker"
_SAME = f"{_NAME} and share your changes under the same licence"
_FREE = "You may use, share and change these files and sell what you make"
_ASK = "ask the maker before you sell them or what you make from them"
_KEEP = "if you keep the licence and its notices with the files"

_SENTENCES: dict[str, str] = {
    "CC0-1.0": f"{_FREE}; nothing is asked of you.",
    "0BSD": f"{_FREE}; nothing is asked of you.",
    "Unlicense": f"{_FREE}; nothing is asked of you.",
    "CC-BY-4.0": f"{_FREE}, {_NAME}.",
    "CC-BY-SA-4.0": f"{_FREE}, {_SAME}.",
    "CC-BY-NC-4.0": f"You may share and change these files without profit, {_NAME}; {_ASK}.",
    "CC-BY-NC-SA-4.0": f"You may share and change these files without profit, {_SAME}; {_ASK}.",
    "CC-BY-ND-4.0": (
        f"You may share these files unchanged and sell what you make, {_NAME}; changed files "
        "(other sizes too) are not to be shared."
    ),
    "CC-BY-NC-ND-4.0": (
        f"You may share these files unchanged and without profit, {_NAME}; changed files are not "
        f"to be shared; {_ASK}."
    ),
    "CERN-OHL-P-2.0": f"{_FREE}, {_KEEP}.",
    "CERN-OHL-W-2.0": f"{_FREE}, {_KEEP} and share changes to these files under the same licence.",
    "CERN-OHL-S-2.0": f"{_FREE}, {_KEEP} and share what you build on them under the same licence.",
    "TAPR-OHL-1.0": f"{_FREE}, {_KEEP} and share changes to these files under the same licence.",
    "MIT": f"{_FREE}, {_KEEP}.",
    "Apache-2.0": f"{_FREE}, {_KEEP} and say what you changed.",
    "OFL-1.1": f"{_FREE}, {_KEEP}; the files are not to be sold by themselves.",
    "GPL-3.0-only": f"{_FREE}, {_KEEP} and share changed files under the same licence.",
    "GPL-3.0-or-later": f"{_FREE}, {_KEEP} and share changed files under the same licence.",
}


def licence_sentence(identifier: str) -> str:
    """Return the sentence for an SPDX id; without a known one, that the maker must be asked."""
    found = _SENTENCES.get(identifier)
    if found is None:
        return "No licence is stated: ask the maker before you share or sell anything made from it."
    return f"{found} Licence: {identifier}."


def licence_of(edition: Edition) -> str:
    """Return the SPDX id of the plan's licence, else the workshop's."""
    return edition.plan.licence or edition.identity.licence


def licence_address(identifier: str) -> str:
    """Return where the licence can be read: a Creative Commons deed, else SPDX's page.

    Empty for an id that ``licence_sentence`` does not know.
    """
    if identifier not in _SENTENCES:
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
    return f"Write to {identity.maker}: {address}" if address else ""
