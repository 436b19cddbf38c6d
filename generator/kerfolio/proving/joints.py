"""Checks of joints: both ends are there, and are of kinds and sheets that can meet."""

from __future__ import annotations

from collections.abc import Container, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from kerfolio.assembly.ends import end_of
from kerfolio.assembly.ends import pieces_of as settled_pieces
from kerfolio.basis.finding import Finding, Severity, error, warning
from kerfolio.basis.names import begins, choice, did_you_mean, split_feature
from kerfolio.basis.said import named as in_quotes
from kerfolio.basis.said import said, stated_name
from kerfolio.basis.words import listed
from kerfolio.model.joint import Joint
from kerfolio.model.joint_kind import JOINT_KINDS, EndKind
from kerfolio.model.part import Part
from kerfolio.model.plan import Plan
from kerfolio.model.statement import Named
from kerfolio.proving.marks import about
from kerfolio.proving.naming import (
    Meant,
    is_unread,
    meant_by,
    names_of,
    pieces_meant,
    pieces_of,
)
from kerfolio.proving.rule import COMMON_PRACTICE, OUR_FORM, Stated, after, before
from kerfolio.settling.settled import SettledFeature, SettledPart, SettledPlan

_SHOWN = 4


@before(
    "unknown-joint-piece",
    reason="A joint names features that exist.",
    source=OUR_FORM,
    also=("unknown-joint-feature",),
    unbuilt=True,
)
def joint_ends(stated: Stated) -> Iterator[Finding]:
    """Look for ends of joints that name no piece or no feature."""
    pieces = pieces_of(stated.plan)
    for joint in stated.plan.joints:
        for end in (joint.a, joint.b):
            if not is_unread(end.name, stated.plan) and meant_by(end.name, pieces) is None:
                yield _missing(end, joint, pieces)


def _missing(end: Named, joint: Joint, pieces: Mapping[str, Part]) -> Finding:
    label, feature = split_feature(end.name, pieces)
    kinds = joint.kind.first if end is joint.a else joint.kind.second
    fitting = names_of(pieces, kinds)
    if label:
        message = f"`{label}` has no feature `{feature}`"
        own = [each[len(label) + 1 :] for each in fitting if each.startswith(f"{label}.")]
        advice, name = _meant(feature, own) or did_you_mean(end.name, fitting), end.name
        return error("unknown-joint-feature", message, end.place, advice, subject=name)
    meant = [each for each in pieces_meant(end.name, pieces) if each in fitting]
    message = f"no piece for `{end.name}`"
    advice = f"Did you mean {_or(meant)}?" if meant else did_you_mean(end.name, fitting)
    return error("unknown-joint-piece", message, end.place, advice, subject=end.name)


def _meant(feature: str, own: Sequence[str]) -> str:
    """Return advice that names what fits on the very piece; nothing where none does."""
    return did_you_mean(feature, own) if own else ""


def _or(names: Sequence[str]) -> str:
    """Return the first few of some names, to choose from."""
    return choice(names[:_SHOWN])


@after(
    "joint-without-feature",
    reason="A joint of a feature that is not there holds nothing.",
    source=OUR_FORM,
    unbuilt=True,
)
def features_there(settled: SettledPlan) -> Iterator[Finding]:
    """Look for ends of joints whose feature a part does not come to have.

    How many slots a drawing holds, and which notches of an outline are as wide as a sheet is
    thick, is known only here.
    """
    pieces, stated = settled_pieces(settled), pieces_of(settled.plan)
    for joint in settled.plan.joints:
        for end in (joint.a, joint.b):
            if meant_by(end.name, stated) is not None and end_of(end.name, pieces) is None:
                label, feature = split_feature(end.name, pieces)
                message, name = f"`{label}` comes to have no feature `{feature}`", end.name
                advice = did_you_mean(feature, [each.name for each in pieces[label].features])
                yield error("joint-without-feature", message, end.place, advice, subject=name)


