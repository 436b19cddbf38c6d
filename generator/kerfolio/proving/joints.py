"""Checks of joints: both ends are there, and are of kinds and sheets that can meet."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from kerfolio.assembly.ends import SIDES, end_of
from kerfolio.assembly.ends import pieces_of as settled_pieces
from kerfolio.basis.finding import Finding, error
from kerfolio.basis.names import did_you_mean, likely
from kerfolio.model.joint import Joint
from kerfolio.model.joint_kind import SIDE
from kerfolio.model.part import Part
from kerfolio.model.statement import Named
from kerfolio.proving.naming import (
    Meant,
    feature_names,
    is_unread,
    meant_by,
    pieces_of,
    split_feature,
)
from kerfolio.proving.rule import OUR_FORM, Stated, after, before
from kerfolio.settling.settled import SettledPlan


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
    if label:
        sides = SIDES if end is joint.a and SIDE in joint.kind.first else ()
        known = (*feature_names(pieces[label]), *sides)
        message = f"`{label}` has no feature `{feature}`"
        advice, name = did_you_mean(feature, known), end.name
        return error("unknown-joint-feature", message, end.place, advice, subject=name)
    every = [f"{each}.{name}" for each, part in pieces.items() for name in feature_names(part)]
    near = likely(end.name, (*every, *pieces))
    advice = did_you_mean(end.name, near or pieces)
    message = f"no piece for `{end.name}`"
    return error("unknown-joint-piece", message, end.place, advice, subject=end.name)


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
                advice = f"Here belongs {' or '.join(kind.noun for kind in kinds)}."
                yield error("joint-kind", message, named.place, advice, subject=named.name)


@before(
    "joint-sheet",
    reason="An opening is as wide as the sheet it takes.",
    source=OUR_FORM,
    unbuilt=True,
)
def joint_sheets(stated: Stated) -> Iterator[Finding]:
    """Look for features that take another sheet than the one of the piece that meets them."""
    known = {use.name for use in stated.plan.sheets}
    for joint, (a, b) in _understood(stated):
        if not joint.kind.takes or not known >= {a.part.sheet.name, b.part.sheet.name}:
            continue
        for named, one, other in ((joint.a, a, b), (joint.b, b, a)):
            sheet = other.part.sheet.name
            if one.takes in known and one.takes != sheet:
                message = f"`{named.name}` takes `{one.takes}`, not `{sheet}`"
                advice = f"`{other.piece}` is cut from `{sheet}`: write `takes: {sheet}`."
                yield error("joint-sheet", message, named.place, advice, subject=named.name)


def _understood(stated: Stated) -> Iterator[tuple[Joint, tuple[Meant, Meant]]]:
    pieces = pieces_of(stated.plan)
    for joint in stated.plan.joints:
        a, b = meant_by(joint.a.name, pieces), meant_by(joint.b.name, pieces)
        if a is not None and b is not None:
            yield joint, (a, b)
