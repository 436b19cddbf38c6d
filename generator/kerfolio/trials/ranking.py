"""Which settings came out best, and what failed nearest to them.

A cut speaks for all settings alike (``shop.alike.apart``), so that one wrong verdict among several
decides nothing. Of settings that came out well those are best whose neighbours may be said to reach
the best grade (``chances.assured``), then those whose neighbours reach it surest. What is best is
picked from among several, and so looks a little better than it is.
"""

from __future__ import annotations

import math
from bisect import bisect_left, bisect_right
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from kerfolio.model.outcome import Grade, Mark
from kerfolio.model.stock import CutterStock
from kerfolio.shop.alike import ALIKE, PASS_STEP, Axis, apart, chip_steps, under_tip, way_to
from kerfolio.shop.settings import Settings
from kerfolio.trials.chances import Tally, assured, more_needed, share_within, summed, tally
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
_WIDE = 0.3
"""Steps that cuts of one spot may lie apart in chip load or first pass: a little more than that."""
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
    """Cuts with the same settings but for a few per cent: those of the newest of its best.

    ``at`` is their chip load in steps, ``first`` the first pass: far away by either, two spots are
    not compared any closer, so that long logs take no longer.
    """

    at: float
    first: float | None
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
        self._order = {id(each): number for number, each in enumerate(cuts)}
        spots = (_spot(each) for each in cells.values())
        self._spots = sorted(spots, key=lambda each: each.at)
        self._places = [each.at for each in self._spots]

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
        far = (
            each
            for each in self._spots
            if each.tally.at_least(Grade.CLEAN)
            and self._apart(best.settings, each.settings) > ALIKE / 2
        )
        made = (self._behind(each.settings) for each in sorted(far, key=self._rank, reverse=True))
        return next((each for each in made if each.tally.median is Grade.CLEAN), None)

    def _behind(self, settings: Settings) -> Best:
        around = (cut for spot in self._around(settings, ALIKE + _WIDE) for cut in spot.cuts)
        alike = [each for each in around if self._apart(settings, each.settings) <= ALIKE]
        cuts = tuple(sorted(alike, key=lambda each: self._order[id(each)]))
        counted = tally(each.grade for each in cuts)
        return Best(settings=settings, cuts=cuts, tally=counted, assured=assured(counted))

    def failures(self, best: Best) -> tuple[Failure, ...]:
        """Return the nearest failure each way from the best settings, the nearest of all first."""
        found: dict[Axis, Failure] = {}
        far = sorted(
            ((self._apart(best.settings, each.settings), each) for each in self._spots),
            key=lambda pair: (pair[0], pair[1].at),
        )
        for steps, each in far:
            axis = way_to(best.settings, each.settings, self._cutter)
            if steps > ALIKE and axis not in found:
                near = self._near(each.settings, _HERE)
                counted = summed(spot.tally for spot in near)
                if counted.median < GOOD:
                    cuts = tuple(cut for spot in near for cut in spot.cuts)
                    found[axis] = Failure(
                        settings=each.settings, cuts=cuts, tally=counted, axis=axis, steps=steps
                    )
        return tuple(found.values())[:_MOST_FAILURES]

    def tried(self, settings: Settings) -> int:
        """Return how many cuts were made with these settings, or about."""
        return sum(spot.tally.total for spot in self._near(settings, _HERE))

    def _near(self, here: Settings, steps: float) -> list[_Spot]:
        around = self._around(here, steps)
        return [each for each in around if self._apart(here, each.settings) <= steps]

    def _around(self, here: Settings, steps: float) -> Iterator[_Spot]:
        """Yield the spots that chip load and first pass alone do not tell to lie further away."""
        at = chip_steps(here.chip)
        low = bisect_left(self._places, at - steps)
        high = bisect_right(self._places, at + steps)
        first, reach = here.first, steps * PASS_STEP * self._cutter.diameter
        return (
            each
            for each in self._spots[low:high]
            if first is None or each.first is None or abs(each.first - first) <= reach
        )

    def _rank(self, spot: _Spot) -> tuple[float, ...]:
        counted = summed(each.tally for each in self._near(spot.settings, ALIKE))
        total = counted.total
        surest = (share_within(counted.at_least(each), total)[0] for each in (Grade.CLEAN, GOOD))
        reached = assured(counted) or Grade.SPOILED
        return (float(max(reached, GOOD)), *surest, float(counted.median), spot.at)

    def _apart(self, one: Settings, other: Settings) -> float:
        return apart(one, other, self._cutter)


def marks_of(cuts: Iterable[Cut]) -> tuple[Mark, ...]:
    """Return what is seen on cuts, the commonest first."""
    counted = Counter(mark for each in cuts for mark in each.trial.outcome.marks)
    order = list(Mark)
    return tuple(sorted(counted, key=lambda mark: (-counted[mark], order.index(mark))))


def _spot(cuts: Sequence[Cut]) -> _Spot:
    counted = tally(each.grade for each in cuts)
    settings = max(cuts, key=lambda each: each.grade).settings
    return _Spot(
        at=chip_steps(settings.chip),
        first=settings.first,
        settings=settings,
        cuts=tuple(cuts),
        tally=counted,
    )


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
