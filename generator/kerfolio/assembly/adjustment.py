"""Placements adjusted to pairs of features that do not all agree.

The pieces may move and turn a little; how pairs miss each other changes linearly with that.
Placements that fit most pairs exactly and miss few are those of least absolute deviations: least
squares with weights 1/|residual|, repeated (iteratively re-weighted least squares).
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

import numpy as np
from numpy.typing import NDArray

from kerfolio.assembly.pairing import Pairing
from kerfolio.geometry.rigid import Rigid, Vector, between, cross

Numbers = NDArray[np.float64]

LEVER = 200.0
"""Turns count as the way, mm, of a point this far off."""

_RIDGE = 1e-9
_ROUNDS = 25
_STILL = 1e-7
_LEAST = 0.02


def columns_of(poses: Mapping[str, Rigid], root: str) -> dict[str, int]:
    """Return where each piece's six unknowns begin; the root stays where it is."""
    return {piece: 6 * index for index, piece in enumerate(p for p in poses if p != root)}


def least_deviations(
    poses: Mapping[str, Rigid], pairings: Sequence[Pairing], root: str
) -> dict[str, Rigid]:
    """Return placements in which the sum of all misses, mm, is least."""
    return _adjusted(poses, pairings, root, least=_LEAST)


def least_squares(
    poses: Mapping[str, Rigid], pairings: Sequence[Pairing], root: str
) -> dict[str, Rigid]:
    """Return placements in which the sum of the squares of all misses is least."""
    return _adjusted(poses, pairings, root, least=None)


def _adjusted(
    poses: Mapping[str, Rigid], pairings: Sequence[Pairing], root: str, least: float | None
) -> dict[str, Rigid]:
    made = dict(poses)
    column = columns_of(made, root)
    for _ in range(_ROUNDS):
        matrix, off = linearised(pairings, made, column)
        weight = np.ones_like(off)
        if least is not None:
            size = np.linalg.norm(off.reshape(-1, 3), axis=1)
            weight = np.repeat(1.0 / np.maximum(size, least), 3)
        step = -solved(matrix.T @ (matrix * weight[:, None]), matrix.T @ (weight * off))
        made = nudged(made, column, step)
        if float(np.abs(step).max(initial=0.0)) < _STILL:
            break
    return made


def solved(normal: Numbers, right: Numbers) -> Numbers:
    """Return the solution of normal equations; what they leave open is left alone."""
    held = normal.copy()
    held[np.diag_indices_from(held)] += _RIDGE
    return np.asarray(np.linalg.solve(held, right), dtype=np.float64)


def linearised(
    pairings: Sequence[Pairing], poses: Mapping[str, Rigid], column: Mapping[str, int]
) -> tuple[Numbers, Numbers]:
    """Return how residuals change with each piece's move and turn, and the residuals.

    Six a pair: three of the way from the second feature to the first, mm, three of the turn.
    """
    matrix = np.zeros((6 * len(pairings), 6 * len(column)))
    off = np.zeros(6 * len(pairings))
    for number, each in enumerate(pairings):
        rows = slice(6 * number, 6 * number + 3)
        turns = slice(6 * number + 3, 6 * number + 6)
        first, second = each.pair
        a, b = poses[each.a], poses[each.b]
        keep = kept(each, b)
        off[rows] = keep @ np.array(between(b.point(second.origin), a.point(first.origin)))
        off[turns] = LEVER * np.array(_turn_vector(a.after(first), b.after(second)))
        for piece, frame, sign in ((each.a, first, 1.0), (each.b, second, -1.0)):
            if piece not in column:
                continue
            at = column[piece]
            arm = between(poses[piece].origin, poses[piece].point(frame.origin))
            matrix[rows, at : at + 3] = sign * keep
            matrix[rows, at + 3 : at + 6] = sign * keep @ -_skew(arm) / LEVER
            matrix[turns, at + 3 : at + 6] = sign * np.eye(3)
    return matrix, off


def kept(pairing: Pairing, b: Rigid) -> Numbers:
    """Return the matrix that leaves out of a miss what the pieces may slide."""
    if not pairing.way.slides:
        return np.eye(3)
    x = np.array(b.vector(pairing.pair[1].x))
    return np.eye(3) - np.outer(x, x)


def nudged(
    poses: Mapping[str, Rigid], column: Mapping[str, int], step: Numbers
) -> dict[str, Rigid]:
    """Return placements moved by a step: of each piece three mm, then three turns at the lever."""
    return {
        piece: _nudged(pose, step[column[piece] : column[piece] + 6]) if piece in column else pose
        for piece, pose in poses.items()
    }


def _nudged(pose: Rigid, step: Numbers) -> Rigid:
    turned = step[3:] / LEVER
    angle = float(np.linalg.norm(turned))
    rotation = np.eye(3)
    if angle > 1e-15:
        k = _skew(_triple(turned / angle))
        rotation += np.sin(angle) * k + (1 - np.cos(angle)) * (k @ k)
    axes = rotation @ np.array([pose.x, pose.y, pose.z]).T
    x, y, z = (_triple(axes[:, i]) for i in range(3))
    return Rigid(_triple(np.array(pose.origin) + step[:3]), x, y, z)


def _turn_vector(one: Rigid, other: Rigid) -> Vector:
    """Return the small turn, radians, that takes the other frame to the first."""
    parts = [cross(other.x, one.x), cross(other.y, one.y), cross(other.z, one.z)]
    x, y, z = (math.fsum(axis) / 2 for axis in zip(*parts, strict=True))
    return x, y, z


def _skew(v: Vector) -> Numbers:
    return np.array([[0.0, -v[2], v[1]], [v[2], 0.0, -v[0]], [-v[1], v[0], 0.0]])


def _triple(values: Numbers) -> Vector:
    x, y, z = (float(v) for v in values)
    return x, y, z
