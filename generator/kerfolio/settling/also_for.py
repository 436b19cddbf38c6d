"""A settled plan as it is cut from other sheets, or on a bed, than those it states first."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from kerfolio.basis.digits import digits
from kerfolio.basis.lengths import INCH
from kerfolio.basis.place import NOWHERE, Place
from kerfolio.model.plan import Plan
from kerfolio.settling.scope import Scope
from kerfolio.settling.settled import SettledPlan, SettledSheet, SheetSize


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherSheet:
    """A sheet or a bed that a plan is laid out for besides; ``label`` is its name in files.

    ``size`` in mm, of a sheet along its grain and across it.
    """

    label: str
    size: SheetSize
    bed: bool = False
    place: Place = NOWHERE


def other_sheets(plan: Plan) -> tuple[OtherSheet, ...]:
    """Return what a plan is also for, each once, in its order. Raises SettlingError."""
    scope = Scope(unit=plan.units)
    found: dict[str, OtherSheet] = {}
    for each in plan.also_for:
        one, other = (scope.positive(side, "size") for side in each.size)
        label = label_of((one, other), plan.units, bed=each.bed)
        made = OtherSheet(label=label, size=(one, other), bed=each.bed, place=each.place)
        found.setdefault(label, made)
    return tuple(found.values())


def label_of(size: SheetSize, unit: str, *, bed: bool) -> str:
    """Return what a sheet or a bed is called in files: ``1220x1220``, ``24x36in-bed``."""
    per, ending = (INCH, "in") if unit == "in" else (1.0, "")
    sides = "x".join(digits(side / per, 2) for side in size)
    return f"{sides}{ending}{'-bed' if bed else ''}"


def on_sheet(settled: SettledPlan, other: OtherSheet) -> SettledPlan:
    """Return a plan as it is laid out on another sheet; nothing else of it changes.

    Offcuts at hand and other sizes are those of the plan's own sheets. What is cut to a bed may
    lie on it either way.
    """
    turned = (other.size[1], other.size[0])
    also: Sequence[SheetSize] = (turned,) if other.bed and turned != other.size else ()

    def changed(sheet: SettledSheet) -> SettledSheet:
        return replace(sheet, size=other.size, also=tuple(also), offcuts=())

    sheets = tuple(changed(sheet) for sheet in settled.sheets)
    return replace(settled, sheets=sheets, laid_for=other.label)
