"""Before you cut: the plan's own cautions, then the usual ones."""

from __future__ import annotations

from kerfolio.document.blocks import Block, Caution, Fact, Facts, Manner, Paragraph
from kerfolio.document.chapter import BUILDERS, Chapter
from kerfolio.edition.cautions import cautions_of, opening_words
from kerfolio.edition.edition import Edition


def cautions(edition: Edition) -> Chapter:
    """Return the cautions; no plan is without them."""
    opening = opening_words(edition.reader)
    blocks: list[Block] = [Paragraph(words=opening, manner=Manner.LEAD)]
    if edition.plan.cautions:
        blocks.append(Caution(head="For this plan", lines=edition.plan.cautions))
    usual = tuple(Fact(head=each.head, lines=((each.text,),)) for each in cautions_of(edition))
    blocks.append(Facts(facts=usual, rows=True))
    return Chapter(id="cautions", title="Before you cut", blocks=tuple(blocks), who=BUILDERS)
