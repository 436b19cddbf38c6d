"""What of a plan can be put together though something is wrong with the rest of it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from kerfolio.assembly.building import Build
from kerfolio.basis.finding import Finding, Severity
from kerfolio.basis.names import split_feature
from kerfolio.basis.said import stated_name
from kerfolio.model.plan import Assembly, Plan
from kerfolio.proving.going_together import joints_agree, pieces_fit
from kerfolio.proving.looking import part_of
from kerfolio.proving.naming import pieces_of
from kerfolio.proving.rules import ASIDE, UNBUILT
from kerfolio.settling.settled import SettledPlan


def keep_from_building(findings: Iterable[Finding], plan: Plan) -> bool:
    """Tell whether what was found leaves in doubt how the whole goes together.

    An error of a part would be blamed again on the joints that it spoils. What is wrong with
    hardware, cutters or texts spoils none, nor does a hole or a bore that no joint names.
    """
    errors = [each for each in findings if each.severity is Severity.ERROR]
    return any(each.rule in UNBUILT for each in errors) or bool(_in_doubt(errors, plan))


def holes_blamed(findings: Iterable[Finding], plan: Plan) -> frozenset[str]:
    """Return the holes and bores of no joint that errors are about, as findings name them.

    What goes into one of them would be blamed on it again.
    """
    errors = {each.subject for each in findings if each.severity is Severity.ERROR}
    return _free_of_joints(plan) & errors if errors else frozenset()


def what_stands(settled: SettledPlan, findings: Iterable[Finding]) -> SettledPlan:
    """Return a settled plan without the parts in doubt, and without an order of its own."""
    errors = [each for each in findings if each.severity is Severity.ERROR]
    doubt = _in_doubt(errors, settled.plan)
    left = {label for part in settled.plan.parts if part.name not in doubt for label in part.labels}
    plan = replace(settled.plan, steps=(), standing=None)
    if plan.is_set:
        things = tuple(_less(each) for each in plan.assemblies if any(map(each.owns, left)))
        plan = replace(plan, assemblies=things)
    return replace(
        settled,
        plan=plan,
        parts=tuple(each for each in settled.parts if each.name not in doubt),
    )


def of_what_stands(build: Build) -> Iterator[Finding]:
    """Yield what is wrong between pieces that stand, whatever is missing beside them.

    A way that only the missing ones decide may have been taken wrongly: then what needs the same
    space is not told.
    """
    yield from joints_agree.check(build)
    if not any(each.rule == "which-way-round" for each in build.drawn.findings):
        yield from pieces_fit.check(build)


def _in_doubt(errors: Sequence[Finding], plan: Plan) -> frozenset[str]:
    """Return the parts that errors are about; a joint that is none is left out by itself."""
    known = {part.name for part in plan.parts}
    free = _free_of_joints(plan) if errors else frozenset()
    told = UNBUILT | ASIDE
    spoilt = (each for each in errors if each.rule not in told and each.subject not in free)
    return frozenset(part_of(each) for each in spoilt) & known


def _free_of_joints(plan: Plan) -> frozenset[str]:
    """Return the holes and bores, as findings name them, that no joint puts a piece by."""
    pieces = pieces_of(plan)
    ends = [split_feature(end.name, pieces) for each in plan.joints for end in (each.a, each.b)]
    joined = {f"{pieces[label].name}.{stated_name(name)}" for label, name in ends if label}
    return frozenset(
        name
        for part in plan.parts
        for each in part.features
        if each.kind.round and (name := f"{part.name}.{each.name}") not in joined
    )


def _less(assembly: Assembly) -> Assembly:
    return replace(assembly, steps=(), standing=None)
