"""Which joints have room of their own, and how much: worded once, for page and booklet alike."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from kerfolio.basis.cutting_lengths import fit_in
from kerfolio.basis.names import begins
from kerfolio.basis.reader import Reader
from kerfolio.basis.said import stated_name
from kerfolio.basis.saying import listed, say
from kerfolio.edition.edition import Edition
from kerfolio.model.joint import Joint
from kerfolio.model.joint_kind import FINGER_JOINT
from kerfolio.model.plan import Plan
from kerfolio.settling.clearance import Clearance, features_named
from kerfolio.settling.titles import part_title, within


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
    heads: tuple[str, ...]


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
        told = (_purpose(room, reader), fit_in(room.width, reader), ends, added)
        names = alike.setdefault(told, [])
        words = _called(joint, owners, plan, reader)
        if words not in names:
            names.append(words)
    if not alike:
        return None
    chosen = any(sheet.fits is not None for sheet in edition.settled.sheets)
    said = [
        say(reader, "jointfits-all" if damp else "jointfits-some"),
        *([say(reader, "jointfits-chosen")] if chosen else []),
    ]
    heads = ("joints", "for", "side", *(["added"] if damp else []), "ends")
    return JointFits(
        words=" ".join(said),
        heads=tuple(say(reader, f"jointfits-head-{each}") for each in heads),
        rows=tuple(
            FitRow(
                joints=listed(reader, names), purpose=purpose, width=width, ends=ends, added=added
            )
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


def _purpose(room: Clearance, reader: Reader) -> str:
    """Return what a joint is for; a dash where it is for nothing of its own."""
    if room.purpose is None:
        return "–"
    return say(reader, f"jointfits-for-{room.purpose.name}")


def _called(joint: Joint, owners: Mapping[str, str], plan: Plan, reader: Reader) -> str:
    """Return a joint by the parts that meet: ``rail into side``."""
    one, other = (
        next((owners[each] for each in owners if begins(end.name, each)), end.name)
        for end in (joint.a, joint.b)
    )
    one, other = (within(part_title(plan, each, reader), reader) for each in (one, other))
    return say(reader, f"jointfits-called-{joint.kind.other}", one=one, other=other)
