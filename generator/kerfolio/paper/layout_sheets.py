"""Where every piece lies on which sheet, a page a sheet, to hang beside the saw or the router."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from kerfolio.basis.exact_figures import measured_in, overall_size
from kerfolio.basis.lengths import size_text
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.basis.style import Numbers
from kerfolio.drawing.layout_view import layout_picture
from kerfolio.edition.edition import Edition
from kerfolio.edition.folder import goes_with
from kerfolio.layouts.layout import SheetLayout
from kerfolio.model.stock import PaperStock
from kerfolio.paper.band import Band, fresh
from kerfolio.paper.document import about
from kerfolio.paper.flow import flowed
from kerfolio.paper.grid import Grid
from kerfolio.paper.held_picture import HeldPicture
from kerfolio.paper.section import foot_of
from kerfolio.paper.sheet_page import SHEET_HIGH, SheetTold, sheet_bands
from kerfolio.settling.measured import measured_for
from kerfolio.settling.settled import SettledPlan
from kerfolio.settling.titles import sheet_title
from kerfolio.writing.pdf import fitted_pdf


def layout_pictures(
    edition: Edition, ends: Sequence[SettledPlan], paper: PaperStock
) -> tuple[HeldPicture, ...]:
    """Choose the picture of every sheet; ``ends`` are the plan at the ends of its range."""
    room = (Grid(paper=paper).width, SHEET_HIGH)
    made = (layout_picture(ends, each, room, edition.reader) for each in edition.layout.sheets)
    return tuple(HeldPicture.of(each, ends) for each in made)


def layout_pdf(
    edition: Edition,
    settled: SettledPlan,
    pictures: Sequence[HeldPicture],
    sizes: Mapping[str, str],
    paper: PaperStock,
    numbers: Numbers,
) -> bytes:
    """Return the layouts of a plan's sheets as a PDF: picture and table of pieces.

    ``settled`` is the plan at the point, ``sizes`` those of its parts in words.
    """
    grid, reader = Grid(paper=paper), edition.reader
    bands: list[Band] = []
    for layout, picture in zip(edition.layout.sheets, pictures, strict=True):
        told = SheetTold(
            stock=_stock(settled, layout, reader),
            file=goes_with(settled, layout.number, reader),
            sizes=sizes,
        )
        shown = picture.band(settled, grid.width, SHEET_HIGH)
        bands += fresh(sheet_bands(edition, layout, grid, told, shown))
    told_for = say(reader, "printed-foot-layout", thick=measured_for(settled, reader))
    foot = foot_of(edition, grid, told_for)
    return fitted_pdf(about(edition, "layout"), flowed(bands, grid, foot), numbers)


def _stock(settled: SettledPlan, layout: SheetLayout, reader: Reader) -> str:
    sheet = settled.sheet(layout.sheet)
    title, thick = sheet_title(settled, sheet.name), measured_in(sheet.thickness, reader)
    return say(reader, "printed-drawn-for", sheet=title, thickness=thick)


def sizes_told(
    settled: SettledPlan, ends: Sequence[SettledPlan], reader: Reader
) -> Mapping[str, str]:
    """Return the sizes of parts in words, as figures where any is another within the range."""
    known = {part.name: size_text(part.size, reader) for part in ends[0].parts}
    if all(size_text(part.size, reader) == known[part.name] for e in ends for part in e.parts):
        return known
    return {
        part.name: overall_size(part.size, [each.part(part.name).size for each in ends], reader)
        for part in settled.parts
    }
