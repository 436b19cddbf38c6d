"""The upright boxes of posed panels: who may meet whom, and how far to draw apart."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from kerfolio.geometry.panel_solid import Posed

Boxes = NDArray[np.float64]
"""Boxes by number: [:, 0] the least and [:, 1] the greatest x, y, z, mm."""

_TOUCH = 1e-6
"""Boxes that share no more than this, mm, only touch."""


def boxes(panels: Sequence[Posed]) -> Boxes:
    """Return the box of each panel in the world."""
    made = np.zeros((len(panels), 2, 3))
    for number, each in enumerate(panels):
        slabs = each.solid.slabs
        axes = np.array([each.pose.x, each.pose.y, each.pose.z])
        flat = each.solid.corners @ axes[:2]
        heights = np.array([[slabs[0].low], [slabs[-1].high]]) * axes[2]
        made[number, 0] = flat.min(axis=0) + heights.min(axis=0)
        made[number, 1] = flat.max(axis=0) + heights.max(axis=0)
        made[number] += np.array(each.pose.origin)
    return made


def near_pairs(given: Boxes) -> list[tuple[int, int]]:
    """Return the pairs of boxes that share space, the lower number first, in order."""
    low, high = given[:, 0], given[:, 1]
    apart = np.minimum(high[:, None], high[None]) - np.maximum(low[:, None], low[None])
    one, other = np.nonzero(np.triu(np.all(apart > _TOUCH, axis=2), 1))
    return list(zip(one.tolist(), other.tolist(), strict=True))
