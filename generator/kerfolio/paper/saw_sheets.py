"""Sheets and boards for the saw: a page a sheet with its cuts in order, then the boards."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kerfolio.basis.lengths import both_text, inch_number, mm_number, size_text
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import listed, say
from kerfolio.basis.sheet_size import sheet_text
from kerfolio.basis.thickness import reading_in
from kerfolio.drawing.board_view import board_views
from kerfolio.drawing.saw_view import saw_view
from kerfolio.edition.edition import Edition
from kerfolio.edition.folder import sizes_words
from kerfolio.edition.saw_words import saw_caution, saw_how
from kerfolio.layouts.boards import BoardPiece, BoardPlan
from kerfolio.layouts.saw_sheet import TRIM, SawCut, SawSheet
from kerfolio.model.stock import PaperStock
from kerfolio.paper.band import Band, Bands, bookmarked, fresh, kept, paragraph, spaced
from kerfolio.paper.document import about
from kerfolio.paper.flow import flowed
from kerfolio.paper.grid import Grid
from kerfolio.paper.ledger import Cell, Column, strong_cell, table
from kerfolio.paper.picture import drawing_band, giving_way
from kerfolio.paper.section import foot_of, note, warned
from kerfolio.paper.type import HEADING, NOTE_LOUD
from kerfolio.settling.measured import measured_for
from kerfolio.settling.titles import board_title, sheet_title
from kerfolio.writing.page import Role, Run
from kerfolio.writing.pdf import pdf_bytes

_PICTURE, _LEAST = 122.0, 90.0
_SPACE = 5.0
_SIDES = ("left", "below", "right", "above")


def saw_pdf(
    edition: Edition,
    sheets: Sequence[SawSheet],
    boards: Sequence[BoardPlan],
    paper: PaperStock,
) -> bytes:
    """Return a plan's saw diagrams and board cuts, at the thickness that is drawn, as a PDF."""
    grid, reader = Grid(paper=paper), edition.reader
    bands: list[Band] = []
    for sheet in sheets:
        bands += fresh(_sheet_page(edition, sheet, len(sheets), grid))
    for plan in boards:
        bands += fresh(_board_page(edition, plan, grid))
    told_for = say(reader, "sawsheet-foot", thick=measured_for(edition.settled, reader))
    foot = foot_of(edition, grid, told_for)
    return pdf_bytes(about(edition, "saw"), flowed(bands, grid, foot))


def _title(words: str, grid: Grid) -> Bands:
    head = paragraph((Run(words, HEADING),), grid.width, 6.0, role=Role.HEADING)
    return kept(bookmarked(head, words), with_next=True)


def _sheet_page(edition: Edition, sheet: SawSheet, count: int, grid: Grid) -> Bands:
    settled, reader = edition.settled, edition.reader
    above = (
        *_title(say(reader, "sawsheet-number", number=sheet.number, sheets=count), grid),
        *kept(note(_sheet_words(edition, sheet), grid.width), with_next=True),
        *kept(note(sizes_words(edition), grid.width, NOTE_LOUD), with_next=True),
    )
    below = (
        *spaced(_cuts(sheet, reader, grid), _SPACE),
        *note(saw_how(reader), grid.width),
        *_to_trim(sheet, reader, grid),
        *spaced(warned(say(reader, "printed-caution"), saw_caution(reader), grid.width), _SPACE),
    )

    def made(high: float) -> Bands:
        picture = saw_view(settled, sheet, (grid.width, high), reader)
        return (*above, *spaced((drawing_band(picture, grid.width, high),), _SPACE), *below)

    return giving_way(made, _PICTURE, _LEAST, grid)


def _sheet_words(edition: Edition, sheet: SawSheet) -> str:
    reader = edition.reader
    stock = edition.settled.sheet(sheet.sheet)
    told = (
        say(
            reader,
            "printed-measured",
            sheet=sheet_title(edition.settled, sheet.sheet),
            thickness=reading_in(stock.thickness, reader),
        ),
        say(
            reader,
            "printed-sheet-lies",
            size=sheet_text(sheet.size, reader),
            grain=int(stock.stock.grain),
        ),
        say(reader, "sawsheet-kerf", kerf=both_text(sheet.saw.kerf, reader)),
        say(reader, "sawsheet-cuts", cuts=len(sheet.cuts), settings=sheet.settings),
    )
    measured, *others = told
    return " ".join((f"{measured}.", *others))


