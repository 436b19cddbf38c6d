"""The report of proving: one page of one file, for the maker's own disk."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from markupsafe import Markup

from kerfolio.basis.finding import Finding, Severity
from kerfolio.basis.reader import Reader
from kerfolio.basis.said import told
from kerfolio.basis.words import counted, listed
from kerfolio.model.workshop import Identity
from kerfolio.pages.frame import lone_frame
from kerfolio.pages.theme import render

_HEADS = {
    Severity.ERROR: "Stops a publish",
    Severity.WARNING: "Worth a look before cutting",
    Severity.NOTE: "Good to know",
}
_HUSHED = "Not to be heard, as the plan says"


@dataclass(frozen=True, slots=True, kw_only=True)
class Remark:
    """A finding with what it rests on, and inline SVG of its place (empty for none).

    ``href`` leads to its place in the maker's file, empty where nothing does; ``is_new`` tells that
    it was not there before the last save.
    """

    finding: Finding
    reason: str
    source: str
    picture: str = ""
    href: str = ""
    is_new: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanRemarks:
    """A plan's remarks in the order of its files; ``name`` is empty for the workshop itself.

    ``pictures`` are the whole and every part, each under its name, where nothing is to be heard.
    """

    title: str
    name: str
    remarks: tuple[Remark, ...]
    pictures: tuple[tuple[str, str], ...] = ()


Spans = tuple[tuple[str, bool], ...]
"""A text in runs; what stood between back quotes is marked as a word of the maker's files."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Line:
    """A remark as it is shown."""

    weight: str
    level: str
    message: Spans
    advice: Spans
    silenced: str
    reason: Spans
    source: str
    place: str
    rule: str
    picture: Markup
    caption: str
    href: str
    is_new: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """Remarks of one weight under their heading."""

    head: str
    lines: tuple[_Line, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Section:
    id: str
    title: str
    words: str
    groups: tuple[Group, ...]
    pictures: tuple[tuple[str, Markup], ...]


def report_page(identity: Identity, plans: tuple[PlanRemarks, ...]) -> str:
    """Return the page: its style and pictures lie inside it, it has no script and no links out."""
    every = [remark for plan in plans for remark in plan.remarks]
    title, about = f"What proving found · {identity.title}", "All findings, for the maker alone."
    return render(
        "report.html",
        identity.reader,
        frame=lone_frame(identity, title, about, private=True),
        words=counts(every),
        sections=tuple(_section(plan) for plan in plans),
    )


def _section(plan: PlanRemarks) -> _Section:
    return _Section(
        id=f"plan-{plan.name}" if plan.name else "workshop",
        title=plan.title,
        words=counts(plan.remarks),
        groups=tuple(groups(plan.remarks)),
        pictures=tuple((name, Markup(svg)) for name, svg in plan.pictures),
    )


def groups(remarks: tuple[Remark, ...], head: str = "") -> Iterator[Group]:
    """Yield the remarks by how much they weigh, the silenced ones last; none is left out.

    All of them under one ``head`` where there is one.
    """
    if head:
        yield from [Group(head=head, lines=tuple(map(_line, remarks)))] if remarks else ()
        return
    for severity, head in _HEADS.items():
        told = [r for r in remarks if r.finding.severity is severity and not r.finding.silenced]
        if told:
            yield Group(head=head, lines=tuple(map(_line, told)))
    hushed = tuple(_line(each) for each in remarks if each.finding.silenced)
    if hushed:
        yield Group(head=_HUSHED, lines=hushed)


def _line(remark: Remark) -> _Line:
    finding, shown = remark.finding, _shown(remark.finding)
    at = f", at {told(finding.mark.at, Reader(unit=finding.unit))}" if finding.mark else ""
    return _Line(
        weight=str(finding.severity).capitalize(),
        level="silenced" if finding.silenced else str(finding.severity),
        message=spans(finding.message),
        advice=spans(finding.advice),
        silenced=finding.silenced,
        reason=spans(remark.reason),
        source=remark.source,
        place=str(finding.place),
        rule=finding.rule,
        # The markup comes from our own SVG writer, which escapes every word of the maker's.
        picture=Markup(remark.picture),
        caption=f"{shown}{at}" if shown else "",
        href=remark.href,
        is_new=remark.is_new,
    )


def _shown(finding: Finding) -> str:
    """Return what the picture of a finding shows: pieces that meet, or the part it is on."""
    if finding.meeting:
        return listed(finding.meeting.pieces)
    return finding.mark.part if finding.mark else ""


def spans(text: str) -> Spans:
    """Return a text in runs; what stands between back quotes is marked."""
    return tuple((run, number % 2 == 1) for number, run in enumerate(text.split("`")) if run)


def counts(remarks: Iterable[Remark]) -> str:
    """Return ``1 error and 2 notes``, silenced remarks counted apart."""
    found = [each.finding for each in remarks]
    count = Counter(str(each.severity) for each in found if not each.silenced)
    words = [counted(count[str(each)], str(each)) for each in Severity if count[str(each)]]
    hushed = sum(1 for each in found if each.silenced)
    if hushed:
        words.append(f"{hushed} silenced")
    return listed(words) or "Nothing to remark"
