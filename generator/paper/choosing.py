"""Which files to take: measure the sheet, cut the coupon first, choose the folder."""

from __future__ import annotations

from generator.basis.lengths import mm_number, mm_text
from generator.drawing.coupon_view import coupon_view
from generator.drawing.measuring_view import measuring_view
from generator.edition.edition import Edition
from generator.edition.folder import folder_choice, folders_of
from generator.paper.band import Band, Bands, beside, indented, kept, spaced, total
from generator.paper.grid import Grid
from generator.paper.ledger import Cell, Column, strong_cell, table
from generator.paper.phrases import listed, thickness_text
from generator.paper.picture import captioned, drawing_band
from generator.paper.running_text import plain
from generator.paper.section import BLOCK_SPACE, hung, label, note, section
from generator.settling.settled import Coupon

TITLE = "Choose your files"
COUPON_TITLE = "Cut this first"

_MEASURE = (
    "A sheet is seldom as thick as its name. Measure yours with a caliper that shows 0.05 mm, at "
    "eight points 50 mm (2 in) in from the edges: near the four corners and at the middle of each "
    "side, as EN 324-1 does. Take the mean and round it to 0.1 mm. A burr or a raised corner "
    "counts as sheet: brush the edge clean first."
)
_ONE = "Every slot of this plan is drawn for one thickness: {thickness}."
_MANY = (
    "Every slot of this plan follows the thickness of the sheet. The bundle holds one whole set of "
    "cut files for each thickness in the table; a folder’s name is the thickness it is for. Take "
    "the folder next to what you measured, then let the coupon decide."
)
_COUPON = (
    "Cut the coupon from a corner of the very sheet you will build from, with the cutter and the "
    "settings you will use. Try the tab in the slots. The right slot is the first that takes the "
    "tab with the push of a hand, without a hammer and without play. Its number tells you the "
    "folder, whatever the caliper said."
)


def choosing_section(edition: Edition, grid: Grid) -> Bands:
    """Return how to measure the sheet and the table of folders."""
    bands: list[Band] = list(section(TITLE, grid, new_page=True))
    picture = captioned(
        drawing_band(measuring_view(), grid.label, 40.0),
        "Eight points, 50 mm in from the edges.",
        grid.label,
    )
    side = (*label("Measure the sheet", grid), *spaced(picture, 2.5))
    bands += beside(side, indented(plain(_MEASURE, grid.main), grid.main_x))
    words = _MANY if len(edition.variants) > 1 else _ONE.format(thickness=_only(edition))
    folders = (*plain(words, grid.main), *spaced(_folders(edition, grid), 4.0))
    return (*bands, *spaced(hung("Take the folder", folders, grid), BLOCK_SPACE))


def _only(edition: Edition) -> str:
    return listed([mm_text(thick, 2) for _, thick in edition.settled.variant.thickness])


def _folders(edition: Edition, grid: Grid) -> Bands:
    names, first = [sheet.name for sheet in edition.settled.sheets], edition.identity.units_first
    columns = [
        Column(head="Folder", grows=True),
        *(Column(head=name, number=True) for name in names),
        Column(head="Fit per side, mm", number=True),
    ]
    rows: list[tuple[Cell, ...]] = []
    for each in edition.variants:
        thick = dict(each.variant.thickness)
        fits = sorted({sheet.fit for sheet in each.sheets})
        cells = [thickness_text(thick[name], first) for name in names]
        fit = listed([mm_number(value, 2) for value in fits])
        rows.append((strong_cell(f"cut/{each.variant.label}"), *cells, fit))
    return table(columns, rows, grid.main)


def coupon_section(edition: Edition, grid: Grid) -> Bands:
    """Return every fit coupon with its picture and its table; nothing for a plan without one."""
    coupons = edition.settled.coupons
    if not coupons:
        return ()
    bands: list[Band] = list(section(COUPON_TITLE, grid))
    bands += hung("The fit coupon", plain(_COUPON, grid.main), grid)
    first = edition.identity.units_first
    for coupon in coupons:
        drawing = coupon_view(edition.settled, coupon, (grid.width, 75.0), first)
        picture = captioned(
            drawing_band(drawing, grid.width, 75.0),
            f"Coupon for {coupon.sheet}: plate and tab. The number of a slot is engraved beside "
            "it.",
            grid.width,
        )
        bands += spaced(kept(picture, with_next=True), BLOCK_SPACE)
        bands += spaced(hung(coupon.sheet, _slots(edition, coupon, grid), grid), 4.0)
    return _together(bands, grid)


def _together(bands: list[Band], grid: Grid) -> Bands:
    """Keep the section on one page where a page can hold it."""
    return kept(bands) if total(bands) <= grid.height else tuple(bands)


def _slots(edition: Edition, coupon: Coupon, grid: Grid) -> Bands:
    columns = [
        Column(head="Slot", number=True),
        Column(head="Width, mm", number=True),
        Column(head="Suits a sheet of", number=True),
        Column(head="Take", grows=True),
    ]
    rows = [
        (
            strong_cell(str(slot.number)),
            mm_number(slot.width, 2),
            thickness_text(slot.thickness, edition.identity.units_first),
            folder_words(edition, coupon.sheet, slot.thickness),
        )
        for slot in coupon.slots
    ]
    return (*table(columns, rows, grid.main), *note(_PLAY, grid.main))


_PLAY = (
    "Tight in every slot: measure again, or look for chips and a worn cutter. Loose in every slot: "
    "the sheet is thinner than the plan is published for."
)


def folder_words(edition: Edition, sheet: str, wanted: float) -> str:
    """Return the folder to take for a sheet ``wanted`` mm thick, or why there is none.

    Where a plan has more sheets than one, a folder stands for all their thicknesses together.
    """
    choice = folder_choice(edition, sheet, wanted)
    if choice.thickness is None:
        return f"none: {'thicker' if choice.thicker else 'thinner'} than the plan is published for"
    if len(edition.settled.sheets) == 1:
        words = f"cut/{folders_of(edition, sheet, choice.thickness)[0]}"
    else:
        words = f"a folder for {sheet} {mm_text(choice.thickness, 2)}"
    return words if choice.exact else f"{words}, the next thicker"
