"""In use: what it is for by estimate, where it tips, slides and leans."""

from __future__ import annotations

from kerfolio.basis.saying import say
from kerfolio.chapters.grounds import figures, grounds
from kerfolio.document.blocks import Block, Caution, Heading, Manner, Paragraph
from kerfolio.document.chapter import Chapter, Soon
from kerfolio.edition.edition import Edition
from kerfolio.edition.in_use import used_of


def in_use(edition: Edition) -> Chapter | None:
    """Return what it does in use, the plain sentence first; None where no uses are stated."""
    used = used_of(edition)
    if used is None:
        return None
    blocks: list[Block] = []
    for number, each in enumerate(used.things):
        if each.title:
            blocks.append(Heading(words=each.title))
        blocks.append(Paragraph(words=each.sentence, manner=Manner.LEAD))
        if not number:
            blocks.append(Caution(head=used.heading, lines=used.cautions))
        blocks.append(figures(each.figures))
    reader = edition.reader
    blocks += grounds(used.assumptions, say(reader, "inuse-rests"))
    title = say(reader, "inuse-title")
    return Chapter(id="in-use", title=title, blocks=tuple(blocks), soon=Soon.BACKGROUND)
