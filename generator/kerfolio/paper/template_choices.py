"""What is chosen once for the templates of a plan, and the files that follow at any thickness."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import partial

from kerfolio.basis.reader import Reader
from kerfolio.drawing.template_choice import TemplateChoice, template_choices
from kerfolio.drawing.template_view import templates
from kerfolio.drawing.vocabulary import Drawing
from kerfolio.edition.by_hand import ByHand, by_hand
from kerfolio.edition.edition import Edition
from kerfolio.edition.names import ROLL, papers_of, template_name
from kerfolio.model.workshop import Identity
from kerfolio.paper.printed_file import PrintedFile
from kerfolio.paper.seams import TiledOn, seams_of, tiled_on
from kerfolio.paper.template import template_pdf
from kerfolio.settling.sawn_joint import with_test_joints
from kerfolio.settling.settled import SettledPlan, SettledSheet
from kerfolio.settling.variant_name import label_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Templates:
    """What is chosen once for the templates of a plan; ``ways`` are those its tiles lie in, by
    paper, None on a roll. ``own`` are the plan's sheets as it is drawn, ``hand`` whether hands can
    cut it.
    """

    identity: Identity
    own: tuple[SettledSheet, ...]
    reader: Reader
    choices: Mapping[str, TemplateChoice]
    ways: Mapping[str, TiledOn | None]
    hand: ByHand

    @classmethod
    def of(cls, edition: Edition) -> Templates:
        """Choose for the whole range of an edition.

        Words are placed twice: where seams lie is known only once it is known how much paper they
        take, and then they keep clear of them.
        """
        reader = edition.reader
        ends = [with_test_joints(each) for each in edition.corners]
        papers = papers_of(edition)
        rough = [templates(each, template_choices(ends, reader), reader) for each in ends]
        choices = template_choices(ends, reader, seams_of(rough, papers.values()))
        corners = [templates(each, choices, reader) for each in ends]
        ways = {name: tiled_on(corners, paper) for name, paper in papers.items()}
        return cls(
            identity=edition.identity,
            own=edition.corners[0].sheets,
            reader=reader,
            choices=choices,
            ways={**ways, ROLL: None},
            hand=by_hand(edition),
        )

    def drawn(self, settled: SettledPlan) -> dict[str, Drawing]:
        """Return the drawings of the plan at one point, by part."""
        return templates(with_test_joints(settled), self.choices, self.reader)

    def at(self, settled: SettledPlan) -> Iterator[PrintedFile]:
        """Yield the files of the plan at one point, not named by its cutters, which cut none."""
        whole, drawings = with_test_joints(settled), self.drawn(settled)
        uncut = replace(settled.variant, cutter=(), cut=())
        label = label_of(uncut, settled.plan.units, self.own)
        for name, way in self.ways.items():
            yield PrintedFile(
                name=template_name(label, name),
                write=partial(template_pdf, whole, drawings, way, self.identity, hand=self.hand),
            )
