"""A plan worked out whole: what every page, booklet and file of one release is made from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from kerfolio.assembly.assembled import Assembled, BuildOrder
from kerfolio.assembly.in_use import InUse
from kerfolio.assembly.made import Made
from kerfolio.assembly.set_together import SetTogether
from kerfolio.assembly.stability import Stability
from kerfolio.assembly.storing import OnTop
from kerfolio.basis.reader import Reader
from kerfolio.drawing.vocabulary import Drawing
from kerfolio.edition.swap import SwapTable
from kerfolio.layouts.boards import BoardPlan
from kerfolio.layouts.layout import Layout
from kerfolio.layouts.other_layout import OtherLayout
from kerfolio.layouts.saw_sheet import SawSheet
from kerfolio.model.plan import Assembly, Plan
from kerfolio.model.trial import Sent, Trial
from kerfolio.model.workshop import Identity
from kerfolio.releasing.change import ReleaseChange
from kerfolio.settling.settled import FitVariant, SettledPlan
from kerfolio.shop.cost import CopiesCost
from kerfolio.shop.cut_time import CutTime
from kerfolio.shop.edging import edge_list
from kerfolio.shop.mass import Weight, weight_of
from kerfolio.shop.rows import BoardRow, CostRow, EdgeRow, HardwareRow, PartRow, SheetRow
from kerfolio.shop.span import SagResult, SpanResult
from kerfolio.shop.wear import CutterWear, wear_of
from kerfolio.writing.formats import CUT_FORMATS, CutFormat


@dataclass(frozen=True, slots=True, kw_only=True)
class ThingInUse:
    """A thing under a person; ``stated`` is which of a set, ``on`` the names of what it lies on.

    ``sat_on`` is the span of its panel with that person in the middle, where one is stated.
    """

    found: InUse
    sat_on: SagResult | None = None
    stated: Assembly | None = None
    on: tuple[str, ...] = ()
    bears: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Edition:
    """One release of one plan.

    ``settled`` is the variant the plan is drawn for, ``variants`` all of them in order of
    thickness, ``corners`` that one and then the plan with every sheet at its thinnest or its
    thickest, ``proved`` the points it was proved at. ``trials`` are only those that the maker
    marked public. ``pictures`` maps a path of the plan folder (``photos/finished.png``) to the
    picture's bytes, ready to print. ``made`` are
    the things it makes, each put together, ``together`` all of a set in its place; ``drawings``
    their pictures: ``assembled``, ``exploded`` (of a set ``NAME-assembled``, and ``set`` of all of
    it) and ``step-N``, counted over the plan. ``in_use`` is what its things do under a person,
    where the plan states uses, ``on_top`` how a second one of each stands on it, by the name of its
    assembly. ``times`` are those of the layout's sheets in their order,
    ``copies`` what one and more copies cost, ``spans`` what the plan's spans carry, ``saw`` the
    sheets as a saw cuts them, ``board_plans`` how boards are cut from lengths sold. ``formats`` are
    those that its cut files come in, ``fitted`` whether readers can have them made for any
    thickness that it is published for. ``swaps`` compare other materials with its own,
    ``others`` are its layouts for other sheets and beds. ``sent`` is what readers measured, where
    the maker wants that told. ``changes`` are those between releases that have a record: from each
    to the next, and from each to the newest. ``exact`` tells whether its shapes may be drawn and
    measured: not those of a supporters' plan where everybody sees them.
    """

    identity: Identity
    plan: Plan
    settled: SettledPlan
    variants: tuple[SettledPlan, ...]
    corners: tuple[SettledPlan, ...]
    layout: Layout
    parts: tuple[PartRow, ...]
    hardware: tuple[HardwareRow, ...]
    sheets: tuple[SheetRow, ...]
    boards: tuple[BoardRow, ...]
    trials: tuple[Trial, ...]
    pictures: Mapping[str, bytes]
    made: tuple[Made, ...] = ()
    together: SetTogether | None = None
    in_use: tuple[ThingInUse, ...] = ()
    on_top: Mapping[str, OnTop] = field(default_factory=dict)
    drawings: Mapping[str, Drawing] = field(default_factory=dict)
    times: tuple[CutTime, ...] = ()
    copies: tuple[CopiesCost, ...] = ()
    spans: tuple[SpanResult, ...] = ()
    saw: tuple[SawSheet, ...] = ()
    board_plans: tuple[BoardPlan, ...] = ()
    formats: tuple[CutFormat, ...] = CUT_FORMATS
    proved: tuple[FitVariant, ...] = ()
    fitted: bool = False
    swaps: tuple[SwapTable, ...] = ()
    others: tuple[OtherLayout, ...] = ()
    sent: tuple[Sent, ...] = ()
    changes: tuple[ReleaseChange, ...] = ()
    exact: bool = True

    @property
    def name(self) -> str:
        """The plan's folder name, which is its address."""
        return self.plan.name

    @property
    def reader(self) -> Reader:
        """Whom it is for."""
        return self.identity.reader_of(self.plan)

    def change(self, old: str, new: str) -> ReleaseChange | None:
        """Return what changed between two releases; None where that is not known."""
        found = (each for each in self.changes if (each.old, each.new) == (old, new))
        return next(found, None)

    def change_to(self, version: str) -> ReleaseChange | None:
        """Return what changed in a release, None where that is not known."""
        versions = [each.version for each in self.plan.releases]
        before = versions[versions.index(version) - 1] if version in versions[1:] else ""
        return self.change(before, version)

    @property
    def assembled(self) -> tuple[Assembled, BuildOrder] | None:
        """All that it makes in its place, with its order; None where nothing tells how it goes."""
        if self.plan.is_set:
            return (self.together.assembled, self.together.order) if self.together else None
        build = self.made[0].build if self.made else None
        return (build.drawn.assembled, build.order) if build else None

    @property
    def stability(self) -> Stability | None:
        """How steady the tallest of the things made is; None where nothing tells how they go.

        What lies on others counts with them.
        """
        found = [each.build.stability for each in self.made if each.build is not None]
        if self.together is not None:
            found += [each.stability for each in self.together.laid]
        return max(found, key=lambda each: each.size[2], default=None)

    @property
    def piece_marks(self) -> Mapping[str, str]:
        """The mark of every piece by its label, as steps name them: twins share theirs."""
        ones = [each.settled for each in self.made] or [self.settled]
        parts = (part for each in ones for part in each.parts)
        return {piece.label: piece.mark for part in parts for piece in part.pieces}

    @property
    def costs(self) -> tuple[CostRow, ...]:
        """What one copy costs, line by line."""
        return self.copies[0].lines if self.copies else ()

    @property
    def wear(self) -> tuple[CutterWear, ...]:
        """What each cutter does over all sheets."""
        return wear_of(self.times)

    @property
    def edges(self) -> tuple[EdgeRow, ...]:
        """What is done to the edges of one copy, and the banding to buy."""
        return edge_list(self.settled)

    @property
    def weight(self) -> Weight:
        """What one copy weighs."""
        return weight_of(self.settled)
