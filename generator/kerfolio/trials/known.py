"""What is known before a trial is written down: the stock, the plans, what was logged."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from kerfolio.basis.digits import digits
from kerfolio.basis.lengths import INCH
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.model.stock import SHAPED, Stock
from kerfolio.model.trial import Trial
from kerfolio.shop.settings import Settings, settings_logged
from kerfolio.trials.log import newest_first


@dataclass(frozen=True, slots=True, kw_only=True)
class Used:
    """Settings that a plan or the log has for a sheet and a cutter, by their names in the stock."""

    stock: str
    cutter: str
    settings: Settings


@dataclass(frozen=True, slots=True, kw_only=True)
class KnownPlan:
    """Of a plan: its release, the thickness in mm that each sheet's stock is drawn for, its cuts.

    ``parts`` are the names of its parts.
    """

    name: str
    title: str
    release: str
    sheets: Mapping[str, float]
    cuts: tuple[Used, ...] = ()
    parts: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Known:
    """What a trial may draw on; ``machine`` is the workshop's class of machine, perhaps empty."""

    stock: Stock
    plans: tuple[KnownPlan, ...] = ()
    trials: tuple[Trial, ...] = ()
    machine: str = ""
    reader: Reader = METRIC

    def plan(self, name: str) -> KnownPlan | None:
        """Return the plan of that name, or None."""
        return next((each for each in self.plans if each.name == name), None)

    def cutters_of(self, plan: str, stock: str) -> tuple[str, ...]:
        """Return the cutters that a plan cuts a sheet with, those for engraving alone last."""
        known = self.plan(plan)
        named = [each.cutter for each in (known.cuts if known else ()) if each.stock == stock]
        return _once(sorted(named, key=self._engraves))

    def _engraves(self, cutter: str) -> bool:
        found = self.stock.cutter(cutter)
        return found is not None and found.kind in SHAPED

    def setting(self, plan: str, stock: str, cutter: str) -> Settings | None:
        """Return the settings to offer: the plan's own, else those logged last."""
        known = self.plan(plan)
        for each in (*(known.cuts if known else ()), *logged_settings(self.trials)):
            if (each.stock, each.cutter) == (stock, cutter):
                return each.settings
        return None

    def plans_tried(self) -> tuple[str, ...]:
        """Return the plans, those of the log in front, the one logged last first."""
        logged = (each.plan.name for each in newest_first(self.trials) if each.plan)
        return _once((*logged, *(each.name for each in self.plans)))

    def sheets_tried(self) -> tuple[str, ...]:
        """Return the sheets of the log, the one logged last in front."""
        return _once(each.stock.name for each in newest_first(self.trials) if each.stock)

    def cutters_tried(self, stock: str) -> tuple[str, ...]:
        """Return the cutters of the log, those tried on a sheet in front."""
        newest = [each for each in newest_first(self.trials) if each.cutter]
        here = (each for each in newest if each.stock and each.stock.name == stock)
        return _once(each.cutter.name for each in (*here, *newest) if each.cutter)


def logged_settings(trials: Iterable[Trial]) -> tuple[Used, ...]:
    """Return the settings of every trial of a sheet with a cutter, newest first."""
    return tuple(
        Used(stock=each.stock.name, cutter=each.cutter.name, settings=settings_logged(each))
        for each in newest_first(trials)
        if each.stock and each.cutter
    )


def _once(names: Iterable[str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(names))


def length_as_stated(mm: float, unit: str) -> str:
    """Return a length as a log states it, so that it is read back the same: ``8 mm``."""
    return f"{digits(mm / INCH, 5)} in" if unit == "in" else f"{digits(mm)} mm"


def feed_as_stated(mm_per_min: float, unit: str) -> str:
    """Return a feed as a log states it: ``4500 mm/min``, ``180 in/min``."""
    scale = INCH if unit == "in" else 1.0
    return f"{digits(mm_per_min / scale, 3)} {unit}/min"


def speed_as_stated(rpm: float) -> str:
    """Return a speed as a log states it: ``18000 rpm``."""
    return f"{digits(rpm, 1)} rpm"


def passes_as_stated(depths: Iterable[float], unit: str) -> str:
    """Return depths of passes as a log states them: ``8 mm, 10.1 mm``."""
    return ", ".join(length_as_stated(each, unit) for each in depths)
