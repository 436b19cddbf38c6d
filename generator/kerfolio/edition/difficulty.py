"""How hard a plan is to build, from what is reckoned of it: a word, and the reasons for it.

Where care begins is common practice, no single source; each threshold stands below by its name.
Cutting is not in it: that hangs on the machine, and has chapters of its own.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import IntEnum

from kerfolio.assembly.assembled import Assembled, BuildStep
from kerfolio.assembly.made import Made
from kerfolio.assembly.slant import slants
from kerfolio.basis.cutting_lengths import fit_in
from kerfolio.basis.figures import degrees_text
from kerfolio.basis.masses import mass_text
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.edition.edition import Edition
from kerfolio.edition.hands import heaviest_step
from kerfolio.edition.tools import is_glue
from kerfolio.model.feature_kind import GROOVE, POCKET
from kerfolio.model.joint_kind import EDGE_JOINT, FINGER_JOINT, WEDGE_JOINT
from kerfolio.model.purpose import GLUED, PRESS
from kerfolio.settling.clearance import features_named
from kerfolio.shop.lists import hardware_counts
from kerfolio.shop.tightest import tightest_inside

FEW_PIECES, MANY_PIECES = 12, 30
"""Pieces up to which they are soon told apart, and beyond which they want sorting."""
FEW_AT_ONCE, MANY_AT_ONCE = 8, 16
"""Joints that one pair of hands guides home at once, and those beyond which it wants another."""
LIGHT, HEAVY = 10.0, 23.0
"""kg that is moved about with ease, and that one person lifts at best (NIOSH 94-110)."""
TIGHT = 0.05
"""mm on each side below which a joint wants driving, whatever it is for."""
MUCH_CARE = 4
"""So many things that want some care make a plan demanding, though none of them is."""

_BORED = ("barrel-nut", "dowel")
"""Hardware whose holes are bored into edges, which no router does lying flat."""


class Level(IntEnum):
    """How hard it is."""

    EASY = 0
    CARE = 1
    DEMANDING = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Reason:
    """One thing that makes it easy or hard, in words that go on after a colon."""

    words: str
    level: Level


@dataclass(frozen=True, slots=True, kw_only=True)
class Difficulty:
    """The whole: the hardest of its reasons, or more where many things want care."""

    level: Level
    reasons: tuple[Reason, ...]

    def words(self, reader: Reader) -> str:
        """Return what readers are told of the whole."""
        return say(reader, f"difficulty-{self.level.name.lower()}")


def difficulty_of(edition: Edition) -> Difficulty | None:
    """Return how hard a plan is; None where its pieces are not told.

    Reasons stand with the hardest first.
    """
    if not edition.parts:
        return None
    reasons = sorted(_reasons(edition), key=lambda each: -each.level)
    hardest = max(each.level for each in reasons)
    careful = sum(each.level is Level.CARE for each in reasons)
    level = Level.DEMANDING if careful >= MUCH_CARE else hardest
    return Difficulty(level=level, reasons=tuple(reasons))


def _reasons(edition: Edition) -> Iterator[Reason]:
    yield _size(edition)
    yield from _joints(edition)
    yield from _at_once(edition)
    yield from _lifted(edition)


def _graded(value: float, few: float, many: float) -> Level:
    if value <= few:
        return Level.EASY
    return Level.CARE if value <= many else Level.DEMANDING


def _size(edition: Edition) -> Reason:
    pieces = sum(row.count for row in edition.parts)
    steps = sum(len(each.steps) for each in edition.plan.made)
    words = say(edition.reader, "difficulty-size", pieces=pieces, steps=steps)
    return Reason(words=words, level=_graded(pieces, FEW_PIECES, MANY_PIECES))


def _joints(edition: Edition) -> Iterator[Reason]:
    """Yield what is said of the kinds of joints, of their fit, and of what is done by hand."""
    plan, settled = edition.plan, edition.settled
    kinds = {joint.kind for joint, _ in plan.fits}
    told = (
        (FINGER_JOINT in kinds, "fingers"),
        (_blind(edition), "blind"),
        (EDGE_JOINT in kinds, "edges"),
        (WEDGE_JOINT in kinds, "wedges"),
        (_is_glued(edition), "glued"),
        (_is_bored(edition), "bored"),
        (tightest_inside(settled) == 0, "squared"),
    )
    found = [_wanting_care(edition, f"joints-{name}") for holds, name in told if holds]
    found += [*_slanted(edition), *_tight(edition)]
    yield from found
    if kinds and not found:
        yield Reason(words=say(edition.reader, "difficulty-plain"), level=Level.EASY)


def _wanting_care(edition: Edition, name: str, **values: str) -> Reason:
    return Reason(words=say(edition.reader, f"difficulty-{name}", **values), level=Level.CARE)


def _blind(edition: Edition) -> bool:
    """Tell whether some joint ends in a recess rather than in an opening."""
    owners = {label: part.name for part in edition.plan.parts for label in part.labels}
    named = {each for joint, _ in edition.plan.fits for each in features_named(joint, owners)}
    return any(
        feature.kind in (POCKET, GROOVE) and (part.name, feature.name) in named
        for part in edition.plan.parts
        for feature in part.features
    )


def _is_glued(edition: Edition) -> bool:
    plan = edition.plan
    stated = any(fit is not None and fit.purpose is GLUED for _, fit in plan.fits)
    return stated or any(
        is_glue(tool, edition.reader)
        for each in plan.made
        for step in each.steps
        for tool in step.tools
    )


def _is_bored(edition: Edition) -> bool:
    items = (edition.settled.stock.item(name) for name in hardware_counts(edition.plan))
    return any(item is not None and item.kind in _BORED for item in items)


def _tight(edition: Edition) -> Iterator[Reason]:
    if any(fit is not None and fit.purpose is PRESS for _, fit in edition.plan.fits):
        yield _wanting_care(edition, "driven")
        return
    rooms = [
        feature.room.fit
        for part in edition.settled.parts
        for feature in part.features
        if feature.room is not None
    ]
    if rooms and min(rooms) < TIGHT:
        yield _wanting_care(edition, "tight", room=fit_in(min(rooms), edition.reader))


def _slanted(edition: Edition) -> Iterator[Reason]:
    builds = (made.build for made in edition.made if made.build is not None)
    sharpest = min((a for each in builds for a in slants(each.drawn.assembled)), default=None)
    if sharpest is not None:
        yield _wanting_care(edition, "slant", angle=degrees_text(sharpest))


def _at_once(edition: Edition) -> Iterator[Reason]:
    found = [each for made in edition.made for each in _homecoming(made)]
    count, step = max(found, key=lambda each: each[0], default=(0, 0))
    level = _graded(count, FEW_AT_ONCE, MANY_AT_ONCE)
    if level is not Level.EASY:
        words = say(edition.reader, "difficulty-at-once", joints=count, step=step)
        yield Reason(words=words, level=level)


def _homecoming(made: Made) -> Iterator[tuple[int, int]]:
    """Yield how many interlocking joints each move of a thing closes, and its step's number."""
    if made.build is None:
        return
    assembled = made.build.drawn.assembled
    for step in made.build.order.steps:
        number = made.first_step + step.number - 1
        yield from ((count, number) for count in _closed(assembled, step))


def _closed(assembled: Assembled, step: BuildStep) -> Iterator[int]:
    moved = {label for move in step.moves for label in move.pieces}
    there = {*step.standing, *(label for label in step.added if label not in moved)}
    for move in step.moves:
        own = set(move.pieces)
        there -= own
        yield sum(
            joint.kind.interlocks
            and len({joint.a, joint.b} & own) == 1
            and len({joint.a, joint.b} & there) == 1
            for joint in assembled.joints
        )
        there |= own


def _lifted(edition: Edition) -> Iterator[Reason]:
    found = heaviest_step(edition)
    if found is None:
        return
    level = _graded(found.mass, LIGHT, HEAVY)
    if level is not Level.EASY:
        mass = mass_text(found.mass, edition.reader)
        words = say(edition.reader, "difficulty-lifted", mass=mass, step=found.step)
        yield Reason(words=words, level=level)
