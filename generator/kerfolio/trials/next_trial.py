"""The next trial to make: between the best and the nearest failure, or where nobody has been.

Within what the workshop's machine can do, and within published chip loads as long as the log has
not been beyond them.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace
from enum import StrEnum

from kerfolio.basis.digits import rounded
from kerfolio.basis.lengths import INCH
from kerfolio.basis.tolerance import NOISE, SAME
from kerfolio.model.outcome import Grade, Mark, Operation
from kerfolio.model.router import Router
from kerfolio.model.stock import Stock
from kerfolio.shop.alike import CHIP_STEP, PASS_STEP, Axis, under_tip
from kerfolio.shop.chip_load import allowed_chips, depth_share
from kerfolio.shop.settings import Settings
from kerfolio.trials.ranking import Best, Ground
from kerfolio.trials.subject import Subject

_BETWEEN = 1.5
"""Steps between the best and a failure that are worth halving."""
_TWICE = 2
"""Settings that were cut so often need no further trial to be told apart."""
_PAST_TIP = 1.5
"""How much deeper than the up-cut part at the tip a first pass begins (common practice: clearly
deeper, no single source)."""
_USUAL_RPM = 18_000.0
"""Where a small router's speed begins (common practice, no single source)."""
_LEAST_GAIN = 0.4
"""Steps that a trial must lie from what is known."""

_SHARES = (0.5, 0.25, 0.75)
"""How far along the published chip loads to begin: in the middle, by ratios, then beside it."""

_HALVED = (*(Axis.THICKER, Axis.THINNER, Axis.DEEPER, Axis.SHALLOWER, Axis.FASTER, Axis.SLOWER),)
"""Ways on which there is a middle to try; later passes follow from the first and the sheet."""

_BY_MARK: dict[Mark, tuple[Axis, ...]] = {
    Mark.BURN: (Axis.THICKER,),
    Mark.CHATTER: (Axis.THINNER, Axis.SHALLOWER),
    Mark.NOISE: (Axis.THINNER, Axis.SHALLOWER),
    Mark.TEAR_OUT: (Axis.THINNER, Axis.TURNED),
    Mark.FUZZ: (Axis.TURNED, Axis.THICKER),
}
"""What helps against what is seen (common practice, no single source): too thin a chip rubs and
burns, too thick a one shakes the cutter and tears."""


class Why(StrEnum):
    """Why just this trial."""

    BEGIN = "begin"  # nothing was tried: what tables and rules of the trade say
    ELSEWHERE = "elsewhere"  # nothing was tried here: what is best on a sheet alike
    REPEAT = "repeat"  # it came out well, too seldom to be known
    RIVAL = "rival"  # it came out better than the best known, too seldom to be known
    TIP = "tip"  # first passes stayed within the up-cut tip
    MARK = "mark"  # what is seen tells what to change
    BETWEEN = "between"  # halves the way to the nearest failure
    FURTHER = "further"  # a corner nobody has been in
    TURNED = "turned"  # the other direction
    ENOUGH = "enough"  # nothing near would tell more
    OTHER = "other"  # nothing near came out well, and all of it was tried
    NO_TABLE = "no table"  # nothing was tried and no table tells


