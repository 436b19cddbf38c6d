"""Checks of work by hand in steps: names that exist, words that are drawn, glue that is pressed."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from kerfolio.assembly.assembled import PosedJoint
from kerfolio.assembly.building import Build
from kerfolio.assembly.clamping import clamps_over
from kerfolio.assembly.handworked import clamped_in, glued_ends, glued_in, has_ends
from kerfolio.assembly.lying import Shown
from kerfolio.basis.catalogue import SOURCE
from kerfolio.basis.finding import Finding, Severity, error, note, warning
from kerfolio.basis.measures import length
from kerfolio.basis.names import begins, did_you_mean
from kerfolio.basis.said import said
from kerfolio.model.handwork import PencilLine
from kerfolio.model.plan import Assembly, Step
from kerfolio.model.statement import Named
from kerfolio.proving.naming import is_unread
from kerfolio.proving.rule import COMMON_PRACTICE, OUR_FORM, after, together
from kerfolio.proving.told_words import Sought, first_told
from kerfolio.settling.marked import name_marked
from kerfolio.settling.settled import SettledPlan
from kerfolio.settling.worked import names_worked_on, worked_on

_SAND = {
    SOURCE: r"\b(sand(s|ed|ing|paper)?|(break|ease) (all|every|the|its|their) edges?)\b",
    "de": r"\b((ab|an|ver)?schleif\w*|kanten? [\w ,]{0,30}brechen)\b",
}
_GLUE = {
    SOURCE: r"(?<!\bno )(?<!\bwithout )(?<!-out )\bglu(e|es|ed|ing|eing)\b",
    "de": r"(?<!\bohne )(?<!\bkein )(?<!\bkeinen )\b((ver|an|ein)?leim\w*|(ver|an|ein)?kleb\w*)\b",
}
_CLAMP = {
    SOURCE: r"\bclamp(s|ed|ing)?\b",
    "de": r"\b(\w*zwingen?|(ein|auf)(zu)?spann\w*|festklemm\w*)\b",
}
_MARK = {
    SOURCE: r"\b(mark(ing)? (out|off|it|each|both|a|an|the|where)|scribe|pencil (a )?lines?)\b",
    "de": r"\b(an(zu)?reiß\w*|an(zu)?zeichn\w*|markier\w*)\b",
}
_TURN = {
    SOURCE: r"\b(turn (it|them|both|everything|all of it|the \w+( \w+)?) "
    r"(over|round|upside[- ]down)|flip (it|them|the \w+))\b",
    "de": r"\b(um(zu)?dreh\w*|um(zu)?kipp\w*|wenden|drehe? .{1,30} um)\b",
}
"""Words of work by hand, by the languages of the catalogue: a plan may be in any."""

_OTHER = {"left": "right", "right": "left", "top": "bottom", "bottom": "top"}

_WRITTEN = {
    "sands": "sands: [side]",
    "glues": "glues: [rail.left-tabs]",
    "clamps": "clamps: {count: 2}",
    "marks": "marks: [side.holes]",
}


@after(
    "step-works",
    reason="Work by hand is drawn on what it names.",
    source=OUR_FORM,
)
def works_known(settled: SettledPlan) -> Iterator[Finding]:
    """Look for work on what there is not."""
    known = names_worked_on(settled.parts)
    for assembly in settled.plan.made:
        ends = [end.name for joint in assembly.joints for end in (joint.a, joint.b)]
        for step in assembly.steps:
            for name in (*_marked(step), *(step.sands.of if step.sands else ())):
                if worked_on(name.name, settled.parts) is None:
                    yield from _unknown(name, "piece, side, face or feature", known, settled)
            yield from _lines_off(step, settled)
            for name in _joined(step):
                if not _is_end(name.name, ends) and not _is_held(name, step, settled):
                    yield from _unknown(name, "joint", _joined_names(assembly), settled)


def _lines_off(step: Step, settled: SettledPlan) -> Iterator[Finding]:
    """Look for lines that are further off their side than the part reaches."""
    far = dict(settled.pencilled)
    for each in step.marks:
        worked = worked_on(name_marked(each).name, settled.parts)
        if worked is None or not isinstance(each, PencilLine) or each.at.text not in far:
            continue
        for side in each.sides:
            size = worked.part.size[side in ("top", "bottom")]
            if far[each.at.text] >= size:
                message = said(
                    "a line {} from `{}` lies off `{}`, which is {} that way",
                    length("at", far[each.at.text]),
                    side,
                    worked.part.name,
                    length("size", size),
                )
                advice = f"Write less, or the distance from the other side: `from: {_OTHER[side]}`."
                yield error("step-works", message, each.place, advice, subject=each.on.name)


def _marked(step: Step) -> Iterator[Named]:
    yield from map(name_marked, step.marks)


def _joined(step: Step) -> Iterator[Named]:
    for each in (step.glues, step.clamps):
        yield from each.of if each else ()


def _is_end(name: str, ends: list[str]) -> bool:
    return any(begins(end, name) or begins(name, end) for end in ends)


def _is_held(name: Named, step: Step, settled: SettledPlan) -> bool:
    """Tell whether a name is that of a piece clamped down while it is bored."""
    of_clamps = step.clamps is not None and name in step.clamps.of
    return of_clamps and bool(step.bores) and worked_on(name.name, settled.parts) is not None


def _joined_names(assembly: Assembly) -> tuple[str, ...]:
    ends = [end.name for joint in assembly.joints for end in (joint.a, joint.b)]
    return tuple(dict.fromkeys([*ends, *(each.rpartition(".")[0] or each for each in ends)]))


def _unknown(
    name: Named, what: str, known: tuple[str, ...], settled: SettledPlan
) -> Iterator[Finding]:
    if not is_unread(name.name, settled.plan):
        message, advice = f"no {what} `{name.name}`", did_you_mean(name.name, known)
        yield error("step-works", message, name.place, advice, subject=name.name)


@together(
    "work-undrawn",
    reason="A reader builds from the pictures: what only the words tell is passed over.",
    source=COMMON_PRACTICE,
    severity=Severity.NOTE,
)
def words_drawn(build: Build) -> Iterator[Finding]:
    """Look for steps whose words tell of work by hand that no picture shows; once for a step."""
    turned = _turned(build)
    steps = zip(build.settled.plan.steps, build.at_work, strict=False)
    for number, (stated, at) in enumerate(steps, 1):
        text = f"{stated.title}. {stated.text.plain()}"
        drawn: list[tuple[Sought, bool, str]] = [
            (_SAND, stated.sands is not None, "sands"),
            (_GLUE, bool(_glued(build, stated, at)), "glues"),
            (_CLAMP, stated.clamps is not None, "clamps"),
            (_MARK, bool(stated.marks or stated.bores), "marks"),
        ]
        found = [(first_told(words, text), key) for words, is_drawn, key in drawn if not is_drawn]
        if number not in turned and not stated.lies:
            found.append((first_told(_TURN, text), "lies"))
        told = [(words, key) for words, key in found if words]
        if told:
            words = told[0][0]
            message = f"step `{stated.title}` says “{words}”, and no picture shows it"
            advice = _advice([key for _, key in told])
            yield note("work-undrawn", message, stated.place, advice, subject=stated.title)


def _advice(keys: list[str]) -> str:
    if keys == ["lies"]:
        return "Write how the work lies afterwards, in the next step: `lies: {worktop: face down}`."
    written = [f"`{_WRITTEN[key]}`" for key in keys if key in _WRITTEN]
    return f"If it is done here, write on what: {', '.join(written)}."


@together(
    "work-elsewhere",
    reason="What is glued or clamped is what comes together.",
    source=OUR_FORM,
    severity=Severity.WARNING,
    also=("clamps-no-room",),
)
def works_there(build: Build) -> Iterator[Finding]:
    """Look for glue where nothing closes, and for clamps that find nothing to press, or no room."""
    for stated, at in zip(build.settled.plan.steps, build.at_work, strict=False):
        glued = _glued(build, stated, at)
        if stated.glues and not glued:
            message = "nothing that `glues` names comes together in this step"
            advice = "Move it to the step in which its joint closes."
            yield warning("work-elsewhere", message, stated.glues.place, advice)
        if stated.clamps and not stated.bores:
            yield from _clamps(stated, at, glued)


def _clamps(stated: Step, at: Shown, glued: tuple[PosedJoint, ...]) -> Iterator[Finding]:
    assert stated.clamps is not None, "asked of steps with clamps"
    clamps, subject = stated.clamps, stated.title
    pressed = clamped_in(at.assembled, at.step, clamps, glued)
    if not pressed:
        message = f"step `{subject}` has clamps, and no joint that they press"
        advice = "Name what they press: `clamps: {of: [rail.left-tabs], count: 2}`."
        yield warning("work-elsewhere", message, clamps.place, advice, subject=subject)
        return
    there = {*at.step.standing, *at.step.added}
    count = len(clamps_over(at.assembled, there, pressed, clamps.count))
    if clamps.count and count < clamps.count:
        message = (
            f"step `{subject}` has {clamps.count} clamps, and its picture has room for {count}"
        )
        advice = "Name what they press, or write how many there are."
        yield warning("clamps-no-room", message, clamps.place, advice, subject=subject)


@together(
    "glue-unpressed",
    reason="A glued joint is as strong as its faces lie close while it sets.",
    source=COMMON_PRACTICE,
    severity=Severity.NOTE,
)
def glue_pressed(build: Build) -> Iterator[Finding]:
    """Look for joints with room for glue that no step clamps from then on and nothing fastens."""
    ends = glued_ends(build.settled.plan)
    steps = [*zip(build.settled.plan.steps, build.at_work, strict=False)]
    fastened = [
        {name.name.rpartition(".")[0] for name in each.joins}
        for each in build.settled.plan.fastenings
    ]
    for number, (stated, at) in enumerate(steps):
        glued = [each for each in _glued(build, stated, at) if has_ends(each, ends)]
        loose = [each for each in glued if not any({each.a, each.b} <= pair for pair in fastened)]
        if loose and not any(later.clamps for later, _ in steps[number:]):
            both = " and ".join(f"`{each}`" for each in loose[0].ends)
            message = f"{both} are glued, and no step clamps them"
            advice = "Say how it is pressed: `clamps: {count: 2, minutes: 30}`."
            yield note("glue-unpressed", message, stated.place, advice, subject=stated.title)
            return


def _glued(build: Build, stated: Step, at: Shown) -> tuple[PosedJoint, ...]:
    return glued_in(at.assembled, at.step, stated, build.settled.plan)


def _turned(build: Build) -> set[int]:
    """Return the steps in which work is turned, and those before, whose words may tell of it."""
    found = {each.step.number for each in build.shown if each.turned}
    return found | {before.step.number for before, each in pairwise(build.shown) if each.turned}
