"""What another material changes: the plan as published beside the same plan cut from that.

Worded here once for page, booklet and terminal.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from kerfolio.assembly.bores import screwed, screwed_edges
from kerfolio.basis.figures import money_text
from kerfolio.basis.finding import Finding, Severity
from kerfolio.basis.lengths import both, sag_pair
from kerfolio.basis.masses import GRAVITY, load_pair, mass_text
from kerfolio.basis.reader import Reader
from kerfolio.basis.sheet_size import sheet_text
from kerfolio.basis.thickness import sold_range_text, sold_text
from kerfolio.basis.words import counted
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

UNKNOWN = "not known"
REMARK = (
    "Reckoned for what each sheet measures on average, its joints proved for all that it is sold "
    "at. Estimates, no ratings; cut settings are those of the plan’s own material."
)
_CARRIES = ("span-overloaded", "span-lifts")
_HOLDS = "It goes together, and nothing is remarked on that was not before."


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
    ``verdict`` is a sentence.
    """

    before: str
    after: str
    rows: tuple[SwapRow, ...]
    verdict: str
    refused: tuple[str, ...] = ()
    remarks: tuple[str, ...] = ()


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
    names = [name for name, _ in coming]
    one = dict(_told(before, names, units))
    other = {} if after is None else dict(_told(after, names, units))
    plan = before.settled.plan
    refused = tuple(plainly(str(each.message), plan) for each in fresh if _refuses(each))
    minded = (each for each in fresh if each.severity is Severity.WARNING and not _refuses(each))
    remarks = tuple(plainly(str(each.message), plan) for each in minded)
    return SwapTable(
        before=" and ".join(before.settled.sheet(name).stock.title for name in names),
        after=" and ".join(title for _, title in coming),
        rows=tuple(
            SwapRow(what=what, before=one.get(what, "–"), after=other.get(what, "–"))
            for what in dict.fromkeys((*one, *other))
        ),
        verdict=_verdict(len(refused), len(remarks)),
        refused=refused,
        remarks=remarks,
    )


def _refuses(finding: Finding) -> bool:
    """Tell whether a finding is an error, or that less is carried than is asked."""
    return finding.severity is Severity.ERROR or finding.rule in _CARRIES


def _verdict(refused: int, remarks: int) -> str:
    if refused:
        return f"Refused: {counted(refused, 'thing no longer holds', 'things no longer hold')}."
    return f"It goes together; {counted(remarks, 'thing')} to mind." if remarks else _HOLDS


def _told(cut: Cut, names: Sequence[str], units: tuple[Reader, str]) -> Iterator[tuple[str, str]]:
    """Yield each matter and its words; those of a sheet for the sheets ``names``."""
    settled, (reader, currency) = cut.settled, units
    sheets = [settled.sheet(name) for name in names]
    several = len(sheets) > 1

    def of(what: str, sheet: SettledSheet) -> str:
        return f"{what}, {sheet_title(settled, sheet.name)}" if several else what

    for sheet in sheets:
        yield of("Thickness", sheet), _thickness(sheet, reader)
    yield "Weight", mass_text(weight_of(settled).total, reader)
    rows = _rows(cut, names)
    yield "Sheets", _counts(rows, reader)
    yield "Price of the sheets", _price(rows, currency)
    for each in span_results(settled):
        yield span_title(each.name), _span(each, reader)
    yield from _screws(settled, names, reader)
    for sheet in sheets:
        yield of("Cut edges", sheet), edge_words(sheet.stock) or UNKNOWN
        damp = swelling_words(settled, sheet, reader)
        yield of("Damp", sheet), damp or "no figure in the stock"


def _thickness(sheet: SettledSheet, reader: Reader) -> str:
    least, most = sheet.published
    drawn = sold_text(sheet.thickness, reader)
    return drawn if least == most else f"{drawn}, for {sold_range_text(least, most, reader)}"


def _rows(cut: Cut, names: Sequence[str]) -> tuple[SheetRow, ...]:
    counts = {} if cut.layout is None else sheets_by_size(cut.layout)
    return tuple(row for row in sheet_list(cut.settled, counts) if row.sheet in names)


def _counts(rows: Sequence[SheetRow], reader: Reader) -> str:
    found = (f"{row.count} × {sheet_text((row.width, row.height), reader)}" for row in rows)
    return "; ".join(found) or UNKNOWN


def _price(rows: Sequence[SheetRow], currency: str) -> str:
    prices = [(row.price, row.count) for row in rows]
    total = sum((price * count for price, count in prices if price is not None))
    known = bool(prices) and all(price is not None for price, _ in prices)
    return money_text(total, currency) if known and total else UNKNOWN


def _span(result: SpanResult, reader: Reader) -> str:
    if isinstance(result, Unreckoned):
        return f"{UNKNOWN}: {result.why}"
    bears = f"bears {both(load_pair(result.greatest_load, reader))}"
    asked = f"asked {load_pair(result.load, reader)[0]}"
    if not isinstance(result, SagResult):
        return f"{bears}, {asked}"
    sag, limit = both(sag_pair(result.sags[0].final, reader)), sag_pair(result.limit, reader)[0]
    return f"sags {sag}, limit {limit}; {bears}, {asked}"


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
            title = within(part_title(settled.plan, part.name))
            pull = allowable_hold(stock, item.thread, deep, edge=edge)
            what = f"{item.title}, pull in {'an edge' if edge else 'the face'} of the {title}"
            holds[what] = min(holds.get(what, pull), pull)
    for what, newtons in holds.items():
        yield what, both(load_pair(newtons / GRAVITY, reader))
