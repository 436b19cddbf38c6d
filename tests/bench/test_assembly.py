"""What putting together costs as plans grow; run by hand with ``pytest -m bench -s``.

Seconds of processor time: `poses` walks the joints at three thicknesses, `overlaps` looks there
for pieces that need the same space, `blocking` pushes every piece past every other, `order` goes
through the maker's steps, `blame` is what one slot 2 mm aside costs more. Poses and overlaps are
to stay below 2 s at 50 pieces. Pairs of pieces that lie near each other grow about as the joints
do, pairs to push past each other as the square of the pieces.
"""

from __future__ import annotations

from collections.abc import Callable
from time import process_time
from typing import Any

import pytest

from kerfolio.assembly.blocking import blocking
from kerfolio.assembly.building import build_of
from kerfolio.assembly.go_together import clashes
from kerfolio.assembly.order import verify
from kerfolio.assembly.poses import put_together
from kerfolio.settling.settled import SettledPlan
from tests.assembly.written import at_three, changed, settled, text

OFF = {
    "stool": ("slot-b: {slot: {at: [wide - 90, 330]", "slot-b: {slot: {at: [wide - 90, 328]"),
    "egg-crate": (
        "{notch: cross.3.crossings.4, with: strip.4.crossings.3}",
        "{notch: cross.3.crossings.4, with: strip.4.crossings.4}",
    ),
    "workshop-table": ("tray-2-front: {pocket: {at: [520,", "tray-2-front: {pocket: {at: [522,"),
}


def timed(work: Callable[[], Any]) -> tuple[float, Any]:
    start = process_time()
    made = work()
    return process_time() - start, made


def costs(name: str) -> dict[str, float]:
    """Return the seconds of each part of the work on a plan, and how large it is."""
    low, drawn, high = at_three(text(name))
    poses, together = timed(lambda: _poses(low, drawn, high))
    overlaps, _ = timed(lambda: [clashes(each.assembled) for each in together])
    assembled = together[0].assembled
    pushing, graphs = timed(lambda: blocking(assembled))
    steps = [[each.name for each in step.add] for step in drawn.plan.steps]
    order, _ = timed(lambda: verify(assembled, steps, graphs))
    off = settled(changed(name, OFF[name]))
    blame, _ = timed(lambda: put_together(off))
    plain, _ = timed(lambda: put_together(drawn))
    whole, _ = timed(lambda: build_of(drawn, [low, drawn, high]))
    return {
        "pieces": len(assembled.pieces),
        "joints": len(drawn.joints),
        "poses": poses,
        "overlaps": overlaps,
        "blocking": pushing,
        "order": order,
        "whole": whole,
        "blame": blame - plain,
    }


def _poses(low: SettledPlan, drawn: SettledPlan, high: SettledPlan) -> list[Any]:
    first = put_together(drawn)
    return [first, put_together(low, first), put_together(high, first)]


@pytest.mark.bench
def test_growth_with_the_pieces() -> None:
    costs("stool")  # libraries are loaded once
    found = {name: costs(name) for name in OFF}
    heads = next(iter(found.values()))
    print("\nplan            ", "  ".join(f"{head:>8}" for head in heads))
    for name, each in found.items():
        shown = (
            f"{value:8d}" if isinstance(value, int) else f"{value:8.2f}" for value in each.values()
        )
        print(f"{name:16}", "  ".join(shown))
    small, large = found["egg-crate"], found["workshop-table"]
    growth = {head: large[head] / small[head] for head in ("pieces", "joints", "poses", "blocking")}
    print("table to crate: ", ", ".join(f"{head} x {value:.1f}" for head, value in growth.items()))
