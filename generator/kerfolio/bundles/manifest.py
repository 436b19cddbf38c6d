"""The manifest: every plan, version and file of a published site with size and SHA-256."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from kerfolio.bundles.archive import sha256

FORMAT = "kerfolio-manifest/1"


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanEntry:
    """A plan of the site: its address name, title, version, access and bundle file's name.

    The check sum is empty where the plan keeps it back.
    """

    name: str
    title: str
    version: str
    access: str
    bundle: str
    bundle_bytes: int
    bundle_sha256: str


def manifest_text(plans: Sequence[PlanEntry], files: Mapping[str, bytes]) -> str:
    """Return ``manifest.json``; the bundle of a supporters' plan is named but is not a file."""
    content = {
        "format": FORMAT,
        "plans": [
            {
                "name": plan.name,
                "title": plan.title,
                "version": plan.version,
                "access": plan.access,
                "bundle": {
                    "name": plan.bundle,
                    "bytes": plan.bundle_bytes,
                    **({"sha256": plan.bundle_sha256} if plan.bundle_sha256 else {}),
                },
            }
            for plan in sorted(plans, key=lambda each: each.name)
        ],
        "files": [
            {"name": name, "bytes": len(files[name]), "sha256": sha256(files[name])}
            for name in sorted(files)
        ],
    }
    return json.dumps(content, indent=2, ensure_ascii=False) + "\n"