@after(
    "feature-unjoined",
    reason="What is cut to meet something is forgotten where no joint names it.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def features_joined(settled: SettledPlan) -> Iterator[Finding]:
    """Look for tabs, fingers and slots that take part in no joint.

    A notch or a recess may be for something that no plan states: of those only copies are told
    whose twins are joined. A slot that one piece needs is cut into all of its part. Nothing is
    asked of a piece in no joint, nor of a plan that could not be read whole.
    """
    plan = settled.plan
    ends = {end.name for joint in plan.joints for end in (joint.a, joint.b)}
    meant = _kinds_of_no_end(plan)
    for part in settled.parts if not plan.unread else ():
        labels = [each.label for each in part.pieces if _begins_one(each.label, ends)]
        for base, copies in _sets(part) if labels else ():
            if copies[0].kind in meant:
                continue  # it may be what a mistyped joint means
            for label, lone in _lone(part, labels, copies, ends):
                name = base if len(lone) == len(copies) else lone[0].name
                yield _unjoined(label, name, settled, part, lone[0])


def _kinds_of_no_end(plan: Plan) -> frozenset[EndKind]:
    """Return what may stand where a joint names nothing that there is."""
    pieces = pieces_of(plan)
    ends = (
        (end, kinds)
        for joint in plan.joints
        for end, kinds in zip((joint.a, joint.b), joint.kind.ends, strict=True)
    )
    return frozenset(k for end, kinds in ends if meant_by(end.name, pieces) is None for k in kinds)


def _begins_one(label: str, ends: Iterable[str]) -> bool:
    return any(begins(each, label) for each in ends)


def _sets(part: SettledPart) -> Iterator[tuple[str, tuple[SettledFeature, ...]]]:
    """Yield the features of a part as they are stated, each with its copies."""
    sets: dict[str, list[SettledFeature]] = {}
    for each in part.features:
        sets.setdefault(stated_name(each.name), []).append(each)
    yield from ((base, tuple(copies)) for base, copies in sets.items())


def _lone(
    part: SettledPart,
    labels: Sequence[str],
    copies: Sequence[SettledFeature],
    ends: Container[str],
) -> Iterator[tuple[str, list[SettledFeature]]]:
    """Yield the piece, or the part for all its pieces, and the copies that no joint names there."""
    kind = copies[0].kind
    if not kind.interlocks and not (kind.fitted and copies[0].takes):
        return
    lone = {
        label: [each for each in copies if not _is_joined(f"{label}.{each.name}", ends)]
        for label in labels
    }
    nowhere = [each for each in copies if all(each in lone[label] for label in labels)]
    alone = kind.interlocks or (kind.opens and not kind.on_edge)
    if nowhere and (alone or len(nowhere) < len(copies)):
        yield part.name, nowhere
    elif kind.interlocks:
        yield from ((label, lost) for label, lost in lone.items() if lost)


def _is_joined(name: str, ends: Container[str]) -> bool:
    return name in ends or stated_name(name) in ends


def _unjoined(
    owner: str, name: str, settled: SettledPlan, part: SettledPart, feature: SettledFeature
) -> Finding:
    """Return the finding about a feature of a piece, or of a part with all its pieces."""
    kind = next(each for each in JOINT_KINDS if feature.kind in (*each.first, *each.second))
    label = part.pieces[0].label if owner == part.name else owner
    first, second = f"{label}.{name}", "..."
    if feature.kind not in kind.first:
        first, second = second, first
    message = said("{} {} takes part in no joint", feature.kind.name, in_quotes(f"{owner}.{name}"))
    listed = f"{{{kind.name}: {first}, {kind.other}: {second}}}"
    advice = f"State what it meets under `joints`, such as `{listed}`."
    what = about(settled, part, feature)
    return warning("feature-unjoined", message, feature.place, advice, **what)


@before(
    "unknown-standing",
    reason="How the whole stands goes by a piece the plan has.",
    source=OUR_FORM,
    unbuilt=True,
)
def standing_piece(stated: Stated) -> Iterator[Finding]:
    """Look for a statement of how the whole stands that goes by no piece."""
    pieces = pieces_of(stated.plan)
    for standing in (each.standing for each in stated.plan.made):
        if standing is None or is_unread(standing.piece.name, stated.plan):
            continue
        if standing.piece.name not in pieces:
            message, name = f"no piece `{standing.piece}`", standing.piece.name
            advice = did_you_mean(name, pieces)
            yield error("unknown-standing", message, standing.piece.place, advice, subject=name)


@before(
    "joint-kind",
    reason="A tab goes into an opening, a notch over a notch.",
    source=OUR_FORM,
    unbuilt=True,
)
def joint_kinds(stated: Stated) -> Iterator[Finding]:
    """Look for joints whose features are of kinds that cannot meet."""
    for joint, ends in _understood(stated):
        if ends[0].piece == ends[1].piece:
            message, name = f"`{ends[0].piece}` is joined to itself", ends[0].piece
            advice = "A joint is between two pieces."
            yield error("joint-kind", message, joint.place, advice, subject=name)
        for named, meant, kinds in zip((joint.a, joint.b), ends, joint.kind.ends, strict=True):
            if meant.kind not in kinds:
                message = f"`{named.name}` is {meant.kind.noun}"
                own = names_of({meant.piece: meant.part}, kinds)
                such = f", such as {_or(own)}" if own else ""
                advice = f"Here belongs {' or '.join(kind.noun for kind in kinds)}{such}."
                yield error("joint-kind", message, named.place, advice, subject=named.name)


@before(
    "joint-sheet",
    reason="An opening is as wide as the sheet it takes.",
    source=OUR_FORM,
    unbuilt=True,
)
def joint_sheets(stated: Stated) -> Iterator[Finding]:
    """Look for features that take another sheet than the one of the piece that meets them.

    Where all that a part goes into takes one other sheet, it is the part that is cut from the
    wrong one.
    """
    wrong: dict[str, list[_Taking]] = {}
    right: set[str] = set()
    for each in _takings(stated):
        if each.taken == each.meets.part.sheet.name:
            right.add(each.meets.part.name)
        else:
            wrong.setdefault(each.meets.part.name, []).append(each)
    for name, takings in wrong.items():
        alike = len({each.taken for each in takings}) == 1
        if alike and name not in right and len({each.named.name for each in takings}) > 1:
            yield _cut_from_another(takings)
        else:
            yield from map(_takes_another, takings)


@dataclass(frozen=True, slots=True)
class _Taking:
    """An end of a joint that takes a sheet, and what meets it there."""

    named: Named
    taken: str
    meets: Meant


def _takings(stated: Stated) -> Iterator[_Taking]:
    """Yield the ends that take a sheet, where the plan has that and the one that meets it."""
    known = {use.name for use in stated.plan.sheets}
    for joint, (a, b) in _understood(stated):
        if not joint.kind.takes or not known >= {a.part.sheet.name, b.part.sheet.name}:
            continue
        for named, one, other in ((joint.a, a, b), (joint.b, b, a)):
            if one.takes in known:
                yield _Taking(named, one.takes, other)


def _takes_another(taking: _Taking) -> Finding:
    named, meets = taking.named, taking.meets
    sheet = meets.part.sheet.name
    message = f"`{named.name}` takes `{taking.taken}`, not `{sheet}`"
    advice = f"`{meets.piece}` is cut from `{sheet}`: write `takes: {sheet}`."
    return error("joint-sheet", message, named.place, advice, subject=named.name)


def _cut_from_another(takings: Sequence[_Taking]) -> Finding:
    part, taken = takings[0].meets.part, takings[0].taken
    sheet, count = part.sheet.name, len({each.named.name for each in takings})
    message = f"`{part.name}` is cut from `{sheet}`, and all it goes into takes `{taken}`"
    names = list(dict.fromkeys(f"`{each.named.name}`" for each in takings))
    others = f" and {count - _SHOWN} more" if count > _SHOWN else ""
    advice = (
        f"Write `sheet: {taken}` for it. Or else let {listed(names[:_SHOWN])}{others} take "
        f"`{sheet}`."
    )
    return error("joint-sheet", message, part.sheet.place, advice, subject=part.name)


def _understood(stated: Stated) -> Iterator[tuple[Joint, tuple[Meant, Meant]]]:
    pieces = pieces_of(stated.plan)
    for joint in stated.plan.joints:
        a, b = meant_by(joint.a.name, pieces), meant_by(joint.b.name, pieces)
        if a is not None and b is not None:
            yield joint, (a, b)
