"""The page of a plan's setup sheets: what stands beside the machine, in big type."""

from __future__ import annotations

from markupsafe import Markup

from kerfolio.basis.saying import say
from kerfolio.drawing.layer import DASHES, INKS
from kerfolio.edition.edition import Edition
from kerfolio.edition.folder import file_words
from kerfolio.edition.setup import (
    compare_words,
    no_clamp,
    setup_cautions,
    setup_defer,
    setup_sheets,
)
from kerfolio.edition.setup_art import setup_arts
from kerfolio.edition.setup_coupon import setup_coupons
from kerfolio.edition.setup_pictures import art_picture, coupon_picture
from kerfolio.edition.side_words import finished_edge
from kerfolio.pages.frame import with_script
from kerfolio.pages.page_script import PAGE_SCRIPT, page_script
from kerfolio.pages.plan_frame import plan_frame
from kerfolio.pages.site import Site
from kerfolio.pages.theme import render


def has_setup(site: Site, edition: Edition) -> bool:
    """Tell whether a plan has a page of setup sheets: only with its pictures, so an open one."""
    return any(name.startswith("setup-") for name in site.files[edition.name].pictures)


def setup_page(site: Site, edition: Edition) -> str:
    """Return ``plans/NAME/setup/index.html``: a section for each coupon, sheet, engraving."""
    plan = edition.plan
    path = f"plans/{edition.name}/setup/"
    title = say(edition.reader, "pagesetup-head", plan=plan.title)
    told = {"plan": plan.title, "release": plan.version}
    words = say(edition.reader, "pagesetup-about", **told)
    # The markup comes from our own SVG writer, which escapes every word of the maker's.
    pictures = {name: Markup(text) for name, text in site.files[edition.name].pictures.items()}
    frame = plan_frame(site, edition, path, title, words)
    return render(
        "setup.html",
        edition.reader,
        frame=with_script(frame, PAGE_SCRIPT, page_script(edition.reader)),
        plan=plan,
        fit=edition.settled.variant.label,
        file_words=lambda number: file_words(edition, number),
        finished=finished_edge(edition.reader),
        sheets=setup_sheets(edition),
        coupons=setup_coupons(edition),
        arts=setup_arts(edition),
        pictures=pictures,
        inks=INKS,
        dashes=DASHES,
        art_picture=art_picture,
        coupon_picture=coupon_picture,
        cautions=setup_cautions(edition.reader),
        defer=setup_defer(edition.reader),
        no_clamp=no_clamp(edition.reader),
        compare=compare_words(edition.reader),
    )
