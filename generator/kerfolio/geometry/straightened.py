"""Stray nodes of a drawn line taken away: nodes on a straight line, and doubled ones."""

from __future__ import annotations

from math import dist

from kerfolio.geometry.canonical import off_line
from kerfolio.geometry.contour import Contour, Vertex


def straightened(contour: Contour, within: float = 0.004) -> Contour:
    """Return a closed contour without the nodes that lie ``within`` so many mm of a straight line.

    So a node is left out where the line from the last one kept to the next passes all that were
    left out as near.
    """
    vertices = contour.vertices
    kept: list[Vertex] = [vertices[0]]
    idle: list[Vertex] = []
    for vertex in (*vertices[1:], vertices[0]):
        if dist(vertex[:2], (idle[-1] if idle else kept[-1])[:2]) < within and vertex[2] == 0:
            continue
        straight = kept[-1][2] == 0 and all(each[2] == 0 for each in idle)
        if idle and not (
            straight and all(off_line(p[:2], kept[-1][:2], vertex[:2]) < within for p in idle)
        ):
            kept.append(idle[-1])
            idle.clear()
        idle.append(vertex)
    return Contour(tuple(kept))
