"""A plan worked out whole: what every page, booklet and file of one release is made from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from kerfolio.assembly.building import Build
from kerfolio.assembly.stability import Stability
from kerfolio.drawing.vocabulary import Drawing
from kerfolio.layouts.boards import BoardPlan
from kerfolio.layouts.layout import Layout
from kerfolio.layouts.saw_sheet import SawSheet
from kerfolio.model.plan import Plan
from kerfolio.model.trial import Trial
from kerfolio.model.workshop import Identity
from kerfolio.settling.settled import SettledPlan
from kerfolio.shop.cost import CopiesCost
from kerfolio.shop.cut_time import CutTime
from kerfolio.shop.mass import Weight, weight_of
from kerfolio.shop.rows import BoardRow, CostRow, HardwareRow, PartRow, SheetRow
from kerfolio.shop.span import SpanResult
from kerfolio.shop.wear import CutterWear, wear_of
from kerfolio.writing.formats import CUT_FORMATS, CutFormat


@dataclass(frozen=True, slots=True, kw_only=True)
class Edition:
    """One release of one plan.

    ``settled`` is the variant the plan is drawn for, ``variants`` all of them in order of
    thickness. ``trials`` are only those that the maker marked public. ``pictures`` maps a path of
    the plan folder (``photos/finished.png``) to the picture's bytes, ready to print. ``build`` is
    the plan put together, None where its joints put no piece anywhere, ``stability`` how large,
    heavy and steady it is; ``drawings`` its pictures:
    ``assembled``, ``exploded`` and ``step-N``. ``times`` are those of the layout's sheets in their
    order, ``copies`` what one and more copies cost, ``spans`` what the plan's spans carry,
    ``saw`` the sheets as a saw cuts them, ``board_plans`` how boards are cut from lengths sold.
    ``formats`` are those that its cut files come in.
    """

    identity: Identity
    plan: Plan
    settled: SettledPlan
    variants: tuple[SettledPlan, ...]
    layout: Layout
    parts: tuple[PartRow, ...]
    hardware: tuple[HardwareRow, ...]
    sheets: tuple[SheetRow, ...]
    boards: tuple[BoardRow, ...]
    trials: tuple[Trial, ...]
    pictures: Mapping[str, bytes]
    build: Build | None = None
    stability: Stability | None = None
    drawings: Mapping[str, Drawing] = field(default_factory=dict)
    times: tuple[CutTime, ...] = ()
    copies: tuple[CopiesCost, ...] = ()
    spans: tuple[SpanResult, ...] = ()
    saw: tuple[SawSheet, ...] = ()
    board_plans: tuple[BoardPlan, ...] = ()
    formats: tuple[CutFormat, ...] = CUT_FORMATS

    @property
    def name(self) -> str:
        """The plan's folder name, which is its address."""
        return self.plan.name

    @property
    def costs(self) -> tuple[CostRow, ...]:
        """What one copy costs, line by line."""
        return self.copies[0].lines if self.copies else ()

    @property
    def wear(self) -> tuple[CutterWear, ...]:
        """What each cutter does over all sheets."""
        return wear_of(self.times)

    @property
    def weight(self) -> Weight:
        """What one copy weighs."""
        return weight_of(self.settled)
