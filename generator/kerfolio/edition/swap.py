"""What another material changes: the plan as published beside the same plan cut from that.

Worded here once for page, booklet and terminal.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from kerfolio.assembly.bores import screwed, screwed_edges
from kerfolio.basis.figures import money_text
from kerfolio.basis.finding import Finding, Severity
from kerfolio.basis.lengths import both, sag_pair
from kerfolio.basis.masses import GRAVITY, load_pair, mass_text
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.basis.said import Message, Text, Words, told
from kerfolio.basis.saying import listed, say
from kerfolio.basis.sheet_size import sheet_text
from kerfolio.basis.thickness import sold_range_text, sold_text
from kerfolio.layouts.count import sheets_by_size
from kerfolio.layouts.layout import Layout
from kerfolio.settling.settled import SettledPlan, SettledSheet
from kerfolio.settling.titles import part_title, plainly, sheet_title, within
from kerfolio.shop.edge import edge_words
from kerfolio.shop.lists import sheet_list
from kerfolio.shop.mass import weight_of
from kerfolio.shop.rows import SheetRow
from kerfolio.shop.screw import allowable_hold
from kerfolio.shop.span import SagResult, SpanResult, Unreckoned, span_results, span_title
from kerfolio.shop.swelling import swelling_words

_CARRIES = ("span-overloaded", "span-lifts")


@dataclass(frozen=True, slots=True, kw_only=True)
class Cut:
    """A plan to be compared: settled at a point, and the layout that it has there, if any."""

    settled: SettledPlan
    layout: Layout | None


@dataclass(frozen=True, slots=True, kw_only=True)
class SwapRow:
    """One matter in words, before and after."""

    what: str
    before: str
    after: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SwapTable:
    """A material in place of a plan's own: ``before`` and ``after`` name them.

    ``refused`` says what no longer holds, ``remarks`` what is to be minded that was not before;
    ``verdict`` is a sentence. ``reason`` is what is refused first, as a maker is told it.
    """

    before: str
    after: str
    rows: tuple[SwapRow, ...]
    verdict: str
    refused: tuple[str, ...] = ()
    remarks: tuple[str, ...] = ()
    reason: str = ""


def swap_remark(reader: Reader) -> str:
    """Return what stands beside every table: what it is reckoned for."""
    return say(reader, "swap-remark")


def swap_table(
    before: Cut,
    after: Cut | None,
    coming: Sequence[tuple[str, str]],
    fresh: Sequence[Finding],
    units: tuple[Reader, str],
) -> SwapTable:
    """Return the table of a swap.

    ``coming`` are pairs of sheet and the new stock's title, ``fresh`` what is remarked on now and
    was not before, ``units`` the unit shown first and the currency. ``after`` is None where the
    plan does not settle with it.
    """
    names, (reader, _) = [name for name, _ in coming], units
    one = dict(_told(before, names, units))
    other = {} if after is None else dict(_told(after, names, units))
    wrong = [each for each in fresh if _refuses(each)]
    refused = tuple(_in_words(each, before.settled, reader) for each in wrong)
    minded = (each for each in fresh if each.severity is Severity.WARNING and not _refuses(each))
    remarks = tuple(_in_words(each, before.settled, reader) for each in minded)
    return SwapTable(
        before=listed(reader, [before.settled.sheet(name).stock.title for name in names]),
        after=listed(reader, [title for _, title in coming]),
        rows=tuple(
            SwapRow(what=what, before=one.get(what, "–"), after=other.get(what, "–"))
            for what in dict.fromkeys((*one, *other))
        ),
        verdict=_verdict(len(refused), len(remarks), reader),
        refused=refused,
        remarks=remarks,
        reason=_in_words(wrong[0], before.settled, METRIC) if wrong else "",
    )


def _in_words(finding: Finding, settled: SettledPlan, reader: Reader) -> str:
    """Return what was found for readers, who know no names; what is said in English alone says so.

    Lengths are in the plan's own unit, as the finding has them.
    """
    message = told(finding.words, replace(reader, unit=settled.plan.units))
    titles = {each.name: each.title for each in settled.stock.hardware}
    titles |= {each.name: within(span_title(each.name), reader) for each in settled.plan.spans}
    for name, title in titles.items():
        message = message.replace(f"`{name}`", title)
    plain = plainly(message, settled.plan, reader)
    return plain if _is_phrase(finding.words) else say(reader, "swap-in-english", message=plain)


def _is_phrase(text: Text) -> bool:
    """Tell whether a text stands in the catalogue as a whole."""
    return isinstance(text, Words) and all(isinstance(each, Message) for each in text.parts)


def _refuses(finding: Finding) -> bool:
    """Tell whether a finding is an error, or that less is carried than is asked."""
    return finding.severity is Severity.ERROR or finding.rule in _CARRIES


def _verdict(refused: int, remarks: int, reader: Reader) -> str:
    if refused:
        return say(reader, "swap-refused", count=refused)
    return say(reader, "swap-minded" if remarks else "swap-holds", count=remarks)


def _told(cut: Cut, names: Sequence[str], units: tuple[Reader, str]) -> Iterator[tuple[str, str]]:
    """Yield each matter and its words; those of a sheet for the sheets ``names``."""
    settled, (reader, currency) = cut.settled, units
    sheets = [settled.sheet(name) for name in names]
    several = len(sheets) > 1

    def of(what: str, sheet: SettledSheet) -> str:
        if not several:
            return what
        return say(reader, "swap-of-sheet", what=what, sheet=sheet_title(settled, sheet.name))

    for sheet in sheets:
        yield of(say(reader, "swap-thickness"), sheet), _thickness(sheet, reader)
    yield say(reader, "swap-weight"), mass_text(weight_of(settled).total, reader)
    rows = _rows(cut, names)
    yield say(reader, "swap-sheets"), _counts(rows, reader)
    yield say(reader, "swap-price"), _price(rows, currency, reader)
    for each in span_results(settled):
        yield span_title(each.name), _span(each, reader)
    yield from _screws(settled, names, reader)
    for sheet in sheets:
        edges = edge_words(sheet.stock, reader) or say(reader, "swap-unknown")
        yield of(say(reader, "swap-edges"), sheet), edges
        damp = swelling_words(settled, sheet, reader)
        yield of(say(reader, "swap-damp"), sheet), damp or say(reader, "swap-no-figure")


def _thickness(sheet: SettledSheet, reader: Reader) -> str:
    least, most = sheet.published
    drawn = sold_text(sheet.thickness, reader)
    if least == most:
        return drawn
    return say(reader, "swap-range", drawn=drawn, range=sold_range_text(least, most, reader))


def _rows(cut: Cut, names: Sequence[str]) -> tuple[SheetRow, ...]:
    counts = {} if cut.layout is None else sheets_by_size(cut.layout)
    return tuple(row for row in sheet_list(cut.settled, counts) if row.sheet in names)


def _counts(rows: Sequence[SheetRow], reader: Reader) -> str:
    found = (f"{row.count} × {sheet_text((row.width, row.height), reader)}" for row in rows)
    return "; ".join(found) or say(reader, "swap-unknown")


def _price(rows: Sequence[SheetRow], currency: str, reader: Reader) -> str:
    prices = [(row.price, row.count) for row in rows]
    total = sum((price * count for price, count in prices if price is not None))
    known = bool(prices) and all(price is not None for price, _ in prices)
    if not known or not total:
        return say(reader, "swap-unknown")
    return money_text(total, currency, reader)


def _span(result: SpanResult, reader: Reader) -> str:
    if isinstance(result, Unreckoned):
        return say(reader, "swap-unreckoned", why=told(result.why, reader))
    bears = both(load_pair(result.greatest_load, reader))
    asked = load_pair(result.load, reader)[0]
    if not isinstance(result, SagResult):
        return say(reader, "swap-bears", bears=bears, asked=asked)
    sag, limit = both(sag_pair(result.sags[0].final, reader)), sag_pair(result.limit, reader)[0]
    return say(reader, "swap-sags", sag=sag, limit=limit, bears=bears, asked=asked)


def _screws(
    settled: SettledPlan, names: Sequence[str], reader: Reader
) -> Iterator[tuple[str, str]]:
    """Yield how much pull each kind of screw is allowed in a part of the sheets ``names``."""
    faces = [(each.pilot.part, each.pilot.item, each.bite, False) for each in screwed(settled)]
    edges = [(each.part, each.bore.item, each.bite, True) for each in screwed_edges(settled)]
    holds: dict[str, float] = {}
    for part, item, bite, edge in (*faces, *edges):
        if part.sheet in names and item.thread:
            deep = max(0.0, bite) if edge else min(max(0.0, bite), part.thickness)
            stock = settled.sheet(part.sheet).stock
            title = within(part_title(settled.plan, part.name, reader), reader)
            pull = allowable_hold(stock, item.thread, deep, edge=edge)
            where = "edge" if edge else "face"
            what = say(reader, f"swap-pull-{where}", screw=item.title, part=title)
            holds[what] = min(holds.get(what, pull), pull)
    for what, newtons in holds.items():
        yield what, both(load_pair(newtons / GRAVITY, reader))
