"""Plans in lists: all of them, to be found by what they are, and as home shows the newest."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date

from markupsafe import Markup

from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.pages.frame import site_frame, with_script
from kerfolio.pages.listed import listed, site_image
from kerfolio.pages.photos import ShownPhoto, shown
from kerfolio.pages.script_words import told_script
from kerfolio.pages.site import Listed, Site
from kerfolio.pages.theme import render

PLANS_SCRIPT = "assets/plans.js"
"""Where the site keeps the script that finds plans."""

_FEW = 3
"""So many plans are seen at a glance: nothing is needed to find one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanEntry:
    """A plan in a list: ``picture`` is inline SVG where there is no photo, or empty.

    ``line`` says what it takes, ``filed`` what it is found by; ``found_by`` has what it answers to
    by the name of each way of looking.
    """

    title: str
    summary: str
    href: str
    version: str
    day: date
    line: str
    filed: str
    open: bool
    cover: ShownPhoto | None
    picture: Markup
    found_by: dict[str, tuple[str, ...]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Way:
    """A way of looking for plans, and what there is to choose."""

    name: str
    label: str
    choices: tuple[str, ...]


def plans_index(site: Site) -> str:
    """Return ``plans/index.html``."""
    reader = site.identity.reader
    words = say(reader, "pagehome-all", house=site.identity.title)
    frame = site_frame(site, "plans/", say(reader, "pagehome-plans"), words, site_image(site))
    entries = entries_of(listed(site), "../", reader)
    ways = _ways(entries, reader) if len(entries) > _FEW else ()
    if ways:
        frame = with_script(frame, PLANS_SCRIPT, plans_script(reader))
    return render("plans.html", reader, frame=frame, entries=entries, ways=ways)


def plans_script(reader: Reader) -> Markup:
    """Return the script; without it the page shows all plans."""
    return told_script(reader, ("plans.js",), ("planscript",))


def entries_of(plans: Iterable[Listed], root: str, reader: Reader) -> list[PlanEntry]:
    """Return plans for a list on a page from which ``root`` leads to the site's."""
    return [_entry(each, root, reader) for each in plans]


def _entry(plan: Listed, root: str, reader: Reader) -> PlanEntry:
    files = {plan.cover.file: plan.cover_files} if plan.cover else {}
    access = say(reader, "pageplans-open" if plan.is_open else "pageplans-closed")
    found_by = {
        "category": (plan.category,) if plan.category else (),
        "tag": plan.tags,
        "level": (plan.level,) if plan.level else (),
        "access": (access,),
    }
    filed = (plan.category, plan.level, *plan.tags)
    return PlanEntry(
        title=plan.title,
        summary=plan.summary,
        href=f"{root}plans/{plan.name}/index.html",
        version=plan.version,
        day=plan.released,
        line=plan.line,
        filed=" · ".join(filter(None, filed)),
        open=plan.is_open,
        cover=shown(plan.cover, files, root),
        picture=Markup(plan.picture),
        found_by=found_by,
    )


def _ways(entries: Sequence[PlanEntry], reader: Reader) -> tuple[Way, ...]:
    """Return the ways that part the plans, each with its choices in the order of letters."""
    found = (_way(entries, name, reader) for name in entries[0].found_by)
    return tuple(each for each in found if len(each.choices) > 1)


def _way(entries: Sequence[PlanEntry], name: str, reader: Reader) -> Way:
    choices = {each for entry in entries for each in entry.found_by[name]}
    ordered = sorted(choices, key=lambda each: (each.lower(), each))
    return Way(name=name, label=say(reader, f"pageplans-{name}"), choices=tuple(ordered))
