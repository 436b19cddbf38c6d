"""What you need: one list of tools, and what to buy, all of it as it is sold."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.lengths import size_pair
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import listed, say
from kerfolio.basis.sheet_size import sheet_pair
from kerfolio.basis.thickness import sold_text
from kerfolio.chapters.deciding import enough_words
from kerfolio.document.blocks import (
    Block,
    Cell,
    Column,
    Figure,
    Heading,
    Kind,
    Listing,
    Manner,
    Paragraph,
    Row,
    Size,
    Table,
)
from kerfolio.document.chapter import Chapter, Soon
from kerfolio.document.picture import still
from kerfolio.document.words import Words, twin
from kerfolio.drawing.hardware_view import hardware_views
from kerfolio.edition.edge_words import edges_title, edges_told
from kerfolio.edition.edition import Edition
from kerfolio.edition.hardware_words import hardware_details
from kerfolio.edition.sheet_count import counted_as
from kerfolio.edition.tools import tools_of, used_up
from kerfolio.layouts.boards import BoardPlan
from kerfolio.settling.titles import board_title
from kerfolio.shop.drills import drills_of
from kerfolio.shop.rows import SheetRow


def need(edition: Edition) -> Chapter:
    """Return tools, hardware, sheets, boards, edges and what is used up; what is empty is out."""
    reader = edition.reader
    found = (
        (say(reader, "need-tools"), _tools(edition)),
        (say(reader, "need-sheets"), _sheets(edition)),
        (say(reader, "need-boards"), _boards(edition)),
        (say(reader, "need-hardware"), _hardware(edition)),
        (edges_title(reader), _edges(edition)),
        (say(reader, "need-used-up"), _used_up(edition)),
    )
    blocks: list[Block] = []
    for head, body in found:
        if body:
            blocks += (Heading(words=head), *body)
    title = say(reader, "need-title")
    return Chapter(id="need", title=title, blocks=tuple(blocks), soon=Soon.FIRST)


def _tools(edition: Edition) -> tuple[Block, ...]:
    rows = [
        Row(cells=(each.what, Cell(words=each.purpose, below=each.more)))
        for each in tools_of(edition)
    ]
    if not rows:
        return ()
    reader = edition.reader
    columns = (Column(head=say(reader, "need-tool")), Column(head=say(reader, "need-for")))
    why = say(reader, "need-tools-why")
    if drills_of(edition.settled):
        why = f"{why} {say(reader, 'need-tools-bits')}"
    return (
        Table(title=say(reader, "need-tools"), columns=columns, rows=tuple(rows)),
        Paragraph(words=why, manner=Manner.SMALL),
    )


def _sheets(edition: Edition) -> tuple[Block, ...]:
    reader, counts = edition.reader, counted_as(edition)
    rows: list[Row] = []
    told: set[str] = set()
    for row in edition.sheets:
        drawn = say(reader, "deciding-drawn", thickness=sold_text(row.thickness, reader))
        enough = enough_words(edition, row.sheet, row.count)
        remarks = [*_asked(edition, row), drawn, *([enough] if enough else [])]
        if row.sheet in counts and row.sheet not in told:
            remarks.append(counts[row.sheet])
            told.add(row.sheet)
        rows.append(_sheet_row(row, tuple(remarks), reader))
    if not rows:
        return ()
    columns = (
        Column(head=say(reader, "need-count"), kind=Kind.COUNT),
        Column(head=say(reader, "need-sheet")),
        Column(head=say(reader, "need-size"), kind=Kind.NUMBER),
    )
    table = Table(title=say(reader, "need-sheets"), columns=columns, rows=tuple(rows))
    return (table, Paragraph(words=say(reader, "need-along"), manner=Manner.SMALL))


def _sheet_row(row: SheetRow, remarks: tuple[Words, ...], reader: Reader) -> Row:
    size = twin(sheet_pair((row.width, row.height), reader))
    return Row(cells=(str(row.count), Cell(words=row.title, below=remarks), (size,)))


def _asked(edition: Edition, row: SheetRow) -> Iterator[str]:
    """Yield what to ask for besides: grade and plies."""
    grade = next((each.grade for each in edition.plan.sheets if each.name == row.sheet), "")
    plies = edition.settled.sheet(row.sheet).stock.plies
    reader, asked = edition.reader, list[str]()
    if grade:
        asked.append(say(reader, "need-grade", grade=grade))
    if plies:
        asked.append(say(reader, "need-plies", plies=plies))
    if asked:
        yield ", ".join(asked)


def _boards(edition: Edition) -> tuple[Block, ...]:
    """Return boards in the lengths they are sold in, with what is cut from them."""
    reader = edition.reader
    rows = [
        Row(
            cells=(
                str(count),
                Cell(words=plan.title, below=(_cut_from(plan, length, reader),)),
                (twin(size_pair(plan.section, reader)),),
                (twin(size_pair((length,), reader)),),
            )
        )
        for plan in edition.board_plans
        for length, count in plan.to_buy
    ]
    columns = (
        Column(head=say(reader, "need-count"), kind=Kind.COUNT),
        Column(head=say(reader, "need-board")),
        Column(head=say(reader, "need-section"), spare=True),
        Column(head=say(reader, "need-length"), kind=Kind.NUMBER),
    )
    title = say(reader, "need-boards")
    return (Table(title=title, columns=columns, rows=tuple(rows)),) if rows else ()


def _cut_from(plan: BoardPlan, length: float, reader: Reader) -> str:
    """Return the pieces that come from boards of a length: ``for Batten, 900 mm``."""
    pieces = [piece for board in plan.boards if board.length == length for piece in board.pieces]
    kinds: dict[tuple[str, float], int] = {}
    for piece in pieces:
        key = piece.label.partition(".")[0], piece.length
        kinds[key] = kinds.get(key, 0) + 1
    told = [
        f"{f'{count} × ' if count > 1 else ''}{board_title(name)}, {size_pair((long,), reader)[0]}"
        for (name, long), count in kinds.items()
    ]
    return say(reader, "need-cut-from", pieces=listed(reader, told))


def _hardware(edition: Edition) -> tuple[Block, ...]:
    """Return the hardware, with what to buy instead where any of it has such a twin."""
    reader, twins = edition.reader, any(row.inch_twin for row in edition.hardware)
    rows = [
        Row(
            cells=(
                str(row.count),
                Cell(
                    words=row.title,
                    below=tuple(filter(None, (hardware_details(edition, row.item), row.purpose))),
                ),
                *((row.inch_twin or "–",) if twins else ()),
            )
        )
        for row in edition.hardware
    ]
    columns = (
        Column(head=say(reader, "need-count"), kind=Kind.COUNT),
        Column(head=say(reader, "need-item")),
        *((Column(head=say(reader, "need-twin"), spare=True),) if twins else ()),
    )
    if not rows:
        return ()
    table = Table(title=say(reader, "need-hardware"), columns=columns, rows=tuple(rows))
    remark = Paragraph(words=say(reader, "need-hardware-sum"), manner=Manner.SMALL)
    return (table, remark, *_full_size(edition))


def _full_size(edition: Edition) -> Iterator[Block]:
    """Yield the hardware at full size, as far as the stock knows how large it is."""
    stock = edition.settled.stock
    known = [(stock.item(row.item), row.count) for row in edition.hardware]
    views = hardware_views([(item, count) for item, count in known if item], edition.reader)
    for number, drawing in enumerate(views, 1):
        picture = still(f"hardware-{number}", drawing, scale=1.0)
        caption = say(edition.reader, "need-hardware-full")
        yield Figure(picture=picture, caption=caption, size=Size.TALL)


def _edges(edition: Edition) -> tuple[Block, ...]:
    told = edges_told(edition)
    if told is None:
        return ()
    reader = edition.reader
    columns = (
        Column(head=say(reader, "need-edges")),
        Column(head=say(reader, "need-stretches"), kind=Kind.NUMBER, spare=True),
        Column(head=say(reader, "need-together"), kind=Kind.NUMBER),
        *((Column(head=say(reader, "need-to-buy"), kind=Kind.NUMBER),) if told.banded else ()),
    )
    rows = tuple(
        Row(
            cells=(
                Cell(words=each.what, below=(each.sheet,)),
                each.count,
                each.length,
                *((each.to_buy,) if told.banded else ()),
            )
        )
        for each in told.rows
    )
    table = Table(title=edges_title(edition.reader), columns=columns, rows=rows)
    remark = (Paragraph(words=told.remark, manner=Manner.SMALL),) if told.banded else ()
    return (table, *remark)


def _used_up(edition: Edition) -> tuple[Block, ...]:
    entries = used_up(edition)
    return (Listing(entries=entries),) if entries else ()
