"""Checks of joints: both ends are there, and are of kinds and sheets that can meet."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from generator.basis.finding import Finding, error
from generator.basis.names import did_you_mean
from generator.model.part import Part
from generator.model.plan import Joint
from generator.model.statement import Named
from generator.proving.naming import (
    Meant,
    feature_names,
    is_unread,
    meant_by,
    pieces_of,
    split_feature,
)
from generator.proving.rule import Stated

_MEETS: dict[str, tuple[tuple[str, ...], tuple[str, ...]]] = {
    "tab": (("tab",), ("slot", "notch", "groove", "pocket", "window")),
    "notch": (("notch", "slot"), ("notch", "slot")),
    "fingers": (("fingers",), ("fingers",)),
}
"""The kinds of feature that may stand at the first and the second end of a kind of joint."""


def joint_ends(stated: Stated) -> Iterator[Finding]:
    """Look for ends of joints that name no piece or no feature."""
    pieces = pieces_of(stated.plan)
    for joint in stated.plan.joints:
        for end in (joint.a, joint.b):
            if not is_unread(end.name, stated.plan) and meant_by(end.name, pieces) is None:
                yield _missing(end, pieces)


def _missing(end: Named, pieces: Mapping[str, Part]) -> Finding:
    label, feature = split_feature(end.name, pieces)
    if label:
        known = feature_names(pieces[label])
        message = f"`{label}` has no feature `{feature}`"
        return error("unknown-joint-feature", message, end.place, did_you_mean(feature, known))
    every = [f"{each}.{name}" for each, part in pieces.items() for name in feature_names(part)]
    message = f"no piece for `{end.name}`"
    return error("unknown-joint-piece", message, end.place, did_you_mean(end.name, every))


def joint_kinds(stated: Stated) -> Iterator[Finding]:
    """Look for joints whose features are of kinds that cannot meet."""
    for joint, ends in _understood(stated):
        if ends[0].piece == ends[1].piece:
            message = f"`{ends[0].piece}` is joined to itself"
            advice = "A joint is between two pieces."
            yield error("joint-kind", message, joint.place, advice)
        for named, meant, kinds in zip(
            (joint.a, joint.b), ends, _MEETS.get(joint.kind, ()), strict=False
        ):
            if meant.kind not in kinds:
                message = f"`{named.name}` is {_a(meant.kind)}"
                advice = f"Here belongs {' or '.join(_a(kind) for kind in kinds)}."
                yield error("joint-kind", message, named.place, advice)


def joint_sheets(stated: Stated) -> Iterator[Finding]:
    """Look for features that take another sheet than the one of the piece that meets them."""
    known = {use.name for use in stated.plan.sheets}
    for joint, (a, b) in _understood(stated):
        if joint.kind == "face" or not known >= {a.part.sheet.name, b.part.sheet.name}:
            continue
        for named, one, other in ((joint.a, a, b), (joint.b, b, a)):
            sheet = other.part.sheet.name
            if one.takes in known and one.takes != sheet:
                message = f"`{named.name}` takes `{one.takes}`, not `{sheet}`"
                advice = f"`{other.piece}` is cut from `{sheet}`: write `takes: {sheet}`."
                yield error("joint-sheet", message, named.place, advice)


def _understood(stated: Stated) -> Iterator[tuple[Joint, tuple[Meant, Meant]]]:
    pieces = pieces_of(stated.plan)
    for joint in stated.plan.joints:
        a, b = meant_by(joint.a.name, pieces), meant_by(joint.b.name, pieces)
        if a is not None and b is not None:
            yield joint, (a, b)


def _a(kind: str) -> str:
    if kind == "fingers":
        return "fingers"
    return f"{'an' if kind[0] in 'aeiou' else 'a'} {kind}"
