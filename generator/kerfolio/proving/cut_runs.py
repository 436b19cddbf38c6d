"""Cut settings in numbers, as the rules on them look at them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from kerfolio.model.plan import CutSetting
from kerfolio.model.statement import Amount
from kerfolio.model.stock import CutterStock
from kerfolio.settling.scope import SettlingError
from kerfolio.settling.settled import SettledPlan
from kerfolio.shop.cut_setting import REST
from kerfolio.shop.settled_scope import scope_of_settled

_NEARLY = 0.85
"""A last pass this far through, in thicknesses, was meant to go through."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Run:
    """A cut setting in numbers: depths in mm from the face as stated, the last one worked out."""

    cut: CutSetting
    cutter: CutterStock
    thickness: float
    depths: tuple[float, ...]
    skim: float | None

    @property
    def through(self) -> bool:
        """Whether the last pass goes through the sheet, or was meant to."""
        return bool(self.depths) and self.depths[-1] >= _NEARLY * self.thickness

    @property
    def deepest_pass(self) -> float:
        """The most that one pass takes, mm."""
        return max((b - a for a, b in pairwise((0.0, *self.depths))), default=0.0)


def runs(settled: SettledPlan) -> Iterator[Run]:
    """Yield the cut settings whose cutter, sheet and depths are known."""
    scope = scope_of_settled(settled)
    sheets = {each.name: each for each in settled.sheets}
    for cut in settled.plan.cuts:
        cutter, sheet = settled.stock.cutter(cut.cutter.name), sheets.get(cut.sheet.name)
        if cutter is None or sheet is None:
            continue
        try:
            skim = scope.mm(cut.skim) if cut.skim else None
            floor = sheet.thickness + (skim or 0.0)
            depths = [floor if each == REST else scope.mm(Amount(each)) for each in cut.passes]
        except SettlingError:
            continue
        yield Run(
            cut=cut,
            cutter=cutter,
            thickness=sheet.thickness,
            depths=tuple(depths),
            skim=skim,
        )
