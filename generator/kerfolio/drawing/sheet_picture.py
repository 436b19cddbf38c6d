"""A sheet with its pieces on paper, drawn alike at every thickness of a range."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass

from kerfolio.drawing.face import obstacles
from kerfolio.drawing.ground import Ground
from kerfolio.drawing.lettering import CAPITAL, Box, text_width
from kerfolio.drawing.seat import Seat
from kerfolio.drawing.sheet_marks import MARK, Laid
from kerfolio.drawing.vocabulary import Drawing, Item, Stroke
from kerfolio.geometry.contour import Region
from kerfolio.geometry.label_spot import label_spot
from kerfolio.geometry.measure import bounds
from kerfolio.layouts.layout import Placement, SheetLayout
from kerfolio.settling.settled import SettledPart, SettledPlan
from kerfolio.settling.titles import part_title


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetPicture:
    """What is chosen once for the picture of a sheet: all of it but the shapes of the pieces.

    ``under`` lies below them and ``over`` above, mm on paper; they are shown at a ``scale``, each
    by the strokes of ``shown``.
    """

    layout: SheetLayout
    scale: float
    box: Box
    under: tuple[Item, ...]
    over: tuple[Item, ...]
    shown: Callable[[SettledPart, Seat], Iterable[Stroke]]
    title: str
    description: str

    def whole(self, settled: SettledPlan) -> Drawing:
        """Return the picture with the pieces as a plan has them. KeyError for a part it has not."""
        pieces = (
            stroke
            for each in self.layout.placements
            for stroke in self.shown(settled.part(each.part), seat_of(each, self.scale))
        )
        return Drawing(
            box=self.box,
            items=(*self.under, *pieces, *self.over),
            title=self.title,
            description=self.description,
        )


def seat_of(placed: Placement, scale: float) -> Seat:
    """Return where a piece lies in a picture of its sheet."""
    return Seat(x=placed.x * scale, y=placed.y * scale, turn=placed.turn, scale=scale)


def reach_of(part: SettledPart) -> Box:
    """Return the box round a part as it is cut, in its own frame, mm."""
    box = bounds(part.routed.outer)
    return box.x0, box.y0, box.x1, box.y1


def laid_pieces(ends: Sequence[SettledPlan], layout: SheetLayout, scale: float) -> list[Laid]:
    """Return a layout's pieces at a scale, each with the spot and the size of its mark.

    ``ends`` are a plan at the ends of its range, as it is drawn first: a mark is free at all of
    them. Raises KeyError for a part or piece that the plan has not.
    """
    marks = {piece.label: piece.mark for part in ends[0].parts for piece in part.pieces}
    laid = []
    for each in layout.placements:
        parts, seat, mark = (
            tuple(_different(ends, each.part)),
            seat_of(each, scale),
            marks[each.piece],
        )
        blocked = dict.fromkeys(line for part in parts for line in obstacles(part, seat))
        spot, room = label_spot(
            seat.region(_common(parts)),
            text_width(mark, 1.0, strong=True) / CAPITAL,
            blocked,
            enough=1.25 * MARK * CAPITAL,
        )
        shapes = tuple(seat.region(part.routed).outer for part in parts)
        called = f"{parts[0].mark} {part_title(ends[0].plan, each.part)}"
        laid.append(Laid(mark, called, shapes, spot, min(MARK, room / CAPITAL)))
    return laid


def _different(ends: Iterable[SettledPlan], name: str) -> Iterator[SettledPart]:
    """Yield a part as it is at the ends, what is cut alike once."""
    seen: list[tuple[object, object]] = []
    for part in (each.part(name) for each in ends):
        if (part.routed, part.cuts) not in seen:
            seen.append((part.routed, part.cuts))
            yield part


def _common(parts: Sequence[SettledPart]) -> Region:
    return parts[0].routed if len(parts) == 1 else Ground.of(parts).common
