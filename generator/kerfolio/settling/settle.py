"""Settling: a plan, the stock and a point become plain numbers and shapes."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from functools import lru_cache

from kerfolio.basis.budgets import FEATURES, PIECES, PLAN_FEATURES
from kerfolio.basis.finding import Finding, in_order
from kerfolio.geometry.contour import Point
from kerfolio.model.fastening import Fastening
from kerfolio.model.joint import Joint
from kerfolio.model.part import Part
from kerfolio.model.plan import Assembly, Plan
from kerfolio.model.stock import Stock
from kerfolio.settling.boards import boards_of
from kerfolio.settling.bridges import butted_sides
from kerfolio.settling.clearance import asked_of
from kerfolio.settling.coupon import coupons_of
from kerfolio.settling.fastened import with_fastened
from kerfolio.settling.fitted import Fitting
from kerfolio.settling.made_once import MadeOnce
from kerfolio.settling.marked import pencilled
from kerfolio.settling.part import Job, features_of, marks, settled_part
from kerfolio.settling.scope import FOLLOWS, Scope, SettlingError, within
from kerfolio.settling.settled import (
    Coupon,
    FitVariant,
    SettledBridge,
    SettledJoint,
    SettledPart,
    SettledPlan,
    SettledSheet,
    Sized,
)
from kerfolio.settling.sheet import settled_sheets
from kerfolio.settling.sizes import scope_of
from kerfolio.settling.sound_part import sound_part
from kerfolio.settling.surroundings import Surroundings, surroundings_of
from kerfolio.settling.variant import drawn_variant

Bridges = Mapping[str, tuple[SettledBridge, ...]]

_MadePart = tuple[SettledPart | None, tuple[Finding, ...]]


class Settler:
    """Settles one plan at any point; each part once for the numbers that it depends on."""

    def __init__(self, plan: Plan, stock: Stock, kept: _AsDrawn | None = None) -> None:
        """Settle a plan of this stock; ``kept`` is what was chosen as it is drawn."""
        self._plan, self._stock = plan, stock
        self._kept = _as_drawn(plan, stock) if kept is None else kept
        self._asked = asked_of(plan, Scope(unit=plan.units))
        self._drawn = _drawn_scope(plan, stock)
        self._surroundings, self._faults = _surroundings(plan, stock)
        self._parts: MadeOnce[_MadePart] = MadeOnce()

    @classmethod
    def for_a_look(cls, plan: Plan, stock: Stock) -> Settler:
        """Return one that chooses no coupon, and bridges by each part alone: it begins at once."""
        return cls(plan, stock, _AsDrawn())

    def at(self, variant: FitVariant) -> tuple[SettledPlan | None, tuple[Finding, ...]]:
        """Return the plan settled at a variant, None when anything could not be settled.

        Bridges and coupons are chosen once, as the plan is drawn.
        """
        made, faults, _ = self._so_far(variant, "")
        return None if faults else made, _told(faults)

    def sound_at(self, variant: FitVariant) -> Plan | None:
        """Return what of the plan settles at a variant without a fault, as a plan of its own.

        What is left out counts there as unread. None where the plan is too large to begin with.
        """
        made, _, faulty = self._so_far(variant, "")
        return None if made is None else sound_part(replace(made, plan=self._plan), faulty)

    def so_far(
        self, variant: FitVariant, only: str = ""
    ) -> tuple[SettledPlan | None, tuple[Finding, ...]]:
        """Return what of a plan settles, and what is wrong with the rest.

        With ``only`` no other part is settled, nor looked at. None where the plan is too large to
        begin with.
        """
        made, faults, _ = self._so_far(variant, only)
        return made, _told(faults)

    def _so_far(
        self, variant: FitVariant, only: str
    ) -> tuple[SettledPlan | None, tuple[Finding, ...], frozenset[str]]:
        """Return what settles, all faults, and the parts that have some."""
        plan, stock = self._plan, self._stock
        sheets, findings = settled_sheets(plan, stock, variant)
        scope, sizes, more = _scope_of(plan, sheets)
        job = Job(
            fitting=Fitting(
                scope=scope,
                sheets=sheets,
                drawn=self._drawn,
                surroundings=self._surroundings,
            ),
            stock=stock,
            drawings=plan.drawings,
            cuts=plan.cuts,
            butted=butted_sides(plan.joints, plan.parts),
            kept=self._kept.bridges,
            asked=self._asked,
        )
        large = _too_large(plan, job)
        if large is not None:
            return None, (large,), frozenset()
        own = replace(variant, cutter=())
        plain = settled_sheets(plan, stock, own)[0] if variant.cutter else sheets
        parts, part_findings, faulty = self._made(job, plain, only)
        boards, board_findings = boards_of(plan, stock, scope)
        joints, joint_findings = _joints(plan.joints, scope)
        overhangs, lying_findings = _overhangs(plan.assemblies, scope)
        lines, line_findings = pencilled((step for each in plan.made for step in each.steps), scope)
        pressed, clamp_findings = _pressed(plan.fastenings, scope)
        told = (
            *part_findings,
            *board_findings,
            *joint_findings,
            *lying_findings,
            *line_findings,
            *clamp_findings,
        )
        settled = SettledPlan(
            plan=with_fastened(plan, stock, parts, boards),
            stock=stock,
            variant=variant,
            sizes=sizes,
            sheets=tuple(sheets.values()),
            parts=parts,
            boards=boards,
            joints=joints,
            overhangs=overhangs,
            pencilled=lines,
            pressed=pressed,
            coupons=self._kept.coupons,
            surroundings=self._surroundings,
        )
        return settled, in_order((*findings, *self._faults, *more, *told)), faulty

    def _made(
        self, job: Job, plain: Mapping[str, SettledSheet], only: str
    ) -> tuple[tuple[SettledPart, ...], tuple[Finding, ...], frozenset[str]]:
        """Settle all parts; ``plain`` are the sheets as if each were cut with its own cutter."""
        made: list[SettledPart] = []
        findings: list[Finding] = []
        faulty: set[str] = set()
        stated = {use.name for use in self._plan.sheets}
        sheets = job.fitting.sheets
        for part, mark in zip(self._plan.parts, marks(len(self._plan.parts)), strict=True):
            sheet = part.sheet.name
            if only and part.name != only:
                continue
            if sheet in stated and sheet not in sheets:
                continue  # the sheet itself has been remarked on
            # What a part's mates are cut with is nothing to it.
            seen = {
                name: sheets.get(name, each) if name == sheet else each
                for name, each in plain.items()
            }
            settled, faults = self._part(part, mark, job, seen)
            findings += faults
            faulty.update([part.name] if faults else ())
            if settled is not None:
                made.append(settled)
        return tuple(made), tuple(findings), frozenset(faulty)

    def _part(
        self, part: Part, mark: str, job: Job, sheets: Mapping[str, SettledSheet]
    ) -> _MadePart:
        scope = job.fitting.scope

        def make(
            names: Mapping[str, float],
            thickness: Mapping[str, float],
            fit: Mapping[str, float],
            sheets: Mapping[str, SettledSheet],
            kept: Bridges,
        ) -> _MadePart:
            read = replace(scope, names=names, thickness=thickness, fit=fit)
            fitting = replace(job.fitting, scope=read, sheets=sheets)
            return settled_part(part, mark, replace(job, fitting=fitting, kept=kept))

        sources = (scope.names, scope.thickness, scope.fit, sheets, job.kept)
        return self._parts.of(mark, sources, make)


def settle(
    plan: Plan, stock: Stock, variant: FitVariant
) -> tuple[SettledPlan | None, tuple[Finding, ...]]:
    """Return the plan settled at a variant, None when anything could not be settled.

    A pure function: the same plan, stock and variant give the same result.
    """
    return Settler(plan, stock).at(variant)


def _told(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Return findings without those that only follow from others, told where they are."""
    return tuple(each for each in findings if each.rule != FOLLOWS)


