"""Templates of a plan as it is settled, for tests that look at one thickness alone."""

from __future__ import annotations

from dataclasses import replace

from kerfolio.basis.reader import Reader
from kerfolio.drawing.template_choice import template_choices
from kerfolio.drawing.template_view import templates
from kerfolio.drawing.vocabulary import Drawing
from kerfolio.settling.settled import SettledPart, SettledPlan


def template_of(settled: SettledPlan, part: SettledPart, unit: str = "mm") -> Drawing:
    """Return the template of a part, whether or not the plan has it."""
    return templates_of(replace(settled, parts=(part,)), unit)[part.name]


def templates_of(settled: SettledPlan, unit: str = "mm") -> dict[str, Drawing]:
    """Return the templates of all parts by name."""
    reader = Reader(unit=unit)
    return templates(settled, template_choices((settled,), reader), reader)
