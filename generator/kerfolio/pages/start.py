"""``start-here.html``: the first page of a bundle, read from a disk without a network."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from urllib.parse import quote

from markupsafe import Markup

from kerfolio.basis.saying import say
from kerfolio.chapters.files import file_blocks
from kerfolio.chapters.opening import opening
from kerfolio.chapters.order import START, chapters_of
from kerfolio.edition.edition import Edition
from kerfolio.edition.measuring import measuring_of
from kerfolio.edition.names import PAPERS, booklet_name
from kerfolio.fitted.form import Fitted
from kerfolio.pages.document import Setting
from kerfolio.pages.fitting import fitting_of
from kerfolio.pages.frame import lone_frame, release_line
from kerfolio.pages.links import contact_href, mail_address
from kerfolio.pages.newest import newest_address
from kerfolio.pages.page_script import page_script
from kerfolio.pages.paths import paths_of
from kerfolio.pages.photos import inlined
from kerfolio.pages.plan import report_link
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
    names = frozenset(contents)
    title = say(edition.reader, "pagestart-title", plan=plan.title, release=plan.version)
    viewer = viewer_of(plan.title, model, edition.reader) if model else None
    fitting = fitting_of(edition, fitted, rescue)
    yard = yard_of(edition)
    own = page_script(edition.reader)
    scripts = [own, *(each.script for each in (viewer, fitting, yard) if each is not None)]
    frame = lone_frame(edition.identity, title, plan.summary, scripts=scripts)
    chapters = chapters_of(edition, START)
    page = Setting(
        chapters=chapters,
        # The markup comes from our own SVG writer, which escapes every word of the maker's.
        pictures={name: Markup(text) for name, text in pictures.items()},
        show=lambda photo: inlined(photo, edition),
        unit=edition.reader.unit,
        language=edition.reader.language,
        files={name: quote(name) for name in names},
        absolute=True,
    )
    return render(
        "start-here.html",
        edition.reader,
        frame=replace(frame, release=release_line(plan, edition.reader), script=own),
        plan=plan,
        identity=edition.identity,
        page=page,
        opening=opening(edition),
        paths=paths_of(chapters, edition.reader),
        booklets=_booklets(edition, names),
        files=file_blocks(edition, names),
        pictures=page.pictures,
        measuring=measuring_of(edition),
        viewer=viewer,
        fitting=fitting,
        yard=yard,
        report=report_link(edition),
        contact=contact_href(edition.identity.contact),
        mail=mail_address(edition.identity.contact),
        latest=newest_address(edition),
    )


def _booklets(edition: Edition, names: frozenset[str]) -> list[tuple[str, str]]:
    """Return paper and file of each booklet, the workshop's own paper first."""
    papers = sorted(PAPERS, key=lambda each: each != edition.identity.paper)
    return [(PAPERS[each], booklet_name(each)) for each in papers if booklet_name(each) in names]