@dataclass(frozen=True, slots=True, kw_only=True)
class Next:
    """The next trial and its reason; ``settings`` are None where there is none to make.

    ``times`` it should be made, ``axis`` is what changes, ``mark`` what it is to cure.
    """

    why: Why
    settings: Settings | None = None
    times: int = 1
    axis: Axis | None = None
    mark: Mark | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Bench:
    """What a trial is made with: ``unit`` is that in which feeds come to even numbers, ``depth``
    how deep the cut goes, mm, None where nobody says.
    """

    subject: Subject
    stock: Stock
    machine: Router
    unit: str
    depth: float | None

    @property
    def deepest(self) -> float:
        """How deep a first pass may go, mm."""
        cutter, machine = self.subject.cutter, self.machine
        stated = (self.depth, machine.deepest, cutter.cutting_length)
        return min(each for each in stated if each is not None)

    def chips(self, first: float | None) -> tuple[float, float] | None:
        """Return the chip loads published for this machine at a depth, mm; None where none are."""
        cutter, sheet = self.subject.cutter, self.subject.sheet
        allowed = allowed_chips(self.stock, sheet.family, cutter.diameter, self.machine.kind)
        if allowed is None:
            return None
        share = depth_share(self.stock.depth_rules, first or 0.0, cutter.diameter) or 1.0
        return allowed.least * share, allowed.most * share

    def told(self, wanted: Settings) -> Settings | None:
        """Return settings as the machine can be told them; None where it cannot do that.

        The chip load is kept: a feed beyond the machine's turns the cutter slower.
        """
        flutes, machine, step = self.subject.cutter.flutes, self.machine, self._step
        least, most = machine.speed or (0.0, math.inf)
        chip = wanted.chip
        speed = min(max(wanted.speed or _USUAL_RPM, least), most)
        limit = math.inf if machine.feed is None else machine.feed
        if chip * speed * flutes > limit:
            speed = limit / (chip * flutes)
        speed = _even(speed, 100.0)
        if not least * (1 - NOISE) <= speed <= most * (1 + NOISE) or speed <= 0:
            return None
        feed = max(step, min(_even(chip * speed * flutes, step), limit))
        return replace(wanted, speed=speed, feed=feed, passes=self._passes(wanted))

    @property
    def _step(self) -> float:
        return 2 * INCH if self.unit == "in" else 50.0

    def _passes(self, wanted: Settings) -> tuple[float, ...]:
        """Return the first pass, and the rest of the depth in passes no deeper than were taken."""
        if not wanted.passes:
            return ()
        place = 0.01 * INCH if self.unit == "in" else 0.1
        first = _even(min(wanted.passes[0], self.deepest), place)
        rest = (self.depth or first) - first
        if rest <= SAME:
            return (first,)
        usual = max((*wanted.passes, self.subject.cutter.diameter))
        most = min(usual, self.machine.deepest or usual)
        count = math.ceil(rest / most - NOISE)
        return (first, *(rest / count for _ in range(count)))


def _even(value: float, step: float) -> float:
    return rounded(rounded(value / step, 0) * step)


def next_trial(bench: Bench, ground: Ground, best: Best | None, elsewhere: Best | None) -> Next:
    """Return the next trial to make; ``elsewhere`` is the best on a sheet alike."""
    if best is None:
        return _first(bench, elsewhere)
    if not best.known and best.promising:
        return Next(why=Why.REPEAT, settings=best.settings, times=best.needed)
    rival = ground.rival(best) if best.known else None
    if rival is not None:
        return Next(why=Why.RIVAL, settings=rival.settings, times=rival.needed_clean)
    tries = _from_good(bench, ground, best) if best.known else _from_bad(bench, best)
    for each in tries:
        if each.settings and ground.tried(each.settings) < _TWICE:
            return each
    return Next(why=Why.ENOUGH if best.known else Why.OTHER)


def _first(bench: Bench, elsewhere: Best | None) -> Next:
    if elsewhere is not None and (told := bench.told(elsewhere.settings)):
        return Next(why=Why.ELSEWHERE, settings=told)
    begun = _begun(bench)
    return Next(why=Why.BEGIN if begun else Why.NO_TABLE, settings=begun)


def _begun(bench: Bench, share: float = _SHARES[0]) -> Settings | None:
    """Return a chip load so far along what is published, and the first pass to begin with."""
    cutter = bench.subject.cutter
    tip = cutter.up_cut_length
    first = min(bench.deepest, _PAST_TIP * tip if tip else cutter.diameter)
    chips = bench.chips(first)
    if chips is None:
        return None
    wanted = Settings(speed=_USUAL_RPM, passes=(first,), flutes=cutter.flutes)
    return bench.told(wanted.with_chip(chips[0] * (chips[1] / chips[0]) ** share))


