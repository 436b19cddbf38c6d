"""The two pages of a plan: all about it, and its steps for the workshop."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from markupsafe import Markup

from kerfolio.edition.cautions import OPENING, cautions_of
from kerfolio.edition.copies import copies_remark
from kerfolio.edition.cutting import cutting_of
from kerfolio.edition.damp_words import damp_words
from kerfolio.edition.edge_words import EDGE_MAP, edges_told
from kerfolio.edition.edition import Edition
from kerfolio.edition.format_words import format_words
from kerfolio.edition.in_use import used_of
from kerfolio.edition.joint_fits import joint_fits
from kerfolio.edition.licence_words import RULES
from kerfolio.edition.loads import loads_of
from kerfolio.edition.making import copies_called, set_of, wholes_of
from kerfolio.edition.measuring import measuring_of
from kerfolio.edition.other_sheets import other_words
from kerfolio.edition.sheet_count import counted_as
from kerfolio.edition.swap import REMARK as SWAP_REMARK
from kerfolio.layouts.layout import SheetLayout
from kerfolio.layouts.stacks import zones
from kerfolio.pages.answers import usual_answers
from kerfolio.pages.choosing import coupon_tables, folder_rows, sheet_titles
from kerfolio.pages.facts import facts
from kerfolio.pages.fitting import Fitting, fitting_of
from kerfolio.pages.frame import Frame, release_line, site_frame
from kerfolio.pages.howto import howto_script, tools
from kerfolio.pages.licences import licence_note
from kerfolio.pages.links import contact_href, mail_address, report_href, web_href
from kerfolio.pages.photos import cover_of, shown
from kerfolio.pages.policy import FETCHING_POLICY
from kerfolio.pages.releases import newest_first
from kerfolio.pages.setup import has_setup
from kerfolio.pages.site import Site
from kerfolio.pages.steps import marks_by_label, step_views
from kerfolio.pages.theme import render
from kerfolio.pages.trial_view import TrialView, trial_views
from kerfolio.pages.viewer import Viewer, viewer_of
from kerfolio.pages.yard import has_yard
from kerfolio.shop.lists import known_total

_REPORT = """\
Plan: {title}
Release: {version}
Part (its mark, such as A1):
Thickness of your sheet:
What is wrong:
"""


def plan_page(site: Site, edition: Edition) -> str:
    """Return ``plans/NAME/index.html``: everything a reader wants to know, in order of need."""
    plan, path = edition.plan, f"plans/{edition.name}/"
    files = site.files[edition.name]
    cover = shown(cover_of(plan.photos), files.photos, "../../")
    frame = _frame(site, edition, path, plan.title, plan.summary)
    fitting = _fitting(site, edition)
    if fitting is not None:
        frame = replace(frame, policy=FETCHING_POLICY)
    return render(
        "plan.html",
        **_common(site, edition),
        frame=frame,
        cover=cover,
        gallery=_gallery(site, edition),
        facts=facts(edition),
        download=files.download,
        coupons=coupon_tables(edition),
        folders=folder_rows(edition),
        fitting=fitting,
        measuring=measuring_of(edition),
        joint_fits=joint_fits(edition),
        others=other_words(edition),
        damp=damp_words(edition),
        formats=format_words(edition.formats),
        sheet_titles=sheet_titles(edition),
        titles={sheet.name: sheet.stock.title for sheet in edition.settled.sheets},
        layouts=_layouts(edition),
        setup=has_setup(site, edition),
        yard=has_yard(edition),
        sawn=any(f"saw-{each.number}" in files.pictures for each in edition.saw),
        cutting=cutting_of(edition),
        called=copies_called(edition.plan),
        copies_remark=copies_remark(edition),
        loads=loads_of(edition),
        edging=edges_told(edition),
        edge_map=EDGE_MAP if any(part.edges for part in edition.settled.parts) else "",
        used=used_of(edition),
        swap_remark=SWAP_REMARK,
        total=known_total(edition.costs),
        unpriced=sum(row.total is None for row in edition.costs),
        tools=tools(edition),
        wholes=wholes_of(edition),
        the_set=set_of(edition),
        counted_as=counted_as(edition),
        viewer=_viewer(site, edition),
        video=web_href(plan.video.url) if plan.video else "",
        answers=usual_answers(edition),
        trials=_trials(site, edition),
        releases=newest_first(plan.releases),
        howto=howto_script(site, edition, frame.image),
    )


def steps_page(site: Site, edition: Edition) -> str:
    """Return ``plans/NAME/steps/index.html``: one big step after another."""
    path = f"plans/{edition.name}/steps/"
    title = f"{edition.plan.title}, step by step"
    words = f"How to put together {edition.plan.title}, release {edition.plan.version}."
    frame = _frame(site, edition, path, title, words)
    context = _common(site, edition, depth="../../../")
    return render("steps.html", **context, frame=frame, tools=tools(edition))


def _frame(site: Site, edition: Edition, path: str, title: str, words: str) -> Frame:
    frame = site_frame(site, path, title, words, largest_cover(site, edition), "article")
    return replace(frame, release=release_line(edition.plan))


def largest_cover(site: Site, edition: Edition) -> str:
    """Return the path of the cover's largest file within the site, else of the preview."""
    photo, written = cover_of(edition.plan.photos), site.files[edition.name]
    files = written.photos.get(photo.file, ()) if photo else ()
    return max(files, key=lambda each: each.width).href if files else written.preview


