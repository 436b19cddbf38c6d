"""Checks of what a step says of hands and turns: pieces that are there, lots that move."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.assembly.building import Build
from kerfolio.basis.finding import Finding, Severity, error, warning
from kerfolio.basis.names import did_you_mean
from kerfolio.basis.words import listed
from kerfolio.proving.naming import is_unread
from kerfolio.proving.rule import COMMON_PRACTICE, OUR_FORM, Stated, before, together


@before(
    "piece-held-early",
    reason="Only what a step shows can be held in it, or come in turn.",
    source=OUR_FORM,
)
def held_pieces(stated: Stated) -> Iterator[Finding]:
    """Look for pieces that are held or come in turn in a step before they join."""
    for assembly in stated.plan.made:
        there: set[str] = set()
        for step in assembly.steps:
            there |= {each.name for each in step.add}
            for key, names in (("holds", step.holds), ("order", step.order)):
                for piece in names:
                    if piece.name in there or is_unread(piece.name, stated.plan):
                        continue
                    message = f"`{key}` names `{piece.name}`, which is not there in this step"
                    guess = did_you_mean(piece.name, there)
                    advice = f"Name a piece that joins in it or before. {guess}"
                    yield error(
                        "piece-held-early", message, piece.place, advice, subject=piece.name
                    )


@together(
    "order-of-one",
    reason="A number that no arrow has tells nobody what comes first.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def ordered_lots(build: Build) -> Iterator[Finding]:
    """Look for steps that order what does not move, or what one move brings together."""
    plan = build.settled.plan
    for shown in build.shown:
        stated = plan.steps[shown.step.number - 1]
        turns = {move.turn for move in shown.step.moves}
        lost = [each for turn, each in enumerate(stated.order, 1) if turn not in turns]
        if lost:
            names = listed([f"`{each.name}`" for each in lost])
            message = f"`order` of step `{stated.title}` names {names}, with no move of its own"
            advice = "Name one piece of each lot that comes home by itself, in their turn."
            yield warning("order-of-one", message, lost[0].place, advice, subject=stated.title)
