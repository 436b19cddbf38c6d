"""Checks of a plan put together: do its joints agree, do its pieces fit, can it be built?"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kerfolio.assembly.bracing import unbraced
from kerfolio.assembly.building import Build
from kerfolio.assembly.ends import end_of, pieces_of
from kerfolio.assembly.extent import box_around, size_of
from kerfolio.assembly.go_together import Clash
from kerfolio.assembly.in_use import InUse, fits, in_use_of
from kerfolio.assembly.order import BlockedStep
from kerfolio.assembly.stability_words import TALL
from kerfolio.basis.finding import (
    Beside,
    Finding,
    Mark,
    Meeting,
    Severity,
    error,
    note,
    warning,
)
from kerfolio.basis.measures import length, reading
from kerfolio.basis.place import Place
from kerfolio.basis.said import said
from kerfolio.basis.tolerance import SAME
from kerfolio.basis.words import listed
from kerfolio.model.feature_kind import GROOVE
from kerfolio.model.joint_kind import JOINT_KINDS
from kerfolio.model.plan import Plan
from kerfolio.model.use import is_unsaid
from kerfolio.proving.agreeing import told_thickness
from kerfolio.proving.folding import at
from kerfolio.proving.marks import feature_mark
from kerfolio.proving.meeting import meetings, openings
from kerfolio.proving.rule import COMMON_PRACTICE, OUR_FORM, together
from kerfolio.proving.wedges import misdrawn
from kerfolio.settling.settled import FitVariant


@together(
    "joint-off",
    reason="Every way round from piece to piece must lead to the same place.",
    source="geometry: loops of joints close",
    also=("joint-count", "joint-way"),
)
def joints_agree(build: Build) -> Iterator[Finding]:
    """Look for joints that do not agree with the others, or cannot be made at all."""
    yield from told_thickness(tuple(_joint_faults(build)), build)


def _joint_faults(build: Build) -> Iterator[Finding]:
    told: set[tuple[str, Place]] = set()
    for walked in (build.drawn, *(each.together for each in build.fitted)):
        for finding in walked.findings:
            key = finding.rule, finding.place
            if finding.rule in JOINT_FAULTS and key not in told:
                told.add(key)
                yield finding if walked is build.drawn else at(finding, walked.assembled.variant)


JOINT_FAULTS = ("joint-off", "joint-count", "joint-way")


@together(
    "which-way-round",
    reason="A piece that could go in two ways must be told which.",
    source=OUR_FORM,
    severity=Severity.WARNING,
)
def ways_stated(build: Build) -> Iterator[Finding]:
    """Look for joints that could go another way round just as well."""
    return (each for each in build.drawn.findings if each.rule == "which-way-round")


@together(
    "piece-unjoined",
    reason="A piece that is in no joint has no place.",
    source=OUR_FORM,
    severity=Severity.WARNING,
)
def pieces_joined(build: Build) -> Iterator[Finding]:
    """Look for pieces that no joint puts anywhere."""
    return (each for each in build.drawn.findings if each.rule == "piece-unjoined")


@together(
    "joint-unchecked",
    reason="A place that only one joint states is only as right as that joint.",
    source="geometry: loops of joints close",
    severity=Severity.NOTE,
)
def joints_checked(build: Build) -> Iterator[Finding]:
    """Look for joints that no other joint checks."""
    return (each for each in build.drawn.findings if each.rule == "joint-unchecked")


CLASHING = "pieces-clash"


@together(
    CLASHING,
    reason="Two pieces cannot fill the same space.",
    source="geometry of rigid flat panels",
)
def pieces_fit(build: Build) -> Iterator[Finding]:
    """Look for pieces that need the same space, as drawn and in the corners of the range.

    Pieces whose joint does not agree with the others have been told of already, and two of whose
    joint the ends are not as many or take another sheet; a wedge that is drawn or turned wrongly
    is told as that.
    """
    counted = _miscounted(build) | _of_another_sheet(build)
    told = {piece for gap in build.drawn.gaps for piece in (gap.pairing.a, gap.pairing.b)}
    found: dict[frozenset[str], list[tuple[FitVariant, Clash]]] = {}
    for fitted in build.fitted:
        passed = counted | misdrawn(fitted)
        for clash in fitted.clashes:
            pair = frozenset((clash.a, clash.b))
            if told.isdisjoint(pair) and pair not in passed:
                found.setdefault(pair, []).append((fitted.together.assembled.variant, clash))
    for clashes in found.values():
        variant, worst = max(clashes, key=lambda each: each[1].volume)
        finding = _clash(build, worst, variant)
        yield finding if len(clashes) == len(build.fitted) else at(finding, variant)


def _miscounted(build: Build) -> set[frozenset[str]]:
    """Return the pairs of pieces between which some tab has no opening, or the other way about."""
    pieces = pieces_of(build.settled)
    places = {each.place for each in build.drawn.findings if each.rule == "joint-count"}
    joints = (each for each in build.settled.plan.joints if each.place in places)
    ends = ((end_of(each.a.name, pieces), end_of(each.b.name, pieces)) for each in joints)
    return {frozenset((a.piece, b.piece)) for a, b in ends if a and b}


def _of_another_sheet(build: Build) -> set[frozenset[str]]:
    """Return the pairs of pieces between which an opening takes another sheet than meets it."""
    return {
        frozenset((met.a.piece, met.b.piece))
        for met in meetings(build.settled, *JOINT_KINDS)
        for opening, _, other in openings(met)
        if opening.takes and opening.takes != other.sheet
    }


def _clash(build: Build, clash: Clash, variant: FitVariant) -> Finding:
    place = clash.joint.place if clash.joint else pieces_of(build.settled)[clash.a].place
    one, other = clash.ends if clash.joint else (clash.a, clash.b)
    size = reading("deep", max(clash.depth, 0.01)), length("length", clash.length)
    message = said("`{}` and `{}` need the same space, {} deep over {}", one, other, *size)
    advice = "They share no joint there: is an opening missing, or one piece too long?"
    mark = None
    label = variant.label
    meeting = Meeting(pieces=(clash.a,), others=(clash.b,), variant=label)
    if clash.joint:
        mark = _mark(build, other)
    short = _too_short(build, clash)
    if short:
        message = said("`{}` is {} too short for `{}`", other, length("length", clash.length), one)
        advice = "What goes in must be no longer, or the groove must be open where it reaches on."
    elif clash.joint:
        advice = f"Widen `{other}`, or take something off `{one}`; `takes:` follows the sheet."
    what: Beside = {"mark": mark, "meeting": meeting, "subject": other}
    return error(CLASHING, message, place, advice, **what)


def _too_short(build: Build, clash: Clash) -> bool:
    """Tell whether two pieces are in each other where a groove ends before what goes into it."""
    pieces = pieces_of(build.settled)
    a, b = (end_of(each, pieces) for each in clash.ends or ("", ""))
    if a is None or b is None or not (a.features and b.features):
        return False
    grooved = b.features[0].kind is GROOVE
    return grooved and a.features[0].width.value - b.features[0].length.value > SAME


def _mark(build: Build, name: str) -> Mark | None:
    end = end_of(name, pieces_of(build.settled))
    return feature_mark(build.settled, end.part, *end.features) if end and end.features else None


@together(
    "step-blocked",
    reason="A piece must get to its place past what stands.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def steps_possible(build: Build) -> Iterator[Finding]:
    """Look for steps whose pieces cannot come home along a straight line.

    Pieces that have no sure place, or fill one another's, have been told of already.
    """
    if _unsure(build):
        return
    for blocked in build.blocked:
        step = build.settled.plan.steps[blocked.number - 1]
        pieces = listed([f"`{each}`" for each in blocked.pieces])
        message = f"step {blocked.number}: {pieces} cannot slide in along a straight line"
        if blocked.blockers:
            standing = listed([f"`{each}`" for each in blocked.blockers])
            verb = "stand" if len(blocked.blockers) > 1 else "stands"
            message += f": {standing} {verb} in the way"
        advice, title = _proposal(blocked), step.title
        meeting = Meeting(
            pieces=blocked.pieces,
            others=blocked.blockers,
            way=blocked.direction,
            variant=build.settled.variant.label,
        )
        yield warning("step-blocked", message, step.place, advice, subject=title, meeting=meeting)


def _unsure(build: Build) -> bool:
    return bool(build.drawn.gaps) or any(each.clashes for each in build.fitted)


def _proposal(blocked: BlockedStep) -> str:
    tilting = "Tilting in and bending are not looked at: if you mean that, say so in the step."
    if blocked.before:
        pieces = listed([f"`{each}`" for each in blocked.pieces])
        return f"Add {pieces} before `{blocked.before}`. {tilting}"
    if blocked.proposal:
        steps = "; ".join(", ".join(each) for each in blocked.proposal if each)
        return f"This order works: {steps}. {tilting}"
    return tilting


@together(
    "unbraced",
    reason="A structure good under downward load may not resist sideways force.",
    source=COMMON_PRACTICE,
    severity=Severity.NOTE,
)
def braced(build: Build) -> Iterator[Finding]:
    """Look for uprights that nothing keeps square against a push from the side."""
    for each in unbraced(build.drawn.assembled):
        names = listed([f"`{label}`" for label in each.uprights])
        message = said("nothing braces {} against a push {}", names, each.way)
        advice = (
            "What carries well downward may still lean over. Join a back, an apron or deeper "
            "rails to both."
        )
        first = each.uprights[0]
        meeting = Meeting(pieces=each.uprights, variant=build.settled.variant.label)
        what: Beside = {"subject": first, "meeting": meeting}
        yield note("unbraced", message, pieces_of(build.settled)[first].place, advice, **what)


@together(
    "use-unsaid",
    reason="Which cautions fit hangs on what a thing is for and where it stands.",
    source="16 CFR 1261 and ASTM F2057 give 27 in for clothes storage; used as a mark only",
    severity=Severity.NOTE,
)
def use_said(build: Build) -> Iterator[Finding]:
    """Look for what is tall, and no word of the plan tells what it is for."""
    plan = build.settled.plan
    tall = size_of(box_around(build.drawn.assembled.pieces))[2]
    if is_unsaid(plan) and tall >= TALL:
        message = said("it stands {} tall, and nothing says what for", length("height", tall))
        advice = "State `uses: [store things]`, say, and `placed: wall`, so that cautions fit."
        yield note("use-unsaid", message, plan.place, advice)


@together(
    "use-unfit",
    reason="What is stated to be done with a thing must be what it stands.",
    source="statics of a rigid body on a level floor",
    severity=Severity.WARNING,
)
def uses_fit(build: Build) -> Iterator[Finding]:
    """Look for stated uses that it tips or slides under, or that its joints alone stand against.

    What its spans bear is told by the rules on spans.
    """
    settled, assembled = build.settled, build.drawn.assembled
    if not settled.plan.is_set:  # of a set, what lies on others counts with them
        found = in_use_of(settled, assembled, build.stability)
        if found is not None:
            labels = [each.label for each in assembled.pieces]
            yield from unfit("use-unfit", settled.plan, found, labels)


def unfit(
    rule: str, plan: Plan, found: InUse, pieces: Sequence[str], thing: str = ""
) -> Iterator[Finding]:
    """Yield a warning for each stated use that a thing does not stand; ``thing`` of a set."""
    for each in fits(plan, found, sits=True, carries=True):
        if each.why:
            fixed = "hold it on what it lies on" if found.lies else "fix it"
            advice = f"Take the use out, or stiffen it, widen its feet or {fixed}."
            whose = f"`{each.use}`: {f'`{thing}`: ' if thing else ''}"
            message = said("{}{}", whose, each.why)
            whole = Meeting(pieces=tuple(pieces), grounded=True)
            subject = thing or each.use
            yield warning(rule, message, plan.place, advice, subject=subject, meeting=whole)


@together(
    "pieces-locked",
    reason="Pieces that hold each other can be neither put together nor taken apart.",
    source="blocking graphs: Wilson and Latombe, AAAI 1992 (abstract)",
    severity=Severity.WARNING,
)
def order_exists(build: Build) -> Iterator[Finding]:
    """Look for pieces that hold each other, so that nothing can be put together or taken apart."""
    if _unsure(build):
        return
    if build.deadlock is not None:
        pieces = listed([f"`{each}`" for each in build.deadlock.pieces])
        message = f"{pieces} hold each other: no straight moves put them together"
        advice = "Open one of their slots to an edge, or let one of them come in last."
        place = build.settled.plan.place
        what = _held(build, build.deadlock.pieces)
        yield warning("pieces-locked", message, place, advice, **what)
    elif build.apart is not None and build.apart.captive and not build.blocked:
        pieces = listed([f"`{each}`" for each in build.apart.captive])
        message = f"{pieces} cannot be taken apart again along straight lines"
        yield note(
            "pieces-locked", message, build.settled.plan.place, **_held(build, build.apart.captive)
        )


def _held(build: Build, pieces: Sequence[str]) -> Beside:
    meeting = Meeting(pieces=tuple(pieces), variant=build.settled.variant.label)
    return {"subject": pieces[0], "meeting": meeting}
