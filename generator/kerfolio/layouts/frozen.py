"""The frozen layout beside a plan: writing it, keeping it, and telling what would be lost."""

from __future__ import annotations

import json
import re
from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import Any

from kerfolio.basis.digits import rounded
from kerfolio.basis.finding import Finding
from kerfolio.basis.place import Place
from kerfolio.layouts.check import first_faults, layout_place
from kerfolio.layouts.effort import EFFORT, Effort
from kerfolio.layouts.engine import OWN, Engine
from kerfolio.layouts.fingerprint import fingerprint, placements_digest
from kerfolio.layouts.layout import COORDINATE_DECIMALS, CopiesCount, Layout, Placement, SheetLayout
from kerfolio.layouts.thawing import FORMAT, thaw
from kerfolio.settling.settled import SettledPlan

MISSING = "there was none"
CHANGED = "the parts or sheets have changed"
UNCOUNTED = "the sheets for several copies are counted now"


def freeze(layout: Layout) -> str:
    """Return a layout as JSON text, one piece a line, coordinates to 0.001 mm."""
    sheets = ",\n".join(_sheet(each) for each in layout.sheets)
    head = {
        "as-computed": layout.as_computed,
        "bound": dict(layout.bounds),
        "computed-from": layout.computed_from,
        "copies": [_copies(each) for each in layout.copies],
        "engine": layout.engine,
        "format": FORMAT,
        "seed": layout.seed,
    }
    lines = [f"  {json.dumps(key)}: {json.dumps(value)}," for key, value in head.items()]
    body = f"[\n{sheets}\n  ]" if sheets else "[]"
    return "\n".join(("{", *lines, f'  "sheets": {body}', "}", ""))


def _copies(each: CopiesCount) -> dict[str, Any]:
    size = [_number(side) for side in each.size]
    return {"counts": each.counts, "sheet": each.sheet, "size": size}


def _sheet(sheet: SheetLayout) -> str:
    pieces = ",\n".join(f"        {_piece(each)}" for each in sheet.placements)
    size = json.dumps([_number(side) for side in sheet.size])
    return (
        f'    {{\n      "number": {sheet.number},\n      "pieces": [\n{pieces}\n      ],\n'
        f'      "sheet": {json.dumps(sheet.sheet)},\n      "size": {size}\n    }}'
    )


def _piece(placement: Placement) -> str:
    stated = {
        "part": placement.part,
        "piece": placement.piece,
        "turn": _number(placement.turn),
        "x": _number(placement.x),
        "y": _number(placement.y),
    }
    return json.dumps(stated)


def _number(value: float) -> float | int:
    written = rounded(value, COORDINATE_DECIMALS)
    return int(written) if written.is_integer() else written


def layout_for(
    variants: Sequence[SettledPlan],
    text: str,
    effort: Effort = EFFORT,
    engine: Engine | None = None,
    copies: int | None = None,
) -> tuple[Layout | None, str, tuple[Finding, ...]]:
    """Return the plan's layout, why it is to be written, and findings.

    The frozen layout (``text``) is kept if and only if it was computed from the same shapes and
    sheets, even when moved by hand, and there is then nothing to write; if it fails to prove, that
    is an error. Any other is left aside and the layout computed anew. One without the table of
    several copies gets it, its pieces where they were. Computed by ``engine``, the own placer where
    none is given. Without errors there is always a layout. ``copies`` are how many of the plan
    sheets are counted for, where not as many as usual.
    """
    if not text.strip():
        return _computed(variants, MISSING, effort, (engine, copies))
    frozen, findings = thaw(text, layout_place(variants[0]))
    if frozen is None:
        return None, "", findings
    if frozen.computed_from != fingerprint(variants):
        return _computed(variants, CHANGED, effort, (engine, copies))
    faults = first_faults(frozen, variants)
    if faults:
        return None, "", _located(faults, text)
    if frozen.sheets and not frozen.copies:
        return _counted(frozen, variants, effort), UNCOUNTED, findings
    return frozen, "", findings


def lost_with(text: str, place: Place, coming: str) -> str:
    """Return what would be lost if a layout replaced a frozen one, in words; empty if nothing.

    ``coming`` is the digest of the new one's places.

    What the own placer computed can be computed again; a move by hand and the answer of an engine
    that goes by the clock cannot. Files before format 4 do not tell.
    """
    if not text.strip():
        return ""
    frozen, _ = thaw(text, place)
    if frozen is None:
        return "it could not be read"
    lying = placements_digest(frozen.sheets)
    if lying == coming:
        return ""
    if frozen.as_computed != lying:
        return f"it {'was' if frozen.as_computed else 'may have been'} moved by hand"
    engines = re.split(r", | \+ ", frozen.engine)
    others = [each for each in engines if each and not each.startswith(OWN)]
    return f"it was laid out by {', '.join(others)}" if others else ""


def _computed(
    variants: Sequence[SettledPlan], why: str, effort: Effort, how: tuple[Engine | None, int | None]
) -> tuple[Layout | None, str, tuple[Finding, ...]]:
    # A layout that holds is proved without the engines, whose libraries take long to load.
    from kerfolio.layouts.copies import COPIES
    from kerfolio.layouts.plan_layout import OWN_PLACER, lay_out

    engine, copies = how
    layout, findings = lay_out(variants, effort, engine or OWN_PLACER, copies or COPIES)
    faults = () if layout is None else first_faults(layout, variants)
    return layout, why, (*findings, *faults)


def _counted(layout: Layout, variants: Sequence[SettledPlan], effort: Effort) -> Layout:
    from kerfolio.layouts.plan_layout import counted

    return counted(layout, variants, effort)


def _located(findings: Iterable[Finding], text: str) -> tuple[Finding, ...]:
    """Point each finding to the line of the piece it is about."""
    lines = text.splitlines()
    return tuple(replace(each, place=_place(each, lines)) for each in findings)


def _place(finding: Finding, lines: Sequence[str]) -> Place:
    wanted = f'"piece": {json.dumps(finding.subject)}'
    for number, line in enumerate(lines, 1):
        if wanted in line:
            return Place(finding.place.file, number, line.index(wanted) + 1)
    return finding.place