def _surroundings(plan: Plan, stock: Stock) -> tuple[Surroundings | None, tuple[Finding, ...]]:
    try:
        return surroundings_of(plan, stock), ()
    except SettlingError as trouble:
        return None, (trouble.about("finish"),)


def _scope_of(
    plan: Plan, sheets: Mapping[str, SettledSheet]
) -> tuple[Scope, tuple[tuple[str, Sized], ...], tuple[Finding, ...]]:
    thickness = {name: sheet.thickness for name, sheet in sheets.items()}
    fit = {name: sheet.fit for name, sheet in sheets.items()}
    return scope_of(plan, thickness, fit)


def _drawn_scope(plan: Plan, stock: Stock) -> Scope | None:
    drawn = drawn_variant(plan, stock)
    return None if drawn is None else _scope_of(plan, settled_sheets(plan, stock, drawn)[0])[0]


@dataclass(frozen=True, slots=True)
class _AsDrawn:
    """What is the same at every point: the bridges of each part, and the coupons."""

    bridges: Bridges = field(default_factory=dict)
    coupons: tuple[Coupon, ...] = ()


@lru_cache(maxsize=16)
def _as_drawn(plan: Plan, stock: Stock) -> _AsDrawn:
    """Return what is chosen as the plan is drawn, nothing where it does not settle so."""
    drawn = drawn_variant(plan, stock)
    settled, _ = Settler(plan, stock, _AsDrawn()).at(drawn) if drawn else (None, ())
    if settled is None:
        return _AsDrawn()
    return _AsDrawn(
        {part.name: part.bridges for part in settled.parts},
        coupons_of(settled.parts, settled.sheets, plan.units),
    )


