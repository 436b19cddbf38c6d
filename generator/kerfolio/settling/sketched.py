"""What is drawn of a part that could not be made: its outline, its features, and what is wrong."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from kerfolio.basis.finding import Run, Sketch
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.flatten import points
from kerfolio.settling.shaped import Shaped

_FINE = 0.1


def sketched(
    part: str,
    outline: Contour,
    shapes: Sequence[Shaped],
    *wrong: str,
    spots: tuple[Point, ...] = (),
) -> Sketch:
    """Return a sketch; ``wrong`` are names of features to mark, those that are others aside.

    ``spots`` are to be ringed, in the part's frame.
    """
    named = [each for each in shapes if each.feature.name in wrong]
    rest = [each for each in shapes if each not in named]
    return Sketch(
        part=part, outline=_run(outline), wrong=_runs(named), beside=_runs(rest), spots=spots
    )


def _runs(shapes: Iterable[Shaped]) -> tuple[Run, ...]:
    return tuple(_run(line) for each in shapes for line in each.feature.shape if line.closed)


def _run(contour: Contour) -> Run:
    return tuple(points(contour, _FINE))
