"""Points made into areas and lines of the plane library, by arrays: its classes take each apart."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import chain
from typing import Any

import numpy as np
import shapely

from kerfolio.geometry.contour import Point


def ring_area(outer: Sequence[Point], openings: Sequence[Sequence[Point]] = ()) -> Any:
    """Return the area within a ring of points, without its openings; sound or not.

    Raises ValueError for a ring of fewer than three points.
    """
    return shapely.polygons(rings([outer])[0], rings(openings) if openings else None)


def rings(lines: Sequence[Sequence[Point]]) -> Any:
    """Return an array of closed lines; ValueError for one of fewer than three points."""
    counts = [len(each) for each in lines]
    if min(counts) < 3:
        raise ValueError("a ring needs three points")
    values = chain.from_iterable(chain.from_iterable(lines))
    spots = np.fromiter(values, np.float64, 2 * sum(counts)).reshape(-1, 2)
    return shapely.linearrings(spots, indices=np.repeat(np.arange(len(counts)), counts))
