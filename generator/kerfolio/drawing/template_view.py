"""Full-size templates for cutting by hand: plain shapes, drill centres, sizes with reasons."""

from __future__ import annotations

from collections.abc import Mapping

from kerfolio.basis.lengths import both_text
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.basis.saying import say
from kerfolio.drawing.template_choice import TemplateChoice
from kerfolio.drawing.template_shape import DRILL, SHAPE, WASTE, WORDS, template_shape
from kerfolio.drawing.vocabulary import Drawing
from kerfolio.geometry.measure import bounds
from kerfolio.settling.settled import SettledPart, SettledPlan
from kerfolio.settling.titles import part_title


def templates(
    settled: SettledPlan, choices: Mapping[str, TemplateChoice], reader: Reader = METRIC
) -> dict[str, Drawing]:
    """Return the templates of all parts by name."""
    return {
        each.name: template(settled, each, choices[each.name], reader) for each in settled.parts
    }


def template(
    settled: SettledPlan, part: SettledPart, choice: TemplateChoice, reader: Reader = METRIC
) -> Drawing:
    """Return the part full size in mm for cutting by hand, seen from its show face.

    Inside corners are square; a drill of the sheet's cutter diameter at the marked centres opens
    them. Words stand where the choice for all thicknesses has them; what found no room is listed
    below the shape. ``reader`` is whom it is for.
    """
    drill = settled.sheet(part.sheet).cutter.diameter
    plan = settled.plan
    return Drawing(
        box=choice.box,
        items=(*template_shape(part, drill), *choice.words(part, drill, reader)),
        layers=(WASTE, SHAPE, DRILL, WORDS),
        title=say(
            reader,
            "template-title",
            plan=f"{plan.title} {plan.version}",
            part=f"{part.mark}, {part_title(plan, part.name, reader)}",
        ),
        description=_sentence(part, reader),
    )


def _sentence(part: SettledPart, reader: Reader) -> str:
    box = bounds(part.plain.outer)
    wide, high = both_text(box.width, reader), both_text(box.height, reader)
    return say(reader, "template-shows", wide=wide, high=high)
