"""The full-size templates of an edition, on every paper, as named bytes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from kerfolio.drawing.template_choice import template_choices
from kerfolio.drawing.template_view import template
from kerfolio.drawing.vocabulary import Drawing
from kerfolio.edition.edition import Edition
from kerfolio.edition.names import PAPERS, ROLL, template_name
from kerfolio.model.stock import PaperStock
from kerfolio.paper.seams import tiled_on
from kerfolio.paper.template import template_pdf
from kerfolio.publishing.cut_files import Named
from kerfolio.settling.settled import SettledPlan


def papers_of(edition: Edition) -> Mapping[str, PaperStock]:
    """Return the papers that everything is printed on, by name."""
    stock = edition.settled.stock
    found = {name: stock.paper(name) for name in PAPERS}
    return {name: paper for name, paper in found.items() if paper is not None}


def template_files(edition: Edition) -> Iterator[Named]:
    """Yield the templates of every variant: on each paper, and on a roll."""
    first, papers = edition.first, papers_of(edition)
    choices = template_choices(edition.corners, first)

    def drawn(settled: SettledPlan) -> dict[str, Drawing]:
        parts = settled.parts
        return {each.name: template(settled, each, choices[each.name], first) for each in parts}

    corners = [drawn(each) for each in edition.corners]
    ways = {name: tiled_on(corners, paper) for name, paper in papers.items()}
    for settled in edition.variants:
        drawings = drawn(settled)
        for name in (*papers, ROLL):
            content = template_pdf(settled, drawings, ways.get(name), edition.identity)
            yield template_name(settled.variant.label, name), content
