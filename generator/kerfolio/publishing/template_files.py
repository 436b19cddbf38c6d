"""The full-size templates of an edition, on every paper, as named bytes."""

from __future__ import annotations

from collections.abc import Callable, Container, Iterator, Mapping
from dataclasses import dataclass
from functools import partial

from kerfolio.basis.style import Numbers, told_as
from kerfolio.drawing.template_choice import TemplateChoice, template_choices
from kerfolio.drawing.template_view import template
from kerfolio.drawing.vocabulary import Drawing
from kerfolio.edition.edition import Edition
from kerfolio.edition.names import PAPERS, ROLL, template_name
from kerfolio.model.stock import PaperStock
from kerfolio.model.workshop import Identity
from kerfolio.paper.seams import TiledOn, tiled_on
from kerfolio.paper.template import template_pdf
from kerfolio.publishing.cut_files import Named
from kerfolio.settling.settled import SettledPlan


def papers_of(edition: Edition) -> Mapping[str, PaperStock]:
    """Return the papers that everything is printed on, by name."""
    stock = edition.settled.stock
    found = {name: stock.paper(name) for name in PAPERS}
    return {name: paper for name, paper in found.items() if paper is not None}


@dataclass(frozen=True, slots=True, kw_only=True)
class TemplateFile:
    """A file of templates: its name, and what writes it, each number told as it is told to."""

    name: str
    write: Callable[[Numbers], bytes]


@dataclass(frozen=True, slots=True, kw_only=True)
class Templates:
    """What is chosen once for the templates of a plan; ``ways`` are those its tiles lie in, by
    paper, None on a roll.
    """

    identity: Identity
    first: str
    choices: Mapping[str, TemplateChoice]
    ways: Mapping[str, TiledOn | None]

    @classmethod
    def of(cls, edition: Edition) -> Templates:
        """Choose for the whole range of an edition."""
        first = edition.first
        choices = template_choices(edition.corners, first)
        corners = [_drawn(each, choices, first) for each in edition.corners]
        ways = {name: tiled_on(corners, paper) for name, paper in papers_of(edition).items()}
        return cls(
            identity=edition.identity, first=first, choices=choices, ways={**ways, ROLL: None}
        )

    def at(self, settled: SettledPlan) -> Iterator[TemplateFile]:
        """Yield the files of the plan at one point."""
        drawings = _drawn(settled, self.choices, self.first)
        for name, way in self.ways.items():
            yield TemplateFile(
                name=template_name(settled.variant.label, name),
                write=partial(template_pdf, settled, drawings, way, self.identity),
            )


def _drawn(
    settled: SettledPlan, choices: Mapping[str, TemplateChoice], first: str
) -> dict[str, Drawing]:
    return {each.name: template(settled, each, choices[each.name], first) for each in settled.parts}


def template_files(
    edition: Edition, templates: Templates | None = None, known: Container[str] = ()
) -> Iterator[Named]:
    """Yield the templates of every variant, on each paper and on a roll, but for ``known`` ones."""
    templates = templates or Templates.of(edition)
    for settled in edition.variants:
        for each in templates.at(settled):
            if each.name not in known:
                yield each.name, each.write(told_as)
