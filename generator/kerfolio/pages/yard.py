"""The yard card: a page for the phone, and a chapter of the first page of a bundle."""

from __future__ import annotations

from dataclasses import dataclass, field

from markupsafe import Markup

from kerfolio.basis.saying import say
from kerfolio.edition.edition import Edition
from kerfolio.edition.yard import YardCard, has_card, yard_card
from kerfolio.pages.plan_frame import plan_frame
from kerfolio.pages.site import Site
from kerfolio.pages.theme import render, theme_text

YARD_SCRIPT = "assets/yard.js"
"""Where the site keeps the script."""


def yard_script() -> Markup:
    """Return the script that multiplies a price."""
    return Markup(theme_text("yard.js"))


@dataclass(frozen=True, slots=True, kw_only=True)
class Yard:
    """The variable ``yard`` of the template ``yard-card.html``: it stands once on a page."""

    card: YardCard
    currency: str
    file: str = YARD_SCRIPT
    script: Markup = field(default_factory=yard_script)


def yard_of(edition: Edition) -> Yard | None:
    """Return the card of an edition; None where there is nothing to buy at a yard."""
    card = yard_card(edition)
    return None if card is None else Yard(card=card, currency=edition.identity.currency)


def has_yard(edition: Edition) -> bool:
    """Tell whether a plan has a page of its own for the yard: an open one that needs any."""
    return edition.plan.is_open and has_card(edition)


def yard_page(site: Site, edition: Edition) -> str:
    """Return ``plans/NAME/yard/index.html``."""
    plan = edition.plan
    path = f"plans/{edition.name}/yard/"
    title = say(edition.reader, "pageyard-head", plan=plan.title)
    told = {"plan": plan.title, "release": plan.version}
    words = say(edition.reader, "pageyard-about", **told)
    # The markup comes from our own SVG writer, which escapes every word of the maker's.
    pictures = {name: Markup(text) for name, text in site.files[edition.name].pictures.items()}
    return render(
        "yard.html",
        edition.reader,
        frame=plan_frame(site, edition, path, title, words),
        plan=plan,
        yard=yard_of(edition),
        pictures=pictures,
    )
