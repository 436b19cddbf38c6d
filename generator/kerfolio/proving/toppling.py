"""Checks that what is built so far stands by itself at the end of each step."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.assembly.assembled import Assembled
from kerfolio.assembly.building import Build
from kerfolio.assembly.lots import lot_of
from kerfolio.assembly.lying import Shown
from kerfolio.assembly.stance import footing, stands
from kerfolio.basis.finding import Beside, Finding, Meeting, Severity, note, warning
from kerfolio.basis.measures import number
from kerfolio.basis.said import Measure, said
from kerfolio.basis.words import listed
from kerfolio.model.plan import Step
from kerfolio.proving.rule import together

_SHOWN = 3


@together(
    "step-topples",
    reason="What falls over half built breaks its tabs, or falls on somebody.",
    source="statics of a rigid body on a level floor",
    severity=Severity.WARNING,
)
def stands_as_it_lies(build: Build) -> Iterator[Finding]:
    """Look for steps that lay the work so that what is built falls over at their end."""
    for shown, stated, lot in _falling(build):
        if stated.lies is not None:
            message = said("as step {} lies, {} falls over", _number(shown), _named(lot))
            advice = "Lay it another way, add what holds it up, or write `people: 2`: one holds it."
            yield warning(
                "step-topples", message, stated.place, advice, **_what(build, stated, lot)
            )


@together(
    "step-unsteady",
    reason="What falls over half built breaks its tabs, or falls on somebody.",
    source="statics of a rigid body on a level floor",
    severity=Severity.NOTE,
)
def said_how_it_lies(build: Build) -> Iterator[Finding]:
    """Look for steps after which the work falls over as it will stand, and nothing lays it down."""
    for shown, stated, lot in _falling(build):
        if stated.lies is None:
            message = said("after step {}, {} falls over as it stands", _number(shown), _named(lot))
            advice = (
                f"Say how it lies, `lies: {{{lot[0]}: on its outer face}}`, or write `people: 2`: "
                "one holds it."
            )
            yield note("step-unsteady", message, stated.place, advice, **_what(build, stated, lot))


def _falling(build: Build) -> Iterator[tuple[Shown, Step, tuple[str, ...]]]:
    """Yield the lots that one person has just built, and that do not stand by themselves.

    They are looked at as the step's picture shows them: as they lie, or else as they will stand.
    Where several work, one holds them.
    """
    plan = build.settled.plan
    for shown in build.shown:
        for lot in _lots(shown) if shown.people == 1 else ():
            if {*lot} & {*shown.step.added} and not _stands(shown.assembled, lot):
                yield shown, plan.steps[shown.step.number - 1], lot


def _number(shown: Shown) -> Measure:
    return number("step", shown.step.number)


def _named(lot: tuple[str, ...]) -> str:
    names = [f"`{each}`" for each in lot[:_SHOWN]]
    more = len(lot) - len(names)
    return f"what is built of {listed([*names, f'{more} more'] if more else names)}"


def _what(build: Build, stated: Step, lot: tuple[str, ...]) -> Beside:
    meeting = Meeting(pieces=lot, variant=build.settled.variant.label)
    return {"subject": stated.title, "meeting": meeting}


def _lots(shown: Shown) -> Iterator[tuple[str, ...]]:
    """Yield what is there at the end of a step in lots that joints hold together."""
    left = [*shown.step.standing, *shown.step.added]
    pairs = [(each.a, each.b) for each in shown.assembled.joints if {each.a, each.b} <= {*left}]
    while left:
        lot = lot_of(left[0], pairs)
        left = [each for each in left if each not in lot]
        yield lot


def _stands(assembled: Assembled, lot: tuple[str, ...]) -> bool:
    return stands([footing(assembled.piece(label)) for label in lot])
