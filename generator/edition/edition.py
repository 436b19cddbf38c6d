"""A plan worked out whole: what every page, booklet and file of one release is made from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from generator.layouts.layout import Layout
from generator.model.plan import Plan
from generator.model.trial import Trial
from generator.model.workshop import Identity
from generator.settling.settled import SettledPlan
from generator.shop.rows import BoardRow, CostRow, HardwareRow, PartRow, SheetRow


@dataclass(frozen=True, slots=True, kw_only=True)
class Edition:
    """One release of one plan.

    ``settled`` is the variant the plan is drawn for, ``variants`` all of them in order of
    thickness. ``trials`` are only those that the maker marked public. ``pictures`` maps a path of
    the plan folder (``photos/finished.png``) to the picture's bytes, ready to print.
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
    costs: tuple[CostRow, ...]
    trials: tuple[Trial, ...]
    pictures: Mapping[str, bytes]

    @property
    def name(self) -> str:
        """The plan's folder name, which is its address."""
        return self.plan.name
