"""The stock as a plain table: every figure with the file it was written in and its source."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from kerfolio.basis.finding import Finding, error, in_order
from kerfolio.basis.names import did_you_mean, nearest
from kerfolio.basis.place import Place
from kerfolio.reading.workshop import read_workshop
from kerfolio.shop.stock_list import KINDS, Figure, StockList, StockRow, stock_lists

_WIDEST = 36
"""Longer values push their line's file and source out of line instead of everybody's."""

_NO_SOURCE = "no source stated"


def stock_text(folder: Path, kind: str = "", name: str = "") -> tuple[str, tuple[Finding, ...]]:
    """Return what a workshop can reckon with, the shipped library under its own entries.

    ``kind`` and ``name`` narrow it down; nothing is left, with an error, when they are unknown.
    """
    if kind and kind not in KINDS:
        message, advice = f"no kind of stock `{kind}`", did_you_mean(kind, KINDS)
        return "", (error("unknown-kind", message, _place(folder), advice),)
    workshop, findings = read_workshop(folder, pictures=False)
    if workshop is None:
        return "", findings
    told = in_order(each for each in findings if each.place.file.startswith("stock/"))
    lists = stock_lists(workshop.stock, workshop.identity.reader, own=True)
    wanted = [each for each in lists if not kind or each.kind == kind]
    parts = [text for each in wanted if (text := _list_text(each, name))]
    if parts or not name:
        return "\n".join(parts), told
    known = [row.name for each in wanted for group in each.groups for row in group.rows]
    near = nearest(name, known)
    advice = f"Did you mean `{near}`?" if near else "Leave the name out to see them all."
    return "", (*told, error("unknown-name", f"no stock `{name}`", _place(folder), advice))


def _place(folder: Path) -> Place:
    return Place(folder.name or str(folder))


def _list_text(found: StockList, name: str) -> str:
    rows = [row for group in found.groups for row in group.rows if not name or row.name == name]
    head = [found.title, "=" * len(found.title), ""] if rows else []
    return "\n".join((*head, *(line for row in rows for line in _lines(row))))


def _lines(row: StockRow) -> Iterator[str]:
    yield f"{row.name}  {row.title}"
    values = {each.label: _value(each) for each in row.figures}
    label = max(map(len, values), default=0)
    value = max((len(each) for each in values.values() if len(each) <= _WIDEST), default=0)
    place = max((len(str(each.place)) for each in row.figures), default=0)
    for each in row.figures:
        said = values[each.label]
        source = each.source or _NO_SOURCE
        yield f"  {each.label:<{label}}  {said:<{value}}  {each.place!s:<{place}}  {source}"
    yield ""


def _value(figure: Figure) -> str:
    one, *others = figure.lines
    gap = "" if figure.unit in ("", "°") else " "
    text = f"{one}{gap}{figure.unit}"
    notes = [*others, *([figure.kind] if figure.kind else [])]
    return f"{text} ({', '.join(notes)})" if notes else text
