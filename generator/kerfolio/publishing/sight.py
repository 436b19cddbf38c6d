"""What there is to see of a plan at once: what of it settles, as far as its joints go."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from kerfolio.assembly.poses import put_together
from kerfolio.basis.finding import Finding, in_order, in_unit
from kerfolio.basis.shortened import shortened
from kerfolio.drawing.named_whole import Whole
from kerfolio.model.plan import Plan
from kerfolio.model.stock import Stock
from kerfolio.settling.making import one_of
from kerfolio.settling.settle import Settler
from kerfolio.settling.settled import SettledPlan
from kerfolio.settling.variant import drawn_variant, variants


@dataclass(frozen=True, slots=True, kw_only=True)
class Sight:
    """A plan as it is drawn, as far as it goes.

    ``settled`` holds the parts that settle, None where not even its sheets do. ``wholes`` are the
    things it makes as their joints put them together. ``findings`` are what kept the rest away;
    they are not all that proving would find.
    """

    plan: Plan
    settled: SettledPlan | None
    wholes: tuple[Whole, ...]
    findings: tuple[Finding, ...]


def sight_of(plan: Plan, stock: Stock, part: str = "") -> Sight:
    """Return what there is to see of a plan, or of one ``part`` alone, which nothing is put to.

    Of parts that cannot be read whole what can be is seen.
    """
    lacks, plan = plan.as_far is not None, plan.as_far or plan
    aim = drawn_variant(plan, stock)
    if aim is None:
        return Sight(
            plan=plan, settled=None, wholes=(), findings=_told(variants(plan, stock)[1], plan)
        )
    settled, found = Settler.for_a_look(plan, stock).so_far(aim, part)
    if settled is None or part:
        return Sight(plan=plan, settled=settled, wholes=(), findings=_told(found, plan))
    wholes: list[Whole] = []
    remarks: list[Finding] = []
    for each in plan.made:
        together = put_together(one_of(settled, each))
        if together is not None:
            wholes.append(Whole(title=each.title or each.name, assembled=together.assembled))
            remarks += together.findings
    # What is wrong with parts would be blamed again on the joints it spoils.
    found = found or (() if lacks else tuple(remarks))
    return Sight(
        plan=plan,
        settled=settled,
        wholes=tuple(wholes),
        findings=_told(found, plan),
    )


def _told(findings: Sequence[Finding], plan: Plan) -> tuple[Finding, ...]:
    return shortened(in_unit(in_order(findings), plan.units))
