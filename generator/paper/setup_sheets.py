"""A page for every sheet on the machine: stock, datum, cutter, the order of cuts, cautions."""

from __future__ import annotations

from generator.basis.lengths import both_text, mm_number, mm_text
from generator.basis.words import counted
from generator.drawing.cut_sheet import cut_sheet
from generator.drawing.layout_view import layout_view
from generator.drawing.vocabulary import Layer
from generator.edition.edition import Edition
from generator.layouts.layout import SheetLayout
from generator.model.plan import CutSetting
from generator.model.stock import PaperStock
from generator.paper.band import Band, Bands, fresh, kept, spaced
from generator.paper.document import about
from generator.paper.flow import flowed
from generator.paper.grid import Grid
from generator.paper.ledger import Cell, Column, strong_cell, table
from generator.paper.part_pages import sheet_title, sheet_words
from generator.paper.phrases import size_text
from generator.paper.picture import drawing_band
from generator.paper.running_text import bullets, plain
from generator.paper.section import BLOCK_SPACE, foot_of, hung, note, section
from generator.paper.type import CELL, CELL_SOFT
from generator.settling.settled import SettledSheet
from generator.writing.page import Run
from generator.writing.pdf import pdf_bytes

_PICTURE_HIGH = 60.0

_CAUTIONS = (
    "Eye and hearing protection on, extraction running, sleeves and hair tied back.",
    "Check that the sheet is held everywhere, and that no screw or clamp lies in a cutter’s way.",
    "Measure the check square after opening the file: 100 mm in both directions.",
    "Run the first lines above the sheet, a hand on the stop. Do not leave the machine alone.",
    "Let the cutter stop before you reach in. Small pieces come free: tabs or a holding layer.",
)
_PROPOSAL = (
    "These are the maker’s settings on the maker’s machine, a place to begin and no rating. The "
    "cutter maker’s limits, your machine’s manual, local codes and licensed practice come first."
)


def setup_pdf(edition: Edition, paper: PaperStock) -> bytes:
    """Return the setup sheets of a plan as a PDF; lengths both in mm and in."""
    grid = Grid(paper=paper)
    bands: list[Band] = []
    for layout in edition.layout.sheets:
        bands += fresh(_sheet(edition, layout, grid))
    foot = foot_of(edition, grid, f"setup, {edition.settled.variant.label}")
    return pdf_bytes(about(edition, "Setup sheets"), flowed(bands, grid, foot))


def _sheet(edition: Edition, layout: SheetLayout, grid: Grid) -> Bands:
    first = edition.identity.units_first
    room = (grid.width, _PICTURE_HIGH)
    view = layout_view(edition.settled, layout, room, first)
    sheet = edition.settled.sheet(layout.sheet)
    blocks = (
        ("Before you start", bullets(_CAUTIONS, grid.main, CELL)),
        ("Stock and datum", _facts(edition, layout, sheet, grid)),
        ("Order of cuts", _layers(edition, layout, sheet, grid)),
        ("Settings", _settings(edition, sheet, grid)),
    )
    bands: list[Band] = [*section(sheet_title(edition, layout), grid)]
    words = plain(f"{sheet_words(edition, layout)}.", grid.width)
    bands += kept((*words, *spaced((drawing_band(view, *room),), 3.0)), with_next=True)
    for head, body in blocks:
        bands += spaced(kept(hung(head, body, grid)), BLOCK_SPACE)
    return tuple(bands)


def _facts(edition: Edition, layout: SheetLayout, sheet: SettledSheet, grid: Grid) -> Bands:
    first = edition.identity.units_first
    grain = "x runs along the grain" if sheet.stock.grain else "x runs along the length drawn"
    rows: list[tuple[Cell, ...]] = [
        ("Files", strong_cell(f"cut/{edition.settled.variant.label}, sheet {layout.number}")),
        ("Sheet", f"{size_text(*layout.size, first)}, {mm_text(sheet.thickness, 2)} thick"),
        ("Datum x, y", f"lower left corner of the sheet’s face; {grain}"),
        ("Datum z", "the sheet’s face, show face up; depths count down from it"),
        (
            "Pieces",
            f"{len(layout.placements)}; {both_text(sheet.margin, first)} clear of the edges, "
            f"{both_text(sheet.gap, first)} between them",
        ),
    ]
    columns = (Column(head="What"), Column(head="Set to", grows=True))
    cells = [((Run(str(row[0]), CELL_SOFT),), row[1]) for row in rows]
    return table(columns, cells, grid.main)


def _layers(edition: Edition, layout: SheetLayout, sheet: SettledSheet, grid: Grid) -> Bands:
    layers = [layer for layer in cut_sheet(edition.settled, layout).layers if layer.cuts]
    columns = (
        Column(head="No.", number=True),
        Column(head="Layer"),
        Column(head="Depth", number=True),
        Column(head="What to do", grows=True),
    )
    rows = [
        (strong_cell(str(number)), layer.name, _depth(layer, sheet), layer.purpose)
        for number, layer in enumerate(layers, start=1)
    ]
    words = (
        f"Inside corners are relieved for: {sheet.cutter.title}, diameter "
        f"{mm_text(sheet.cutter.diameter, 2)}. A wider cutter does not fit them."
    )
    return (*table(columns, rows, grid.main), *note(words, grid.main))


def _depth(layer: Layer, sheet: SettledSheet) -> str:
    through = f"through {mm_number(sheet.thickness, 2)}"
    return through if layer.depth is None else mm_text(layer.depth, 2)


def _settings(edition: Edition, sheet: SettledSheet, grid: Grid) -> Bands:
    cuts = [each for each in edition.plan.cuts if each.sheet.name == sheet.name]
    if not cuts:
        words = "The plan states no cut settings for this sheet."
        return (*note(words, grid.main), *note(_PROPOSAL, grid.main))
    columns = (
        Column(head="Name", grows=True),
        Column(head="Cutter"),
        Column(head="rpm", number=True),
        Column(head="Feed mm/min", number=True),
        Column(head="Plunge mm/min", number=True),
    )
    rows = [
        (
            strong_cell(each.name),
            each.cutter.name,
            _whole(each.speed_rpm),
            _whole(each.feed_mm_per_min),
            _whole(each.plunge_mm_per_min),
        )
        for each in cuts
    ]
    passes = [words for each in cuts if (words := passes_sentence(each))]
    body = table(columns, rows, grid.main)
    for words in passes:
        body = (*body, *note(words, grid.main))
    return (*body, *note(_PROPOSAL, grid.main))


def _whole(value: float | None) -> str:
    return "–" if value is None else mm_number(value, 0)


def passes_sentence(cut: CutSetting) -> str:
    """Return the passes of a cut setting as stated: ``ply-profile: passes of 8, rest; ...``."""
    words = []
    if cut.passes:
        words.append(f"passes of {', '.join(cut.passes)}")
    if cut.skim is not None:
        words.append(f"skim {cut.skim.text}")
    if cut.tabs_left is not None:
        words.append(f"{counted(cut.tabs_left, 'tab')} left")
    return f"{cut.name}: {'; '.join(words)}." if words else ""
