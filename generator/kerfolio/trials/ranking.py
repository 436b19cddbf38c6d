"""Which settings came out best, and what failed nearest to them.

A cut speaks for all settings alike (``shop.alike.Places``), so that one wrong verdict among several
decides nothing. Of settings that came out well those are best whose neighbours may be said to reach
the best grade (``chances.assured``), then those whose neighbours reach it surest. What is best is
picked from among several, and so looks a little better than it is.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

import numpy as np

from kerfolio.model.outcome import Grade, Mark
from kerfolio.model.stock import CutterStock
from kerfolio.shop.alike import ALIKE, Axis, Places, under_tip, way_to
from kerfolio.shop.settings import Settings
from kerfolio.trials.chances import Tally, assured, more_needed, share_within, tally
from kerfolio.trials.cut import Cut

GOOD = Grade.NEARLY_CLEAN
"""The least that settings must reach to be called good: a stroke or two of fine paper."""

_HERE = 0.5
"""Cuts no more steps apart than that are taken for the same place when it is called a failure."""
_CELL = 0.05
_SIXTEENTH = 1 / 16
"""Cuts whose chip loads differ by less than that share, their first passes by less than a sixteenth
of the diameter, their later ones by less than two, with about one speed, are gathered before any
two are compared, so that long logs take no longer to compare."""
_MOST_FAILURES = 4


@dataclass(frozen=True, slots=True, kw_only=True)
class Best:
    """Settings and what stands behind them.

    ``cuts`` are all that are alike, the newest first. ``assured`` is the grade that more than half
    of such cuts may be said to reach, None where that is not known.
    """

    settings: Settings
    cuts: tuple[Cut, ...]
    tally: Tally
    assured: Grade | None

    @property
    def known(self) -> bool:
        """Whether they may be said to be good."""
        return self.assured is not None and self.assured >= GOOD

    @property
    def promising(self) -> bool:
        """Whether at least half of their cuts came out well."""
        return self.tally.median >= GOOD

    @property
    def well(self) -> int:
        """How many of their cuts came out well."""
        return self.tally.at_least(GOOD)

    @property
    def within(self) -> tuple[float, float]:
        """Between which shares of such cuts come out well."""
        return share_within(self.well, self.tally.total)

    @property
    def needed(self) -> int:
        """How many more must come out well, one after the other, until they are known."""
        return more_needed(self.tally, GOOD)

    @property
    def needed_clean(self) -> int:
        """How many more must come out clean, until they are known to."""
        return more_needed(self.tally, Grade.CLEAN)

    @property
    def marks(self) -> tuple[Mark, ...]:
        """What is seen on their cuts, the commonest first."""
        return marks_of(self.cuts)


@dataclass(frozen=True, slots=True, kw_only=True)
class Failure:
    """Settings that came out badly; ``axis`` says which way from the best they lie, ``steps`` how
    far.
    """

    settings: Settings
    cuts: tuple[Cut, ...]
    tally: Tally
    axis: Axis
    steps: float

    @property
    def marks(self) -> tuple[Mark, ...]:
        """What is seen on their cuts, the commonest first."""
        return marks_of(each for each in self.cuts if each.grade < GOOD)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Spot:
    """Cuts with the same settings but for a few per cent: those of the newest of its best."""

    settings: Settings
    cuts: tuple[Cut, ...]
    tally: Tally


class Ground:
    """All cuts with one cutter on one sheet, by where they lie among settings."""

    def __init__(self, cuts: Sequence[Cut], cutter: CutterStock) -> None:
        self.cuts, self._cutter = cuts, cutter
        cells: dict[tuple[object, ...], list[Cut]] = {}
        for each in cuts:
            cells.setdefault(_cell(each.settings, cutter), []).append(each)
        spots = (_spot(each) for each in cells.values())
        self._spots = sorted(spots, key=lambda each: each.settings.chip)
        self._places = Places((each.settings for each in self._spots), cutter)
        self._places_of_cuts = Places((each.settings for each in cuts), cutter)
        self._counts = np.array([each.tally.counts for each in self._spots])

    def best(self) -> Best | None:
        """Return the best settings; None where there is not one cut."""
        if not self._spots:
            return None
        good = [each for each in self._spots if each.tally.at_least(GOOD)] or self._spots
        return self._behind(max(good, key=self._rank).settings)

    def rival(self, best: Best) -> Best | None:
        """Return other settings whose cuts came out clean, where the best are not known to do so.

        There are too few of them to be known.
        """
        if best.assured is Grade.CLEAN:
            return None
        steps = self._places.steps_from(best.settings)
        far = (
            each
            for each, off in zip(self._spots, steps, strict=True)
            if each.tally.at_least(Grade.CLEAN) and off > ALIKE / 2
        )
        made = (self._behind(each.settings) for each in sorted(far, key=self._rank, reverse=True))
        return next((each for each in made if each.tally.median is Grade.CLEAN), None)

    def _behind(self, settings: Settings) -> Best:
        alike = np.flatnonzero(self._places_of_cuts.steps_from(settings) <= ALIKE)
        cuts = tuple(self.cuts[int(number)] for number in alike)
        counted = tally(each.grade for each in cuts)
        return Best(settings=settings, cuts=cuts, tally=counted, assured=assured(counted))

    def failures(self, best: Best) -> tuple[Failure, ...]:
        """Return the nearest failure each way from the best settings, the nearest of all first."""
        found: dict[Axis, Failure] = {}
        far = self._places.steps_from(best.settings)
        for number in np.argsort(far, kind="stable"):
            steps, each = float(far[number]), self._spots[int(number)]
            axis = way_to(best.settings, each.settings, self._cutter)
            if steps <= ALIKE or axis in found:
                continue
            near = self._near(each.settings, _HERE)
            counted = self._counted(near)
            if counted.median < GOOD:
                cuts = tuple(cut for place in near for cut in self._spots[place].cuts)
                found[axis] = Failure(
                    settings=each.settings, cuts=cuts, tally=counted, axis=axis, steps=steps
                )
        return tuple(found.values())[:_MOST_FAILURES]

    def tried(self, settings: Settings) -> int:
        """Return how many cuts were made with these settings, or about."""
        return self._counted(self._near(settings, _HERE)).total

    def _near(self, here: Settings, steps: float) -> np.ndarray:
        """Return which spots lie no further away, by their numbers."""
        return np.flatnonzero(self._places.steps_from(here) <= steps)

    def _counted(self, spots: np.ndarray) -> Tally:
        return Tally(counts=tuple(int(each) for each in self._counts[spots].sum(axis=0)))

    def _rank(self, spot: _Spot) -> tuple[float, ...]:
        counted = self._counted(self._near(spot.settings, ALIKE))
        total = counted.total
        surest = (share_within(counted.at_least(each), total)[0] for each in (Grade.CLEAN, GOOD))
        reached = assured(counted) or Grade.SPOILED
        return (float(max(reached, GOOD)), *surest, float(counted.median), spot.settings.chip)


def marks_of(cuts: Iterable[Cut]) -> tuple[Mark, ...]:
    """Return what is seen on cuts, the commonest first."""
    counted = Counter(mark for each in cuts for mark in each.trial.outcome.marks)
    order = list(Mark)
    return tuple(sorted(counted, key=lambda mark: (-counted[mark], order.index(mark))))


def _spot(cuts: Sequence[Cut]) -> _Spot:
    counted = tally(each.grade for each in cuts)
    settings = max(cuts, key=lambda each: each.grade).settings
    return _Spot(settings=settings, cuts=tuple(cuts), tally=counted)


def _cell(settings: Settings, cutter: CutterStock) -> tuple[object, ...]:
    def deep(mm: float | None, share: float) -> int | None:
        return None if mm is None else math.floor(mm / (share * cutter.diameter))

    return (
        math.floor(math.log(settings.chip) / _CELL),
        math.floor(math.log(settings.speed or 1.0) / (2 * _CELL)),
        deep(settings.first, _SIXTEENTH),
        deep(settings.later, 2 * _SIXTEENTH),
        under_tip(settings.first, cutter),
        settings.climb,
    )
