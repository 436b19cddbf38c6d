"""The two pages of a plan: all about it, and its steps for the workshop."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from markupsafe import Markup

from kerfolio.basis.saying import say
from kerfolio.chapters.opening import opening
from kerfolio.chapters.order import PAGE, chapters_of
from kerfolio.chapters.steps import steps
from kerfolio.document.blocks import Step
from kerfolio.document.chapter import Chapter, kept
from kerfolio.edition.edition import Edition
from kerfolio.edition.measuring import measuring_of
from kerfolio.edition.names import PAPERS, booklet_name
from kerfolio.model.circle import Circle
from kerfolio.model.plan import Photo
from kerfolio.pages.document import Setting
from kerfolio.pages.fitting import Fitting, fitting_of
from kerfolio.pages.frame import Frame, with_script
from kerfolio.pages.howto import howto_script, tools
from kerfolio.pages.links import contact_href, mail_address, report_href
from kerfolio.pages.page_script import PAGE_SCRIPT, page_script
from kerfolio.pages.paths import paths_of
from kerfolio.pages.photos import ShownPhoto, shown
from kerfolio.pages.plan_frame import plan_frame
from kerfolio.pages.policy import FETCHING_POLICY
from kerfolio.pages.setup import has_setup
from kerfolio.pages.site import Download, Site
from kerfolio.pages.theme import render
from kerfolio.pages.unsealing import unsealing_of
from kerfolio.pages.viewer import Viewer, viewer_of
from kerfolio.pages.yard import has_yard

_LETTER = ("plan", "release", "part", "thickness", "wrong")
"""What the letter that reports a problem asks for, line by line."""


def plan_page(site: Site, edition: Edition) -> str:
    """Return ``plans/NAME/index.html``: everything a reader wants to know, in order of need."""
    plan, path = edition.plan, f"plans/{edition.name}/"
    files = site.files[edition.name]
    chapters = chapters_of(edition, PAGE)
    page = _setting(site, edition, chapters, "../../")
    frame = _frame(site, edition, path, plan.title, plan.summary)
    fitting = _fitting(site, edition)
    unsealing = unsealing_of(edition, files.download)
    if fitting is not None or unsealing is not None:
        frame = replace(frame, policy=FETCHING_POLICY)
    return render(
        "plan.html",
        edition.reader,
        **_common(edition),
        frame=frame,
        page=page,
        opening=opening(edition),
        paths=paths_of(chapters, edition.reader),
        download=files.download,
        booklets=_booklets(edition, files.lone),
        sheets=_cut_files(files.lone),
        setup=has_setup(site, edition),
        yard=has_yard(edition),
        fitting=fitting,
        unsealing=unsealing,
        circles=_circles(edition),
        measuring=measuring_of(edition),
        viewer=_viewer(site, edition),
        howto=howto_script(site, edition, frame.image),
    )


def steps_page(site: Site, edition: Edition) -> str:
    """Return ``plans/NAME/steps/index.html``: one big step after another."""
    path = f"plans/{edition.name}/steps/"
    plan, reader = edition.plan, edition.reader
    title = say(reader, "pagesteps-head", plan=plan.title)
    words = say(reader, "pagesteps-about", plan=plan.title, release=plan.version)
    chapters = kept([steps(edition)])
    found = [block for each in chapters for block in each.blocks if isinstance(block, Step)]
    return render(
        "steps.html",
        edition.reader,
        **_common(edition),
        frame=_frame(site, edition, path, title, words),
        page=_setting(site, edition, chapters, "../../../"),
        steps=found,
        tools=tools(edition),
    )


def _frame(site: Site, edition: Edition, path: str, title: str, words: str) -> Frame:
    frame = plan_frame(site, edition, path, title, words)
    return with_script(frame, PAGE_SCRIPT, page_script(edition.reader))


def report_link(edition: Edition) -> str:
    """Return the link that reports a problem; the letter names plan and release by itself."""
    plan = edition.plan
    told = {"plan": plan.title, "release": plan.version}
    subject = say(edition.reader, "pageplan-letter", **told)
    lines = (f"pageplan-letter-{each}" for each in _LETTER)
    body = "".join(f"{say(edition.reader, each, **told)}\n" for each in lines)
    return report_href(edition.identity.contact, subject, body)


def _setting(site: Site, edition: Edition, chapters: tuple[Chapter, ...], root: str) -> Setting:
    """Return what a page of the plan has for its chapters; ``root`` leads to the site's."""
    files = site.files[edition.name]

    def show(photo: Photo | None) -> ShownPhoto | None:
        """Find a photo of the plan, else one of the log."""
        own = photo in edition.plan.pictured
        return shown(photo, files.photos if own else site.log_photos, root)

    return Setting(
        chapters=chapters,
        # The markup comes from our own SVG writer, which escapes every word of the maker's.
        pictures={name: Markup(text) for name, text in files.pictures.items()},
        show=show,
        unit=edition.reader.unit,
        language=edition.reader.language,
        files={name: each.href for name, each in files.lone.items()},
        steps="steps/index.html",
    )


def _common(edition: Edition) -> dict[str, Any]:
    """Return what both pages need."""
    contact = edition.identity.contact
    return {
        "plan": edition.plan,
        "identity": edition.identity,
        "report": report_link(edition),
        "contact": contact_href(contact),
        "mail": mail_address(contact),
    }


def _booklets(edition: Edition, lone: Mapping[str, Download]) -> list[tuple[str, Download]]:
    """Return the booklets that stand alone with their papers, the workshop's own first."""
    papers = sorted(PAPERS, key=lambda each: each != edition.identity.paper)
    named = ((PAPERS[each], lone.get(booklet_name(each))) for each in papers)
    return [(paper, found) for paper, found in named if found is not None]


def _cut_files(lone: Mapping[str, Download]) -> list[tuple[str, Download]]:
    """Return the files of sheets and templates that stand alone, by their names in the bundle."""
    return [(name, each) for name, each in lone.items() if "/" in name]


def _viewer(site: Site, edition: Edition) -> Viewer | None:
    """Return the plan in 3-D where the site has its model: it carries the exact geometry."""
    data = site.files[edition.name].model
    return viewer_of(edition.plan.title, data, edition.reader) if data else None


def _circles(edition: Edition) -> tuple[Circle, ...]:
    """Return the circles that get the plan: the one it names, else all."""
    circles, own = edition.identity.circles, edition.plan.circle
    return tuple(each for each in circles if own is None or each.name == own.name)


def _fitting(site: Site, edition: Edition) -> Fitting | None:
    """Return the fitting page where everybody may have the files."""
    files = site.files[edition.name]
    if not edition.plan.is_open:
        return None
    return fitting_of(edition, files.fitted, files.rescue, inline=False)
