"""Checks of the play of joints: too tight for hand, hand-tight, loose, rattling, by purpose.

What counts as what is the workshop's ``play`` (``model/play.py``).
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass
from itertools import chain

from kerfolio.assembly.ends import end_of, pieces_of
from kerfolio.basis.finding import Finding, Severity, note, warning
from kerfolio.basis.measures import clearance, length, number
from kerfolio.basis.place import Place
from kerfolio.basis.said import ByUnit, Text, named, said, stated_name
from kerfolio.basis.slips import meant_length, slip_advice
from kerfolio.basis.words import listed
from kerfolio.model.joint import Joint, JointFit
from kerfolio.model.joint_kind import TAB_JOINT
from kerfolio.model.plan import Plan, SheetUse
from kerfolio.model.play import DRIVEN, LOOSE, PUSH, SLIDES, TIGHT, Play
from kerfolio.model.purpose import DROP_IN, GLUED, KNOCK_DOWN, PRESS, Purpose
from kerfolio.model.statement import Amount
from kerfolio.proving.marks import about
from kerfolio.proving.meeting import meetings, openings
from kerfolio.proving.naming import takers_of
from kerfolio.proving.rule import COMMON_PRACTICE, OWN_FIGURES, Stated, after, before
from kerfolio.settling.clearance import features_named, for_length, for_number
from kerfolio.settling.scope import Scope, SettlingError
from kerfolio.settling.settled import SettledFeature, SettledPart, SettledPlan
from kerfolio.settling.sheet import DEFAULT_FIT

WANTED: dict[Purpose | None, tuple[int, int]] = {
    None: (TIGHT, SLIDES),
    KNOCK_DOWN: (TIGHT, SLIDES),
    GLUED: (PUSH, SLIDES),
    PRESS: (DRIVEN, TIGHT),
    DROP_IN: (PUSH, LOOSE),
}
"""The tightest and the loosest that joints of a purpose may be; common practice, no single source.