def _too_large(plan: Plan, job: Job) -> Finding | None:
    """Return the finding about more pieces or features than a plan may have, before any is made.

    A part that is too large by itself is told where it is settled.
    """
    counts = [features_of(part, job) for part in plan.parts]
    pieces = sum(max(1, len(part.pieces)) for part in plan.parts)
    try:
        within(PIECES, pieces, "too-many-pieces", plan.place)
        count = sum(each for each in counts if each <= FEATURES.most)
        within(PLAN_FEATURES, count, "too-many-features", plan.place)
    except SettlingError as trouble:
        return trouble.finding
    return None


def _joints(
    joints: Iterable[Joint], scope: Scope
) -> tuple[tuple[SettledJoint, ...], tuple[Finding, ...]]:
    made: list[SettledJoint] = []
    findings: list[Finding] = []
    for joint in joints:
        try:
            at = scope.point(joint.at) if joint.at else None
            made.append(SettledJoint(stated=joint, at=at, turn=scope.plain(joint.turn)))
        except SettlingError as trouble:
            findings.append(trouble.about(joint.a.name))
    return tuple(made), tuple(findings)


def _overhangs(
    assemblies: Iterable[Assembly], scope: Scope
) -> tuple[tuple[tuple[str, float], ...], tuple[Finding, ...]]:
    made: list[tuple[str, float]] = []
    findings: list[Finding] = []
    for each in assemblies:
        if each.lies_on is None:
            continue
        try:
            stated = each.lies_on.overhang
            made.append((each.name, scope.positive(stated, "overhang") if stated else 0.0))
        except SettlingError as trouble:
            findings.append(trouble.about(each.name))
    return tuple(made), tuple(findings)


def _pressed(
    fastenings: Iterable[Fastening], scope: Scope
) -> tuple[tuple[tuple[Fastening, Point], ...], tuple[Finding, ...]]:
    """Return where clamps press, by their statement."""
    made: list[tuple[Fastening, Point]] = []
    findings: list[Finding] = []
    for each in fastenings:
        if each.at is None:
            continue
        try:
            made.append((each, scope.point(each.at)))
        except SettlingError as trouble:
            findings.append(trouble.about(each.item.name))
    return tuple(made), tuple(findings)
