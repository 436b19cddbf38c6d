"""The one grid of all pages: margins, a narrow column for labels, a wide one for text."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.model.stock import PaperStock


@dataclass(frozen=True, slots=True, kw_only=True)
class Grid:
    """A page's places in mm; ``x`` positions count from the left margin.

    The margins leave room for a staple or a punch, and for the strip most printers cannot print.
    """

    paper: PaperStock
    side: float = 21.0
    top: float = 20.0
    bottom: float = 24.0
    label: float = 36.0
    gutter: float = 6.0

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
        """Width of the text column."""
        return self.width - self.label - self.gutter

    @property
    def main_x(self) -> float:
        """Where the text column begins."""
        return self.label + self.gutter

    @property
    def ceiling(self) -> float:
        """Page height of the first line's top."""
        return self.paper.height - self.top
