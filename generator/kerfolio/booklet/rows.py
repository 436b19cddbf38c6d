"""Pictures side by side: which share a row, and how high a row is on its page."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from kerfolio.booklet.art import Gallery, Shown
from kerfolio.booklet.measure import Measure
from kerfolio.document.blocks import Figure, Size
from kerfolio.document.picture import Art, Room, Shot

MOST = 1.5
"""How much more than its room a row of pictures may be given where a page has it."""
_LEAST, _MUCH = 0.5, 0.75
"""How far at least, and how far at most, a row of pictures gives way."""
_SEEN = 48.0
"""Height in mm that is enough to see what a picture shows."""
_DRAWN = 0.6
"""How far a row gives way at most that is drawn for its room: it tells less in a smaller one."""
_ENOUGH = 8.0
"""A share of its room's height that hinders no picture."""
_CLOSE = 0.5
"""mm by which a picture that fills its room may still fall short of it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Seated:
    """A figure with the room it has in its row, mm, before the row gives way or grows.

    A ``fixed`` one keeps its size: it is drawn at a scale that it shares, or stands beside text.
    ``width`` is how wide its picture came out.
    """

    figure: Figure
    room: Room
    fixed: bool = False
    width: float = 0.0

    def within(self, share: float) -> Room:
        """Return its room where its row is given a share of the height."""
        return self.room if self.fixed else (self.room[0], self.room[1] * share)

    @property
    def known(self) -> bool:
        """Tell whether its size in any room is known without drawing it anew."""
        picture = self.figure.picture
        return self.fixed or isinstance(picture, Shot) or picture.still


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """Figures side by side, in the box of that number; ``number`` counts rows.

    A ``wide`` one begins at the left margin though it would have room in the column of text.
    """

    number: int
    box: int
    seated: tuple[Seated, ...]
    wide: bool = False

    def shown(self, gallery: Gallery, share: float) -> list[tuple[Figure, Shown]]:
        """Return each figure with its picture, where the row is given a share of its height."""
        found = [
            (each.figure, gallery.shown(each.figure.picture, each.within(share), each.figure.alt))
            for each in self.seated
        ]
        return [(figure, shown) for figure, shown in found if shown is not None]

    def sized(self, gallery: Gallery) -> PictureRow:
        """Return how high it is in its whole room, and how high it may become.

        What has to be drawn anew for another room is foretold: it grows until it is as wide.
        """
        shown = self.shown(gallery, 1.0)
        room = max(each.room[1] for each in self.seated)
        drawn = max((each.height for _, each in shown), default=0.0)
        if all(each.known for each in self.seated):
            ends = [self.shown(gallery, share) for share in (0.0, _ENOUGH)]
            least, most = (max((one.height for _, one in end), default=0.0) for end in ends)
        else:
            wider = (
                seat.room[0] / one.width for seat, (_, one) in zip(self.seated, shown, strict=True)
            )
            least = drawn if drawn > room + _CLOSE else 0.0
            most = drawn if drawn < room - _CLOSE else drawn * min(wider, default=1.0)
        return PictureRow(
            number=self.number,
            box=self.box,
            room=room,
            drawn=drawn,
            least=least,
            most=max(most, least),
            fixed=all(each.fixed for each in self.seated),
            anew=not all(each.known for each in self.seated),
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class PictureRow:
    """How high a row of pictures is, mm: ``room`` is how high it may be, ``drawn`` how it is.

    It is the row of that ``number``, in the box of that one; no room makes it lower than ``least``
    or higher than ``most``. One that is drawn ``anew`` for every room gives way less.
    """

    number: int
    box: int
    room: float
    drawn: float
    least: float
    most: float
    fixed: bool = False
    anew: bool = False

    def at(self, share: float) -> float:
        """Return the height that it would have with a share of its room, mm."""
        if self.fixed:
            return self.drawn
        return min(max(self.room * self.within(share), self.least), self.most)

    def within(self, share: float) -> float:
        """Return the share nearest to one that leaves enough to see, and is not all too large."""
        least = _DRAWN if self.anew else min(_MUCH, max(_LEAST, _SEEN / self.room))
        return min(max(share, least), MOST)


def packed(
    figures: Sequence[Figure], gallery: Gallery, measure: Measure
) -> Iterator[tuple[Seated, ...]]:
    """Yield figures in rows, as many in each as stand side by side at their own widths.

    One that nobody could read there has the whole width.
    """
    row: list[tuple[Figure, Shown, float]] = []
    used = 0.0
    for figure in figures:
        room = measure.room(figure.size)
        if not _scaled(figure) and not gallery.legible(figure.picture, room):
            room = measure.room(Size.WIDE)
        shown = gallery.shown(figure.picture, room, figure.alt)
        if shown is None:
            continue
        more = shown.width + (measure.between if row else 0.0)
        if row and used + more > measure.width + _CLOSE:
            yield _seated(row, measure)
            row, used, more = [], 0.0, shown.width
        row.append((figure, shown, room[1]))
        used += more
    if row:
        yield _seated(row, measure)


def _seated(row: Sequence[tuple[Figure, Shown, float]], measure: Measure) -> tuple[Seated, ...]:
    """Return a row's figures; what is left of its width is theirs alike."""
    used = sum(shown.width for _, shown, _ in row)
    left = max(0.0, measure.width - used - measure.between * (len(row) - 1)) / len(row)
    return tuple(
        Seated(
            figure=figure,
            room=(shown.width + left, high),
            fixed=_scaled(figure),
            width=shown.width,
        )
        for figure, shown, high in row
    )


def _scaled(figure: Figure) -> bool:
    return isinstance(figure.picture, Art) and figure.picture.scale > 0
