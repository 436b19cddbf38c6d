"""Where lettering may stand on a part: in its material, off its recesses, off other lettering."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from functools import lru_cache

from kerfolio.drawing.extent import apart
from kerfolio.drawing.lettering import Box
from kerfolio.geometry.boolean import contains, intersection, intersects
from kerfolio.geometry.contour import Contour, Region
from kerfolio.geometry.measure import area
from kerfolio.geometry.shapes import rectangle
from kerfolio.settling.settled import SettledPart


@dataclass(frozen=True, slots=True)
class Ground:
    """A part as it is at every end of a range: a place that is free is free at all of them.

    ``shapes`` are its plain shapes, ``common`` what their outlines share, with the openings of the
    first; ``recesses`` what is cut to a depth, ``taken`` boxes in use, ``seams`` boxes along which
    paper is cut.
    """

    shapes: tuple[Region, ...]
    recesses: tuple[Contour, ...]
    common: Region
    taken: list[Box] = field(default_factory=list)
    seams: tuple[Box, ...] = ()

    @classmethod
    def of(
        cls, parts: Iterable[SettledPart], taken: Iterable[Box] = (), seams: Iterable[Box] = ()
    ) -> Ground:
        """Return the ground of one part at the ends of a range, what is the same counted once."""
        parts = tuple(parts)
        recesses = (
            contour
            for part in parts
            for cut in part.cuts
            if cut.depth is not None
            for contour in cut.contours
        )
        shapes = tuple(dict.fromkeys(part.plain for part in parts))
        return cls(
            shapes, tuple(dict.fromkeys(recesses)), _common(shapes), list(taken), tuple(seams)
        )

    @property
    def blocked(self) -> tuple[Contour, ...]:
        """What lettering keeps clear of within the common outline."""
        openings = (each for shape in self.shapes[1:] for each in shape.openings)
        boxes = (rectangle(*box) for box in (*self.taken, *self.seams))
        return (*self.recesses, *dict.fromkeys(openings), *boxes)

    def is_free(self, box: Box) -> bool:
        """Tell whether a box lies in the material without covering anything."""
        if not all(apart(box, other) for other in (*self.taken, *self.seams)):
            return False
        frame = rectangle(*box)
        if not all(contains(shape, frame) for shape in self.shapes):
            return False
        return not any(intersects(recess, frame) for recess in self.recesses)


@lru_cache(maxsize=256)
def _common(shapes: tuple[Region, ...]) -> Region:
    """Templates and sheets are lettered for the same range."""
    region, *others = shapes
    for each in others:
        if each.outer != region.outer:
            region = max(intersection(region, [each.outer]), key=area, default=region)
    return region
