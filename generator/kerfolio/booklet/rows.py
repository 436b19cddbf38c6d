"""Pictures side by side: which share a row, and how high a row is on its page."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from kerfolio.booklet.art import Gallery, Shown
from kerfolio.booklet.measure import Measure
from kerfolio.document.blocks import Figure
from kerfolio.document.picture import Art, Room

MOST = 1.5
"""How much more than its room a row of pictures may be given where a page has it."""
_LEAST, _MUCH = 0.5, 0.75
"""How far at least, and how far at most, a row of pictures gives way."""
_SEEN = 48.0
"""Height in mm that is enough to see what a picture shows."""
_CLOSE = 0.5
"""mm by which a picture that fills its room may still fall short of it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Seated:
    """A figure with the room it has in its row, mm, before the row gives way or grows.

    A ``fixed`` one keeps its size: it is drawn at a scale that it shares, or stands beside text.
    """

    figure: Figure
    room: Room
    fixed: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class PictureRow:
    """A row of pictures as it was set: in which box, for what room's height, how high it came out.

    ``share`` is how much of that room's height it was given.
    """

    box: int
    room: float
    share: float
    drawn: float
    fixed: bool = False

    def at(self, share: float) -> float:
        """Return the height that it would have with another share of its room, mm."""
        if self.fixed:
            return self.drawn
        full = self.room * self.share
        most = self.drawn if self.drawn < full - _CLOSE else float("inf")
        least = self.drawn if self.drawn > full + _CLOSE else 0.0
        return max(least, min(self.room * self.within(share), most))

    def within(self, share: float) -> float:
        """Return the share nearest to one that leaves enough to see, and is not all too large."""
        least = min(_MUCH, max(_LEAST, _SEEN / self.room))
        return min(max(share, least), MOST)


def packed(
    figures: Sequence[Figure], gallery: Gallery, measure: Measure
) -> Iterator[tuple[Seated, ...]]:
    """Yield figures in rows, as many in each as stand side by side at their own widths."""
    row: list[tuple[Figure, Shown, float]] = []
    used = 0.0
    for figure in figures:
        room = measure.room(figure.size)
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
        Seated(figure=figure, room=(shown.width + left, high), fixed=_scaled(figure))
        for figure, shown, high in row
    )


def _scaled(figure: Figure) -> bool:
    return isinstance(figure.picture, Art) and figure.picture.scale > 0
