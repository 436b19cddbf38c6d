"""Which joints have room of their own, and how much: worded once, for page and booklet alike."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from kerfolio.basis.cutting_lengths import fit_in
from kerfolio.basis.said import stated_name
from kerfolio.basis.words import listed
from kerfolio.edition.edition import Edition
from kerfolio.model.joint import Joint
from kerfolio.model.joint_kind import FINGER_JOINT
from kerfolio.settling.clearance import Clearance, features_named

_HEADS = ("Joints", "For", "Each side", "At the ends")
_WORDS = (
    "Some joints have room of their own on each side of what goes in: by what they are for, how "
    "long they are and how many enter together."
)
_CHOSEN = " It follows the fit that you choose, but for lengths that the maker states."


@dataclass(frozen=True, slots=True, kw_only=True)
class FitRow:
    """Joints alike in what they are for and in their room; what they have not is a dash."""

    joints: str
    purpose: str
    width: str
    ends: str


@dataclass(frozen=True, slots=True, kw_only=True)
class JointFits:
    """What readers are told: a sentence, and a row for all joints that have the same room."""

    words: str
    rows: tuple[FitRow, ...]
    heads: tuple[str, ...] = _HEADS


def joint_fits(edition: Edition) -> JointFits | None:
    """Return what is told of joints that state a fit; None for a plan without one.

    Figures are those of the sheet's own fit.
    """
    first, plan = edition.first, edition.plan
    owners = {label: part.name for part in plan.parts for label in part.labels}
    alike: dict[tuple[str, str, str], list[str]] = {}
    for joint, room in _rooms(edition, owners):
        ends = "–" if joint.kind is FINGER_JOINT else fit_in(room.ends, first)
        told = (str(room.purpose or "–"), fit_in(room.width, first), ends)
        names = alike.setdefault(told, [])
        words = _called(joint, owners)
        if words not in names:
            names.append(words)
    if not alike:
        return None
    chosen = any(sheet.fits is not None for sheet in edition.settled.sheets)
    return JointFits(
        words=f"{_WORDS}{_CHOSEN if chosen else ''}",
        rows=tuple(
            FitRow(joints=listed(names), purpose=purpose, width=width, ends=ends)
            for (purpose, width, ends), names in alike.items()
        ),
    )


def _rooms(edition: Edition, owners: Mapping[str, str]) -> Iterator[tuple[Joint, Clearance]]:
    """Yield each joint that states a fit, with the room of what takes a sheet in it."""
    rooms = {
        (part.name, stated_name(feature.name)): feature.room
        for part in edition.settled.parts
        for feature in part.features
        if feature.room is not None and feature.room.asked
    }
    for joint, fit in edition.plan.fits:
        for each in features_named(joint, owners) if fit else ():
            room = rooms.get(each)
            if room is not None:
                yield joint, room


def _called(joint: Joint, owners: Mapping[str, str]) -> str:
    """Return a joint by the parts that meet: ``rail into side``."""
    one, other = (
        next((owners[each] for each in owners if _is_of(end.name, each)), end.name)
        for end in (joint.a, joint.b)
    )
    return f"{one} {joint.kind.other} {other}"


def _is_of(end: str, label: str) -> bool:
    return end == label or end.startswith(f"{label}.")
