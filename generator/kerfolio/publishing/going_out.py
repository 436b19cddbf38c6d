"""What keys and days make of a publish: which bundles go out sealed, and what is told of that."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from datetime import date
from pathlib import Path

from kerfolio.basis.finding import Finding, error, note, warning
from kerfolio.basis.place import Place
from kerfolio.disk.out_folder import manifest_in
from kerfolio.publishing.cabinet import Cabinet, cabinet_faults
from kerfolio.publishing.plan_record import Proved, Written
from kerfolio.publishing.standing import plan_rows
from kerfolio.publishing.way_out import HandingOut, Way
from kerfolio.sealing.fault import SealError


def handing_of(
    cabinet: Cabinet, workshop: Path, outs: tuple[Path, ...], day: str
) -> tuple[HandingOut, tuple[Finding, ...]]:
    """Return what decides on the way of bundles, with what is found about the cabinet.

    Where it cannot be used an error says so. Raises OSError.
    """
    findings = tuple(cabinet_faults(cabinet, workshop, outs)) if cabinet.folder.is_dir() else ()
    try:
        rings = cabinet.rings()
    except SealError as wrong:
        damaged = error("keys-damaged", str(wrong), Place(str(cabinet.folder)), wrong.advice)
        return HandingOut(day=day), (*findings, damaged)
    circles = tuple(name for name, ring in rings.items() if ring.holding)
    return HandingOut(day=day, circles=circles), findings if rings else ()


def still_closed(
    handing: HandingOut, proved: Iterable[Proved], today: date | None
) -> Iterator[Finding]:
    """Yield a note for each plan whose day to open to all has come by the clock, ``today``."""
    now = today.isoformat() if today else ""
    for each in proved:
        access = each.access
        if handing.way_of(access) is not Way.TO_ALL and access.opens and access.opens <= now:
            message = f"by this machine's clock its day to open to all has come: {access.opens}"
            advice = f"Publish with `--day {now}` to open it; then write `access: open`."
            yield note("day-has-come", message, each.place, advice)


def no_longer_sealed(out: Path, written: Mapping[str, Written]) -> Iterator[Finding]:
    """Yield a warning for each bundle that the last site has sealed, and this one not at all."""
    for row in plan_rows(manifest_in(out) or {}):
        each, bundle = written.get(row["name"]), row.get("bundle")
        was = isinstance(bundle, dict) and bundle.get("sealed")
        if was and each is not None and each.public is not None and not each.entry.sealed:
            message = f"the bundle of `{row['name']}` was on the site, sealed, and no longer is"
            advice = "No key of its circle was found. `kerfolio seal list` says where keys lie."
            yield warning("no-longer-sealed", message, Place(str(out)), advice)
