"""Where two posed panels meet: the areas of their faces that lie against each other."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kerfolio.geometry.facing import PosedPanel
from kerfolio.geometry.panel_faces import panel_faces
from kerfolio.geometry.patch import Patch, shared_patches
from kerfolio.geometry.rigid import dot

_AGAINST = -0.9999
"""Faces whose directions have no greater product than this lie against each other."""
_SUNK = -0.2
"""What presses into the other by no more than this, mm, lies against it, too."""
_LEAST = 4.0
"""Areas smaller than this, mm2, are no contact."""


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
    for a in one:
        level = dot(a.loops[0][0], a.normal)
        for b in other:
            if dot(a.normal, b.normal) > _AGAINST:
                continue
            gap = dot(b.loops[0][0], a.normal) - level
            if _SUNK <= gap <= room:
                mine, theirs = (tuple(shared_patches(*pair, _LEAST)) for pair in ((a, b), (b, a)))
                yield from zip(mine, theirs, strict=False)
