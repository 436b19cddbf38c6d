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
from kerfolio.model.plan import Plan
from kerfolio.settling.clearance import Clearance, features_named
from kerfolio.settling.titles import part_title, within

_HEADS = ("Joints", "For", "Each side", "At the ends")
_ADDED = "Finish and damp"
_WORDS = (
    "Some joints have room of their own on each side of what goes in: by what they are for, how "
    "long they are and how many enter together."
)
_ALL = (
    "Every joint has this room on each side of what goes in, bare and dry: its fit, by what it is "
    "for, how long it is and how many enter together, and what finish and damp want of it."
)
_CHOSEN = " It follows the fit that you choose, but for lengths that the maker states."


@dataclass(frozen=True, slots=True, kw_only=True)
class FitRow:
    """Joints alike in what they are for and in their room; what they have not is a dash.

    ``added`` is what of the room on each side finish and damp want; empty where the plan says
    nothing of them.
    """

    joints: str
    purpose: str
    width: str
    ends: str
    added: str = ""

    @property
    def cells(self) -> tuple[str, ...]:
        """What stands in the row, under the heads."""
        rooms = (self.width, self.added, self.ends) if self.added else (self.width, self.ends)
        return (self.joints, self.purpose, *rooms)


@dataclass(frozen=True, slots=True, kw_only=True)
class JointFits:
    """What readers are told: a sentence, and a row for all joints that have the same room."""

    words: str
    rows: tuple[FitRow, ...]
    heads: tuple[str, ...] = _HEADS


def joint_fits(edition: Edition) -> JointFits | None:
    """Return what is told of joints that have room of their own; None for a plan without one.

    Figures are those of the sheet's own fit. Where finish or damp want room, every joint is told.
    """
    reader, plan = edition.reader, edition.plan
    owners = {label: part.name for part in plan.parts for label in part.labels}
    damp = bool(edition.settled.surroundings)
    alike: dict[tuple[str, ...], list[str]] = {}
    for joint, room in _rooms(edition, owners):
        ends = "–" if joint.kind is FINGER_JOINT else fit_in(room.ends, reader)
        added = fit_in(room.allowed[0], reader) if damp else ""
        told = (str(room.purpose or "–"), fit_in(room.width, reader), ends, added)
        names = alike.setdefault(told, [])
        words = _called(joint, owners, plan)
        if words not in names:
            names.append(words)
    if not alike:
        return None
    chosen = any(sheet.fits is not None for sheet in edition.settled.sheets)
    joints, purpose, width, ends = _HEADS
    return JointFits(
        words=f"{_ALL if damp else _WORDS}{_CHOSEN if chosen else ''}",
        heads=(joints, purpose, width, _ADDED, ends) if damp else _HEADS,
        rows=tuple(
            FitRow(joints=listed(names), purpose=purpose, width=width, ends=ends, added=added)
            for (purpose, width, ends, added), names in alike.items()
        ),
    )


def _rooms(edition: Edition, owners: Mapping[str, str]) -> Iterator[tuple[Joint, Clearance]]:
    """Yield each joint that states a fit, with the room of what takes a sheet in it.

    Where finish or damp want room, each of all joints.
    """
    damp = bool(edition.settled.surroundings)
    rooms = {
        (part.name, stated_name(feature.name)): feature.room
        for part in edition.settled.parts
        for feature in part.features
        if feature.room is not None and (damp or feature.room.asked)
    }
    for joint, fit in edition.plan.fits:
        for each in features_named(joint, owners) if fit or damp else ():
            room = rooms.get(each)
            if room is not None:
                yield joint, room


def _called(joint: Joint, owners: Mapping[str, str], plan: Plan) -> str:
    """Return a joint by the parts that meet: ``rail into side``."""
    one, other = (
        next((owners[each] for each in owners if _is_of(end.name, each)), end.name)
        for end in (joint.a, joint.b)
    )
    one, other = (within(part_title(plan, each)) for each in (one, other))
    return f"{one} {joint.kind.other} {other}"


def _is_of(end: str, label: str) -> bool:
    return end == label or end.startswith(f"{label}.")
