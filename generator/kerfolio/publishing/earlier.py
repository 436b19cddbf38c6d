"""Bundles of earlier releases: they stay where readers have found them."""

from __future__ import annotations

import re
from collections.abc import Iterable
from pathlib import Path
from typing import Any

from kerfolio.basis.finding import Finding, warning
from kerfolio.basis.place import Place
from kerfolio.bundles.archive import sha256
from kerfolio.bundles.manifest import FileRow, PlanEntry
from kerfolio.disk.out_folder import manifest_in
from kerfolio.model.access import OPEN

_SEALED = ".sealed"


def earlier_bundles(
    out: Path, plans: Iterable[PlanEntry]
) -> tuple[tuple[FileRow, ...], tuple[Finding, ...]]:
    """Return the bundles in a site that are of other releases of plans, as its manifest lists them.

    Those stay that are what the manifest says, to the sum; a warning tells of any other. Of a
    supporters' plan only what is sealed stays, of an open one what is not.
    """
    rows = (manifest_in(out) or {}).get("files")
    found = [each for each in rows if _is_row(each)] if isinstance(rows, list) else []
    kept: list[FileRow] = []
    damaged: list[Finding] = []
    for plan in plans:
        ending = "" if plan.access == OPEN else _SEALED
        form = rf"plans/{plan.name}/downloads/{plan.name}-[0-9]+\.[0-9]+\.[0-9]+\.zip{ending}"
        current = f"{plan.bundle.removesuffix(_SEALED)}{ending}"
        for row in found:
            name = row["name"]
            if not re.fullmatch(form, name) or name.endswith(f"/{current}"):
                continue
            if _is_whole(out / name, row):
                kept.append(FileRow(name, row["bytes"], row["sha256"]))
            else:
                damaged.append(_lost(name))
    return tuple(kept), tuple(damaged)


def _is_row(row: Any) -> bool:
    kinds = {"name": str, "bytes": int, "sha256": str}
    return isinstance(row, dict) and all(isinstance(row.get(k), v) for k, v in kinds.items())


def _is_whole(file: Path, row: dict[str, Any]) -> bool:
    """Tell whether a file is the one that was published; no link is followed."""
    try:
        if file.is_symlink() or not file.is_file():
            return False
        content = file.read_bytes()
    except OSError:
        return False
    return (len(content), sha256(content)) == (row["bytes"], row["sha256"])


def _lost(name: str) -> Finding:
    message = f"`{name}` is gone, or not what was published: it is not handed on"
    advice = "Lay it back from where you keep your files, beside the site, and publish again."
    return warning("earlier-bundle", message, Place(name), advice)