A joint that is tight by hand has its glue scraped off; what a push of the hand moves is no press
fit."""

_LITTLE = ByUnit(
    "`fit: 0.1`, say: a tenth of a millimetre", "`fit: 0.005`, say: five thousandths of an inch"
)
_Named = dict[tuple[str, str], list[tuple[Joint, JointFit | None]]]
"""The joints that name a feature of a part, each with the fit stated nearest to it."""


@dataclass(frozen=True, slots=True)
class _Fit:
    """A fit of a sheet, mm; ``what`` says that readers may choose it, ``inches`` how it stands."""

    sheet: str
    mm: float
    place: Place
    what: str = ""
    inches: bool = False


@before(
    "fit-too-tight",
    reason="A sheet goes in by hand where there is room for it.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def fits_not_too_tight(stated: Stated) -> Iterator[Finding]:
    """Look for sheets whose fit, or the least that readers may choose, is too tight for hand."""
    for each in _fits(stated):
        if _step(each.mm, None, stated.plan.play) < 0:
            yield _of_sheet("fit-too-tight", each, stated.plan.play)


@before(
    "fit-too-loose",
    reason="A joint that is loose holds nothing square.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def fits_not_too_loose(stated: Stated) -> Iterator[Finding]:
    """Look for sheets whose fit, or the most that readers may choose, is loose or rattles."""
    for each in _fits(stated):
        if _step(each.mm, None, stated.plan.play) > 0:
            yield _of_sheet("fit-too-loose", each, stated.plan.play)


def _fits(stated: Stated) -> Iterator[_Fit]:
    """Yield the fits of sheets that joints go by: the plan's own, and the ends of a choice.

    Of one that all joints make something else of, a slip of the point or of the unit alone.
    """
    scope, counts = Scope(unit=stated.plan.units), _going_by_sheet(stated.plan)
    for use in stated.plan.sheets:
        if use.name not in counts:
            yield from _slipped(use, scope, stated.plan)
            continue
        if use.fit is None:
            yield _Fit(sheet=use.name, mm=DEFAULT_FIT, place=use.place)
            continue
        reader = use.fit.reader
        chosen = (reader.least, reader.most) if reader else ()
        for what, amount in (("", use.fit.value), *((_CHOICE, each) for each in chosen)):
            with suppress(SettlingError):  # settling says what is wrong with it
                mm, inches = scope.mm(amount), _in_inches(amount, stated.plan.units)
                yield _Fit(use.name, mm, amount.place, what, inches)


def _slipped(use: SheetUse, scope: Scope, plan: Plan) -> Iterator[_Fit]:
    """Yield the fit of a sheet that some joint makes something else of, where it looks like a slip.

    A joint that states its own width makes nothing of it.
    """
    joints = _named(plan)
    made = any(
        fit is not None and fit.width is None
        for part in plan.parts
        for feature, takes in takers_of(part)
        if takes == use.name
        for _, fit in joints.get((part.name, feature), ())
    )
    if use.fit is None or not made:
        return
    with suppress(SettlingError):
        mm, inches = scope.mm(use.fit.value), _in_inches(use.fit.value, plan.units)
        if _meant(mm, plan.play, inches=inches):
            yield _Fit(use.name, mm, use.fit.value.place, inches=inches)


_CHOICE = "readers may choose "


def _going_by_sheet(plan: Plan) -> frozenset[str]:
    """Return the sheets that some feature takes of which not every joint states a fit."""
    joints = _named(plan)
    return frozenset(
        takes
        for part in plan.parts
        for feature, takes in takers_of(part)
        if any(fit is None for _, fit in joints.get((part.name, feature), [(None, None)]))
    )


def _named(plan: Plan) -> _Named:
    owners = {label: part.name for part in plan.parts for label in part.labels}
    found: _Named = {}
    for joint, fit in plan.fits:
        for each in features_named(joint, owners):
            found.setdefault(each, []).append((joint, fit))
    return found


def _step(mm: float, purpose: Purpose | None, play: Play) -> int:
    """Return -1 for less play on each side than a purpose wants, 1 for more, 0 for enough."""
    tightest, loosest = WANTED[purpose]
    step = play.step(mm)
    return (step > loosest) - (step < tightest)


def _of_sheet(rule: str, fit: _Fit, play: Play) -> Finding:
    """Return the finding on a fit of a sheet."""
    words = "{}{} of fit a side for `{}`: {}"
    message = said(words, fit.what, clearance(fit.mm), fit.sheet, play.feel(fit.mm).verdict)
    otherwise = said("Write {} a side goes in by hand.", _LITTLE)
    advice = slip_advice(_meant(fit.mm, play, inches=fit.inches), otherwise)
    return warning(rule, message, fit.place, advice, subject=fit.sheet)


def _in_inches(amount: Amount, unit: str) -> bool:
    """Tell whether an amount of a plan in ``unit`` is stated in inches."""
    text = amount.text.strip()
    bare = text.replace(".", "").replace("/", "").isdigit()
    return unit == "in" if bare else text.endswith(("in", '"'))


def _meant(mm: float, play: Play, *, inches: bool) -> Text:
    """Return the clearance that a slip of the point or of the unit turns into ``mm``.

    Nothing for what is a little off: that is meant. Too much in inches was meant in mm, too little
    in mm in inches.
    """
    if not 0 < mm < play.driven / 2 and not mm > play.loose:
        return ""
    return meant_length(mm, play.driven, play.loose, inches=inches == (mm > play.loose))


@after(
    "joint-too-tight",
    reason="A joint has room for what it is for.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def joints_not_too_tight(settled: SettledPlan) -> Iterator[Finding]:
    """Look for joints too tight for their purpose, their length and how many enter together."""
    return _joints("joint-too-tight", -1, settled)


@after(
    "joint-too-loose",
    reason="A joint that is loose holds nothing square.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def joints_not_too_loose(settled: SettledPlan) -> Iterator[Finding]:
    """Look for joints with more play than they are for, and for openings of another width."""
    return chain(_joints("joint-too-loose", 1, settled), _wide(settled))


def _joints(rule: str, wrong: int, settled: SettledPlan) -> Iterator[Finding]:
    """Yield a finding for each feature whose play is wrong, at the plan's own fits.

    Of one that has the sheet's fit, that fit has been judged; what its length and number use up of
    it can only make it too tight.
    """
    if settled.variant.fit:
        return
    play, joints = settled.plan.play, _named(settled.plan)
    for part in settled.parts:
        for feature in part.features:
            room, name = feature.room, (part.name, stated_name(feature.name))
            if room is None or name not in joints:
                continue
            felt = room.felt if wrong < 0 else room.felt - room.filled
            judged = _step(felt, room.purpose, play)
            if not room.asked and _step(room.fit, None, play):
                judged = 0
            if judged == wrong:
                verdict = play.feel(felt).verdict
                yield _of_joint(rule, verdict, settled, part, feature, joints[name])


def _of_joint(
    rule: str,
    verdict: str,
    settled: SettledPlan,
    part: SettledPart,
    feature: SettledFeature,
    joints: list[tuple[Joint, JointFit | None]],
) -> Finding:
    room = feature.room
    assert room is not None, "a play that is judged is that of a room"
    over = said(" over {}", length("contact", room.contact)) if for_length(room.contact) else ""
    many = said(", {} together", number("together", room.together))
    purpose = f", for a {room.purpose} joint" if room.purpose else ""
    message = said(
        "{} has {} a side{}{}: {}{}",
        *(named(f"{part.name}.{feature.name}"), clearance(room.fit), over),
        *(many if for_number(room.together) else "", verdict, purpose),
    )
    fits = [fit for _, fit in joints if fit is not None]
    place = fits[0].place if fits else joints[0][0].place
    if any(fit.width is not None for fit in fits):
        own = next(fit.width for fit in fits if fit.width is not None)
        inches = _in_inches(own, settled.plan.units)
        meant = _meant(room.fit, settled.plan.play, inches=inches)
        advice: Text = slip_advice(
            meant, "Give it a purpose in place of the length, such as `fit: knock-down`."
        )
    elif fits:
        advice = f"It follows the fit of `{feature.takes}`: change that, or state its own `width`."
    else:
        advice = "Write `fit: knock-down` at the joint: what is long or many gets more room by it."
    return warning(rule, message, place, advice, **about(settled, part, feature))


def _wide(settled: SettledPlan) -> Iterator[Finding]:
    """Yield a finding for each opening of a stated width in which a sheet is loose.

    It is looked at where sheets are at their thinnest and their thickest. Notches may cross at a
    slant, so that only what tabs go into counts.
    """
    play = settled.plan.play
    for met in meetings(settled, TAB_JOINT):
        for opening, part, other in openings(met):
            mm = (opening.width.value - other.thickness) / 2
            at_end = other.thickness in settled.sheet(other.sheet).published
            if opening.room is None and at_end and _step(mm, None, play) > 0:
                name, verdict = named(f"{part.name}.{opening.name}"), play.feel(mm).verdict
                message = said("{} has {} a side: {}", name, clearance(mm), verdict)
                advice = f"Write `takes: {other.sheet}` in place of its width."
                what = about(settled, part, opening)
                yield warning("joint-too-loose", message, opening.place, advice, **what)


@after(
    "fit-shared",
    reason="A part is cut once, whatever its joints are for.",
    source=OWN_FIGURES,
    severity=Severity.NOTE,
)
def fits_agree(settled: SettledPlan) -> Iterator[Finding]:
    """Look for features that joints of several fits name: the loosest is cut."""
    joints = _named(settled.plan)
    for part in settled.parts:
        for feature in part.features:
            name, room = (part.name, stated_name(feature.name)), feature.room
            asked = dict.fromkeys(map(_asks, (fit for _, fit in joints.get(name, ()))))
            if room is not None and len(asked) > 1:
                words = "joints ask for {} at {}, which is cut once: {} a side"
                many, known = listed([*asked]), named(f"{part.name}.{feature.name}")
                message = said(words, many, known, clearance(room.fit))
                place = next(fit.place for _, fit in joints[name] if fit is not None)
                advice = "The loosest counts: give them one fit, or features of their own."
                yield note("fit-shared", message, place, advice, **about(settled, part, feature))


def _asks(fit: JointFit | None) -> str:
    """Return in a word what a fit asks for."""
    if fit is None:
        return "the sheet's fit"
    own = [f"`{each.text}`" for each in dict.fromkeys((fit.width, fit.ends)) if each is not None]
    return listed([*([fit.purpose.name] if fit.purpose else []), *own])


@after(
    "fit-of-nothing",
    reason="A fit widens what takes a sheet.",
    source=OWN_FIGURES,
    severity=Severity.WARNING,
)
def fits_count(settled: SettledPlan) -> Iterator[Finding]:
    """Look for joints that state a fit where nothing follows it."""
    pieces = pieces_of(settled)
    for joint in settled.plan.joints:
        ends = [end_of(each.name, pieces) for each in (joint.b, joint.a)]
        known = [(e.part, f, e.name(n)) for e in ends if e for n, f in enumerate(e.features)]
        if joint.fit is not None and known and all(f.room is None for _, f, _ in known):
            part, feature, name = known[0]
            message = said("the fit changes nothing at {}", named(name))
            advice = "Write `takes:` with the sheet that goes in, in place of its width."
            what = about(settled, part, feature)
            yield warning("fit-of-nothing", message, joint.fit.place, advice, **what)