def site_image(site: Site) -> str:
    """Return the path of a picture that stands for the site: the newest plan's that has one."""
    found = (largest_cover(site, each) for each in site.newest_first())
    return next(filter(None, found), site.touch_icon)


def report_link(edition: Edition) -> str:
    """Return the link that reports a problem; the letter names plan and release by itself."""
    plan = edition.plan
    subject = f"{plan.title} {plan.version}: a problem"
    body = _REPORT.format(title=plan.title, version=plan.version)
    return report_href(edition.identity.contact, subject, body)


def _common(site: Site, edition: Edition, depth: str = "../../") -> dict[str, Any]:
    """Return what both pages need; ``depth`` leads to the site's root."""
    files = site.files[edition.name]
    # The markup comes from our own SVG writer, which escapes every word of the maker's.
    pictures = {name: Markup(text) for name, text in files.pictures.items()}
    return {
        "edition": edition,
        "plan": edition.plan,
        "identity": edition.identity,
        "first": edition.first,
        "pictures": pictures,
        "steps": step_views(edition, lambda photo: shown(photo, files.photos, depth), pictures),
        "licence": licence_note(edition),
        "licence_rules": RULES,
        "opening": OPENING,
        "cautions": cautions_of(edition),
        "report": report_link(edition),
        "contact": contact_href(edition.identity.contact),
        "mail": mail_address(edition.identity.contact),
    }


def _viewer(site: Site, edition: Edition) -> Viewer | None:
    """Return the plan in 3-D where the site has its model: it carries the exact geometry."""
    data = site.files[edition.name].model
    return viewer_of(edition.plan.title, data) if data else None


def _fitting(site: Site, edition: Edition) -> Fitting | None:
    """Return the fitting page where everybody may have the files."""
    files = site.files[edition.name]
    if not edition.plan.is_open:
        return None
    return fitting_of(edition, files.fitted, files.rescue, inline=False)


def _trials(site: Site, edition: Edition) -> tuple[TrialView, ...]:
    stock = edition.settled.stock
    return trial_views(
        edition.trials, stock, edition.first, lambda each: shown(each, site.log_photos, "../../")
    )


def _gallery(site: Site, edition: Edition) -> list[Any]:
    photos = [each for each in edition.plan.photos if each is not cover_of(edition.plan.photos)]
    files = site.files[edition.name].photos
    found = (shown(photo, files, "../../") for photo in photos)
    return [photo for photo in found if photo is not None]


def _layouts(edition: Edition) -> list[dict[str, Any]]:
    marks = marks_by_label(edition)
    return [
        {
            "number": each.number,
            "sheet": each.sheet,
            "size": each.size,
            "clamped": bool(zones(edition.settled.sheet(each.sheet), each.size)),
            "marks": [mark for label, mark in marks.items() if label in _pieces(each)],
        }
        for each in edition.layout.sheets
    ]


def _pieces(sheet: SheetLayout) -> frozenset[str]:
    return frozenset(placed.piece for placed in sheet.placements)
