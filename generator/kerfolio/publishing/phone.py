"""The page for the phone at the machine, written where the maker wants it."""

from __future__ import annotations

from pathlib import Path

from kerfolio.basis.finding import Finding
from kerfolio.disk.put import put
from kerfolio.pages.phone import phone_page
from kerfolio.publishing.known_plans import known_of
from kerfolio.reading.workshop import read_workshop


def write_phone_page(folder: Path, target: Path) -> tuple[Finding, ...]:
    """Write the page; the findings say why it could not be. Raises OSError."""
    workshop, findings = read_workshop(folder, pictures=False)
    if workshop is None:
        return findings
    put(target, phone_page(workshop.identity, known_of(workshop)).encode())
    return ()
