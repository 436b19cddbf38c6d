"""A proved plan with its layouts, as examining leaves it."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.edition.swap import SwapTable
from kerfolio.layouts.layout import Layout
from kerfolio.layouts.other_layout import OtherLayout
from kerfolio.proving.prove import Proof
from kerfolio.settling.also_for import OtherSheet


@dataclass(frozen=True, slots=True, kw_only=True)
class LaidOut:
    """A proved plan with its layout; ``fresh`` tells why to write it, empty where it stands.

    ``others`` are its layouts for other sheets and beds; ``on`` is the one that this is for, None
    where it is for the plan's own. ``swaps`` are the materials that it states to be compared with
    its own, worked out.
    """

    proof: Proof
    layout: Layout
    fresh: str
    others: tuple[OtherLayout, ...] = ()
    on: OtherSheet | None = None
    swaps: tuple[SwapTable, ...] = ()
