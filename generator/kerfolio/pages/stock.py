"""The page of the library: what the figures rest on, each table with its sources below it."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from string import ascii_lowercase

from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.pages.frame import site_frame, with_script
from kerfolio.pages.listed import site_image
from kerfolio.pages.page_script import PAGE_SCRIPT, page_script
from kerfolio.pages.site import Site
from kerfolio.pages.theme import render
from kerfolio.shop.stock_list import Figure, StockGroup, StockRow, stock_lists

_Key = tuple[str, str, str]
"""What a note says: kind of value, source, file."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Head:
    """The head of a column; ``mark`` leads to the note that all its cells share, or is empty."""

    label: str
    unit: str
    mark: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Cell:
    """A value in one or both units; without lines the library has none."""

    lines: tuple[str, ...] = ()
    mark: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """An item and its cells, one for each head; ``anchor`` is its place on the page."""

    anchor: str
    name: str
    title: str
    cells: tuple[Cell, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Note:
    """A source below a table: the columns it is of, what it says and the file it stands in."""

    mark: str
    columns: tuple[str, ...]
    source: str
    file: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """A group of items."""

    anchor: str
    title: str
    heads: tuple[Head, ...]
    rows: tuple[Row, ...]
    notes: tuple[Note, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Chapter:
    """A section of the stock."""

    anchor: str
    title: str
    tables: tuple[Table, ...]


def stock_page(site: Site) -> str:
    """Return ``stock/index.html``."""
    reader = site.identity.reader
    words = say(reader, "pagestock-about")
    frame = site_frame(site, "stock/", say(reader, "pagestock-title"), words, site_image(site))
    return render(
        "stock.html",
        reader,
        frame=with_script(frame, PAGE_SCRIPT, page_script(reader)),  # opens what links lead to
        chapters=chapters(site),
    )


def chapters(site: Site) -> tuple[Chapter, ...]:
    """Return the sections of the stock as tables with notes."""
    reader = site.identity.reader
    return tuple(
        Chapter(
            anchor=each.kind,
            title=each.title,
            tables=tuple(_table(each.kind, group, reader) for group in each.groups),
        )
        for each in stock_lists(site.stock, reader)
    )


def _table(kind: str, group: StockGroup, reader: Reader) -> Table:
    labels = _labels(group.rows)
    keys = _keys(group.rows, labels)
    marks = {key: _mark(number) for number, key in enumerate(keys)}
    shared = {label: _shared(group.rows, label) for label, _ in labels}
    rows = tuple(
        Row(
            anchor=f"{kind}-{row.name}",
            name=row.name,
            title=row.title,
            cells=tuple(_cell(row, label, shared[label], marks) for label, _ in labels),
        )
        for row in group.rows
    )
    heads = tuple(
        Head(label=label, unit=unit, mark=marks[key] if (key := shared[label]) else "")
        for label, unit in labels
    )
    anchor = "-".join([kind, "group", *group.title.lower().split()])
    notes = tuple(_note(key, marks[key], columns, reader) for key, columns in keys.items())
    return Table(anchor=anchor, title=group.title, heads=heads, rows=rows, notes=notes)


def _labels(rows: Iterable[StockRow]) -> tuple[tuple[str, str], ...]:
    """Return the (label, unit) of every column in use, in the order of the list."""
    longest: dict[str, tuple[int, str]] = {}
    for row in rows:
        for figure in row.figures:
            longest.setdefault(figure.label, (figure.rank, figure.unit))
    return tuple((label, unit) for label, (_, unit) in sorted(longest.items(), key=lambda x: x[1]))


def _keys(
    rows: Sequence[StockRow], labels: Iterable[tuple[str, str]]
) -> dict[_Key, tuple[str, ...]]:
    """Return what the notes say, in reading order, each with the columns it is of."""
    found: dict[_Key, tuple[str, ...]] = {}
    for label, _ in labels:
        for figure in _column(rows, label):
            columns = found.setdefault(_key(figure), ())
            if label not in columns:
                found[_key(figure)] = (*columns, label)
    return found


def _column(rows: Iterable[StockRow], label: str) -> list[Figure]:
    return [figure for row in rows for figure in row.figures if figure.label == label]


def _shared(rows: Iterable[StockRow], label: str) -> _Key | None:
    """Return the note that all figures of a column share, or None."""
    keys = {_key(figure) for figure in _column(rows, label)}
    return keys.pop() if len(keys) == 1 else None


def _key(figure: Figure) -> _Key:
    return figure.kind, figure.source, figure.place.file


def _cell(row: StockRow, label: str, shared: _Key | None, marks: dict[_Key, str]) -> Cell:
    figure = next((each for each in row.figures if each.label == label), None)
    if figure is None:
        return Cell()
    return Cell(lines=figure.lines, mark="" if shared else marks[_key(figure)])


def _note(key: _Key, mark: str, columns: tuple[str, ...], reader: Reader) -> Note:
    kind, source, file = key
    said = source or say(reader, "pagestock-no-source")
    if kind:
        said = say(reader, "pagestock-kind", kind=say(reader, f"pagestock-{kind}"), source=said)
    return Note(mark=mark, columns=columns, source=said, file=file)


def _mark(number: int) -> str:
    """Return a, b, ... z, aa, bb."""
    turns, letter = divmod(number, len(ascii_lowercase))
    return ascii_lowercase[letter] * (turns + 1)
