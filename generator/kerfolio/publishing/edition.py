"""Brings a proved plan and its layout together into the edition everything is made from."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace

from kerfolio.assembly.in_use import in_use_of
from kerfolio.assembly.made import Made
from kerfolio.assembly.set_together import SetTogether
from kerfolio.assembly.storing import OnTop, on_top
from kerfolio.assembly.told import told_steps
from kerfolio.basis.reader import Reader
from kerfolio.drawing.build_views import build_drawings, set_drawings
from kerfolio.drawing.vocabulary import Drawing
from kerfolio.edition.edition import Edition, ThingInUse
from kerfolio.edition.layout_time import layout_time
from kerfolio.keeping.kept import NOTHING_KEPT, Kept
from kerfolio.layouts.boards import board_plan
from kerfolio.layouts.count import sheets_by_size, sheets_for
from kerfolio.layouts.layout import Layout
from kerfolio.layouts.saw import saw_plan
from kerfolio.model.plan import Plan
from kerfolio.model.workshop import Workshop
from kerfolio.publishing.bare import of_bare
from kerfolio.publishing.laid_out import LaidOut
from kerfolio.publishing.pictures import pictures_of
from kerfolio.publishing.ready_made import ready_made_sets
from kerfolio.releasing.change import changes_of
from kerfolio.settling.settled import SettledPlan
from kerfolio.settling.titles import pieces_called
from kerfolio.shop.cost import MOST_COPIES, CopiesCost, copies_costs
from kerfolio.shop.cut_time import CutTime
from kerfolio.shop.lists import board_list, boards_to_buy, hardware_list, parts_list, sheet_list
from kerfolio.shop.rows import BoardRow
from kerfolio.shop.span import sat_on, span_results
from kerfolio.trials.log import public_for
from kerfolio.trials.sent import sent_for
from kerfolio.writing.formats import CutFormat, formats_in
from kerfolio.writing.photo import sized

_PRINT_WIDTH = 1400  # px: about 250 dpi over the width of a booklet's text


def edition_of(
    workshop: Workshop,
    found: LaidOut,
    formats: tuple[CutFormat, ...] | None = None,
    kept: Kept = NOTHING_KEPT,
) -> Edition:
    """Work out a proved plan whole: lists, counts, the pictures made ready to print.

    ``formats`` are those of its cut files; None: those that plan and workshop ask for. Drawings may
    be ``kept``.
    """
    settled = found.proof.drawn
    assert settled is not None, "only proved plans are laid out"
    reader = workshop.identity.reader_of(found.proof.plan)
    made = tuple(_told_in_steps(each, reader) for each in found.proof.made)
    plan = _with_steps(found.proof.plan, made)
    together = found.proof.together
    times = tuple(layout_time(settled, sheet) for sheet in found.layout.sheets)
    return Edition(
        identity=workshop.identity,
        plan=plan,
        settled=settled,
        variants=ready_made_sets(found.proof),
        corners=found.proof.corners,
        proved=tuple(each.variant for each in found.proof.points),
        layout=found.layout,
        parts=parts_list(settled),
        hardware=hardware_list(settled),
        sheets=sheet_list(settled, sheets_by_size(found.layout)),
        boards=board_list(settled),
        trials=public_for(workshop.trials, plan.name),
        pictures=_pictures(workshop, plan),
        made=made,
        together=together,
        drawings=_drawings(plan, made, together, reader, kept),
        in_use=tuple(_in_use(settled, made, together)),
        on_top=dict(_on_top(made)),
        times=times,
        copies=_copies(workshop, settled, found.layout, times),
        spans=span_results(settled),
        saw=saw_plan(settled),
        board_plans=board_plan(settled),
        swaps=found.swaps,
        others=found.others,
        sent=sent_for(workshop.sent, plan.name) if plan.readers_measured else (),
        changes=changes_of(plan.records),
        formats=formats or formats_in(workshop.identity.cut_files_of(plan)),
    )


def _in_use(
    settled: SettledPlan, made: Sequence[Made], together: SetTogether | None
) -> Iterator[ThingInUse]:
    """Yield what is made under a person; nothing where no use is stated or nothing stands.

    What bears something else comes last: it is used by itself only before that is there.
    """
    if together is not None:
        for each in sorted(together.in_use, key=lambda each: each.bears):
            sat = sat_on(settled, each.found.part, each.found.person.kg)
            yield ThingInUse(
                found=each.found, sat_on=sat, stated=each.stated, on=each.on, bears=each.bears
            )
    elif not settled.plan.is_set and made and made[0].build is not None:
        build = made[0].build
        found = in_use_of(made[0].settled, build.drawn.assembled, build.stability)
        if found is not None:
            yield ThingInUse(found=found, sat_on=sat_on(settled, found.part, found.person.kg))


def _on_top(made: Sequence[Made]) -> Iterator[tuple[str, OnTop]]:
    """Yield how a second one of each thing that stands on the floor stands on the first."""
    for each in made:
        if each.build is not None and not each.is_single and each.build.stability.contact:
            found = on_top(each.build.drawn.assembled, each.build.stability)
            yield each.stated.name, found


def _told_in_steps(made: Made, reader: Reader) -> Made:
    """Return what is made, with the steps of the order that was found where it states none."""
    if made.build is None or not made.build.order.found:
        return made
    called = pieces_called(made.build.settled.plan, reader)
    steps = told_steps(made.build.order, called, reader)
    return replace(made, stated=replace(made.stated, steps=steps))


def _with_steps(plan: Plan, made: Sequence[Made]) -> Plan:
    if not made:
        return plan
    assemblies = tuple(each.stated for each in made) if plan.is_set else ()
    steps = tuple(step for each in made for step in each.stated.steps)
    return replace(plan, assemblies=assemblies, steps=steps)


def _drawings(
    plan: Plan, made: tuple[Made, ...], together: SetTogether | None, reader: Reader, kept: Kept
) -> dict[str, Drawing]:
    drawings: dict[str, Drawing] = {}
    for each in made:
        drawings |= of_bare(kept, build_drawings, each, reader)
    if together is not None:
        drawings |= of_bare(kept, set_drawings, together, made, plan, reader)
    return drawings


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
