"""The maker's own page of all trials; it never goes under OUT."""

from __future__ import annotations

from pathlib import Path

from kerfolio.basis.finding import Finding, in_order
from kerfolio.disk.put import put
from kerfolio.model.workshop import Workshop
from kerfolio.pages.log import private_log_page
from kerfolio.publishing.plans_now import now_in
from kerfolio.publishing.sources import PRIVATE_LOG
from kerfolio.reading.workshop import read_workshop


def read_log(folder: Path) -> tuple[Workshop | None, tuple[Finding, ...]]:
    """Read a workshop for its log alone: no plan is proved."""
    workshop, findings = read_workshop(folder, pictures=False)
    kept = (f for f in findings if workshop is None or f.place.file.startswith("log/"))
    return workshop, in_order(kept)


def write_private_log(folder: Path, workshop: Workshop) -> Path:
    """Write the private log page into the workshop and return its path. Raises OSError."""
    target = folder / PRIVATE_LOG
    put(target, private_log_page(workshop, now_in(workshop)).encode())
    return target
