"""What the log measured: how thick the sheets of a batch are, what a cutter really cuts."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from statistics import median

from kerfolio.basis.thickness import read_off
from kerfolio.model.stock import CutterStock
from kerfolio.model.trial import Trial
from kerfolio.trials.log import newest_first


@dataclass(frozen=True, slots=True, kw_only=True)
class Readings:
    """Readings of one thing in mm, with the entries they stand in, the newest first.

    ``batch`` is what the maker calls the sheets, empty where they have no name.
    """

    values: tuple[float, ...]
    entries: tuple[Trial, ...]
    batch: str = ""

    @property
    def middle(self) -> float:
        """The median, as a caliper shows it."""
        return read_off(median(self.values))

    @property
    def least(self) -> float:
        """The least of them."""
        return min(self.values)

    @property
    def most(self) -> float:
        """The most of them."""
        return max(self.values)

    @property
    def day(self) -> date:
        """The day of the newest."""
        return self.entries[0].date


def batches(trials: Iterable[Trial], sheet: str) -> tuple[str, ...]:
    """Return the names of the batches of a sheet material that were measured, the newest first."""
    named = (_name(each) for each in _measured(trials, sheet))
    return tuple(dict.fromkeys(name for name in named if name))


def batch_readings(trials: Iterable[Trial], sheet: str, batch: str = "") -> Readings | None:
    """Return what the sheets of the newest batch of a sheet material measured, None if none did.

    ``batch`` names another one than the newest. Entries that name one batch are read together; the
    same list of readings copied from one to the next counts once. An entry that names no batch is
    one by itself, its ``thickness`` a reading like any other.
    """
    measured = _measured(trials, sheet)
    named = [each for each in measured if not batch or _name(each) == batch]
    if not named:
        return None
    name = _name(named[0])
    entries = tuple(each for each in named if _name(each) == name) if name else (named[0],)
    lists = dict.fromkeys(each.batch.readings for each in entries if each.batch)
    values = [mm for each in lists for mm in each]
    values += [each.thickness for each in entries if _only_thick(each) and each.thickness]
    return Readings(values=tuple(values), entries=entries, batch=name)


def _measured(trials: Iterable[Trial], sheet: str) -> tuple[Trial, ...]:
    of_it = (each for each in trials if each.stock and each.stock.name == sheet)
    return newest_first(each for each in of_it if each.thick is not None)


def _name(trial: Trial) -> str:
    return trial.batch.name if trial.batch else ""


def _only_thick(trial: Trial) -> bool:
    return not (trial.batch and trial.batch.readings)


def true_cuts(trials: Iterable[Trial], cutter: CutterStock) -> Readings | None:
    """Return what coupons read of a cutter since it was last sharpened, or first used.

    None where the log has none.
    """
    begun = max((each for each in (cutter.in_use_since, *cutter.sharpened) if each), default=None)
    found = newest_first(
        each
        for each in trials
        if each.cutter
        and each.cutter.name == cutter.name
        and each.true_cut is not None
        and (begun is None or each.date >= begun)
    )
    values = tuple(each.true_cut for each in found if each.true_cut is not None)
    return Readings(values=values, entries=found) if found else None
