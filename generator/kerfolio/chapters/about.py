"""About this plan: licence, maker, pictures, where later releases stand, how it was made."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.saying import day_text, say
from kerfolio.chapters.pictures_told import pictures_sentence
from kerfolio.document.blocks import Block, Fact, Facts, Live
from kerfolio.document.chapter import Chapter, Soon
from kerfolio.document.words import File, Words, address, worded
from kerfolio.edition.edition import Edition
from kerfolio.edition.licence_words import (
    contact_words,
    licence_address,
    licence_of,
    licence_rules,
    licence_sentence,
)
from kerfolio.edition.names import LICENCE
from kerfolio.edition.newest import address_of


def about(edition: Edition) -> Chapter:
    """Return whose it is, what may be done with it and how it came about."""
    facts = tuple(_facts(edition))
    blocks: tuple[Block, ...] = (
        Facts(facts=facts, rows=True),
        Live(name="report"),
        Live(name="sums"),
    )
    return Chapter(
        id="about", title=say(edition.reader, "about-title"), blocks=blocks, soon=Soon.BACKGROUND
    )


def _facts(edition: Edition) -> Iterator[Fact]:
    plan, identity, reader = edition.plan, edition.identity, edition.reader
    sentence = licence_sentence(licence_of(edition), reader)
    lines = (sentence, licence_rules(reader), *_text(edition))
    yield Fact(head=say(reader, "about-licence"), lines=(lines,))
    contact = contact_words(identity)
    if contact:
        yield Fact(head=say(reader, "about-maker"), lines=((contact,),))
    yield Fact(head=say(reader, "about-pictures"), lines=((pictures_sentence(edition),),))
    found = address_of(edition)
    if found:
        stand = worded(reader, "about-stand", address=address(found, found))
        yield Fact(head=say(reader, "about-newest"), lines=((stand,),))
    made = say(
        reader,
        "about-made",
        title=plan.title,
        version=plan.version,
        day=day_text(reader, plan.released),
        maker=identity.maker,
    )
    yield Fact(head=say(reader, "about-how"), lines=((made,),))


def _text(edition: Edition) -> Iterator[Words]:
    """Yield where the licence can be read; nothing where no known one is stated."""
    identifier = licence_of(edition)
    found = licence_address(identifier)
    if found:
        link, file = address(found, identifier), File(name=LICENCE)
        yield worded(edition.reader, "about-text", address=link, file=file)
