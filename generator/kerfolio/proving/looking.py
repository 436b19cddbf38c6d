"""Looks at a plan at every point of its range, and at the rest of it where some of it is wrong."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from kerfolio.basis.finding import Finding
from kerfolio.model.plan import Plan
from kerfolio.model.stock import Stock
from kerfolio.proving.folding import folded
from kerfolio.proving.rules import AFTER
from kerfolio.settling.points import in_order, more_points, proof_points
from kerfolio.settling.settle import Settler
from kerfolio.settling.settled import FitVariant, SettledPlan
from kerfolio.settling.sound_part import without_sheets
from kerfolio.settling.variant import drawn_variant, variants


@dataclass(frozen=True, slots=True, kw_only=True)
class Looked:
    """A plan at the points it settles at, the thinnest first, and what was found there.

    ``complete``: it settles at every point. ``sets`` are the points that files are made ready for,
    ``drawn`` is the plan where it is drawn, None where it does not settle there. ``rest`` is what
    of the plan is sound where it is not complete; None where nothing is, or all.
    """

    plan: Plan
    settled: tuple[SettledPlan, ...]
    drawn: SettledPlan | None
    complete: bool
    sets: tuple[FitVariant, ...]
    findings: tuple[Finding, ...]
    rest: Plan | None = None


def look(plan: Plan, stock: Stock) -> Looked:
    """Return a plan looked at by itself wherever it settles."""
    sets, faults = variants(plan, stock)
    if not sets:
        sheets = {use.name for use in plan.sheets} & {each.subject for each in faults}
        return Looked(
            plan=plan,
            settled=(),
            drawn=None,
            complete=False,
            sets=(),
            findings=faults,
            rest=_less(without_sheets(plan, sheets), plan),
        )
    return _Range(plan, stock, sets).looked()


def looks(plan: Plan, stock: Stock) -> Iterator[Looked]:
    """Yield a plan looked at, then what is sound of it as long as there is less and less.

    The last one is complete, unless nothing of the plan is sound. Findings of each are those about
    what the following ones leave out; what is about the rest they tell themselves.
    """
    looked = look(plan, stock)
    while looked.rest is not None:
        yield looked
        looked = look(looked.rest, stock)
    yield looked


def _less(rest: Plan | None, plan: Plan) -> Plan | None:
    """Return what is left of a plan, None where that is nothing or no less than all."""
    return None if rest is None or not rest.parts or rest == plan else rest


def looked_at(
    settler: Settler, point: FitVariant
) -> tuple[SettledPlan | None, tuple[Finding, ...]]:
    """Settle a plan at a point, and look at what comes of it by itself."""
    made, faults = settler.at(point)
    if made is None:
        return None, faults
    return made, (*faults, *(each for rule in AFTER for each in rule.check(made)))


_At = tuple[FitVariant, Finding]
"""A finding, and where it was found."""


class _Range:
    """One walk over the points of a plan's range."""

    def __init__(self, plan: Plan, stock: Stock, sets: tuple[FitVariant, ...]) -> None:
        self._plan, self._sets = plan, sets
        self._settler = Settler(plan, stock)
        self._aim = drawn_variant(plan, stock)
        self._waiting = list(proof_points(plan, stock))
        self._tried: list[FitVariant] = []
        self._failed: list[FitVariant] = []
        self._settled: list[SettledPlan] = []
        self._faults: list[_At] = []
        self._remarks: list[_At] = []

    def looked(self) -> Looked:
        """Settle at every point and look at each result; the same remark is made once.

        Where the thinnest sheets fail only the thickest are tried besides: what is wrong at both
        is wrong at all.
        """
        while self._waiting:
            point = self._waiting.pop(0)
            self._tried.append(point)
            self._look_at(point)
        self._settled.sort(key=lambda each: in_order(each.variant))
        drawn = next((each for each in self._settled if each.variant == self._aim), None)
        rest = _less(self._settler.sound_at(self._failed[0]), self._plan) if self._failed else None
        return Looked(
            plan=self._plan,
            settled=tuple(self._settled),
            drawn=drawn,
            complete=drawn is not None and not self._failed,
            sets=self._sets,
            findings=folded(self._told(rest), sorted(self._tried, key=in_order)),
            rest=rest,
        )

    def _look_at(self, point: FitVariant) -> None:
        made, found = looked_at(self._settler, point)
        (self._faults if made is None else self._remarks).extend((point, each) for each in found)
        if made is not None:
            self._settled.append(made)
            more = more_points(made) if point == self._aim else ()
            self._waiting += [each for each in more if each not in (*self._tried, *self._waiting)]
            return
        self._failed.append(point)
        if not self._settled:
            self._waiting = [each for each in self._waiting[-1:] if each.label != point.label]

    def _told(self, rest: Plan | None) -> Sequence[_At]:
        """Return what was found, without what the rest of the plan tells itself."""
        if rest is None:
            return (*self._faults, *self._remarks)
        left = {part.name for part in rest.parts}
        lost = {part.name for part in self._plan.parts} - left
        return (
            *(each for each in self._faults if part_of(each[1]) not in left),
            *(each for each in self._remarks if part_of(each[1]) in lost),
        )


def part_of(finding: Finding) -> str:
    """Return the first word of what a finding is about: a part, if it is about one."""
    return finding.subject.partition(".")[0]
