"""The manifest: every plan, version and file of a published site with size and SHA-256."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, NamedTuple

from kerfolio.bundles.archive import sha256

FORMAT = "kerfolio-manifest/1"


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanEntry:
    """A plan of the site: its address name, title, version, access and bundle file's name.

    The check sum is empty where the plan keeps it back. ``listed`` is what lists, feed and map tell
    of it, as plain values: a publish of another plan alone takes it from here. ``sealed`` is the
    file of the site that the bundle is sealed into, empty where it is not.
    """

    name: str
    title: str
    version: str
    access: str
    bundle: str
    bundle_bytes: int
    bundle_sha256: str
    listed: Mapping[str, Any] = field(default_factory=dict)
    sealed: str = ""


class FileRow(NamedTuple):
    """A file of the site by its name, with its size in bytes and its SHA-256."""

    name: str
    size: int
    sha256: str


def rows_of(files: Mapping[str, bytes]) -> tuple[FileRow, ...]:
    """Return the rows of files."""
    return tuple(FileRow(name, len(files[name]), sha256(files[name])) for name in sorted(files))


def manifest_text(plans: Sequence[PlanEntry], files: Iterable[FileRow]) -> str:
    """Return ``manifest.json``; the bundle of a supporters' plan is named but is not a file.

    Where it is sealed, its row says into which file.
    """
    content = {
        "format": FORMAT,
        "plans": [plan_row(plan) for plan in sorted(plans, key=lambda each: each.name)],
        "files": [
            {"name": each.name, "bytes": each.size, "sha256": each.sha256} for each in sorted(files)
        ],
    }
    return json.dumps(content, indent=2, ensure_ascii=False) + "\n"


def plan_row(plan: PlanEntry) -> dict[str, Any]:
    """Return a plan as the manifest tells it."""
    return {
        "name": plan.name,
        "title": plan.title,
        "version": plan.version,
        "access": plan.access,
        "bundle": {
            "name": plan.bundle,
            "bytes": plan.bundle_bytes,
            **({"sha256": plan.bundle_sha256} if plan.bundle_sha256 else {}),
            **({"sealed": plan.sealed} if plan.sealed else {}),
        },
        "listed": dict(plan.listed),
    }
