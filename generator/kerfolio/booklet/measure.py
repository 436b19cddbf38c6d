"""The one grid of a booklet's pages: margins, a narrow column for labels, a wide one for text."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.document.blocks import Size
from kerfolio.document.picture import Room
from kerfolio.model.stock import PaperStock

_SHARES = {Size.SMALL: 0.17, Size.HALF: 0.27, Size.WIDE: 0.4, Size.TALL: 0.78}
"""How much of a page's height a picture takes at most."""
_STEP_SHARE = 0.27
"""The same in a step, so that two share a page."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Measure:
    """A page's places in mm.

    The margins leave room for a staple or a punch, and for the strip most printers cannot print;
    the foot's for a code to read with a phone.
    """

    paper: PaperStock
    side: float = 20.0
    top: float = 17.0
    bottom: float = 27.0
    label: float = 35.0
    gutter: float = 6.0
    between: float = 7.0

    @property
    def width(self) -> float:
        """Width between the margins."""
        return self.paper.width - 2 * self.side

    @property
    def height(self) -> float:
        """Height between the margins."""
        return self.paper.height - self.top - self.bottom

    @property
    def main(self) -> float:
        """Width of the column of text."""
        return self.width - self.label - self.gutter

    @property
    def small(self) -> float:
        """Width of a small picture beside text."""
        return 0.38 * self.main

    def room(self, size: Size) -> Room:
        """Return the room of a picture of that size."""
        half = (self.width - self.between) / 2
        width = {Size.SMALL: self.small, Size.HALF: half}.get(size, self.width)
        return width, _SHARES[size] * self.height

    @property
    def label_room(self) -> Room:
        """Room of a picture among labels."""
        return self.label, self.label

    @property
    def step_room(self) -> Room:
        """Room of a step's picture."""
        return self.main, _STEP_SHARE * self.height
