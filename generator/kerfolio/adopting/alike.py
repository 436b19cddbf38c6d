"""Pieces of one shape, turned or turned over, as one part with a count."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from kerfolio.adopting.nested import Cutting
from kerfolio.adopting.shape import Shape
from kerfolio.adopting.wedge_shape import wedge_shape
from kerfolio.geometry.arc import edges
from kerfolio.geometry.canonical import tidy
from kerfolio.geometry.contour import Point, Region
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.same_shape import Placing, placing_of
from kerfolio.geometry.transform import moved, turned

_LEVEL = 0.02


@dataclass(frozen=True, slots=True, kw_only=True)
class Draft:
    """A part: its shape with the lower left corner of its box at 0,0, and its pieces.

    ``placings`` say how each piece lies in the drawing, ``cuttings`` are the pieces as drawn.
    """

    outline: Shape
    openings: tuple[Shape, ...]
    cuttings: tuple[Cutting, ...]
    placings: tuple[Placing, ...]

    @property
    def region(self) -> Region:
        """Its shape."""
        return Region(self.outline.contour, tuple(each.contour for each in self.openings))

    @property
    def size(self) -> tuple[float, float]:
        """Its width and height, mm."""
        box = bounds(self.outline.contour)
        return box.width, box.height


def drafts(
    cuttings: Sequence[Cutting], is_one_sided: Callable[[Cutting], bool]
) -> tuple[Draft, ...]:
    """Return the parts that pieces are, in the order of the drawing.

    A piece that is cut from one side alone (``is_one_sided``) is never the same turned over.
    """
    found: list[Draft] = []
    for cutting in cuttings:
        region = _region(cutting)
        for index, draft in enumerate(found):
            over = not is_one_sided(cutting)
            placing = placing_of(draft.region, region, over=over)
            if placing is not None and _alike_in_names(draft, cutting):
                found[index] = replace(
                    draft,
                    cuttings=(*draft.cuttings, cutting),
                    placings=(*draft.placings, placing),
                )
                break
        else:
            found.append(_draft(cutting))
    return tuple(found)


def _alike_in_names(draft: Draft, cutting: Cutting) -> bool:
    """Tell whether neither has lines of its own that the other lacks."""
    return len(draft.cuttings[0].lines) == len(cutting.lines)


def _region(cutting: Cutting) -> Region:
    return Region(cutting.outline.contour, tuple(each.contour for each in cutting.openings))


def _draft(cutting: Cutting) -> Draft:
    """Return a part of one piece, its longest straight edge level or upright; a wedge stands."""
    shape = wedge_shape(cutting.outline.contour) if not cutting.openings else None
    spin = shape.turn if shape else _spin(cutting)
    turned_box = bounds(turned(cutting.outline.contour, spin))
    shift = (0.0 - turned_box.x0, 0.0 - turned_box.y0)

    def made(shape: Shape, *, clockwise: bool) -> Shape:
        contour = moved(turned(shape.contour, spin), *shift)
        return replace(shape, contour=tidy(contour, clockwise=clockwise))

    return Draft(
        outline=made(cutting.outline, clockwise=False),
        openings=tuple(made(each, clockwise=True) for each in cutting.openings),
        cuttings=(cutting,),
        placings=(_back(spin, shift),),
    )


def _back(spin: float, shift: Point) -> Placing:
    """Return the placing that undoes a turn and then a move."""
    angle = math.radians(-spin)
    x, y = -shift[0], -shift[1]
    cos, sin = math.cos(angle), math.sin(angle)
    return Placing(False, 0.0 - spin, (x * cos - y * sin, x * sin + y * cos))


def _spin(cutting: Cutting) -> float:
    """Return the turn, degrees, that makes most of its straight edges level or upright.

    It is 0 where as much is so already, and 45 at most either way.
    """
    amount: dict[float, float] = {}
    shapes = (cutting.outline, *cutting.openings)
    for edge in (each for shape in shapes for each in edges(shape.contour)):
        if not edge.bulge:
            (ax, ay), (bx, by) = edge.start, edge.end
            off = round((math.degrees(math.atan2(by - ay, bx - ax)) + 45) % 90 - 45, 2)
            amount[off] = amount.get(off, 0.0) + math.dist(edge.start, edge.end)
    level = sum(size for off, size in amount.items() if abs(off) < _LEVEL)
    best = max(amount, key=lambda off: (amount[off], -abs(off)), default=0.0)
    return 0.0 if amount.get(best, 0.0) <= level * 1.001 else 0.0 - best
