"""The maker's cut settings in plain numbers, and which of them serves which cut."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from kerfolio.basis.tolerance import SAME
from kerfolio.model.plan import CutSetting
from kerfolio.model.statement import Amount
from kerfolio.model.stock import SHAPED, CutterStock
from kerfolio.settling.scope import Scope, SettlingError
from kerfolio.settling.settled import Cut, Operation, SettledPlan
from kerfolio.shop.settled_scope import scope_of_settled

REST = "rest"
PLUNGE_SHARE = 1 / 3
"""Of the feed, where no plunge is stated (a quarter to a half in shop practice; from memory)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Setting:
    """A cut setting settled: feeds mm/min, depths mm from the face, ``skim`` mm past the sheet.

    ``through`` when its passes end in the spoilboard. ``depths`` are the stated ones without
    ``rest``; None where no passes are stated.
    """

    name: str
    cutter: CutterStock
    feed: float
    plunge: float
    plunge_stated: bool
    depths: tuple[float, ...] | None
    through: bool
    skim: float

    def passes(self, cut: Cut, thickness: float) -> tuple[float, ...]:
        """Return the depths of a cut's passes, mm, the last one its own.

        Where no depths are stated, a pass goes one diameter deep (common practice: no deeper than
        that with the full chip load). Past the last stated depth its own step goes on.
        """
        floor = thickness + self.skim if cut.depth is None else cut.depth
        stated = [*(self.depths or ())]
        step = 0.0
        if self.depths is None:
            step = self.cutter.diameter
        elif not self.through:
            step = stated[-1] - (stated[-2] if len(stated) > 1 else 0.0)
        while step > SAME and (not stated or stated[-1] < floor - SAME):
            stated.append(step + (stated[-1] if stated else 0.0))
        return (*(each for each in stated if each < floor - SAME), floor)


def settings_of(settled: SettledPlan, sheet: str) -> tuple[Setting, ...]:
    """Return the settings of a sheet in the plan's order; one without a feed or cutter is none.

    Where it is cut with another cutter than the plan's own, or none, only those for V and ball
    cutters hold.
    """
    scope, stated = scope_of_settled(settled), settled.sheet(sheet)
    made = (
        _settled(each, settled.stock.cutter(each.cutter.name), scope, stated.thickness)
        for each in settled.plan.cuts
        if each.sheet.name == sheet
    )
    known = (each for each in made if each is not None)
    own = stated.diameter == stated.cutter.diameter
    return tuple(each for each in known if own or each.cutter.kind in SHAPED)


def _settled(
    stated: CutSetting, cutter: CutterStock | None, scope: Scope, thickness: float
) -> Setting | None:
    if cutter is None or not stated.feed_mm_per_min:
        return None
    try:
        depths = [scope.mm(Amount(each)) for each in stated.passes if each != REST]
        skim = scope.mm(stated.skim) if stated.skim else 0.0
    except SettlingError:
        return None
    deepest = max(depths, default=0.0)
    return Setting(
        name=stated.name,
        cutter=cutter,
        feed=stated.feed_mm_per_min,
        plunge=stated.plunge_mm_per_min or stated.feed_mm_per_min * PLUNGE_SHARE,
        plunge_stated=bool(stated.plunge_mm_per_min),
        depths=tuple(sorted(each for each in depths if each > SAME)) if stated.passes else None,
        through=not stated.passes or REST in stated.passes or deepest >= thickness - SAME,
        skim=max(0.0, skim),
    )


def in_choice(cut: Cut, settings: Iterable[Setting]) -> tuple[Setting, ...]:
    """Return the settings that may serve a cut, the one to take first in front (message
    ``grounds-which-is``)."""
    engraving = cut.operation is Operation.ENGRAVE
    able = [each for each in settings if engraving or each.cutter.kind not in SHAPED]
    if cut.depth is None:
        return tuple(each for each in able if each.through)
    depth = cut.depth

    def rank(setting: Setting) -> tuple[bool, bool, bool]:
        deep = setting.through or max(setting.depths or (0.0,)) >= depth - SAME
        return engraving and setting.cutter.kind not in SHAPED, setting.through, not deep

    return tuple(sorted(able, key=rank))
