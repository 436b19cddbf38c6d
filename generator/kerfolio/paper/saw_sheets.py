"""Sheets and boards for the saw: a page a sheet with its cuts in order, then the boards."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kerfolio.basis.lengths import both_text, inch_number, mm_number, size_text
from kerfolio.basis.reader import Reader
from kerfolio.basis.sheet_size import sheet_text
from kerfolio.basis.thickness import reading_in
from kerfolio.basis.words import counted, listed
from kerfolio.drawing.board_view import board_views
from kerfolio.drawing.saw_view import saw_view
from kerfolio.edition.edition import Edition
from kerfolio.edition.folder import sizes_words
from kerfolio.edition.saw_words import CAUTION, HOW
from kerfolio.layouts.boards import BoardPiece, BoardPlan
from kerfolio.layouts.saw_sheet import CROSS, RIP, TRIM, SawCut, SawSheet
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
_WAYS = {RIP: "Rip", CROSS: "Cross-cut", TRIM: "Trim"}


def saw_pdf(
    edition: Edition,
    sheets: Sequence[SawSheet],
    boards: Sequence[BoardPlan],
    paper: PaperStock,
) -> bytes:
    """Return a plan's saw diagrams and board cuts, at the thickness that is drawn, as a PDF."""
    grid = Grid(paper=paper)
    bands: list[Band] = []
    for sheet in sheets:
        bands += fresh(_sheet_page(edition, sheet, len(sheets), grid))
    for plan in boards:
        bands += fresh(_board_page(edition, plan, grid))
    foot = foot_of(edition, grid, f"saw, {measured_for(edition.settled, edition.reader)}")
    return pdf_bytes(about(edition, "Saw sheets"), flowed(bands, grid, foot))


def _title(words: str, grid: Grid) -> Bands:
    head = paragraph((Run(words, HEADING),), grid.width, 6.0, role=Role.HEADING)
    return kept(bookmarked(head, words), with_next=True)


def _sheet_page(edition: Edition, sheet: SawSheet, count: int, grid: Grid) -> Bands:
    settled, reader = edition.settled, edition.reader
    above = (
        *_title(f"Saw sheet {sheet.number} of {count}", grid),
        *kept(note(_sheet_words(edition, sheet), grid.width), with_next=True),
        *kept(note(sizes_words(edition), grid.width, NOTE_LOUD), with_next=True),
    )
    below = (
        *spaced(_cuts(sheet, reader, grid), _SPACE),
        *note(HOW, grid.width),
        *_to_trim(sheet, reader, grid),
        *spaced(warned(CAUTION, grid.width), _SPACE),
    )

    def made(high: float) -> Bands:
        picture = saw_view(settled, sheet, (grid.width, high), reader)
        return (*above, *spaced((drawing_band(picture, grid.width, high),), _SPACE), *below)

    return giving_way(made, _PICTURE, _LEAST, grid)


def _sheet_words(edition: Edition, sheet: SawSheet) -> str:
    reader = edition.reader
    stock = edition.settled.sheet(sheet.sheet)
    grain = ", grain from left to right" if stock.stock.grain else ""
    settings = counted(sheet.settings, "setting")
    return (
        f"{sheet_title(edition.settled, sheet.sheet)}, "
        f"measured {reading_in(stock.thickness, reader)}. "
        f"{sheet_text(sheet.size, reader)}, show face up{grain}. Kerf "
        f"{both_text(sheet.saw.kerf, reader)}. {counted(len(sheet.cuts), 'cut')}, {settings} of "
        "the fence."
    )


def _cuts(sheet: SawSheet, reader: Reader, grid: Grid) -> Bands:
    """Return a row for each setting of the fence."""
    units = ("mm", "in") if reader.unit == "mm" else ("in", "mm")
    columns = (
        Column(head="Cuts", number=True),
        Column(head="Lay on the saw", grows=True),
        Column(head="How"),
        *(Column(head=f"Size, {unit}", number=True) for unit in units),
        Column(head="Gives", grows=True),
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
    how = _WAYS[cuts[0].kind]
    if cuts[0].kind == TRIM:
        how = f"Trim {listed([cut.edge for cut in cuts])} edge"
    laid = ", ".join(dict.fromkeys(cut.of for cut in cuts))
    gives = "" if cuts[0].kind == TRIM else ", ".join(cut.gives for cut in cuts)
    sizes = (mm_number(cuts[0].setting), inch_number(cuts[0].setting))
    turn = 1 if reader.unit == "mm" else -1
    return (strong_cell(numbers), laid, how, *sizes[::turn], gives)


def _to_trim(sheet: SawSheet, reader: Reader, grid: Grid) -> Bands:
    """Return what is still to be cut off blanks of shaped parts."""
    told: dict[str, list[str]] = {}
    for each in sheet.blanks:
        sides = [
            f"{both_text(size, reader)} {side}"
            for size, side in zip(
                each.blank.grown, ("left", "below", "right", "above"), strict=True
            )
            if size
        ]
        if sides:
            told.setdefault(listed(sides), []).append(each.mark)
    words = "; ".join(f"{listed(marks)}: {sides}" for sides, marks in told.items())
    left = f"Left on blanks of shaped parts, to be cut to the outline: {words}."
    return note(left, grid.width) if told else ()


def _board_page(edition: Edition, plan: BoardPlan, grid: Grid) -> Bands:
    reader = edition.reader
    views = board_views(plan, (grid.width, grid.height * 0.6), reader)
    pictures = [
        band
        for view in views
        for band in spaced((drawing_band(view, grid.width, view.height),), _SPACE)
    ]
    return (
        *_title(f"Boards: {plan.title}", grid),
        *kept(note(_board_words(plan, reader), grid.width), with_next=True),
        *pictures,
        *spaced(_boards(plan, reader, grid), _SPACE),
        *spaced(warned(CAUTION, grid.width), _SPACE),
    )


def _board_words(plan: BoardPlan, reader: Reader) -> str:
    buy = listed([f"{count} of {both_text(length, reader)}" for length, count in plan.to_buy])
    sure = (
        "No choice of the lengths sold is shorter in all."
        if plan.proven
        else f"In all {both_text(plan.bought, reader)}; none can be shorter than "
        f"{both_text(plan.bound, reader)}."
    )
    trim = f"{both_text(plan.trim, reader)} trimmed off one end, " if plan.trim else ""
    section = size_text(plan.section, reader)
    return f"{section}. Buy {buy}. {sure} On each board {trim}kerf {both_text(plan.kerf, reader)}."


def _boards(plan: BoardPlan, reader: Reader, grid: Grid) -> Bands:
    columns = (
        Column(head="Board", number=True),
        Column(head="Length", number=True),
        Column(head="Pieces in the order they are cut", grows=True),
        Column(head="Left over", number=True),
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
