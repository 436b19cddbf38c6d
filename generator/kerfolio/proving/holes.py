"""Checks that holes for hardware have hardware to take."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.finding import Finding, Severity, warning
from kerfolio.basis.place import Place
from kerfolio.basis.said import named, said, stated_name
from kerfolio.model.feature import EdgeBore, Hole
from kerfolio.model.part import Part
from kerfolio.model.plan import Plan
from kerfolio.model.statement import Named
from kerfolio.proving.rule import COMMON_PRACTICE, Stated, before


@before(
    "hole-without-hardware",
    reason="A hole for what nobody buys stays empty, or a reader misses it at the bench.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def holes_filled(stated: Stated) -> Iterator[Finding]:
    """Look for holes made for hardware that no list, no step and no fastening names."""
    known = _named_hardware(stated.plan)
    for part in stated.plan.parts:
        for name, item, place in _for_hardware(part):
            if item not in known and stated.stock.item(item) is not None:
                hole = f"{part.name}.{name}"
                message = said("{} is for `{}`, which no list names", named(hole), item)
                advice = said(
                    "Add a fastening that goes through it, or `{}: 1` to a step's `hardware`; a "
                    "plain hole has a `diameter`.",
                    item,
                )
                subject = stated_name(hole)
                yield warning("hole-without-hardware", message, place, advice, subject=subject)


def _for_hardware(part: Part) -> Iterator[tuple[str, str, Place]]:
    for feature in part.features:
        if isinstance(feature.cutting, Hole | EdgeBore):
            item = feature.cutting.for_ or feature.cutting.pilot
            if item is not None:
                yield feature.name, item.name, feature.place


def _named_hardware(plan: Plan) -> set[str]:
    """Return the names of all hardware that a plan lists, uses in a step or fastens with."""
    things = plan.made
    used = [*plan.hardware, *(use for thing in things for step in thing.steps for use in step.uses)]
    fastenings = (*plan.fastenings, *(each for thing in things for each in thing.fastenings))
    items: list[Named] = [use.item for use in used]
    items += [item for fastening in fastenings for item, _ in fastening.parts]
    return {each.name for each in items}
