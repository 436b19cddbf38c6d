"""Stretches along many lines at once: joined where they meet, and what they leave free."""

from __future__ import annotations

import numpy as np

from kerfolio.geometry.solid_faces import Indices, Numbers

_TOUCH = 1e-9
_FAR = 8.0


def merged(line: Indices, spans: Numbers) -> tuple[Indices, Numbers]:
    """Return stretches (n, 2) in shares of their lines, cut to 0..1, joined where they meet.

    They come in order of line and place.
    """
    spans = np.clip(spans, 0.0, 1.0)
    some = spans[:, 1] > spans[:, 0]
    line, spans = line[some], spans[some]
    order = np.lexsort((spans[:, 0], line))
    line, spans = line[order], spans[order]
    if not len(line):
        return line, spans
    reach = np.maximum.accumulate(spans[:, 1] + _FAR * line) - _FAR * line
    begins = np.append(True, (line[1:] != line[:-1]) | (spans[1:, 0] > reach[:-1] + _TOUCH))
    first = np.flatnonzero(begins)
    last = np.append(first[1:], len(line)) - 1
    return line[first], np.stack([spans[first, 0], reach[last]]).T


def uncovered(count: int, line: Indices, spans: Numbers) -> tuple[Indices, Numbers]:
    """Return what merged stretches leave free of ``count`` lines, in order."""
    lines = np.arange(count)
    start = np.concatenate([spans[:, 1], np.zeros(count)])
    end = np.concatenate([spans[:, 0], np.ones(count)])
    of_start, of_end = np.concatenate([line, lines]), np.concatenate([line, lines])
    starts, ends = np.lexsort((start, of_start)), np.lexsort((end, of_end))
    free = np.stack([start[starts], end[ends]]).T
    some = free[:, 1] > free[:, 0] + _TOUCH
    return of_start[starts][some], free[some]
