"""The steps of the assembly as pages show them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from markupsafe import Markup

from kerfolio.edition.edition import Edition
from kerfolio.edition.hardware_words import hardware_title
from kerfolio.edition.making import numbered_steps
from kerfolio.model.plan import Step
from kerfolio.model.prose import Prose
from kerfolio.pages.photos import ShownPhoto, ShowPhoto


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceAdded:
    """A piece that joins in a step: its mark and its label (``A1``, ``side.left``)."""

    mark: str
    label: str


@dataclass(frozen=True, slots=True, kw_only=True)
class StepView:
    """One step, ready to set; ``hardware`` is (count, title), ``picture`` inline SVG or empty.

    ``begins`` tells what of a set is put together from here on, empty within it.
    """

    number: int
    begins: str
    title: str
    pieces: tuple[PieceAdded, ...]
    tools: tuple[str, ...]
    hardware: tuple[tuple[int, str], ...]
    minutes: float | None
    photo: ShownPhoto | None
    picture: Markup
    text: Prose
    by_hand: str
    caution: str


def step_views(
    edition: Edition, show: ShowPhoto, pictures: Mapping[str, Markup]
) -> tuple[StepView, ...]:
    """Return all steps in order."""
    return tuple(
        _step_view(edition, number, begins, step, show, pictures)
        for number, begins, step in numbered_steps(edition.plan)
    )


def marks_by_label(edition: Edition) -> dict[str, str]:
    """Return the mark of every piece by its label."""
    return {
        label: mark
        for row in edition.parts
        for label, mark in zip(row.labels, row.marks, strict=True)
    }


def _step_view(
    edition: Edition,
    number: int,
    begins: str,
    step: Step,
    show: ShowPhoto,
    pictures: Mapping[str, Markup],
) -> StepView:
    marks = edition.piece_marks if edition.parts else {}
    pieces = tuple(PieceAdded(mark=marks.get(name.name, ""), label=name.name) for name in step.add)
    hardware = tuple((use.count, hardware_title(edition, use.item.name)) for use in step.hardware)
    return StepView(
        number=number,
        begins=begins,
        title=step.title,
        pieces=pieces,
        tools=step.tools,
        hardware=hardware,
        minutes=step.minutes,
        photo=show(step.photo),
        picture=pictures.get(f"step-{number}", Markup("")),
        text=step.text,
        by_hand=step.by_hand,
        caution=step.caution,
    )
