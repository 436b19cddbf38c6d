"""Finishing and care: edges, finish, damp, and what to look at after the first season."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.chapters.quantities import told
from kerfolio.document.blocks import Block, Caution, Heading, Listing, Paragraph
from kerfolio.document.chapter import BUILDERS, Chapter
from kerfolio.document.words import Reference, pieces
from kerfolio.drawing.edge_map import treatment_words
from kerfolio.edition.damp_words import surroundings_words
from kerfolio.edition.edition import Edition
from kerfolio.edition.making import wholes_of
from kerfolio.model.climate import OUTDOORS, SHED
from kerfolio.model.edge_treatment import EASE, ROUND_OVER
from kerfolio.model.purpose import GLUED
from kerfolio.model.use import WALL

_OILY = (
    "Rags, pads and paper soaked in oil heat up as the oil dries and can catch fire by themselves, "
    "hours later. Spread them out flat to dry outdoors, or keep them under water in a closed tin. "
    "Never leave them in a heap, a bin or a pocket. What the can says comes first."
)
_SANDING = (
    "Sanding makes the finest dust: draw it off, wear a mask besides, and put on no finish before "
    "it has settled and is wiped away."
)
_COAT = "Where water no longer stands on it in drops, put on another coat."
_BOLTS = "Turn every bolt: wood shrinks as it dries and takes the grip with it."
_SCREWS = "Try every screw: one that turns without drawing up no longer holds."
_WALL = "Pull at it by hand where it is fixed to the wall: nothing may give."
_GLUE = "Look along the glued joints for a line that has opened."
_FEET = "Look at the feet and at cut edges first: damp gets in there."
"""What to do and to look at is common practice, no single source."""


def care(edition: Edition) -> Chapter | None:
    """Return how it is finished and looked after; None where the plan states nothing of it."""
    finishing, checks = tuple(_finishing(edition)), tuple(_checks(edition))
    after: tuple[Block, ...] = ()
    if checks:
        after = (Heading(words="After the first season"), Listing(entries=checks))
    if not (*finishing, *after):
        return None
    title = "Finishing and care" if finishing else "Care"
    return Chapter(id="care", title=title, blocks=(*finishing, *after), who=BUILDERS)


def _finishing(edition: Edition) -> Iterator[Block]:
    done = dict.fromkeys(
        treatment_words(row.edge, edition.reader)
        for row in edition.edges
        if row.edge.kind in (EASE, ROUND_OVER)
    )
    if done:
        where = Reference(text="The drawings of the parts", chapter="parts")
        words = pieces(told(f"Edges are {'; '.join(done)}. "))
        yield Paragraph(words=(*words, where, " show which."))
    yield from (Paragraph(words=told(each)) for each in surroundings_words(edition))
    finish = edition.plan.finish
    if finish is None:
        return
    stocked = edition.settled.stock.finish(finish.of.name)
    if "oil" in f"{finish.of.name} {stocked.title if stocked else ''}".lower():
        yield Caution(head="Oily rags", lines=(_OILY,))
    yield Caution(head="Sanding", lines=(_SANDING,))


def _checks(edition: Edition) -> Iterator[str]:
    """Yield what to look at, by what the plan states."""
    plan, stock = edition.plan, edition.settled.stock
    items = (stock.item(row.item) for row in edition.hardware)
    kinds = {item.kind for item in items if item is not None}
    if "bolt" in kinds:
        yield _BOLTS
    if "screw" in kinds:
        yield _SCREWS
    if plan.placed == WALL or any(each.on_wall for each in wholes_of(edition)):
        yield _WALL
    if any(fit is not None and fit.purpose is GLUED for _, fit in plan.fits):
        yield _GLUE
    if plan.climate in (SHED, OUTDOORS):
        yield _FEET
    if plan.finish is not None:
        yield _COAT
