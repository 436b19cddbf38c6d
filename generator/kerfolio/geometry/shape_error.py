"""The one complaint of this room: a shape that cannot be made as asked."""

from __future__ import annotations

from kerfolio.geometry.contour import Point


class ShapeError(ValueError):
    """A shape cannot be made as asked; the message is a short sentence for the maker.

    ``corner`` is the number of the polygon's corner (from 1), ``limit`` the largest value that
    fits in mm, ``pieces`` how many pieces a result fell into (0: nothing is left), ``at`` a point
    in mm, ``character`` one that a font does not have.
    """

    def __init__(
        self,
        message: str,
        *,
        corner: int | None = None,
        limit: float | None = None,
        pieces: int | None = None,
        at: Point | None = None,
        character: str | None = None,
    ) -> None:
        super().__init__(message)
        self.corner = corner
        self.limit = limit
        self.pieces = pieces
        self.at = at
        self.character = character
