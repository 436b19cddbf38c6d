"""A sheet with its pieces as readers see it: which piece lies where."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kerfolio.basis.reader import METRIC, Reader
from kerfolio.basis.saying import say
from kerfolio.basis.sheet_size import sheet_sides
from kerfolio.drawing.arrow import grain_arrow
from kerfolio.drawing.extent import extent, padded, scaled
from kerfolio.drawing.face import Look, face_strokes
from kerfolio.drawing.hatch import clamp_zone
from kerfolio.drawing.lettering import label_box
from kerfolio.drawing.sheet_marks import Laid, sheet_marks
from kerfolio.drawing.sheet_picture import SheetPicture, laid_pieces
from kerfolio.drawing.vocabulary import Dimension, Drawing, Ink, Item, Label, Stroke
from kerfolio.geometry.shapes import rectangle
from kerfolio.layouts.layout import SheetLayout
from kerfolio.layouts.stacks import zones
from kerfolio.settling.settled import SettledPlan
from kerfolio.shop.engraving import stroke_widths

ROOM = (170.0, 105.0)
_AWAY = 6.5
_TEXT = 3.2
_AROUND = (14.0, 21.0)
"""Room for lettering beside and above or below the sheet, mm."""


def layout_view(
    settled: SettledPlan,
    layout: SheetLayout,
    room: tuple[float, float] = ROOM,
    reader: Reader = METRIC,
) -> Drawing:
    """Return a picture of the sheet to be shown at paper size, within ``room`` (mm).

    Every piece carries its mark, inside it where it fits, else on a leader above or below the
    sheet; pieces too small and too many for that are counted in a line. Zones kept clear for
    clamps are hatched. Raises KeyError for a part or piece that the plan has not.
    """
    return layout_picture((settled,), layout, room, reader).whole(settled)


def layout_picture(
    ends: Sequence[SettledPlan], layout: SheetLayout, room: tuple[float, float], reader: Reader
) -> SheetPicture:
    """Return what is chosen once for that picture; ``ends`` as in ``laid_pieces``."""
    width, height = layout.size
    scale = min((room[0] - _AROUND[0]) / width, (room[1] - _AROUND[1]) / height, 1.0)
    size = (width * scale, height * scale)
    laid = laid_pieces(ends, layout, scale)
    engraved = {each.name: stroke_widths(ends[0], each) for each in ends[0].parts}
    under = (
        Stroke(contour=rectangle(0, 0, *size), ink=Ink.SOFT, fill=Ink.WASTE),
        *_clamps(ends[0], layout, scale),
    )
    marks = sheet_marks(laid, size, reader)
    dropped = any(label_box(each)[1] < 0 for each in marks if isinstance(each, Label))
    over = (
        *marks,
        *_sizes(layout, size, reader, _AWAY + 4 if dropped else _AWAY),
        *grain_arrow((0.0, size[1] + 2.2), _grain(ends[0], layout), reader),
    )
    return SheetPicture(
        layout=layout,
        scale=scale,
        box=padded(extent((*under, *over)), 0.6),
        under=under,
        over=over,
        shown=lambda part, seat: face_strokes(part, seat, _LOOK, engraved[part.name]),
        title=say(reader, "drawing-sheet", plan=ends[0].plan.title, sheet=layout.number),
        description=_sentence(laid, layout, reader),
    )


_LOOK = Look(outline=0.25, inside=0.13)


def _clamps(settled: SettledPlan, layout: SheetLayout, scale: float) -> Iterator[Stroke]:
    for zone in zones(settled.sheet(layout.sheet), layout.size):
        yield from clamp_zone(scaled(zone, scale))


def _grain(settled: SettledPlan, layout: SheetLayout) -> str:
    return "along x" if settled.sheet(layout.sheet).stock.grain else "any"


def _sizes(
    layout: SheetLayout, size: tuple[float, float], reader: Reader, below: float
) -> tuple[Item, ...]:
    width, height = sheet_sides(layout.size, reader)
    across = Dimension(a=(0, 0), b=(size[0], 0), text=width, offset=-below, height=_TEXT)
    up = Dimension(a=(0, 0), b=(0, size[1]), text=height, offset=_AWAY, height=_TEXT)
    return across, up


def _sentence(laid: list[Laid], layout: SheetLayout, reader: Reader) -> str:
    marks = ", ".join(each.mark for each in laid)
    wide, high = sheet_sides(layout.size, reader)
    return say(reader, "drawing-sheet-shows", wide=wide, high=high, pieces=marks)
