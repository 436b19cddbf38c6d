"""Linear equations answered with as few unknowns as will do."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np

_LEAST = 1e-6
_CLOSED = 1e-4


def basic_solution(
    rows: Sequence[Mapping[int, float]], wanted: Sequence[float], count: int
) -> tuple[tuple[float, ...], bool]:
    """Return a solution in ``count`` unknowns, and whether it answers all equations.

    Each row holds the factors of its unknowns by their numbers. An unknown is used only as far as
    the earlier ones do not do: by Gauss-Jordan elimination, column by column in their order, all
    that is left free is 0.
    """
    matrix = np.zeros((len(rows), count + 1))
    for place, (row, value) in enumerate(zip(rows, wanted, strict=True)):
        for unknown, factor in row.items():
            matrix[place, unknown] += factor
        matrix[place, -1] = value
    pivots: list[int] = []
    for column in range(count):
        at = len(pivots)
        if at == len(matrix):
            break
        best = at + int(np.argmax(np.abs(matrix[at:, column])))
        if abs(matrix[best, column]) < _LEAST:
            continue
        matrix[[at, best]] = matrix[[best, at]]
        matrix[at] /= matrix[at, column]
        others = [i for i in range(len(matrix)) if i != at]
        matrix[others] -= np.outer(matrix[others, column], matrix[at])
        pivots.append(column)
    found = [0.0] * count
    for at, column in enumerate(pivots):
        found[column] = float(matrix[at, -1])
    left = np.abs(matrix[len(pivots) :, -1])
    return tuple(found), bool((left < _CLOSED).all())
