"""Which sheet each part is cut from: as thick as the slots that its tabs go into are wide."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kerfolio.adopting.recognised import AS_LONG, Recognised
from kerfolio.adopting.thicknesses import Thickness


def sheets_of(
    part: Recognised, every: Sequence[Recognised], sheets: Sequence[Thickness]
) -> tuple[int, ...]:
    """Return the numbers of the sheets that a part may be cut from, the likeliest first.

    Its tabs go into slots as wide as it is thick; tabs that come through its own slots are as deep.
    Where nothing tells it is the first.
    """
    votes = [sum(_votes(part, every, sheet)) for sheet in sheets]
    likely = sorted(range(len(sheets)), key=lambda i: (-votes[i], i))
    return tuple(i for i in likely if votes[i] > 0) or (0,)


def _votes(part: Recognised, every: Sequence[Recognised], sheet: Thickness) -> Iterator[float]:
    others = [each for each in every if each is not part]
    for tab in part.tabs:
        widths = [s.width for o in others for s in o.slots if _is_long_enough(tab.width, s.length)]
        if widths:
            yield sum(sheet.takes(width) for width in widths) / len(widths)
    for slot in part.slots:
        depths = [t.depth for o in others for t in o.tabs if _is_long_enough(t.width, slot.length)]
        if depths:
            yield sum(abs(deep - sheet.mm) <= 0.3 for deep in depths) / len(depths)
    for row in part.fingers:
        depths = [
            other.depth
            for each in others
            for other in each.fingers
            if other.count == row.count and abs(other.pitch - row.pitch) <= AS_LONG
        ]
        if depths:
            yield sum(abs(deep - sheet.mm) <= 0.3 for deep in depths) / len(depths)


def _is_long_enough(width: float, long: float) -> bool:
    return -0.1 <= long - width <= AS_LONG
