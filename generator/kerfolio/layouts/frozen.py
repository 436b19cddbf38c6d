"""The frozen layout beside a plan: writing it, reading it, and telling whether it still holds."""

from __future__ import annotations

import json
from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import Any

from kerfolio.basis.finding import Finding, note
from kerfolio.basis.place import Place
from kerfolio.layouts.check import first_faults, layout_place
from kerfolio.layouts.effort import EFFORT, Effort
from kerfolio.layouts.fingerprint import fingerprint, sheets_fingerprint
from kerfolio.layouts.layout import CopiesCount, Layout, Placement, SheetLayout
from kerfolio.layouts.thawing import FORMAT, thaw
from kerfolio.settling.settled import SettledPlan

__all__ = ["fingerprint", "freeze", "layout_for", "thaw"]


def freeze(layout: Layout) -> str:
    """Return a layout as JSON text, one piece a line, coordinates to 0.001 mm."""
    sheets = ",\n".join(_sheet(each) for each in layout.sheets)
    head = {
        "bound": dict(layout.bounds),
        "computed-from": layout.computed_from,
        "copies": [_copies(each) for each in layout.copies],
        "engine": layout.engine,
        "format": FORMAT,
        "seed": layout.seed,
    }
    lines = [f"  {json.dumps(key)}: {json.dumps(value)}," for key, value in head.items()]
    body = f"[\n{sheets}\n  ]" if sheets else "[]"
    tail = f'  "sheets": {body},\n  "sheets-from": {json.dumps(layout.sheets_from)}'
    return "\n".join(("{", *lines, tail, "}", ""))


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
    rounded = round(value, 3)
    return int(rounded) if rounded == int(rounded) else rounded


def layout_for(
    variants: Sequence[SettledPlan], text: str, effort: Effort = EFFORT
) -> tuple[Layout | None, bool, tuple[Finding, ...]]:
    """Return the plan's layout, whether the frozen one (``text``) is reused, and findings.

    A frozen layout holds as long as it was computed from the same shapes and sheets, even when
    moved by hand; if it then fails to prove, that is an error. One computed from other shapes is
    kept, but no longer as the frozen one, where it still proves on the same sheets (a thickness
    moved a little, say). Any other is left aside and the layout computed anew. One without the
    table of several copies gets it, its pieces where they were. Without errors there is always a
    layout.
    """
    if not text.strip():
        return _computed(variants, (), effort)
    place = layout_place(variants[0])
    frozen, findings = thaw(text, place)
    if frozen is None:
        return None, False, findings
    if frozen.computed_from != fingerprint(variants):
        same_sheets = frozen.sheets_from == sheets_fingerprint(variants)
        if same_sheets and not first_faults(frozen, variants):
            return _kept(frozen, variants), False, findings
        advice = "The layout was computed anew: freeze it with `kerfolio layout`."
        stale = note("layout-stale", "the plan has changed", place, advice)
        return _computed(variants, (stale,), effort)
    faults = first_faults(frozen, variants)
    if faults:
        return None, False, _located(faults, text)
    if frozen.sheets and not frozen.copies:
        return _counted(frozen, variants, effort), False, findings
    return frozen, True, findings


def _computed(
    variants: Sequence[SettledPlan], findings: tuple[Finding, ...], effort: Effort
) -> tuple[Layout | None, bool, tuple[Finding, ...]]:
    # A layout that holds is proved without the engines, whose libraries take long to load.
    from kerfolio.layouts.plan_layout import lay_out

    layout, more = lay_out(variants, effort)
    faults = () if layout is None else first_faults(layout, variants)
    return layout, False, (*findings, *more, *faults)


def _kept(frozen: Layout, variants: Sequence[SettledPlan]) -> Layout:
    """Return a layout that still proves, as computed from what the plan is now."""
    return _counted(replace(frozen, computed_from=fingerprint(variants)), variants, EFFORT)


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
