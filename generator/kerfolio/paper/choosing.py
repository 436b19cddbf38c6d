"""Which files to take: measure the sheet, cut the coupon first, choose the folder."""

from __future__ import annotations

from kerfolio.basis.cutting_lengths import fit_number
from kerfolio.basis.lengths import size_text
from kerfolio.basis.thickness import reading_number, thickness_text
from kerfolio.basis.words import listed
from kerfolio.drawing.coupon_view import coupon_view
from kerfolio.drawing.measuring_view import measuring_view
from kerfolio.edition.cutter_words import cutter_words
from kerfolio.edition.damp_words import damp_words
from kerfolio.edition.edition import Edition
from kerfolio.edition.folder import choice_words
from kerfolio.edition.format_words import format_words
from kerfolio.edition.joint_fits import JointFits, joint_fits
from kerfolio.edition.measuring import arms_words, measuring_of
from kerfolio.edition.names import has_saw
from kerfolio.edition.proved_words import proved_words
from kerfolio.edition.side_words import offset_words
from kerfolio.paper.band import Band, Bands, beside, indented, kept, spaced
from kerfolio.paper.grid import Grid
from kerfolio.paper.ledger import Cell, Column, strong_cell, table
from kerfolio.paper.picture import captioned, drawing_band, giving_way
from kerfolio.paper.running_text import plain
from kerfolio.paper.section import BLOCK_SPACE, hung, label, note, section, whole
from kerfolio.settling.coupon import size_of
from kerfolio.settling.settled import Coupon

TITLE = "Choose your files"
COUPON_TITLE = "Cut this first"
_PICTURE_HIGH, _LEAST_HIGH = 68.0, 48.0


def choosing_section(edition: Edition, grid: Grid) -> Bands:
    """Return how to measure the sheet and the table of folders."""
    bands: list[Band] = list(section(TITLE, grid, new_page=True))
    words = measuring_of(edition)
    picture = captioned(drawing_band(measuring_view(), grid.label, 40.0), words.points, grid.label)
    measure = f"{words.measure} {words.counts}"
    side = (*label("Measure the sheet", grid), *spaced(picture, 2.5))
    bands += beside(side, indented(plain(measure, grid.main), grid.main_x))
    folders = (
        *plain(f"{_makes(words.makes)} {words.take} {proved_words(edition)}".strip(), grid.main),
        *spaced(_folders(edition, grid), 4.0),
    )
    bands += spaced(hung("Take the folder", folders, grid), BLOCK_SPACE)
    fits, damp = joint_fits(edition), damp_words(edition)
    if damp:
        said = [band for each in damp for band in spaced(plain(each, grid.main), 1.2)]
        bands += spaced(hung("Finish and damp", said, grid), BLOCK_SPACE)
    if fits is not None:
        bands += spaced(hung("Fit of the joints", _joint_fits(fits, grid), grid), BLOCK_SPACE)
    bands += spaced(hung("Take the file", _files(edition, grid), grid), BLOCK_SPACE)
    cutter = plain(cutter_words(edition), grid.main)
    offset = spaced(plain(offset_words(edition), grid.main), 1.2)
    bands += spaced(hung("Choose the cutter", (*cutter, *offset), grid), BLOCK_SPACE)
    return tuple(bands)


def _makes(words: str) -> str:
    return f"Open start-here.html{words}" if words else ""


def _files(edition: Edition, grid: Grid) -> Bands:
    columns = (Column(head="What you have"), Column(head="What to take", grows=True))
    choice = format_words(edition.formats).choice
    cut = f"cut/, the folder of your sheet: {choice} for every sheet and part; setup/ to set up"
    sawn = (_SAWN,) if has_saw(edition) else ()
    return kept(table(columns, (("A CNC router", cut), *sawn, *_OTHER_FILES), grid.main))


