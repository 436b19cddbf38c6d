"""All pictures of a plan being put together, by the names that pages and papers know them by."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from kerfolio.assembly.assembled import BuildStep
from kerfolio.assembly.building import Build
from kerfolio.drawing.assembled_view import assembled_view
from kerfolio.drawing.exploded_view import exploded_view
from kerfolio.drawing.step_view import step_view
from kerfolio.drawing.view_choice import chosen_views
from kerfolio.drawing.vocabulary import Drawing
from kerfolio.settling.settled import SettledPlan

ASSEMBLED, EXPLODED = "assembled", "exploded"


def step_name(number: int) -> str:
    """Return the name of a step's picture."""
    return f"step-{number}"


def build_drawings(build: Build, first: str) -> Mapping[str, Drawing]:
    """Return the whole with its sizes, the whole drawn apart, and a picture of every step.

    ``first`` is the unit named first, ``mm`` or ``in``.
    """
    assembled, plan = build.drawn.assembled, build.settled.plan
    drawings = {
        ASSEMBLED: assembled_view(
            assembled, first=first, title=f"{plan.title}: put together, with its overall sizes"
        ),
        EXPLODED: exploded_view(assembled, build.order, title=f"{plan.title}: its pieces apart"),
    }
    views = chosen_views(assembled, build.order.steps)
    for step, look in zip(build.order.steps, views, strict=True):
        drawings[step_name(step.number)] = step_view(
            assembled,
            step,
            look=look,
            hardware=_hardware(build.settled, step),
            title=_title(build, step),
        )
    return drawings


def _hardware(settled: SettledPlan, step: BuildStep) -> Sequence[tuple[str, int]]:
    if step.number > len(settled.plan.steps):
        return ()
    uses = settled.plan.steps[step.number - 1].hardware
    return [(_called(settled, use.item.name), use.count) for use in uses]


def _called(settled: SettledPlan, item: str) -> str:
    stocked = settled.stock.item(item)
    return stocked.title if stocked else item


def _title(build: Build, step: BuildStep) -> str:
    plan = build.settled.plan
    stated = "" if build.order.found else plan.steps[step.number - 1].title
    return f"{plan.title}, step {step.number}" + (f": {stated}" if stated else "")
