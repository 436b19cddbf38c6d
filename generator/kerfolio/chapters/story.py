"""The idea: why the maker made it, with the photos that are not the cover."""

from __future__ import annotations

from kerfolio.basis.saying import say
from kerfolio.chapters.shots import shot, shown
from kerfolio.document.blocks import Block, Figures, Size, Told
from kerfolio.document.chapter import Chapter, Soon
from kerfolio.edition.cover import cover_photo
from kerfolio.edition.edition import Edition


def story(edition: Edition) -> Chapter | None:
    """Return the maker's own words and gallery; None where there are neither."""
    plan = edition.plan
    cover = cover_photo(edition)
    gallery = [each for each in shown(plan.photos, edition) if each is not cover]
    size = Size.WIDE if len(gallery) == 1 else Size.HALF
    blocks: list[Block] = [Told(prose=plan.story)] if plan.story else []
    if gallery:
        blocks.append(Figures(figures=tuple(shot(each, edition.reader, size) for each in gallery)))
    if not blocks:
        return None
    title = say(edition.reader, "story-title")
    return Chapter(id="story", title=title, blocks=tuple(blocks), soon=Soon.FIRST)
