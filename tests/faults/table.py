"""Single faults made in sound plans, and what a maker with experience would name.

``plans/`` holds five plans that stand nowhere else in the tests, ``table/NAME.yaml`` the faults of
one plan. What is expected was written down from fault and plan, not from what is said. Keys:

- ``fault``, ``cause``: its name, and what is wrong, in words;
- ``edit``: texts of the plan, each found once, and what they become;
- ``rule``: the finding that must come first, where only one fits;
- ``names``: what it must accuse, ``a|b`` where the plan leaves open which of them is wrong;
- ``says``: words that its message or its advice must hold, ``a|b`` for one of several;
- ``never``: words that it must not hold, since they would lead astray;
- ``also``: what must be accused besides, where two faults were made;
- ``range``: proved over the whole range of thickness, and not only as drawn;
- ``cure``: an edit of the spoiled text that mends it otherwise than by undoing it;
- ``slow``: takes seconds to prove, so that it is looked at by hand alone.

What comes first is the first error, or else the first warning or note, that the sound plan has not.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import yaml

from kerfolio.basis.finding import Finding, Severity, in_order
from kerfolio.proving.prove import prove_plan
from kerfolio.reading.workshop import Shared, read_shared, with_plans
from tests.conftest import copy_of_sample
from tests.plans import altered

HERE = Path(__file__).resolve().parent

REACH = {
    "seed-chest": 360,
    "bottle-crate": 420,
    "leaning-stool": 436,
    "pressing-table": 1400,
    "jar-cabinet": 712,
    "harbour-stool": 468,
    "tool-tote": 458,
    "desk-rack": 260,
    "window-shelf": 900,
}
"""The plans, and the longest way through each along its sides, mm: nothing is further off."""

SAMPLES = ("harbour-stool", "tool-tote", "desk-rack", "window-shelf")
OWN = tuple(name for name in REACH if name not in SAMPLES)

_RANGE = re.compile(r"published-for: [^,]+, drawn-for: ([^,]+),")
_NAMED = re.compile(r"`([^`]+)`")
_WEIGHT = {Severity.ERROR: 0, Severity.WARNING: 1, Severity.NOTE: 2}

_KEYS = {
    *("fault", "cause", "edit", "rule", "names", "says", "never", "also", "range", "cure", "slow"),
}

Edits = tuple[tuple[str, str], ...]


@dataclass(frozen=True, kw_only=True)
class Fault:
    """A fault made in a plan, as the table states it (see above)."""

    plan: str
    name: str
    cause: str
    edit: Edits
    names: tuple[str, ...]
    rule: str = ""
    says: tuple[str, ...] = ()
    never: tuple[str, ...] = ()
    also: tuple[str, ...] = ()
    ranged: bool = False
    cure: Edits = ()
    slow: bool = False

    @property
    def id(self) -> str:
        """What the tests call it."""
        return f"{self.plan}: {self.name}"


@dataclass(frozen=True, kw_only=True)
class Told:
    """What was said of a fault: how good that is, and the findings, the first one first."""

    grade: str
    found: tuple[Finding, ...]

    @property
    def shown(self) -> str:
        """Show the findings as they are printed."""
        return "\n".join(map(str, self.found))


def faults() -> tuple[Fault, ...]:
    """Return the faults of all plans."""
    return tuple(_fault(plan, each) for plan in REACH for each in _rows(plan))


def _rows(plan: str) -> Sequence[dict[str, Any]]:
    rows: list[dict[str, Any]] = yaml.safe_load(
        (HERE / "table" / f"{plan}.yaml").read_text("utf-8")
    )
    return rows


def _fault(plan: str, row: dict[str, Any]) -> Fault:
    assert set(row) <= _KEYS, set(row) - _KEYS
    return Fault(
        plan=plan,
        name=row["fault"],
        cause=row["cause"],
        edit=_edits(row["edit"]),
        rule=row.get("rule", ""),
        names=tuple(row["names"].split("|")),
        says=tuple(row.get("says", ())),
        never=tuple(row.get("never", ())),
        also=tuple(row.get("also", ())),
        ranged=row.get("range", False),
        cure=_edits(row.get("cure", ())),
        slow=row.get("slow", False),
    )


def _edits(rows: Iterable[Iterable[str]]) -> Edits:
    return tuple((old, new) for old, new in rows)


class Bench:
    """A workshop in a folder whose plans are written anew for each fault."""

    def __init__(self, folder: Path) -> None:
        self.folder = copy_of_sample(folder / "shop", SAMPLES)
        for name in OWN:
            (self.folder / "plans" / name).mkdir()
            text = (HERE / "plans" / f"{name}.yaml").read_text("utf-8")
            self._file(name).write_text(text, "utf-8")
        self.sound = {name: self._file(name).read_text("utf-8") for name in REACH}
        shared, refused = read_shared(self.folder, pictures=False)
        assert shared is not None, refused
        self.shared: Shared = shared
        self.said_of_sound = cache(self._said_of_sound)

    def _file(self, plan: str) -> Path:
        return self.folder / "plans" / plan / "plan.yaml"

    def proved(self, plan: str, text: str, *, ranged: bool = True) -> tuple[Finding, ...]:
        """Return all that is said of a plan of that text."""
        self._file(plan).write_text(text if ranged else _at_one_thickness(text), "utf-8")
        workshop, read = with_plans(self.shared, [plan])
        assert workshop is not None
        proofs = (prove_plan(each, workshop.stock) for each in workshop.plans)
        return in_order((*read, *(found for proof in proofs for found in proof.findings)))

    def news(self, plan: str, text: str, *, ranged: bool = False) -> tuple[Finding, ...]:
        """Return what is said of a plan of that text and not of the sound one, the first first."""
        usual = frozenset(map(_same, self.said_of_sound(plan, ranged)))
        found = self.proved(plan, text, ranged=ranged)
        new = [each for each in found if not each.silenced and _same(each) not in usual]
        return tuple(sorted(new, key=lambda each: _WEIGHT[each.severity]))

    def _said_of_sound(self, plan: str, ranged: bool) -> tuple[Finding, ...]:
        return self.proved(plan, self.sound[plan], ranged=ranged)

    def told(self, fault: Fault) -> Told:
        """Return what is said of a fault."""
        text = altered(self.sound[fault.plan], *fault.edit)
        found = self.news(fault.plan, text, ranged=fault.ranged)
        return Told(grade=_grade(fault, found), found=found)


def _at_one_thickness(text: str) -> str:
    return _RANGE.sub(r"published-for: \1, drawn-for: \1,", text)


def _same(found: Finding) -> tuple[str, ...]:
    return (found.rule, found.subject, found.message)


def _grade(fault: Fault, found: Sequence[Finding]) -> str:
    """Tell ``right``, ``half`` (the cause is named, but not first or not in full), ``misled`` or
    ``missed``.
    """
    if not found:
        return "missed"
    first = found[0]
    alarms = [each for each in found if each.severity is not Severity.NOTE]
    if _absurd(fault, first):
        return "misled"
    accused = _accused(first)
    words = f"{first.message} {first.advice}"
    said = all(any(each in words for each in group.split("|")) for group in fault.says)
    astray = any(each in words for each in fault.never)
    rule = not fault.rule or fault.rule == first.rule
    named = {name for each in alarms for name in _NAMED.findall(f"{each.message} {each.advice}")}
    also = all(any(_is(each, name) for name in named) for each in fault.also)
    if rule and said and also and not astray and _any_is(fault, accused):
        return "right"
    if not alarms:
        return "missed"
    if _any_is(fault, accused) or any(_any_is(fault, name) for name in _NAMED.findall(words)):
        return "half" if not astray else "misled"
    if any(_any_is(fault, _accused(each)) for each in alarms) and not astray:
        return "half"
    return "misled"


def _absurd(fault: Fault, first: Finding) -> bool:
    lengths = (each.value for each in first.facts if each.unit == "mm")
    return first.rule == "joint-off" and any(abs(mm) > REACH[fault.plan] for mm in lengths)


def _accused(found: Finding) -> str:
    """Return what a finding names first, or is about."""
    named = _NAMED.search(found.message)
    return named[1] if named else found.subject


def _any_is(fault: Fault, accused: str) -> bool:
    return any(_is(name, accused) for name in fault.names)


def _is(name: str, accused: str) -> bool:
    """Tell whether what is accused is what was meant: ``side.left.slots.2`` is ``side.slots``."""
    if "." not in name:
        return name == accused
    parts = iter(accused.split("."))
    return all(each in parts for each in name.split("."))
