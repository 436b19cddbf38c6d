"""All pictures of a plan being put together, by the names that pages and papers know them by."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import replace

from kerfolio.assembly.assembled import BuildStep
from kerfolio.assembly.building import Build
from kerfolio.assembly.fastening_body import Role
from kerfolio.assembly.fitting import Fitting, fittings_in
from kerfolio.assembly.lying import Shown, shown_steps
from kerfolio.assembly.made import Made
from kerfolio.assembly.overhangs import overhangs_in
from kerfolio.assembly.set_fittings import set_fittings
from kerfolio.assembly.set_together import SetTogether
from kerfolio.assembly.wall import wall_behind
from kerfolio.basis.lengths import length_in
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.drawing.assembled_view import assembled_view
from kerfolio.drawing.exploded_view import exploded_view
from kerfolio.drawing.step_view import step_view
from kerfolio.drawing.view_choice import chosen_views
from kerfolio.drawing.vocabulary import Drawing
from kerfolio.drawing.work_views import step_name, work_drawings
from kerfolio.model.plan import Plan
from kerfolio.settling.settled import SettledPlan
from kerfolio.settling.titles import board_title, called

ASSEMBLED, EXPLODED = "assembled", "exploded"
SET = "set"
"""A set as it stands when all of it is made."""
SET_ROOM = (170.0, 95.0)


def build_drawings(made: Made, reader: Reader) -> Mapping[str, Drawing]:
    """Return the whole with its sizes, the whole drawn apart, and a picture of every step.

    Names are those of the whole plan; nothing where nothing tells how the pieces go. ``reader``
    is whom they are for.
    """
    work, build = dict(work_drawings(made, reader)), made.build
    if build is None:
        return work
    assembled, plan = build.drawn.assembled, build.settled.plan
    fittings = fittings_in(build.settled, assembled, build.order)
    wall = wall_behind(build.settled, assembled)
    drawings = {
        made.named(ASSEMBLED): assembled_view(
            assembled,
            fittings=fittings,
            wall=wall,
            reader=reader,
            title=say(reader, "drawing-plan-together", plan=plan.title),
        )
    }
    if len(assembled.pieces) > 1:
        title = say(reader, "drawing-plan-apart", plan=plan.title)
        drawings[made.named(EXPLODED)] = exploded_view(
            assembled, build.order, fittings=fittings, reader=reader, title=title
        )
    shown = shown_steps(assembled, build.order, plan.steps, fittings, wall)
    for each, look in zip(shown, chosen_views(shown), strict=True):
        step = each.step
        number = made.first_step + step.number - 1
        drawings[step_name(number)] = step_view(
            each,
            look=look,
            hardware=_hardware(build.settled, step, reader, each.fittings),
            alike=(called(made.stated), made.stated.count),
            reader=reader,
            title=_title(build, step, number, reader),
        )
    return drawings | work


def set_drawings(
    together: SetTogether, made: Sequence[Made], plan: Plan, reader: Reader
) -> Mapping[str, Drawing]:
    """Return a set as it stands, and the steps in which a single piece is laid on the rest."""
    assembled = together.assembled
    title = say(reader, "drawing-plan-set", plan=plan.title)
    fittings = set_fittings(made, together)
    drawings = {
        SET: assembled_view(assembled, fittings=fittings, reader=reader, room=SET_ROOM, title=title)
    }
    lying = {each.first_step: each.settled for each in made if each.lies_alone}
    reaching = tuple(overhangs_in(together))
    steps = [
        Shown(
            assembled=assembled,
            step=step,
            fittings=tuple(
                each
                for each in fittings
                if each.step <= step.number and {*step.standing, *step.added} >= {*each.pieces}
            ),
        )
        for step in together.order.steps
        if step.number in lying
    ]
    for each, look in zip(steps, chosen_views(steps), strict=True):
        step, settled = each.step, lying[each.step.number]
        drawings[step_name(step.number)] = step_view(
            each,
            look=look,
            overhangs=[one for one in reaching if one.label in step.added],
            hardware=_hardware(settled, replace(step, number=1), reader),
            reader=reader,
            title=say(reader, "drawing-plan-step", plan=plan.title, step=step.number),
        )
    return drawings


def _hardware(
    settled: SettledPlan, step: BuildStep, reader: Reader, fittings: Sequence[Fitting] = ()
) -> Sequence[tuple[str, int]]:
    """Return what a step takes besides pieces of sheet, with counts: hardware, then boards."""
    if step.number > len(settled.plan.steps):
        return ()
    uses = settled.plan.steps[step.number - 1].uses
    boards = Counter(
        f"{board_title(each.name)}, {length_in(each.length, reader)}"
        for each in fittings
        if each.role is Role.BOARD and each.step == step.number
    )
    return [*((_called(settled, use.item.name), use.count) for use in uses), *boards.items()]


def _called(settled: SettledPlan, item: str) -> str:
    stocked = settled.stock.item(item)
    return stocked.title if stocked else item


def _title(build: Build, step: BuildStep, number: int, reader: Reader) -> str:
    plan = build.settled.plan
    stated = "" if build.order.found else plan.steps[step.number - 1].title
    title = say(reader, "drawing-plan-step", plan=plan.title, step=number)
    return f"{title}: {stated}" if stated else title
