"""The maker's page: plan by plan what was found, the whole, and each part with its names."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from kerfolio.basis.finding import Finding, Severity
from kerfolio.basis.names import set_name
from kerfolio.basis.reader import Reader
from kerfolio.basis.words import counted
from kerfolio.model.workshop import Identity
from kerfolio.pages.badge import held_badge
from kerfolio.pages.frame import Entry, Frame
from kerfolio.pages.look import theme_colours
from kerfolio.pages.policy import WATCHING_POLICY
from kerfolio.pages.report import Group, Remark, counts, groups
from kerfolio.pages.theme import render, stylesheet, theme_text
from kerfolio.proving.grounds import grounds_of
from kerfolio.settling.settled import SettledPart
from kerfolio.watching.changes import PartChange, new_findings
from kerfolio.watching.excerpt import Line
from kerfolio.watching.places import href_of
from kerfolio.watching.seen import PlanSeen, Seen

STYLE, SCRIPT = "watch.css", "watch.js"

MAKER = Reader()
"""What is for makers alone is worded in English, each plan's findings in its own unit."""
_WAITING = "As it was before this save, being proved again"
_WORDS = {"new": "New since the last save", "changed": "Changed by the last save", "": ""}


@dataclass(frozen=True, slots=True, kw_only=True)
class _Named:
    """A feature, or a set of them: its name, the link to its lines, whether it has changed."""

    name: str
    href: str
    is_new: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class _Part:
    id: str
    name: str
    href: str
    state: str
    svg: str
    features: tuple[_Named, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Section:
    """A plan, or what concerns the workshop as a whole (without an own name)."""

    id: str
    title: str
    href: str
    level: str
    words: str
    notes: tuple[str, ...]
    groups: tuple[Group, ...]
    whole: str = ""
    parts: tuple[_Part, ...] = ()
    left_out: tuple[str, ...] = ()


def maker_page(seen: Seen) -> str:
    """Return the page of a workshop as HTML; it follows what is saved by its script."""
    return render(
        "watch.html",
        MAKER,
        frame=_frame(seen.identity, "What you write", "/"),
        seen=seen,
        sections=tuple(_sections(seen)),
    )


def readers_page(seen: Seen) -> str:
    """Return the page that holds the readers' pages, unchanged, in a frame."""
    frame = _frame(seen.identity, "What readers see", "/readers")
    return render("watch-readers.html", MAKER, frame=frame, seen=seen)


def lines_page(seen: Seen, key: str, lines: tuple[Line, ...], *, editor: bool) -> str:
    """Return the page of the lines at a place, ``key``, with a button where there is an editor."""
    frame = _frame(seen.identity, "Lines", "/lines")
    return render("watch-lines.html", MAKER, frame=frame, key=key, lines=lines, editor=editor)


def style_of(identity: Identity) -> str:
    """Return the style sheet of these pages: the site's own, and what they need besides."""
    return stylesheet(identity.look) + theme_text(STYLE)


def script() -> str:
    """Return the script of these pages."""
    return theme_text(SCRIPT)


def _frame(identity: Identity, title: str, here: str) -> Frame:
    menu = (("What you write", "/"), ("What readers see", "/readers"))
    return Frame(
        reader=MAKER,
        title=f"{title} · {identity.title}",
        description="A workshop while it is written, for its maker alone.",
        grounds=theme_colours(identity.look),
        badge=held_badge(identity),
        root="/",
        house=identity.title,
        home="/",
        menu=tuple(Entry(label=label, href=href, here=href == here) for label, href in menu),
        stylesheet=f"/{STYLE}",
        policy=WATCHING_POLICY,
        maker=identity.maker,
        private=True,
        script_file=f"/{SCRIPT}",
    )


def _sections(seen: Seen) -> Iterator[_Section]:
    if seen.findings:
        yield _Section(
            id="workshop",
            title="The workshop",
            href="",
            level=_level(seen.findings),
            words=counts(_remarks(seen.findings)),
            notes=(),
            groups=tuple(groups(tuple(_remarks(seen.findings)))),
        )
    yield from map(_plan, seen.plans)


def _plan(plan: PlanSeen) -> _Section:
    new = frozenset() if plan.before is None else new_findings(plan.before, plan.findings)
    remarks = tuple(_remarks(plan.findings, plan, new))
    waiting = () if plan.is_old else tuple(_remarks(plan.waiting, plan))
    settled = plan.settled
    shown = settled.parts if settled else ()
    stated = plan.sight.plan if plan.sight else None
    names = [*(part.name for part in stated.parts), *stated.unread] if stated else []
    drawn = {part.name for part in shown}
    return _Section(
        id=plan.name,
        title=plan.title or plan.name,
        href=href_of(stated.place) if stated else "",
        level=_level(plan.findings),
        words=counts(remarks) if remarks or plan.is_proven else "Being proved",
        notes=tuple(_notes(plan, new)),
        groups=(*groups(remarks), *groups(waiting, _WAITING)),
        whole=plan.whole,
        parts=tuple(_part(plan, each) for each in shown),
        left_out=tuple(each for each in names if each not in drawn and "." not in each),
    )


def _notes(plan: PlanSeen, new: frozenset[Finding]) -> Iterator[str]:
    """Yield what is to be known of how a plan is shown."""
    if plan.is_old and plan.sight is not None:
        yield "Drawn as it was when it could last be read."
    gone = new_findings(plan.findings, plan.before or ())
    if plan.is_all and plan.before is not None and gone:
        yield f"{counted(len(gone), 'remark')} gone with the last save."
    if new:
        yield f"{counted(len(new), 'remark')} new with it."


def _part(plan: PlanSeen, part: SettledPart) -> _Part:
    change = plan.changes.get(part.name, PartChange())
    return _Part(
        id=f"{plan.name}-{part.name}",
        name=part.name,
        href=href_of(part.place),
        state=_WORDS[change.state],
        svg=plan.parts[part.name],
        features=tuple(_features(part, change)),
    )


def _features(part: SettledPart, change: PartChange) -> Iterator[_Named]:
    """Yield each set of features once, by its name."""
    changed = {set_name(each) for each in change.features}
    found = {set_name(each.name): each for each in reversed(part.features)}
    for name, first in reversed(found.items()):
        yield _Named(name=name, href=href_of(first.place), is_new=name in changed)


def _remarks(
    findings: tuple[Finding, ...],
    plan: PlanSeen | None = None,
    new: frozenset[Finding] = frozenset(),
) -> Iterator[Remark]:
    for finding in findings:
        grounds = grounds_of(finding.rule)
        yield Remark(
            finding=finding,
            reason=grounds.reason,
            source=grounds.source,
            picture=plan.pictures.get(finding, "") if plan else "",
            href=href_of(finding.place),
            is_new=finding in new,
        )


def _level(findings: tuple[Finding, ...]) -> str:
    heard = {each.severity for each in findings if not each.silenced}
    return next((str(each) for each in Severity if each in heard), "")
