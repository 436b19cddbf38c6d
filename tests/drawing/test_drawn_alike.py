"""Drawings are alike at every thickness: the same items in order, numbers that are linear."""

from __future__ import annotations

from dataclasses import replace

import pytest

from kerfolio.basis.reader import METRIC
from kerfolio.drawing.template_choice import template_choices
from kerfolio.drawing.template_view import template, templates
from kerfolio.drawing.vocabulary import Drawing
from kerfolio.settling.settled import SettledPlan
from tests.drawing.linear import PLANS, range_of, unlike
from tests.drawing.overlap import crossed, overlapping
from tests.drawing.templates import templates_of


@pytest.mark.parametrize("name", PLANS)
def test_templates_are_drawn_alike_all_over_the_range(name: str) -> None:
    found = range_of(name)
    choices = template_choices((found.drawn, *found.corners), METRIC)

    def draw(settled: SettledPlan) -> dict[str, Drawing]:
        return templates(settled, choices)

    assert unlike(found, draw) == []
    for drawing in draw(found.within[0]).values():
        assert overlapping(drawing) == []
        assert crossed(drawing) == []


def test_what_is_chosen_anew_at_each_thickness_is_seen() -> None:
    """Notes that are placed from one thickness alone move with it, beside what is linear."""
    found = range_of("harbour-stool")
    assert unlike(found, templates_of) != []


def test_a_step_is_seen() -> None:
    found = range_of("desk-rack")
    choices = template_choices((found.drawn, *found.corners), METRIC)

    def stepped(settled: SettledPlan) -> dict[str, Drawing]:
        part = settled.parts[0]
        drawing = template(settled, part, choices[part.name])
        left, *rest = drawing.box
        left += 1e-4 * (settled.sheets[0].thickness > found.drawn.sheets[0].thickness)
        return {part.name: replace(drawing, box=(left, *rest))}

    assert any("box 0" in each for each in unlike(found, stepped))
