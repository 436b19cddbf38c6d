"""How far a cutter has cut, from what jobs say, and whether outcomes fall as it does."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date

from kerfolio.basis.figures import way_number
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import day_text, say
from kerfolio.model.outcome import Grade
from kerfolio.model.stock import CutterStock
from kerfolio.model.trial import Trial

FEW = 6
"""Fewer graded entries than this show no trend: with five, one chance order in sixty falls all
the way, but a single tie or slip already hides it."""

_APART = 4
"""Entries at fewer different metres show nothing of them."""

_SURE = 0.05
"""The chance of so steep a fall where there is none, at which it is told (common in statistics)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Metres:
    """How far a cutter has cut: since it was new, and since it was last sharpened.

    ``jobs`` are the entries counted, ``silent`` those jobs with it that say no metres.
    ``sharpened`` is the day it was last sharpened, None where it never was.
    """

    cutter: str
    new: float
    sharp: float
    jobs: int
    silent: int
    sharpened: date | None = None


def metres_at(cutter: CutterStock, trials: Iterable[Trial], day: date | None = None) -> Metres:
    """Return how far a cutter had cut at the end of a day; None: until now.

    What is dated before it was first used was another cutter of its name. On the day it was
    sharpened it cut afterwards.
    """
    begun = cutter.in_use_since
    own = [
        each
        for each in trials
        if each.cutter
        and each.cutter.name == cutter.name
        and (begun is None or each.date >= begun)
        and (day is None or each.date <= day)
    ]
    days = [each for each in cutter.sharpened if day is None or each <= day]
    last = max(days, default=None)
    counted = [each for each in own if each.spent.metres is not None]
    before = cutter.metres_before or 0.0
    since = [each for each in counted if last is None or each.date >= last]
    return Metres(
        cutter=cutter.name,
        new=before + _sum(counted),
        sharp=_sum(since) + (before if last is None else 0.0),
        jobs=len(counted),
        silent=sum(each.job and each.spent.metres is None for each in own),
        sharpened=last,
    )


def _sum(trials: Iterable[Trial]) -> float:
    return math.fsum(each.spent.metres or 0.0 for each in trials)


def way_text(metres: float, reader: Reader) -> str:
    """Return how far a cutter cut: ``340.5 m``, ``1117.1 ft``."""
    return say(reader, "metres-way", unit=reader.unit, way=way_number(metres, reader))


def metres_words(found: Metres, reader: Reader) -> str:
    """Return in a sentence how far a cutter has cut, and what that rests on."""
    way, jobs = way_text(found.new, reader), say(reader, "metres-jobs", jobs=found.jobs)
    rests = say(reader, "metres-silent", jobs=jobs, silent=found.silent) if found.silent else jobs
    if found.sharpened is None:
        return say(reader, "metres-new", way=way, rests=rests)
    since, day = way_text(found.sharp, reader), day_text(reader, found.sharpened)
    return say(reader, "metres-sharp", way=way, since=since, day=day, rests=rests)


def trend_words(trend: Trend, sheet: str, reader: Reader) -> str:
    """Return in a sentence whether outcomes on a sheet, by its title, fall as metres grow."""
    count = len(trend.points)
    how = "few" if trend.falls is None else "falls" if trend.falls else "level"
    return say(reader, "metres-trend", how=how, sheet=sheet, count=count)


@dataclass(frozen=True, slots=True, kw_only=True)
class Trend:
    """Verdicts with one cutter on one sheet as its metres grow: (metres since sharpened, grade).

    ``falls`` tells that they get worse, beyond what chance does one time in twenty; None where
    there are too few to tell.
    """

    sheet: str
    points: tuple[tuple[float, Grade], ...]
    falls: bool | None


def trends(cutter: CutterStock, trials: Sequence[Trial]) -> tuple[Trend, ...]:
    """Return how verdicts go with the metres, for each sheet material cut with a cutter."""
    found: dict[str, list[tuple[float, Grade]]] = {}
    for each in sorted(trials, key=lambda each: each.date):
        own = each.cutter is not None and each.cutter.name == cutter.name
        used = cutter.in_use_since is None or each.date >= cutter.in_use_since
        if own and used and each.stock and each.grade:
            there = metres_at(cutter, trials, each.date).sharp
            found.setdefault(each.stock.name, []).append((there, each.grade))
    return tuple(
        Trend(sheet=sheet, points=tuple(points), falls=_falls(points))
        for sheet, points in sorted(found.items())
        if any(metres for metres, _ in points)
    )


def _falls(points: Sequence[tuple[float, Grade]]) -> bool | None:
    if len(points) < FEW or len({metres for metres, _ in points}) < _APART:
        return None
    return chance_of_fall(points) <= _SURE


def chance_of_fall(points: Sequence[tuple[float, float]]) -> float:
    """Return how likely chance alone gives second values that fall so much as the first grow.

    Kendall's tau, one-sided: exact where no values are alike, else in the normal approximation (M.
    G. Kendall, Rank Correlation Methods). 1 where all of either are alike.
    """
    from scipy.stats import kendalltau  # takes long to load, and is seldom needed

    first, second = zip(*points, strict=True)
    if len(set(first)) == 1 or len(set(second)) == 1:
        return 1.0
    return float(kendalltau(first, second, alternative="less").pvalue)
