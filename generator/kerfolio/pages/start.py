"""``start-here.html``: the first page of a bundle, read from a disk without a network."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Mapping
from dataclasses import replace
from functools import partial

from markupsafe import Markup

from kerfolio.edition.cautions import OPENING, cautions_of
from kerfolio.edition.damp_words import damp_words
from kerfolio.edition.edition import Edition
from kerfolio.edition.format_words import format_words
from kerfolio.edition.joint_fits import joint_fits
from kerfolio.edition.layers import layers_explained
from kerfolio.edition.licence_words import RULES
from kerfolio.edition.making import set_of, wholes_of
from kerfolio.edition.measuring import measuring_of
from kerfolio.edition.names import PAPERS, booklet_name, layout_name, saw_name, setup_name
from kerfolio.edition.other_sheets import other_words
from kerfolio.edition.side_words import offset_words
from kerfolio.fitted.form import Fitted
from kerfolio.pages.choosing import coupon_tables, folder_rows, sheet_titles
from kerfolio.pages.contents import groups
from kerfolio.pages.facts import facts
from kerfolio.pages.fitting import fitting_of
from kerfolio.pages.frame import lone_frame, release_line
from kerfolio.pages.howto import tools
from kerfolio.pages.licences import licence_note
from kerfolio.pages.links import contact_href, mail_address
from kerfolio.pages.newest import newest_address
from kerfolio.pages.photos import cover_of, inlined
from kerfolio.pages.plan import report_link
from kerfolio.pages.steps import step_views
from kerfolio.pages.theme import render
from kerfolio.pages.viewer import viewer_of
from kerfolio.pages.yard import yard_of


def start_here(
    edition: Edition,
    contents: Iterable[str],
    pictures: Mapping[str, str],
    model: str = "",
    fitted: Fitted | None = None,
    rescue: Fitted | None = None,
) -> str:
    """Return the page. It is one file: style and pictures lie inside it, links lead to neighbours.

    ``contents`` are the names of the bundle's files (this one may be among them); ``pictures``
    are inline SVG by name and ``model`` the data of the 3-D view, as in ``PlanFiles``. Photos come
    from the edition. ``fitted`` are the files that it fills in for a measured sheet, ``rescue``
    those that open a piece wider.
    """
    plan = edition.plan
    names = set(contents)
    labels = tuple(each.variant.label for each in edition.variants)
    # The markup comes from our own SVG writer, which escapes every word of the maker's.
    drawn = {name: Markup(text) for name, text in pictures.items()}
    title = f"Start here: {plan.title} {plan.version}"
    viewer = viewer_of(plan.title, model) if model else None
    fitting = fitting_of(edition, fitted, rescue)
    yard = yard_of(edition)
    scripts = [each.script for each in (viewer, fitting, yard) if each is not None]
    frame = lone_frame(edition.identity, title, plan.summary, scripts=scripts)
    return render(
        "start-here.html",
        frame=replace(frame, release=release_line(plan)),
        edition=edition,
        plan=plan,
        identity=edition.identity,
        first=edition.first,
        day=plan.released,
        cover=inlined(cover_of(plan.photos), edition),
        pictures=drawn,
        facts=facts(edition),
        files=names,
        prints=_prints(edition, names),
        offset=offset_words(edition),
        groups=groups(names, labels),
        folders=folder_rows(edition),
        measuring=measuring_of(edition),
        joint_fits=joint_fits(edition),
        others=other_words(edition),
        damp=damp_words(edition),
        formats=format_words(edition.formats),
        sheet_titles=sheet_titles(edition),
        titles={sheet.name: sheet.stock.title for sheet in edition.settled.sheets},
        coupons=coupon_tables(edition),
        layers=layers_explained(edition),
        steps=step_views(edition, lambda photo: inlined(photo, edition), drawn),
        tools=tools(edition),
        wholes=wholes_of(edition),
        the_set=set_of(edition),
        viewer=viewer,
        fitting=fitting,
        yard=yard,
        cautions=cautions_of(edition),
        opening=OPENING,
        licence=licence_note(edition),
        licence_rules=RULES,
        report=report_link(edition),
        contact=contact_href(edition.identity.contact),
        mail=mail_address(edition.identity.contact),
        latest=newest_address(edition),
    )


def _prints(edition: Edition, names: Collection[str]) -> dict[str, tuple[tuple[str, str], ...]]:
    """Return title of paper and file of what is printed, the workshop's own paper first."""
    papers = sorted(PAPERS, key=lambda each: each != edition.identity.paper)
    label = edition.settled.variant.label
    kinds: dict[str, Callable[[str], str]] = {
        "booklet": booklet_name,
        "setup": partial(setup_name, label),
        "layout": partial(layout_name, label),
        "saw": saw_name,
    }
    return {
        what: tuple((PAPERS[each], file) for each in papers if (file := name(each)) in names)
        for what, name in kinds.items()
    }
