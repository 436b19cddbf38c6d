"""What was cut: through the sheet, part way, letters or holes, where nobody says it."""

from __future__ import annotations

import math
from collections.abc import Sequence

from kerfolio.model.outcome import Operation
from kerfolio.model.plan import CutSetting
from kerfolio.model.stock import SHAPED, CutterStock, SheetStock, Stock
from kerfolio.model.trial import Trial
from kerfolio.shop.cut_setting import REST

_THROUGH = 0.85
"""Passes that add up to this much of a sheet go through it: recesses seldom go beyond three
quarters, and a skin of a millimetre left in a 9 mm sheet is still a cut through (common practice,
no single source)."""


def operation_by_cutter(cutter: CutterStock | None) -> Operation | None:
    """Return what a cutter alone can cut; None where it cuts this and that."""
    if cutter is None:
        return None
    if cutter.kind in SHAPED:
        return Operation.LETTERS
    return Operation.HOLES if cutter.kind == "drill" else None


def _by_depth(passes: Sequence[float], thickness: float | None) -> Operation | None:
    """Return what passes cut, each so many mm below the one before; None: not known."""
    if not passes or not thickness:
        return None
    through = math.fsum(passes) >= _THROUGH * thickness
    return Operation.THROUGH if through else Operation.PART_WAY


def operation_logged(trial: Trial, stock: Stock) -> Operation | None:
    """Return what was cut: as stated, else as cutter and passes tell; None: not known."""
    if trial.operation is not None:
        return trial.operation
    sheet = stock.sheet(trial.stock.name) if trial.stock else None
    cutter = stock.cutter(trial.cutter.name) if trial.cutter else None
    thickness = trial.thick or (sheet.actual if sheet else None)
    return operation_by_cutter(cutter) or _by_depth(trial.passes, thickness)


def operation_counted(trial: Trial, stock: Stock) -> Operation:
    """Return under what an entry counts: what is not known goes through, as most cuts do."""
    return operation_logged(trial, stock) or Operation.THROUGH


def operation_stated(
    cut: CutSetting, passes: Sequence[float], sheet: SheetStock, cutter: CutterStock
) -> Operation | None:
    """Return what a cut setting is for; ``passes`` are its steps in mm, empty if not known."""
    through = Operation.THROUGH if REST in cut.passes else None
    return operation_by_cutter(cutter) or through or _by_depth(passes, sheet.actual)
