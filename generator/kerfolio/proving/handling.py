"""Checks that the people a step is for can handle what it moves."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.assembly.building import Build
from kerfolio.assembly.lifted import Lifted, lifted_in
from kerfolio.assembly.storing import LOAD_CONSTANT, LONG
from kerfolio.basis.finding import Finding, Meeting, Severity, warning
from kerfolio.basis.measures import length, mass, number
from kerfolio.basis.said import Words, said
from kerfolio.basis.words import listed
from kerfolio.proving.rule import together

_SHOWN = 3


@together(
    "step-wants-hands",
    reason="What is too heavy or too long for those at the bench is dropped, or hurts a back.",
    source="NIOSH lifting equation (NIOSH 94-110): 23 kg close to the body, less farther from it; "
    "what is over 1.8 m long two carry, common practice",
    severity=Severity.WARNING,
)
def hands_enough(build: Build) -> Iterator[Finding]:
    """Look for steps that move more at once than the people they are for can handle.

    Where something stands already, it may as well be moved on to what is new: the lighter of the
    two counts (see ``lifted_in``).
    """
    if build.order.found:
        return
    for step in build.order.steps:
        stated = build.settled.plan.steps[step.number - 1]
        wanting = [
            each
            for each in lifted_in(build.drawn.assembled, build.order)
            if each.step == step.number and each.people > stated.people
        ]
        if wanting:
            worst = max(wanting, key=lambda each: (each.people, each.mass))
            message = said("step {} moves {}", number("step", step.number), _told(worst))
            people = f"`people: {worst.people}`"
            advice = said(
                "Write {} into the step, or let it move less at once. One person lifts {} close to "
                "the body (NIOSH 94-110), and what is no longer than {}.",
                *(people, mass("lifted", LOAD_CONSTANT), length("most", LONG)),
            )
            meeting = Meeting(pieces=worst.pieces, variant=build.settled.variant.label)
            yield warning(
                "step-wants-hands",
                message,
                stated.place,
                advice,
                subject=stated.title,
                meeting=meeting,
            )


def _told(lift: Lifted) -> Words:
    names = [f"`{each}`" for each in lift.pieces[:_SHOWN]]
    more = len(lift.pieces) - len(names)
    which = listed([*names, f"{more} more"] if more else names)
    return said(
        "{} at once, {} and {} long",
        *(which, mass("mass", lift.mass), length("length", lift.longest)),
    )
