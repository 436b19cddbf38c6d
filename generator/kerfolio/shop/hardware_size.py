"""How large hardware is that one looks at or lays beside a drawing: heads, flats, rims.

What an entry of the stock states goes before what is listed here. Bolts, washers and nuts are
those of ISO 4762, ISO 7089, ISO 4032 and ISO 7040, from memory; inch ones, and sizes that no list
holds, in the proportions of their neighbours. Heads of wood screws are twice as wide as their
shanks, countersunk by 90 degrees; inserts, tee nuts and barrel nuts differ by maker, so that what
is drawn of them is only about right (common practice, no single source).
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from kerfolio.model.stock import HardwareStock

_SOCKET_HEADS: Mapping[float, tuple[float, float, float]] = {
    3.0: (5.5, 3.0, 2.5),
    4.0: (7.0, 4.0, 3.0),
    5.0: (8.5, 5.0, 4.0),
    6.0: (10.0, 6.0, 5.0),
    8.0: (13.0, 8.0, 6.0),
    10.0: (16.0, 10.0, 8.0),
    12.0: (18.0, 12.0, 10.0),
}
"""Thread: head's diameter, its height, the socket's width across flats (ISO 4762, memory)."""

_WASHERS: Mapping[float, tuple[float, float, float]] = {
    3.0: (7.0, 0.5, 3.2),
    4.0: (9.0, 0.8, 4.3),
    5.0: (10.0, 1.0, 5.3),
    6.0: (12.0, 1.6, 6.4),
    8.0: (16.0, 1.6, 8.4),
    10.0: (20.0, 2.0, 10.5),
    12.0: (24.0, 2.5, 13.0),
}
"""Thread: outer diameter, thickness, hole (ISO 7089, memory)."""

_NUTS: Mapping[float, tuple[float, float, float]] = {
    3.0: (5.5, 2.4, 4.0),
    4.0: (7.0, 3.2, 5.0),
    5.0: (8.0, 4.7, 5.0),
    6.0: (10.0, 5.2, 6.0),
    8.0: (13.0, 6.8, 8.0),
    10.0: (16.0, 8.4, 10.0),
    12.0: (18.0, 10.8, 12.0),
}
"""Thread: width across flats, height (ISO 4032), height of a lock nut (ISO 7040), memory."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HardwareSize:
    """What is drawn of a piece of hardware, mm; 0 where it has none.

    ``wide`` and ``high`` are of the head, or of a washer or a nut itself (over its flats, along its
    bolt); ``key`` is the socket's width across flats, ``hole`` what goes through the middle,
    ``length`` what lies behind the head, ``plain`` how much of that has no thread.
    """

    thread: float
    wide: float
    high: float
    key: float = 0.0
    hole: float = 0.0
    length: float = 0.0
    plain: float = 0.0


def hardware_size(item: HardwareStock) -> HardwareSize | None:
    """Return how large a piece is, None where its entry does not say enough to draw it."""
    thread, length = item.thread, item.length
    if thread is None:
        return None
    if item.kind == "bolt" and length:
        wide, high, key = _listed(_SOCKET_HEADS, thread)
        wide, high = item.head_diameter or wide, item.head_height or high
        threaded = 2 * thread + 12  # ISO 888, memory
        plain = max(0.0, length - threaded)
        return HardwareSize(
            thread=thread, wide=wide, high=high, key=key, length=length, plain=plain
        )
    if item.kind in ("screw", "connector") and length:
        wide = item.head_diameter or (2 * thread if item.kind == "screw" else 1.4 * thread)
        plain = length / 3 if length > 8 * thread else 0.0
        key = 0.45 * wide
        return HardwareSize(
            thread=thread, wide=wide, high=(wide - thread) / 2, key=key, length=length, plain=plain
        )
    if item.kind == "washer":
        wide, high, hole = _listed(_WASHERS, thread)
        wide, high = item.outside or wide, item.height or high
        return HardwareSize(thread=thread, wide=wide, high=high, hole=hole)
    if item.kind in ("nut", "lock-nut"):
        wide, plain, locking = _listed(_NUTS, thread)
        high = item.height or (plain if item.kind == "nut" else locking)
        wide = item.outside or wide
        return HardwareSize(thread=thread, wide=wide, high=high, hole=thread)
    if item.kind == "dowel" and length:
        return HardwareSize(thread=thread, wide=thread, high=length, length=length)
    return _fitting(item, thread)


def _fitting(item: HardwareStock, thread: float) -> HardwareSize | None:
    if item.kind == "barrel-nut":
        wide = item.clearance or 5 * thread / 3
        return HardwareSize(
            thread=thread, wide=wide, high=item.length or 7 * thread / 3, hole=thread
        )
    if item.kind == "insert" and item.pilot:
        high = item.length or 2 * thread
        return HardwareSize(thread=thread, wide=item.pilot + 2.0, high=high, hole=thread)
    if item.kind == "tee-nut":
        barrel = item.clearance or 4 * thread / 3
        return HardwareSize(
            thread=thread, wide=3 * thread, high=1.5, hole=thread, length=1.5 * thread, plain=barrel
        )
    if item.kind == "shelf-pin":
        return HardwareSize(thread=thread, wide=1.4 * thread, high=8.0, length=10.0)
    return None


def _listed(
    table: Mapping[float, tuple[float, float, float]], thread: float
) -> tuple[float, float, float]:
    """Return a size's row, of one in between what its nearest neighbour has in proportion."""
    near = min(table, key=lambda each: (abs(each - thread), each))
    a, b, c = table[near]
    share = thread / near
    return a * share, b * share, c * share
