"""Whether rectangles can be cut apart by straight cuts that each go from edge to edge."""

from __future__ import annotations

from collections.abc import Sequence

Box = tuple[float, float, float, float]
"""left, bottom, right, top in mm."""

_TOLERANCE = 1e-4


def is_guillotine(boxes: Sequence[Box], kerf: float = 0.0) -> bool:
    """Tell whether recursive cuts across the whole of what is left set every box free.

    A cut takes ``kerf`` mm and may run through no box. Boxes that overlap are never set free. To
    divide where it is possible never spoils what is possible later, so one order tells for all.
    """
    if len(boxes) <= 1:
        return True
    for low, high in ((0, 2), (1, 3)):
        groups = _groups(boxes, low, high, kerf)
        if len(groups) > 1:
            return all(is_guillotine(group, kerf) for group in groups)
    return False


def _groups(boxes: Sequence[Box], low: int, high: int, kerf: float) -> list[list[Box]]:
    """Divide boxes along one axis at every gap that a cut fits into."""
    groups: list[list[Box]] = []
    reach = 0.0
    for box in sorted(boxes, key=lambda each: each[low]):
        if groups and box[low] < reach + kerf - _TOLERANCE:
            groups[-1].append(box)
            reach = max(reach, box[high])
        else:
            groups.append([box])
            reach = box[high]
    return groups
