"""Layouts that were computed anew: as they are to be frozen, and as a proof foretells them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from pathlib import Path

from kerfolio.basis.finding import Finding, in_order, note
from kerfolio.basis.place import NOWHERE, Place
from kerfolio.layouts.check import layout_place
from kerfolio.layouts.fingerprint import placements_digest
from kerfolio.layouts.frozen import CHANGED, freeze
from kerfolio.layouts.layout import Layout
from kerfolio.publishing.examine import Examined
from kerfolio.publishing.freeze import Fresh, reason_to_keep
from kerfolio.publishing.laid_out import LaidOut
from kerfolio.publishing.plan_record import Proved
from kerfolio.publishing.released import as_note, newest_of
from kerfolio.publishing.still_released import changed_in_proof
from kerfolio.publishing.way_out import Access, access_of
from kerfolio.settling.also_for import on_sheet


def fresh_layouts(found: Iterable[LaidOut]) -> tuple[Fresh, ...]:
    """Return the layouts of plans that are to be written."""
    return tuple(fresh for each in found for fresh, _ in _fresh(each))


def foretold(examined: Examined) -> Examined:
    """Add a note for each frozen layout that the next publish will compute anew."""
    notes = (
        _stale(fresh, text)
        for laid_out in examined.laid_out
        for fresh, text in _fresh(laid_out)
        if fresh.why == CHANGED
    )
    return replace(examined, findings=in_order((*examined.findings, *notes)))


def proved_of(name: str, examined: Examined) -> Proved:
    """Return what came of one plan, examined by itself."""
    plan = next(iter(examined.workshop.plans), None) if examined.workshop else None
    known = set(examined.findings)
    return Proved(
        name=name,
        title=plan.title if plan else "",
        place=plan.place if plan else NOWHERE,
        findings=examined.findings,
        stale=(
            *(each for each in foretold(examined).findings if each not in known),
            *(
                as_note(each)
                for found in examined.laid_out
                for each in changed_in_proof(found.proof)
            ),
        ),
        newest=newest_of(plan),
        layouts=fresh_layouts(examined.laid_out),
        quiet=examined.quiet,
        access=access_of(plan) if plan else Access(),
    )


def _fresh(found: LaidOut) -> Iterator[tuple[Fresh, str]]:
    """Yield the layouts of a plan that were computed anew, each with what was read at its place.

    Its own comes first, then those for other sheets and beds.
    """
    plan, settled = found.proof.plan, found.proof.points[0]
    if found.fresh:
        yield _as_frozen(layout_place(settled), found.layout, found.fresh), plan.layout_text
    texts = dict(plan.other_layouts)
    for each in found.others:
        if each.fresh:
            place = layout_place(on_sheet(settled, each.sheet))
            yield _as_frozen(place, each.layout, each.fresh), texts.get(each.sheet.label, "")


def _as_frozen(place: Place, layout: Layout, why: str) -> Fresh:
    return Fresh(
        file=place.file,
        text=freeze(layout),
        why=why,
        lying=placements_digest(layout.sheets),
        sheets=len(layout.sheets),
        engine=layout.engine,
    )


def _stale(fresh: Fresh, text: str) -> Finding:
    reason = reason_to_keep(text, fresh)
    spare = Path(fresh.file).stem
    kept = f" This one is then kept as `{spare}.previous.json`: {reason}." if reason else ""
    advice = f"`kerfolio publish` and `kerfolio layout` compute the layout anew.{kept}"
    return note("layout-stale", CHANGED, Place(fresh.file), advice)
