"""What a machine is told: one record, whoever says it (a log, a plan, a suggestion)."""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import pairwise

from kerfolio.basis.tolerance import SAME
from kerfolio.model.plan import CutSetting, Plan
from kerfolio.model.statement import Amount
from kerfolio.model.stock import CutterStock, Stock
from kerfolio.model.trial import Trial
from kerfolio.settling.scope import Scope, SettlingError
from kerfolio.shop.chip_load import chip_of
from kerfolio.shop.cut_setting import REST


@dataclass(frozen=True, slots=True, kw_only=True)
class Settings:
    """What a machine is told. Speed rpm, feeds mm/min, depths mm; None or empty where nobody says.

    ``passes`` are how deep each goes below the one before, ``flutes`` the edges of the cutter.
    ``climb`` tells whether it runs with the feed (climb) or against it (conventional).
    """

    speed: float | None = None
    feed: float | None = None
    plunge: float | None = None
    passes: tuple[float, ...] = ()
    climb: bool | None = None
    flutes: int | None = None

    @property
    def chip(self) -> float:
        """What each edge takes, mm. Raises ValueError where speed, feed or edges are not known."""
        if not (self.speed and self.feed and self.flutes):
            raise ValueError("no chip load without speed, feed and edges")
        return chip_of(self.feed, self.speed, self.flutes)

    @property
    def first(self) -> float | None:
        """How deep the first pass goes, mm."""
        return self.passes[0] if self.passes else None

    @property
    def later(self) -> float | None:
        """How deep the deepest pass after the first goes, mm; None where there is none."""
        return max(self.passes[1:], default=None)

    def with_chip(self, chip: float) -> Settings:
        """Return them with the feed for a chip load, mm. Raises ValueError without speed, edges."""
        if not (self.speed and self.flutes):
            raise ValueError("no feed for a chip load without speed and edges")
        return replace(self, feed=chip * self.speed * self.flutes)

    def with_first(self, first: float) -> Settings:
        """Return them with another first pass, mm."""
        return replace(self, passes=(first, *self.passes[1:]))


def settings_logged(trial: Trial, cutter: CutterStock | None = None) -> Settings:
    """Return what the machine was told when an entry was cut; ``cutter`` is the entry's."""
    return Settings(
        speed=trial.speed_rpm,
        feed=trial.feed_mm_per_min,
        plunge=trial.plunge_mm_per_min,
        passes=trial.passes,
        climb=trial.climb,
        flutes=cutter.flutes if cutter else None,
    )


def settings_stated(cut: CutSetting, plan: Plan, stock: Stock) -> Settings:
    """Return what a plan tells the machine, at the thickness that it is drawn for.

    Passes that hang on the plan's sizes are not known before it is settled.
    """
    cutter = stock.cutter(cut.cutter.name)
    return Settings(
        speed=cut.speed_rpm,
        feed=cut.feed_mm_per_min,
        plunge=cut.plunge_mm_per_min,
        passes=_steps(cut, plan, stock),
        flutes=cutter.flutes if cutter else None,
    )


def _steps(cut: CutSetting, plan: Plan, stock: Stock) -> tuple[float, ...]:
    """Return how deep each pass goes below the one before, mm; none where a depth is not known."""
    thickness = drawn_thickness(plan, stock, cut.sheet.name)
    skim = _mm(cut.skim, plan) if cut.skim else 0.0
    rest = None if thickness is None or skim is None else thickness + skim
    depths = [rest if each == REST else _mm(Amount(each), plan) for each in cut.passes]
    known = [each for each in depths if each is not None]
    if len(known) < len(depths):
        return ()
    steps = (b - a for a, b in pairwise((0.0, *sorted(known))))
    return tuple(each for each in steps if each > SAME)


def drawn_thickness(plan: Plan, stock: Stock, sheet: str) -> float | None:
    """Return what a sheet of a plan is drawn for, mm, where plan or stock say it in figures."""
    use = next((each for each in plan.sheets if each.name == sheet), None)
    if use is None:
        return None
    found = stock.sheet(use.stock.name)
    usual = found.actual if found else None
    if use.drawn_for is None:
        return usual
    return _mm(use.drawn_for, plan) or usual


def _mm(amount: Amount, plan: Plan) -> float | None:
    try:
        return Scope(unit=plan.units).mm(amount)
    except SettlingError:  # it hangs on the plan's sizes
        return None
