"""What of a plan has no fault, as a plan of its own: what is left out counts as unread."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from kerfolio.model.plan import Plan
from kerfolio.settling.settled import SettledPlan


def sound_part(settled: SettledPlan, faulty: Iterable[str]) -> Plan:
    """Return a plan with what of it was settled, without the parts that are ``faulty``."""
    sizes = {name for name, _ in settled.sizes}
    made = {each.name for each in settled.parts} - {*faulty}
    joints = {each.stated for each in settled.joints}
    boards = {each.use for each in settled.boards}
    sheets = {each.name for each in settled.sheets}
    plan = without_sheets(settled.plan, {use.name for use in settled.plan.sheets} - sheets)
    return replace(
        without_parts(plan, {part.name for part in plan.parts} - made),
        sizes=tuple(each for each in plan.sizes if each.name in sizes),
        boards=tuple(each for each in plan.boards if each in boards),
        joints=tuple(each for each in plan.joints if each in joints),
    )


def without_sheets(plan: Plan, names: Iterable[str]) -> Plan:
    """Return a plan without some of its sheets, and the parts that are cut from them."""
    gone = {*names}
    left = tuple(use for use in plan.sheets if use.name not in gone)
    parts = {part.name for part in plan.parts if part.sheet.name in gone}
    return replace(without_parts(_unread(plan, gone), parts), sheets=left)


def without_parts(plan: Plan, names: Iterable[str]) -> Plan:
    """Return a plan without some of its parts."""
    gone = [part for part in plan.parts if part.name in {*names}]
    lost = {name for part in gone for name in (part.name, *part.labels)}
    return replace(
        _unread(plan, lost), parts=tuple(part for part in plan.parts if part not in gone)
    )


def _unread(plan: Plan, names: Iterable[str]) -> Plan:
    return replace(plan, unread=tuple(sorted({*plan.unread, *names})))
