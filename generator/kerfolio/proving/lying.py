"""Checks that steps show what they say: how work lies, what is made apart, what is bored."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.assembly.assembled import BuildStep
from kerfolio.assembly.building import Build
from kerfolio.assembly.lying import is_apart
from kerfolio.basis.catalogue import SOURCE
from kerfolio.basis.finding import Finding, Meeting, Severity, error, note, warning
from kerfolio.basis.names import did_you_mean
from kerfolio.model.plan import Step
from kerfolio.proving.naming import is_unread
from kerfolio.proving.rule import COMMON_PRACTICE, OUR_FORM, Stated, after, before, together
from kerfolio.proving.told_words import first_told
from kerfolio.settling.bored import bores_meant, bores_of_part
from kerfolio.settling.settled import SettledPlan

_FACE_DOWN = {
    SOURCE: r"\bface[- ]down(wards?)?\b",
    "de": r"\b(sicht|gut)seite nach unten\b",
}
_OTHERWISE = {
    SOURCE: r"\b(upside[- ]down|on (a|the) (blanket|mat)|on (its|their) "
    r"(left |right |outer |inner )?(side|back|face|front|edge)s?)\b",
    "de": r"\b(kopfüber|auf (den|dem) (kopf|rücken)|auf (die|der|seine[rn]?|ihre[rn]?) "
    r"(linken?|rechten?|äußeren?|inneren?)? ?(seite|kante|fläche)"
    r"|auf (eine[rn]?|die|der) (decke|matte))\b",
}
"""Words that say how work lies, by the languages of the catalogue: a plan may be in any."""

_LOOKS_DOWN = -0.9
"""A face whose direction has less than this share upwards looks down."""


@before(
    "piece-lies-early",
    reason="Only what a step shows can lie in it.",
    source=OUR_FORM,
)
def lying_pieces(stated: Stated) -> Iterator[Finding]:
    """Look for pieces that lie in a step before they join."""
    for assembly in stated.plan.made:
        there: set[str] = set()
        for step in assembly.steps:
            there |= {each.name for each in step.add}
            piece = step.lies.piece if step.lies else None
            if piece and piece.name not in there and not is_unread(piece.name, stated.plan):
                message = f"`lies` names `{piece.name}`, which is not there in this step"
                advice = (
                    f"Name a piece that joins in it or before. {did_you_mean(piece.name, there)}"
                )
                yield error("piece-lies-early", message, piece.place, advice, subject=piece.name)


@together(
    "step-lies-otherwise",
    reason="A picture that contradicts its words is believed before them.",
    source=COMMON_PRACTICE,
    severity=Severity.NOTE,
)
def drawn_as_told(build: Build) -> Iterator[Finding]:
    """Look for steps whose words lay the work down while their picture does not."""
    for shown, stated in _stated(build):
        if stated.lies:
            continue
        text = stated.text.plain()
        words = first_told(_OTHERWISE, text)
        if not words and not _face_looks_down(build, shown):
            words = first_told(_FACE_DOWN, text)
        if words:
            message = f"step `{stated.title}` says “{words}”, and its picture does not show it so"
            advice = "If the work lies so, write how: `lies: {worktop: face down}`."
            meeting = Meeting(
                pieces=shown.added,
                others=() if is_apart(build.drawn.assembled, shown) else shown.standing,
                grounded=True,
                variant=build.settled.variant.label,
            )
            yield note(
                "step-lies-otherwise",
                message,
                stated.place,
                advice,
                subject=stated.title,
                meeting=meeting if shown.added else None,
            )


@together(
    "beside-joined",
    reason="What is made apart cannot be joined to what stands.",
    source=OUR_FORM,
    severity=Severity.WARNING,
)
def made_apart(build: Build) -> Iterator[Finding]:
    """Look for steps done apart whose pieces meet what stands."""
    for shown, stated in _stated(build):
        if not stated.beside:
            continue
        new, standing = {*shown.added}, {*shown.standing}
        for joint in build.drawn.assembled.joints:
            met = {joint.a, joint.b}
            if met & new and met & standing:
                a, b = sorted(met, key=lambda each: each in standing)
                message = f"`{a}` is put together apart, and meets `{b}`, which stands"
                advice = "Take `beside` out, or let the two join in a later step."
                meeting = Meeting(pieces=(a,), others=(b,), variant=build.settled.variant.label)
                yield warning(
                    "beside-joined", message, stated.place, advice, subject=a, meeting=meeting
                )
                break


@after(
    "step-bores",
    reason="A step can only bore what the plan has.",
    source=OUR_FORM,
)
def bores_known(settled: SettledPlan) -> Iterator[Finding]:
    """Look for steps that name bores there are none of."""
    known = [f"{part.name}.{bore.name}" for part in settled.parts for bore in bores_of_part(part)]
    for assembly in settled.plan.made:
        for step in assembly.steps:
            for each in step.bores:
                if any(bores_meant(each.name, settled.parts)):
                    continue
                if not is_unread(each.name, settled.plan):
                    message, advice = f"no bore `{each.name}`", did_you_mean(each.name, known)
                    yield error("step-bores", message, each.place, advice, subject=each.name)


def _stated(build: Build) -> Iterator[tuple[BuildStep, Step]]:
    steps = build.settled.plan.steps
    if not build.order.found:
        yield from ((each, steps[each.number - 1]) for each in build.order.steps)


def _face_looks_down(build: Build, step: BuildStep) -> bool:
    pieces = (build.drawn.assembled.piece(label) for label in step.added)
    return any(each.pose.z[2] < _LOOKS_DOWN for each in pieces)
