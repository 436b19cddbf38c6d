"""About this plan: licence, maker, pictures, where later releases stand, how it was made."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.words import day_text
from kerfolio.chapters.pictures_told import pictures_sentence
from kerfolio.document.blocks import Block, Fact, Facts, Live
from kerfolio.document.chapter import Chapter, Soon
from kerfolio.document.words import File, Words, address
from kerfolio.edition.edition import Edition
from kerfolio.edition.licence_words import (
    RULES,
    contact_words,
    licence_address,
    licence_of,
    licence_sentence,
)
from kerfolio.edition.names import LICENCE
from kerfolio.edition.newest import address_of

_MADE = (
    "{title}, release {version} of {day}, designed by {maker}. Worked out, drawn and set by "
    "Kerfolio from one plan, in Source Serif and Source Sans. Every number here, in the lists and "
    "in the cut files comes from that plan."
)


def about(edition: Edition) -> Chapter:
    """Return whose it is, what may be done with it and how it came about."""
    facts = tuple(_facts(edition))
    blocks: tuple[Block, ...] = (
        Facts(facts=facts, rows=True),
        Live(name="report"),
        Live(name="sums"),
    )
    return Chapter(id="about", title="About this plan", blocks=blocks, soon=Soon.BACKGROUND)


def _facts(edition: Edition) -> Iterator[Fact]:
    plan, identity = edition.plan, edition.identity
    sentence = licence_sentence(licence_of(edition))
    yield Fact(head="Licence", lines=((sentence, RULES, *_text(edition)),))
    contact = contact_words(identity)
    if contact:
        yield Fact(head="The maker", lines=((contact,),))
    yield Fact(head="Pictures", lines=((pictures_sentence(edition),),))
    found = address_of(edition)
    if found:
        stand = ("Corrections and later releases stand at ", address(found, found))
        yield Fact(head="The newest release", lines=((stand,),))
    made = _MADE.format(
        title=plan.title, version=plan.version, day=day_text(plan.released), maker=identity.maker
    )
    yield Fact(head="How it was made", lines=((made,),))


def _text(edition: Edition) -> Iterator[Words]:
    """Yield where the licence can be read; nothing where no known one is stated."""
    identifier = licence_of(edition)
    found = licence_address(identifier)
    if found:
        yield ("Its text: ", address(found, identifier), ", in the bundle ", File(name=LICENCE))
