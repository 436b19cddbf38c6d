"""A sheet's picture on a page of a file that can be filled in: each part stands in it once."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from kerfolio.drawing.extent import padded, union
from kerfolio.drawing.lettering import Box
from kerfolio.drawing.seat import Seat
from kerfolio.drawing.sheet_picture import SheetPicture, reach_of, seat_of
from kerfolio.drawing.vocabulary import Drawing, Item
from kerfolio.paper.band import Band, marked
from kerfolio.settling.settled import SettledPart, SettledPlan
from kerfolio.writing.page import Mark, Replay, Role

_RIM = 40.0
"""mm around a part, for its lines, which are as much wider as it is shown smaller. It is the same
in every file, so that the places of all its lines are."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HeldPicture:
    """What is chosen once: the picture, and a box in each part's frame that holds it anywhere in
    the range, mm.
    """

    picture: SheetPicture
    frames: Mapping[str, Box]

    @classmethod
    def of(cls, picture: SheetPicture, ends: Sequence[SettledPlan]) -> HeldPicture:
        """Choose; ``ends`` are a plan at the ends of its range."""
        frames = {
            name: padded(union(reach_of(each.part(name)) for each in ends), _RIM)
            for name in dict.fromkeys(each.part for each in picture.layout.placements)
        }
        return cls(picture=picture, frames=frames)

    def band(self, settled: SettledPlan, width: float, most: float) -> Band:
        """Return it for a plan at a point, centred in a column, as high as ``most`` allows, mm."""
        whole = self._around(())
        share = min(width / whole.width, most / whole.height, 1.0)
        left, bottom = (width - whole.width * share) / 2, -whole.height * share

        def around(items: tuple[Item, ...]) -> Mark:
            drawing = self._around(items)
            return Replay(x=left, y=bottom, drawing=drawing, scale=share, still=True)

        pieces = self._pieces(settled, (left, bottom), share)
        marks = (around(self.picture.under), *pieces, around(self.picture.over))
        return marked(-bottom, marks, Role.FIGURE, self.picture.description)

    def _around(self, items: tuple[Item, ...]) -> Drawing:
        return Drawing(box=self.picture.box, items=items)

    def _pieces(
        self, settled: SettledPlan, at: tuple[float, float], share: float
    ) -> Iterator[Replay]:
        left, bottom, _, _ = self.picture.box
        parts = {name: self._part(settled.part(name)) for name in self.frames}
        for each in self.picture.layout.placements:
            drawing = parts[each.part]
            x, y = seat_of(each, self.picture.scale).point(drawing.box[:2])
            yield Replay(
                x=at[0] + (x - left) * share,
                y=at[1] + (y - bottom) * share,
                drawing=drawing,
                scale=self.picture.scale * share,
                angle=each.turn,
                once=True,
            )

    def _part(self, part: SettledPart) -> Drawing:
        """Return a part at full size, its lines as much wider as it is shown smaller."""
        strokes = (
            replace(each, width=None if each.width is None else each.width / self.picture.scale)
            for each in self.picture.shown(part, Seat())
        )
        return Drawing(box=self.frames[part.name], items=tuple(strokes))
