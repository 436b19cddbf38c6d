"""What a site holds of plans that are left as they were published before."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from kerfolio.bundles.manifest import FileRow, PlanEntry
from kerfolio.disk.out_folder import entries_of, manifest_in


class ListingError(ValueError):
    """What a manifest says that lists tell of a plan cannot be read."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """Plans that stand in a site with their files, photos of the log among them.

    ``unknown`` names plans of which its manifest does not say what lists tell.
    """

    entries: tuple[PlanEntry, ...] = ()
    files: tuple[FileRow, ...] = ()
    unknown: tuple[str, ...] = ()


def standing_in(out: Path, renewed: str) -> Standing:
    """Return what a site holds besides the plan that is renewed; nothing where there is none."""
    manifest = manifest_in(out) or {}
    rows = [each for each in plan_rows(manifest) if each["name"] != renewed]
    entries = [(row["name"], _entry(row)) for row in rows]
    homes = tuple(f"plans/{name}/" for name, _ in entries)
    there = set(entries_of(out)) if entries else set()
    return Standing(
        entries=tuple(each for _, each in entries if each),
        unknown=tuple(sorted(name for name, each in entries if each is None)),
        files=tuple(
            row
            for row in file_rows(manifest)
            if row.name in there and (row.name.startswith(homes) or _is_log_photo(row.name))
        ),
    )


def file_rows(manifest: dict[str, Any]) -> Iterator[FileRow]:
    """Yield what a manifest says of files, as far as it can be read."""
    for row in _rows(manifest, "files"):
        size, total = row.get("bytes"), row.get("sha256")
        if isinstance(size, int) and isinstance(total, str):
            yield FileRow(row["name"], size, total)


def plan_rows(manifest: dict[str, Any]) -> list[dict[str, Any]]:
    """Return what a manifest says of plans, as far as each has a name."""
    return _rows(manifest, "plans")


def _is_log_photo(name: str) -> bool:
    return name.startswith("log/") and name.endswith(".jpg")


def _rows(manifest: dict[str, Any], key: str) -> list[dict[str, Any]]:
    rows = manifest.get(key)
    found = rows if isinstance(rows, list) else []
    return [each for each in found if isinstance(each, dict) and isinstance(each.get("name"), str)]


def _entry(row: dict[str, Any]) -> PlanEntry | None:
    bundle, listed = row.get("bundle"), row.get("listed")
    if not isinstance(bundle, dict) or not isinstance(listed, dict) or not listed:
        return None
    try:
        return PlanEntry(
            name=row["name"],
            title=row["title"],
            version=row["version"],
            access=row["access"],
            bundle=bundle["name"],
            bundle_bytes=bundle["bytes"],
            bundle_sha256=bundle.get("sha256", ""),
            sealed=bundle.get("sealed", ""),
            listed=listed,
        )
    except KeyError:
        return None
