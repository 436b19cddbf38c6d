"""The pictures of work by hand in steps: marking, boring, sanding, glueing, clamping."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.assembly.building import Build
from kerfolio.assembly.clamping import clamps_over
from kerfolio.assembly.handworked import clamped_in, glued_in
from kerfolio.assembly.lying import Shown, shown_at
from kerfolio.assembly.made import Made
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.drawing.bore_view import bore_view
from kerfolio.drawing.clamp_view import clamp_view
from kerfolio.drawing.glue_view import glue_view
from kerfolio.drawing.mark_view import mark_view
from kerfolio.drawing.sand_view import sand_view
from kerfolio.drawing.vocabulary import Drawing
from kerfolio.model.plan import Step
from kerfolio.settling.bored import Bored, bored_in
from kerfolio.settling.marked import marked_in
from kerfolio.settling.worked import worked_on

MARKS, BORES, SANDS, GLUES, CLAMPS = "marks", "bores", "sands", "glues", "clamps"
BEFORE, AFTER = (MARKS, BORES, SANDS, GLUES), (CLAMPS,)
"""The kinds of work that come before the pieces of a step go together, and after, in order."""


def step_name(number: int, work: str = "") -> str:
    """Return the name of a step's picture, or of that of a kind of work in it."""
    return f"step-{number}-{work}" if work else f"step-{number}"


def step_names(number: int) -> tuple[str, ...]:
    """Return the names of all pictures that a step may have, in the order of the work."""
    before, after = ([step_name(number, each) for each in kinds] for kinds in (BEFORE, AFTER))
    return (*before, step_name(number), *after)


def work_drawings(made: Made, reader: Reader) -> Iterator[tuple[str, Drawing]]:
    """Yield the pictures of the work in steps, which no order that was found has."""
    build, settled = made.build, made.settled
    for place, step in enumerate(made.stated.steps, 1):
        number = made.first_step + place - 1
        head = say(reader, "drawing-plan-step", plan=settled.plan.title, step=number)
        title = f"{head}: {step.title}"
        marked = marked_in(step, settled)
        if marked:
            yield step_name(number, MARKS), mark_view(marked, reader=reader, title=title)
        if build is not None and not build.order.found:
            for work, drawing in _of_step(build, place, step, title, reader):
                if drawing is not None:
                    yield step_name(number, work), drawing


def _of_step(
    build: Build, place: int, step: Step, title: str, reader: Reader
) -> Iterator[tuple[str, Drawing | None]]:
    """Yield the pictures of a step's work on pieces in their places; None where none is there."""
    settled, assembled = build.settled, build.drawn.assembled
    bored = _bored(build, step)
    if bored:
        clamped = _held(step, build)
        drawing = bore_view(assembled, bored, clamped=clamped, reader=reader, title=title)
        yield BORES, drawing
    at = shown_at(assembled, build.order, settled.plan.steps, place)
    if step.sands:
        sanded = sand_view(
            at.assembled, at.step, step.sands, settled.parts, reader=reader, title=title
        )
        yield SANDS, sanded
    yield from _glued(build, step, at, title, reader)


def _glued(
    build: Build, step: Step, at: Shown, title: str, reader: Reader
) -> Iterator[tuple[str, Drawing | None]]:
    """Yield what is glued, and how the clamps press."""
    glued = glued_in(at.assembled, at.step, step, build.settled.plan)
    if glued:
        note = step.glues.note if step.glues else ""
        yield GLUES, glue_view(at.assembled, at.step, glued, note=note, reader=reader, title=title)
    if step.clamps:
        pressed = clamped_in(at.assembled, at.step, step.clamps, glued)
        there = {*at.step.standing, *at.step.added}
        clamps = clamps_over(at.assembled, there, pressed, step.clamps.count)
        if clamps:
            lying = bool(at.lying)
            yield (
                CLAMPS,
                clamp_view(
                    at.assembled,
                    at.step,
                    clamps,
                    step.clamps,
                    lying=lying,
                    reader=reader,
                    title=title,
                ),
            )


def _bored(build: Build, step: Step) -> list[Bored]:
    placed = {each.label for each in build.drawn.assembled.pieces}
    return [each for each in bored_in(step, build.settled) if placed.issuperset(each.pieces)]


def _held(step: Step, build: Build) -> frozenset[str]:
    """Return the pieces that the clamps of a step name."""
    names = step.clamps.of if step.clamps else ()
    meant = (worked_on(each.name, build.settled.parts) for each in names)
    return frozenset(label for each in meant if each for label in each.pieces)
