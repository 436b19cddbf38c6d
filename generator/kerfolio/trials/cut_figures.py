"""What follows from speed, feed and passes of a cutter: chip, chips a minute, depth."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from kerfolio.basis.cutting_lengths import chip_in, chip_range_in
from kerfolio.basis.figures import figure
from kerfolio.basis.lengths import INCH
from kerfolio.basis.reader import Reader
from kerfolio.model.stock import SHAPED, CutterStock, Stock
from kerfolio.model.trial import Trial
from kerfolio.shop.chip_load import Allowed, allowed_chips, chip_of, depth_share


@dataclass(frozen=True, slots=True, kw_only=True)
class CutFigures:
    """Figures of a cut as far as they are known.

    ``chip`` is what each edge takes, mm; ``allowed`` what tables publish for it, ``share`` what of
    that is left at this depth. ``diameters`` is the deepest pass over the cutter's diameter.
    ``removed`` is the wood taken away, cm³ a minute, in a slot as wide as the cutter: width times
    depth times feed (definition).
    """

    chip: float | None = None
    allowed: Allowed | None = None
    share: float | None = None
    diameters: float | None = None
    removed: float | None = None


def figures_of(trial: Trial, stock: Stock, machine: str) -> CutFigures:
    """Return the figures of a trial; ``machine`` is a class of machine, empty for all of them."""
    cutter = stock.cutter(trial.cutter.name) if trial.cutter else None
    if cutter is None:
        return CutFigures()
    deepest = max(trial.passes, default=None)
    feed, speed = trial.feed_mm_per_min, trial.speed_rpm
    chip = chip_of(feed, speed, cutter.flutes) if feed and speed else None
    removed = cutter.diameter * deepest * feed / 1000 if deepest and feed else None
    return CutFigures(
        chip=chip,
        allowed=_allowed(trial, cutter, stock, machine),
        share=depth_share(stock.depth_rules, deepest, cutter.diameter) if deepest else None,
        diameters=deepest / cutter.diameter if deepest else None,
        removed=None if cutter.kind in SHAPED else removed,
    )


def _allowed(trial: Trial, cutter: CutterStock, stock: Stock, machine: str) -> Allowed | None:
    sheet = stock.sheet(trial.stock.name) if trial.stock else None
    if sheet is None or cutter.kind in SHAPED:  # no table is about the tip of a V
        return None
    return allowed_chips(stock, sheet.family, cutter.diameter, machine)


def figure_lines(found: CutFigures, reader: Reader) -> Iterator[str]:
    """Yield what the figures say, a line each, in a maker's unit."""
    if found.chip is not None:
        yield f"Chip load {chip_in(found.chip, reader)} a tooth{_compared(found, reader)}."
    if found.diameters is not None:
        yield f"Deepest pass {figure(found.diameters, 2, reader)} diameters{_left(found, reader)}."
    if found.removed is not None:
        yield f"Removal rate {_volume(found.removed, reader)} a minute in a full slot."


def _compared(found: CutFigures, reader: Reader) -> str:
    if found.allowed is None or found.chip is None:
        return ""
    share = found.share or 1.0
    least, most = found.allowed.least * share, found.allowed.most * share
    of = "at this depth" if found.share not in (None, 1.0) else "for this cutter"
    told = f"published {of}: {chip_range_in(least, most, reader)}"
    if found.chip < least:
        return f", thin: {told}"
    return f", thick: {told}" if found.chip > most else f"; {told}"


def _left(found: CutFigures, reader: Reader) -> str:
    if found.share is None or found.share == 1.0:
        return ""
    return f", where tables leave {figure(found.share * 100, 0, reader)} % of the chip load"


def _volume(cubic_cm: float, reader: Reader) -> str:
    if reader.unit == "in":
        return f"{figure(cubic_cm / (INCH / 10) ** 3, 2, reader)} in³"
    return f"{figure(cubic_cm, 1, reader)} cm³"
