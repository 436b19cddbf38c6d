"""Views of a detail other than that of its picture: which there are, and how a reader is told."""

from __future__ import annotations

from dataclasses import replace

from kerfolio.drawing.view_choice import ABOVE, AZIMUTHS, BELOW
from kerfolio.geometry.view import View

_TURNED, _OTHER_SIDE, _FROM_BEHIND = 0.02, 0.06, 0.12
"""What a view loses that is turned a little, and those that the reader must be told of."""
_SAME_SIDE, _BEHIND = 45.0, 100.0
"""How far a view may be turned, degrees, before that is told, and before it is from behind."""


def other_views(main: View) -> list[View]:
    """Return the views that are tried, the picture's own first: from all sides, and from below."""
    below = replace(main, elevation=ABOVE if main.from_below else BELOW)
    around = [replace(main, azimuth=each) for each in AZIMUTHS]
    return [main, *around, below]


def _turn(main: View, view: View) -> float:
    """Return by how many degrees the eye goes to the right from one view to another."""
    return (view.azimuth - main.azimuth + 180.0) % 360.0 - 180.0


def loss_of(main: View, view: View) -> float:
    """Return what a view is worth less than the picture's own."""
    turn = abs(_turn(main, view))
    if turn > _BEHIND:
        return _FROM_BEHIND
    if turn > _SAME_SIDE or view.from_below != main.from_below:
        return _OTHER_SIDE
    return 0.0 if view == main else _TURNED


def way_told(main: View, view: View) -> str:
    """Return from where a view looks if that is not as the picture does, else nothing."""
    turn = _turn(main, view)
    if view.from_below != main.from_below:
        return "below" if view.from_below else "above"
    if abs(turn) <= _SAME_SIDE:
        return ""
    if abs(turn) > _BEHIND:
        return "behind"
    return "right" if turn > 0 else "left"