def _folders(edition: Edition, grid: Grid) -> Bands:
    names, first = [sheet.name for sheet in edition.settled.sheets], edition.first
    columns = [
        Column(head="Folder", grows=True),
        *(Column(head=name, number=True) for name in names),
        Column(head=f"Fit per side, {first}", number=True),
    ]
    rows: list[tuple[Cell, ...]] = []
    for each in edition.variants:
        thick = dict(each.variant.thickness)
        fits = sorted({sheet.fit for sheet in each.sheets})
        cells = [thickness_text(thick[name], first) for name in names]
        fit = listed([fit_number(value, first) for value in fits])
        rows.append((strong_cell(f"cut/{each.variant.label}"), *cells, fit))
    return table(columns, rows, grid.main)


def _joint_fits(fits: JointFits, grid: Grid) -> Bands:
    joints, purpose, *rooms = fits.heads
    columns = (
        Column(head=joints, grows=True),
        Column(head=purpose),
        *(Column(head=each, number=True) for each in rooms),
    )
    rows = [each.cells for each in fits.rows]
    return (*plain(fits.words, grid.main), *spaced(kept(table(columns, rows, grid.main)), 4.0))


def coupon_section(edition: Edition, grid: Grid) -> Bands:
    """Return every fit coupon with its picture and its table; nothing for a plan without one."""
    coupons = edition.settled.coupons
    if not coupons:
        return ()
    words = measuring_of(edition)
    opening = (
        *section(COUPON_TITLE, grid),
        *kept(hung("The fit coupon", plain(words.coupon, grid.main), grid)),
        *spaced(kept(hung("Read it", plain(words.read, grid.main), grid)), BLOCK_SPACE),
        *spaced(kept(hung("Correct once", plain(words.rule, grid.main), grid)), BLOCK_SPACE),
    )
    first, *others = coupons

    def opened(high: float) -> Bands:
        return (*opening, *spaced(_coupon(edition, first, grid, high), BLOCK_SPACE))

    bands = list(whole(giving_way(opened, _PICTURE_HIGH, _LEAST_HIGH, grid), grid))
    for other in others:
        bands += spaced(whole(_coupon(edition, other, grid), grid), 2 * BLOCK_SPACE)
    return tuple(bands)


def _coupon(edition: Edition, coupon: Coupon, grid: Grid, high: float = _PICTURE_HIGH) -> Bands:
    first = edition.first
    drawing = coupon_view(edition.settled, coupon, (grid.width, high), first)
    picture = captioned(
        drawing_band(drawing, grid.width, high),
        f"Coupon for {coupon.sheet}: plate and tab, on a scrap of "
        f"{size_text(size_of(coupon), first)}. {measuring_of(edition).lies}",
        grid.width,
    )
    rows = hung(coupon.sheet, _slots(edition, coupon, grid), grid)
    return (*kept(picture, with_next=True), *spaced(rows, 4.0))


def _slots(edition: Edition, coupon: Coupon, grid: Grid) -> Bands:
    first = edition.first
    columns = [
        Column(head="Step", number=True),
        Column(head=f"Drawn wide, {first}", number=True),
        Column(head="Without a caliper", number=True),
        Column(head="Take", grows=True),
    ]
    rows = [
        (
            strong_cell(str(slot.number)),
            reading_number(slot.width, first),
            thickness_text(slot.thickness, first),
            ", ".join(filter(None, choice_words(edition, coupon.sheet, slot.thickness))),
        )
        for slot in coupon.slots
    ]
    words = measuring_of(edition)
    told = f"{arms_words(coupon, first)} {words.without} {words.play}"
    return (*table(columns, rows, grid.main), *note(told, grid.main))


_SAWN: tuple[Cell, Cell] = (
    "A table saw or a track saw",
    "layout/, the saw sheets; templates/ for curves and slots",
)
_OTHER_FILES: tuple[tuple[Cell, Cell], ...] = (
    (
        "Drill, jigsaw, hand-held router",
        "templates/, the file of your sheet: full size, A4 or Letter; print the first page alone",
    ),
    (
        "A print shop near by",
        "templates/, the file ending in roll: a page for each part",
    ),
    ("A shop that cuts for you", "this booklet, lists/parts.csv, and cut/ if it has a router"),
)