def _from_bad(bench: Bench, best: Best) -> Iterator[Next]:
    """Yield what may come out better than settings that do not come out well."""
    tip = bench.subject.cutter.up_cut_length
    if tip and under_tip(best.settings.first, bench.subject.cutter):
        deeper = best.settings.with_first(min(bench.deepest, _PAST_TIP * tip))
        yield Next(why=Why.TIP, settings=bench.told(deeper), axis=Axis.DEEPER)
    yield from _by_marks(bench, best)
    for share in _SHARES:
        yield Next(why=Why.BEGIN, settings=_begun(bench, share))
    for axis in (Axis.THICKER, Axis.THINNER, Axis.DEEPER, Axis.SHALLOWER):
        yield Next(why=Why.FURTHER, settings=_moved(bench, best, axis), axis=axis)


def _by_marks(bench: Bench, best: Best) -> Iterator[Next]:
    """Yield what helps against what is seen."""
    for mark in best.marks:
        for axis in _BY_MARK[mark]:
            yield Next(why=Why.MARK, settings=_moved(bench, best, axis), axis=axis, mark=mark)


def _from_good(bench: Bench, ground: Ground, best: Best) -> Iterator[Next]:
    """Yield where settings that come out well may begin to fail, or come out better still."""
    if best.assured is not Grade.CLEAN:
        yield from _by_marks(bench, best)
    failures = ground.failures(best)
    for each in failures:
        middle = _between(best.settings, each.settings)
        if each.steps >= _BETWEEN and each.axis in _HALVED and _sound(bench, best, middle):
            told = bench.told(middle)
            yield Next(why=Why.BETWEEN, settings=told, axis=each.axis)
    failed = {each.axis for each in failures}
    for axis in (Axis.THICKER, Axis.DEEPER):
        if axis not in failed:
            yield Next(why=Why.FURTHER, settings=_moved(bench, best, axis), axis=axis)
    if best.settings.climb is not None and Axis.TURNED not in failed:
        yield Next(why=Why.TURNED, settings=_moved(bench, best, Axis.TURNED), axis=Axis.TURNED)


def _sound(bench: Bench, best: Best, wanted: Settings) -> bool:
    """Tell whether a trial keeps to the rule of the tip, where the best does."""
    cutter = bench.subject.cutter
    return not under_tip(wanted.first, cutter) or bool(under_tip(best.settings.first, cutter))


def _between(one: Settings, other: Settings) -> Settings:
    """Return the middle: of chip loads and speeds by ratio, of first passes by difference."""
    speed = math.sqrt((one.speed or _USUAL_RPM) * (other.speed or _USUAL_RPM))
    wanted = replace(one, speed=speed).with_chip(math.sqrt(one.chip * other.chip))
    if one.first is None or other.first is None:
        return wanted
    return wanted.with_first((one.first + other.first) / 2)


def _moved(bench: Bench, best: Best, axis: Axis) -> Settings | None:
    """Return the best settings one step further; None where machine, cutter or tables end."""
    own, first = best.settings, best.settings.first
    match axis:
        case Axis.TURNED:
            return None if own.climb is None else bench.told(replace(own, climb=not own.climb))
        case Axis.THICKER | Axis.THINNER:
            more = axis is Axis.THICKER
            chips = bench.chips(first) or (0.0, math.inf)
            wanted = own.chip * (CHIP_STEP if more else 1 / CHIP_STEP)
            chip = min(wanted, chips[1]) if more else max(wanted, chips[0])
            gain = abs(math.log(chip / own.chip)) / math.log(CHIP_STEP)
            right_way = chip > own.chip if more else chip < own.chip
            told = bench.told(own.with_chip(chip))
        case _ if first is None:
            return None
        case _:
            step = PASS_STEP * bench.subject.cutter.diameter
            more = axis is Axis.DEEPER
            depth = min(bench.deepest, first + step) if more else first - step
            gain, right_way = abs(depth - first) / step, depth > first if more else depth > SAME
            told = bench.told(own.with_first(depth))
    return told if right_way and gain >= _LEAST_GAIN else None


def depth_of(subject: Subject, best: Best | None) -> float | None:
    """Return how deep a cut goes, mm: as the best does, else through the sheet."""
    if best is not None and best.settings.passes:
        return math.fsum(best.settings.passes)
    return subject.sheet.actual if subject.operation is Operation.THROUGH else None
