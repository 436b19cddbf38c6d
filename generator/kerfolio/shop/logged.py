"""What entries of the log say of a cut setting: which were cut alike, and how they came out."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from kerfolio.model.outcome import Grade, Operation
from kerfolio.model.plan import CutSetting
from kerfolio.model.statement import Amount
from kerfolio.model.stock import SHAPED, CutterStock, SheetStock, Stock
from kerfolio.model.trial import Trial
from kerfolio.settling.scope import Scope, SettlingError
from kerfolio.shop.cut_setting import REST

_ALIKE = 0.05
"""Speeds, feeds and depths within a twentieth count as one: dials and sheets are no finer (common
practice, no single source)."""

_NEARLY = 0.85
"""Passes that add up to this much of the sheet were meant to go through."""

MANY = 2
"""Entries that agree, from which on a better setting is more than a stroke of luck."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fed:
    """How a cutter was run: speed rpm, feeds mm/min, first pass mm; None where it is not known."""

    speed: float | None = None
    feed: float | None = None
    plunge: float | None = None
    first_pass: float | None = None

    def unlike(self, other: Fed) -> tuple[str, ...]:
        """Return the names of what both know and differ in."""
        return tuple(name for name in FED if not _near(getattr(self, name), getattr(other, name)))

    def known(self) -> tuple[str, ...]:
        """Return the names of what is known."""
        return tuple(name for name in FED if getattr(self, name) is not None)


FED = ("feed", "speed", "plunge", "first_pass")
"""What settings are compared by."""


def _near(one: float | None, other: float | None) -> bool:
    return one is None or other is None or abs(one - other) <= _ALIKE * max(one, other)


@dataclass(frozen=True, slots=True, kw_only=True)
class Tried:
    """Entries that were cut alike and have a verdict, the newest first."""

    fed: Fed
    entries: tuple[Trial, ...]

    @property
    def grades(self) -> tuple[Grade, ...]:
        """Their verdicts, the worst first."""
        return tuple(sorted(each.grade for each in self.entries if each.grade))

    @property
    def typical(self) -> Grade:
        """The verdict in the middle; of two the worse, since grades have no mean."""
        return self.grades[(len(self.grades) - 1) // 2]

    @property
    def agrees(self) -> bool:
        """Whether the verdicts lie within one step of each other."""
        return self.grades[-1] - self.grades[0] <= 1


def fed_of(trial: Trial) -> Fed:
    """Return how the cutter of an entry was run."""
    return Fed(
        speed=trial.speed_rpm,
        feed=trial.feed_mm_per_min,
        plunge=trial.plunge_mm_per_min,
        first_pass=trial.first_pass,
    )


def fed_by(cut: CutSetting, unit: str) -> Fed:
    """Return how a plan runs a cutter; a first pass that hangs on the plan's sizes is not known."""
    return Fed(
        speed=cut.speed_rpm,
        feed=cut.feed_mm_per_min,
        plunge=cut.plunge_mm_per_min,
        first_pass=next(iter(_depths(cut, unit)), None),
    )


def _depths(cut: CutSetting, unit: str) -> tuple[float, ...]:
    scope, found = Scope(unit=unit), []
    for each in cut.passes:
        try:
            found.append(scope.mm(Amount(each)))
        except SettlingError:
            break
    return tuple(found)


def same_pair(trials: Iterable[Trial], sheet: str, cutter: str) -> tuple[Trial, ...]:
    """Return the entries on a sheet material with a cutter, both by their names in the stock."""
    return tuple(
        each
        for each in trials
        if (each.stock and each.stock.name == sheet and each.cutter and each.cutter.name == cutter)
    )


def operation_logged(trial: Trial, sheet: SheetStock | None) -> Operation | None:
    """Return what was cut: as stated, else by how deep all passes go together; None: not known."""
    thick = trial.thick or (sheet.actual if sheet else None)
    if trial.operation is not None or not trial.passes or not thick:
        return trial.operation
    through = sum(trial.passes) >= _NEARLY * thick
    return Operation.THROUGH if through else Operation.PART_WAY


def operation_stated(
    cut: CutSetting, sheet: SheetStock, cutter: CutterStock, unit: str
) -> Operation | None:
    """Return what a cut setting is for; None where its passes do not tell."""
    if cutter.kind in SHAPED:
        return Operation.LETTERS
    if cutter.kind == "drill":
        return Operation.HOLES
    if REST in cut.passes:
        return Operation.THROUGH
    depths = _depths(cut, unit)
    if not depths or len(depths) < len(cut.passes):
        return None
    return Operation.THROUGH if max(depths) >= _NEARLY * sheet.actual else Operation.PART_WAY


def comparable(
    cut: CutSetting, sheet: str, trials: Iterable[Trial], stock: Stock, unit: str
) -> tuple[Trial, ...]:
    """Return the entries with a verdict that a cut setting of a ``sheet`` may be compared with.

    They are of the same sheet material and cutter and, where both tell it, operation; they say the
    feed.
    """
    material, cutter = stock.sheet(sheet), stock.cutter(cut.cutter.name)
    if material is None or cutter is None:
        return ()
    wanted = operation_stated(cut, material, cutter, unit)

    def of_it(trial: Trial) -> bool:
        cut_then = operation_logged(trial, material)
        return wanted is None or cut_then is None or cut_then is wanted

    return tuple(
        each
        for each in same_pair(trials, sheet, cutter.name)
        if each.grade is not None and each.feed_mm_per_min is not None and of_it(each)
    )


def cut_alike(entries: Iterable[Trial]) -> tuple[Tried, ...]:
    """Return entries with a verdict in groups that were cut alike, as the log has them in turn.

    Those of a group know the same and differ in nothing of it; ``fed`` is that of the newest.
    """
    groups: list[list[Trial]] = []
    for each in sorted(
        (each for each in entries if each.grade), key=lambda each: each.date, reverse=True
    ):
        fed = fed_of(each)
        for group in groups:
            first = fed_of(group[0])
            if first.known() == fed.known() and not first.unlike(fed):
                group.append(each)
                break
        else:
            groups.append([each])
    return tuple(Tried(fed=fed_of(each[0]), entries=tuple(each)) for each in groups)


@dataclass(frozen=True, slots=True, kw_only=True)
class Verdict:
    """What the log says of a cut setting: how it came out as it is, and what came out better.

    ``asis`` is None where nothing was cut like it.
    """

    asis: Tried | None = None
    better: Tried | None = None


def verdict_on(
    fed: Fed, entries: Iterable[Trial], possible: Callable[[Fed], bool] = lambda _: True
) -> Verdict:
    """Compare a setting with entries that are ``comparable``.

    What is better agrees with itself, is ``possible``, and is the best; of two alike that which
    more stand behind. Nothing is better than what was never cut as it is.
    """
    entries = tuple(entries)
    like = tuple(each for each in entries if not fed_of(each).unlike(fed))
    if fed.feed is None or not like:
        return Verdict()
    newest = tuple(sorted(like, key=lambda each: each.date, reverse=True))
    asis = Tried(fed=fed, entries=newest)
    others = (each for each in cut_alike(entries) if each.fed.unlike(fed) and each.agrees)
    better = (each for each in others if each.typical > asis.typical and possible(each.fed))
    best = max(
        better,
        key=lambda each: (each.typical, len(each.entries), each.entries[0].date),
        default=None,
    )
    return Verdict(asis=asis, better=best)
