"""Finishing and care: edges, finish, damp, and what to look at after the first season."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.chapters.quantities import told
from kerfolio.document.blocks import Block, Caution, Heading, Listing, Paragraph
from kerfolio.document.chapter import BUILDERS, Chapter
from kerfolio.document.words import Reference, worded
from kerfolio.drawing.edge_map import treatment_words
from kerfolio.edition.damp_words import surroundings_words
from kerfolio.edition.edition import Edition
from kerfolio.edition.making import wholes_of
from kerfolio.model.climate import OUTDOORS, SHED
from kerfolio.model.edge_treatment import BAND, EASE, ROUND_OVER
from kerfolio.model.purpose import GLUED
from kerfolio.model.use import WALL

_OILS = ("oil", "öl", "oel")
"""What tells of a finish, by its name or title, that its rags can catch fire."""


def care(edition: Edition) -> Chapter | None:
    """Return how it is finished and looked after; None where the plan states nothing of it.

    What to do and to look at is common practice, no single source.
    """
    reader = edition.reader
    finishing, checks = tuple(_finishing(edition)), tuple(_checks(edition))
    after: tuple[Block, ...] = ()
    if checks:
        after = (Heading(words=say(reader, "care-after")), Listing(entries=checks))
    if not (*finishing, *after):
        return None
    title = say(reader, "care-title-finishing" if finishing else "care-title")
    return Chapter(id="care", title=title, blocks=(*finishing, *after), who=BUILDERS)


def _finishing(edition: Edition) -> Iterator[Block]:
    done = dict.fromkeys(
        treatment_words(row.edge, edition.reader)
        for row in edition.edges
        if row.edge.kind in (EASE, ROUND_OVER, BAND)
    )
    if done:
        where = Reference(text=say(edition.reader, "care-drawings"), chapter="parts")
        edges = told("; ".join(done))
        yield Paragraph(words=worded(edition.reader, "care-edges", edges=edges, drawings=where))
    yield from (Paragraph(words=told(each)) for each in surroundings_words(edition))
    finish = edition.plan.finish
    if finish is None:
        return
    stocked = edition.settled.stock.finish(finish.of.name)
    called = f"{finish.of.name} {stocked.title if stocked else ''}".lower()
    if any(each in called for each in _OILS):
        yield _caution(edition.reader, "oily")
    yield _caution(edition.reader, "sanding")


def _caution(reader: Reader, name: str) -> Caution:
    return Caution(
        head=say(reader, f"care-caution-{name}"), lines=(say(reader, f"care-beware-{name}"),)
    )


def _checks(edition: Edition) -> Iterator[str]:
    """Yield what to look at, by what the plan states."""
    plan, stock = edition.plan, edition.settled.stock
    reader = edition.reader
    items = (stock.item(row.item) for row in edition.hardware)
    kinds = {item.kind for item in items if item is not None}
    if "bolt" in kinds:
        yield say(reader, "care-look-bolts")
    if "screw" in kinds:
        yield say(reader, "care-look-screws")
    if plan.placed == WALL or any(each.on_wall for each in wholes_of(edition)):
        yield say(reader, "care-look-wall")
    if any(fit is not None and fit.purpose is GLUED for _, fit in plan.fits):
        yield say(reader, "care-look-glue")
    if plan.climate in (SHED, OUTDOORS):
        yield say(reader, "care-look-feet")
    if plan.finish is not None:
        yield say(reader, "care-look-coat")
