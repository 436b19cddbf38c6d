"""Cuts of the log among settings: how far two of them lie apart, and which are alike.

Compared is what decides the edge most (common practice, no single source): the chip load by its
ratio, the first pass against the cutter's diameter and the up-cut part at its tip, and the
direction. Speed, plunge and later passes are told, and not compared.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import StrEnum

from kerfolio.basis.tolerance import SAME
from kerfolio.model.outcome import Grade, Operation
from kerfolio.model.stock import CutterStock
from kerfolio.model.trial import Trial
from kerfolio.shop.chip_load import chip_of

CHIP_STEP = 1.25
"""Chip loads whose ratio is this lie one step apart."""
PASS_STEP = 0.25
"""First passes that differ by so many diameters lie one step apart."""
ALIKE = 1.0
"""Cuts no more steps apart than that are alike."""

_UNKNOWN = 0.5
"""Steps between a first pass that is logged and one that is not."""
_SHORT = 0.9
"""Passes that reach less of the sheet than that cut part way."""


class Axis(StrEnum):
    """Which way one cut lies from another."""

    THICKER = "thicker"  # more chip load
    THINNER = "thinner"
    DEEPER = "deeper"  # in the first pass
    SHALLOWER = "shallower"
    TURNED = "turned"  # the other direction of cut


@dataclass(frozen=True, slots=True, kw_only=True)
class Settings:
    """What a machine is told. Feeds mm/min, lengths mm; None or empty where nobody says.

    ``chip`` is what each edge takes, mm.
    """

    chip: float
    speed: float
    feed: float
    plunge: float | None = None
    passes: tuple[float, ...] = ()
    climb: bool | None = None

    @property
    def first(self) -> float | None:
        """How deep the first pass goes, mm."""
        return self.passes[0] if self.passes else None


@dataclass(frozen=True, slots=True, kw_only=True)
class Cut:
    """A graded trial with its settings."""

    trial: Trial
    grade: Grade
    settings: Settings


def operation_of(trial: Trial) -> Operation:
    """Return what was cut: as stated, else part way where the passes stop short of the sheet.

    All else goes through, as most cuts do.
    """
    if trial.operation is not None:
        return trial.operation
    if trial.passes and trial.thick and math.fsum(trial.passes) < _SHORT * trial.thick:
        return Operation.PART_WAY
    return Operation.THROUGH


def cut_of(trial: Trial, cutter: CutterStock) -> Cut | None:
    """Return a trial among settings; None where its grade, feed or speed is not known."""
    if trial.grade is None or not trial.feed_mm_per_min or not trial.speed_rpm:
        return None
    return Cut(
        trial=trial,
        grade=trial.grade,
        settings=Settings(
            chip=chip_of(trial.feed_mm_per_min, trial.speed_rpm, cutter.flutes),
            speed=trial.speed_rpm,
            feed=trial.feed_mm_per_min,
            plunge=trial.plunge_mm_per_min,
            passes=trial.passes,
            climb=trial.climb,
        ),
    )


def under_tip(first: float | None, cutter: CutterStock) -> bool | None:
    """Tell whether a first pass stays within the up-cut part at the tip, which lifts the face.

    None where there is no such part or no first pass is known. A pass just as deep stays within.
    """
    if first is None or cutter.up_cut_length is None:
        return None
    return first <= cutter.up_cut_length + SAME


def apart(one: Settings, other: Settings, cutter: CutterStock) -> float:
    """Return how many steps two cuts lie apart; the far side of the tip is one step more."""
    chip = _chip_steps(one, other)
    first = _pass_steps(one, other, cutter)
    return math.hypot(chip, _UNKNOWN if first is None else first, 1.0 if _turned(one, other) else 0)


def way_to(one: Settings, other: Settings, cutter: CutterStock) -> Axis:
    """Return in what the other differs most."""
    chip, first = _chip_steps(one, other), _pass_steps(one, other, cutter) or 0.0
    if _turned(one, other) and max(abs(chip), abs(first)) < 1.0:
        return Axis.TURNED
    if abs(chip) >= abs(first):
        return Axis.THICKER if chip > 0 else Axis.THINNER
    return Axis.DEEPER if first > 0 else Axis.SHALLOWER


def _chip_steps(one: Settings, other: Settings) -> float:
    return math.log(other.chip / one.chip) / math.log(CHIP_STEP)


def _pass_steps(one: Settings, other: Settings, cutter: CutterStock) -> float | None:
    if one.first is None or other.first is None:
        return None
    steps = (other.first - one.first) / (PASS_STEP * cutter.diameter)
    if under_tip(one.first, cutter) is not under_tip(other.first, cutter):
        steps += math.copysign(1.0, steps)
    return steps


def _turned(one: Settings, other: Settings) -> bool:
    return None not in {one.climb, other.climb} and one.climb is not other.climb
