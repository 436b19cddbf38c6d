"""Brings a proved plan and its layout together into the edition everything is made from."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

from kerfolio.assembly.building import Build
from kerfolio.assembly.stability import stability_of
from kerfolio.assembly.told import told_steps
from kerfolio.drawing.build_views import build_drawings
from kerfolio.edition.edition import Edition
from kerfolio.edition.layout_time import layout_time
from kerfolio.layouts.boards import board_plan
from kerfolio.layouts.count import sheets_by_size, sheets_for
from kerfolio.layouts.layout import Layout
from kerfolio.layouts.saw import saw_plan
from kerfolio.model.plan import Plan
from kerfolio.model.workshop import Workshop
from kerfolio.publishing.examine import LaidOut
from kerfolio.publishing.pictures import pictures_of
from kerfolio.settling.settled import SettledPlan
from kerfolio.shop.cost import MOST_COPIES, CopiesCost, copies_costs
from kerfolio.shop.cut_time import CutTime
from kerfolio.shop.lists import board_list, boards_to_buy, hardware_list, parts_list, sheet_list
from kerfolio.shop.rows import BoardRow
from kerfolio.shop.span import span_results
from kerfolio.trials.log import public_for
from kerfolio.writing.formats import CUT_FORMATS, CutFormat
from kerfolio.writing.photo import sized

_PRINT_WIDTH = 1400  # px: about 250 dpi over the width of a booklet's text


def edition_of(
    workshop: Workshop, found: LaidOut, formats: tuple[CutFormat, ...] = CUT_FORMATS
) -> Edition:
    """Work out a proved plan whole: lists, counts, the pictures made ready to print."""
    settled = found.proof.drawn
    assert settled is not None, "only proved plans are laid out"
    build = found.proof.build
    plan = _told_in_steps(found.proof.plan, build)
    times = tuple(layout_time(settled, sheet) for sheet in found.layout.sheets)
    return Edition(
        identity=workshop.identity,
        plan=plan,
        settled=settled,
        variants=found.proof.variants,
        layout=found.layout,
        parts=parts_list(settled),
        hardware=hardware_list(settled),
        sheets=sheet_list(settled, sheets_by_size(found.layout)),
        boards=board_list(settled),
        trials=public_for(workshop.trials, plan.name),
        pictures=_pictures(workshop, plan),
        build=build,
        stability=stability_of(build.drawn.assembled) if build else None,
        drawings=build_drawings(build, workshop.identity.units_first) if build else {},
        times=times,
        copies=_copies(workshop, settled, found.layout, times),
        spans=span_results(settled),
        saw=saw_plan(settled),
        board_plans=board_plan(settled),
        formats=formats,
    )


def _told_in_steps(plan: Plan, build: Build | None) -> Plan:
    """Return the plan, with the steps of the order that was found where it states none."""
    if build is None or not build.order.found:
        return plan
    return replace(plan, steps=told_steps(build.order))


def _copies(
    workshop: Workshop, settled: SettledPlan, layout: Layout, times: Sequence[CutTime]
) -> tuple[CopiesCost, ...]:
    """Return what copies cost; the machine's time counts where that of every sheet is known."""
    minutes = (
        math.fsum(each.minutes for each in times) if all(each.known for each in times) else None
    )

    def boards_for(copies: int) -> tuple[BoardRow, ...]:
        plans = board_plan(settled, copies=copies)
        return boards_to_buy(settled, {plan.stock: plan.to_buy for plan in plans})

    return copies_costs(
        settled,
        workshop.identity,
        lambda copies: sheets_for(layout, copies),
        boards_for,
        minutes,
        most=min((len(each.counts) for each in layout.copies), default=MOST_COPIES),
    )


def _pictures(workshop: Workshop, plan: Plan) -> dict[str, bytes]:
    shown = pictures_of(workshop, f"plans/{plan.name}", plan.pictured)
    return {file: sized(pixels, _PRINT_WIDTH) for file, pixels in shown.items()}
