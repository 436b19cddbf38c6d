"""The report of a proof, written into a folder: taken from what is kept where nothing changed."""

from __future__ import annotations

import json
from pathlib import Path

from kerfolio.basis.finding import Finding
from kerfolio.disk.put import put
from kerfolio.keeping.findings import findings_json, findings_of
from kerfolio.keeping.pack import packed, unpacked
from kerfolio.keeping.program import key_of
from kerfolio.keeping.store import Store
from kerfolio.publishing.say import Say
from kerfolio.publishing.sources import sources_of, store_of

FILE = "index.html"


def write_report(
    folder: Path, workshop: Path, only: str, say: Say
) -> tuple[tuple[Finding, ...], Path]:
    """Prove a workshop, or its plan ``only``; return what is found and the report's path.

    The report is one file: style and pictures lie in it. Other files of the folder are left alone.
    Raises OSError.
    """
    target = folder / FILE
    with store_of(workshop) as store:
        key = _key(workshop, only, store)
        found = store.get(key) if key else None
        if found is None:
            found = _made(workshop, only, say)
            if key and _key(workshop, only, store) == key:
                store.put(key, found)
    files = dict(unpacked(found))
    put(target, files[FILE])
    return findings_of(json.loads(files["findings"])), target


def _key(workshop: Path, only: str, store: Store) -> str:
    """Return the key of a report; empty where what plans share has errors."""
    sources = sources_of(workshop, store)
    if sources is None:
        return ""
    plans = sources.of_plans(sources.plans)
    return key_of("report", sources.whole, only, json.dumps(list(plans.items())))


def _made(workshop: Path, only: str, say: Say) -> bytes:
    from kerfolio.publishing.examine import examine  # which take long to load
    from kerfolio.publishing.fresh import foretold
    from kerfolio.publishing.report import report_of
    from kerfolio.publishing.swapping import with_swaps

    examined = foretold(with_swaps(examine(workshop, only, say), say))
    findings = json.dumps(findings_json(examined.findings)).encode()
    return packed({FILE: report_of(examined).encode(), "findings": findings})