def _cuts(sheet: SawSheet, reader: Reader, grid: Grid) -> Bands:
    """Return a row for each setting of the fence."""
    units = ("mm", "in") if reader.unit == "mm" else ("in", "mm")
    columns = (
        Column(head=say(reader, "printed-cuts"), number=True),
        Column(head=say(reader, "sawsheet-lay"), grows=True),
        Column(head=say(reader, "sawsheet-how")),
        *(Column(head=say(reader, "sawsheet-size", unit=unit), number=True) for unit in units),
        Column(head=say(reader, "sawsheet-gives"), grows=True),
    )
    return table(columns, [_row(cuts, reader) for cuts in _rows(sheet.cuts)], grid.width)


def _rows(cuts: Sequence[SawCut]) -> Iterator[list[SawCut]]:
    row: list[SawCut] = []
    for cut in cuts:
        if cut.fresh and row:
            yield row
            row = []
        row.append(cut)
    if row:
        yield row


def _row(cuts: Sequence[SawCut], reader: Reader) -> tuple[Cell, ...]:
    begin, end = cuts[0].number, cuts[-1].number
    numbers = str(begin) if begin == end else f"{begin}–{end}"
    edges = [say(reader, f"sawsheet-edge-{cut.edge}") for cut in cuts]
    how = say(reader, f"sawsheet-way-{cuts[0].kind}", edges=listed(reader, edges))
    laid = ", ".join(dict.fromkeys(cut.of.told(reader) for cut in cuts))
    gives = "" if cuts[0].kind == TRIM else ", ".join(cut.gives.told(reader) for cut in cuts)
    sizes = (mm_number(cuts[0].setting, reader=reader), inch_number(cuts[0].setting))
    turn = 1 if reader.unit == "mm" else -1
    return (strong_cell(numbers), laid, how, *sizes[::turn], gives)


def _to_trim(sheet: SawSheet, reader: Reader, grid: Grid) -> Bands:
    """Return what is still to be cut off blanks of shaped parts."""
    told: dict[str, list[str]] = {}
    for each in sheet.blanks:
        sides = [
            say(reader, f"sawsheet-left-{side}", size=both_text(size, reader))
            for size, side in zip(each.blank.grown, _SIDES, strict=True)
            if size
        ]
        if sides:
            told.setdefault(listed(reader, sides), []).append(each.mark)
    blanks = "; ".join(f"{listed(reader, marks)}: {sides}" for sides, marks in told.items())
    return note(say(reader, "sawsheet-left-on", blanks=blanks), grid.width) if told else ()


def _board_page(edition: Edition, plan: BoardPlan, grid: Grid) -> Bands:
    reader = edition.reader
    views = board_views(plan, (grid.width, grid.height * 0.6), reader)
    pictures = [
        band
        for view in views
        for band in spaced((drawing_band(view, grid.width, view.height),), _SPACE)
    ]
    return (
        *_title(say(reader, "sawsheet-boards", board=plan.title), grid),
        *kept(note(_board_words(plan, reader), grid.width), with_next=True),
        *pictures,
        *spaced(_boards(plan, reader, grid), _SPACE),
        *spaced(warned(say(reader, "printed-caution"), saw_caution(reader), grid.width), _SPACE),
    )


def _board_words(plan: BoardPlan, reader: Reader) -> str:
    buy = [
        say(reader, "sawsheet-of-length", count=count, length=both_text(length, reader))
        for length, count in plan.to_buy
    ]
    sure = (
        say(reader, "sawsheet-least")
        if plan.proven
        else say(
            reader,
            "sawsheet-near-least",
            bought=both_text(plan.bought, reader),
            bound=both_text(plan.bound, reader),
        )
    )
    kerf = both_text(plan.kerf, reader)
    lost = (
        say(reader, "sawsheet-board-trimmed", trim=both_text(plan.trim, reader), kerf=kerf)
        if plan.trim
        else say(reader, "sawsheet-board-kerf", kerf=kerf)
    )
    bought = say(reader, "sawsheet-buy", boards=listed(reader, buy))
    return f"{size_text(plan.section, reader)}. {bought} {sure} {lost}"


def _boards(plan: BoardPlan, reader: Reader, grid: Grid) -> Bands:
    columns = (
        Column(head=say(reader, "sawsheet-board"), number=True),
        Column(head=say(reader, "sawsheet-length"), number=True),
        Column(head=say(reader, "sawsheet-pieces"), grows=True),
        Column(head=say(reader, "sawsheet-over"), number=True),
    )

    def told(piece: BoardPiece) -> str:
        return f"{board_title(piece.label)} {both_text(piece.length, reader)}"

    rows = [
        (
            strong_cell(str(board.number)),
            both_text(board.length, reader),
            ", ".join(map(told, board.pieces)),
            both_text(board.waste, reader) if board.waste else "–",
        )
        for board in plan.boards
    ]
    return table(columns, rows, grid.width)
