"""The opening: what it is, what it looks like, and what one asks before deciding to build it."""

from __future__ import annotations

from kerfolio.basis.saying import day_text, say
from kerfolio.chapters.deciding import deciding_facts
from kerfolio.document.chapter import Opening
from kerfolio.document.picture import Art, Picture, Shot, still
from kerfolio.drawing.build_views import ASSEMBLED, SET
from kerfolio.drawing.layout_view import layout_view
from kerfolio.edition.cover import cover_photo
from kerfolio.edition.edition import Edition
from kerfolio.edition.licence_words import contact_words, licence_sentence


def opening(edition: Edition) -> Opening:
    """Return what stands before all chapters of whatever document."""
    photo = cover_photo(edition)
    return Opening(
        kicker=edition.identity.title,
        title=edition.plan.title,
        summary=edition.plan.summary,
        picture=Shot(photo=photo) if photo else _drawn(edition),
        alt=photo.alt if photo else "",
        facts=deciding_facts(edition),
        notices=_notices(edition),
        small=_small(edition),
    )


def _drawn(edition: Edition) -> Picture | None:
    """Return the whole put together; where nothing tells how it goes, its first sheet."""
    names = (SET, *(made.named(ASSEMBLED) for made in edition.made))
    whole = next((name for name in names if name in edition.drawings), None)
    if whole is not None:
        return still(whole, edition.drawings[whole])
    if not edition.exact or not edition.layout.sheets:
        return None
    settled, layout, reader = edition.settled, edition.layout.sheets[0], edition.reader
    return Art(
        name=f"sheet-{layout.number}",
        draw=lambda room: layout_view(settled, layout, room, reader),
        slides=True,
    )


def _notices(edition: Edition) -> tuple[str, ...]:
    """Return what earlier releases had wrong, the newest correction first."""
    wrong = sorted((each for each in edition.plan.releases if each.errata), key=lambda r: r.order)
    return tuple(
        say(
            edition.reader,
            "opening-wrong",
            version=each.version,
            day=day_text(edition.reader, each.date),
            changed=each.changed,
        )
        for each in reversed(wrong)
    )


def _small(edition: Edition) -> tuple[str, ...]:
    plan, identity, reader = edition.plan, edition.identity, edition.reader
    released = {"version": plan.version, "day": day_text(reader, plan.released)}
    lines = (
        say(reader, "opening-whose", maker=identity.maker, **released),
        licence_sentence(plan.licence or identity.licence, edition.reader),
        contact_words(identity),
    )
    return tuple(each for each in lines if each)
