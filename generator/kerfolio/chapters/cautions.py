"""Before you cut: the plan's own cautions, then the usual ones."""

from __future__ import annotations

from kerfolio.basis.saying import say
from kerfolio.document.blocks import Block, Caution, Fact, Facts, Manner, Paragraph
from kerfolio.document.chapter import BUILDERS, Chapter
from kerfolio.edition.cautions import cautions_of, opening_words
from kerfolio.edition.edition import Edition


def cautions(edition: Edition) -> Chapter:
    """Return the cautions; no plan is without them."""
    opening = opening_words(edition.reader)
    blocks: list[Block] = [Paragraph(words=opening, manner=Manner.LEAD)]
    if edition.plan.cautions:
        blocks.append(
            Caution(head=say(edition.reader, "cautions-own"), lines=edition.plan.cautions)
        )
    usual = tuple(Fact(head=each.head, lines=((each.text,),)) for each in cautions_of(edition))
    blocks.append(Facts(facts=usual, rows=True))
    title = say(edition.reader, "cautions-title")
    return Chapter(id="cautions", title=title, blocks=tuple(blocks), who=BUILDERS)
