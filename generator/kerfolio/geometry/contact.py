"""Where two posed panels meet: the areas of their faces that lie against each other."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache

import numpy as np

from kerfolio.geometry.facing import PosedPanel
from kerfolio.geometry.panel_faces import panel_faces
from kerfolio.geometry.patch import Patch, shared_patches

_AGAINST = -0.9999
"""Faces whose directions have no greater product than this lie against each other."""
_SUNK = -0.2
"""What presses into the other by no more than this, mm, lies against it, too."""
_LEAST = 4.0
"""Areas smaller than this, mm2, are no contact."""


@lru_cache(maxsize=128)
def faces_of(posed: PosedPanel) -> tuple[Patch, ...]:
    """Return the faces of a posed panel in the world."""
    made = panel_faces(posed.panel)
    found = []
    bounds = [*made.loops.tolist(), len(made.points)]
    for face, normal in enumerate(made.normals.tolist()):
        loops = tuple(
            tuple(
                posed.pose.point(tuple(at))
                for at in made.points[bounds[i] : bounds[i + 1]].tolist()
            )
            for i in range(made.faces[face], made.faces[face + 1])
        )
        found.append(Patch(loops, posed.pose.vector(tuple(normal))))
    return tuple(found)


def contacts(
    one: Sequence[Patch], other: Sequence[Patch], room: float
) -> Iterator[tuple[Patch, Patch]]:
    """Yield pairs of patches, on the faces of one solid and of another, that meet.

    Two faces meet where they look at each other over at most ``room`` mm, the play of a joint.
    """
    if not one or not other:
        return
    mine, theirs = (np.array([each.normal for each in faces]) for faces in (one, other))
    spots, their_spots = (np.array([each.loops[0][0] for each in faces]) for faces in (one, other))
    gaps = mine @ their_spots.T - np.sum(mine * spots, axis=1)[:, np.newaxis]
    against = (mine @ theirs.T < _AGAINST) & (gaps >= _SUNK) & (gaps <= room)
    for i, j in np.argwhere(against).tolist():
        pair = one[i], other[j]
        found = (tuple(shared_patches(*each, _LEAST)) for each in (pair, pair[::-1]))
        yield from zip(*found, strict=False)
