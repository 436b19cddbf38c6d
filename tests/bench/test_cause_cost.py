"""What looking for the cause adds to proving, as a ratio; by hand with ``pytest -m bench -n 0 -s``.

A plan is proved as drawn, once as it is and once without looking for causes, which then names only
the joints that are off; processor time of the one is divided by that of the other. Of a sound plan
nothing is looked for, so that the ratio is 1 but for noise; of one with a fault it may take several
times as long as proving it without, and less than a hundred times.

Measured for the stool: sound 0.9, one slot 2 mm aside 2.6 times. The cost of a fault grows with the
joints; asking of a slip only whether all loops close makes it a fifth of what walking them to the
end took, for two copies of a slot exchanged in the workshop table (103 s of processor time, then
20).
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from time import process_time
from typing import Any

import pytest

from kerfolio.assembly import poses
from kerfolio.proving.prove import prove_plan
from tests.assembly.written import at_one_thickness, changed, text
from tests.bench.test_assembly import OFF
from tests.plans import workshop

FAULTS = {
    "stool": OFF["stool"],
    "cupboard": ("into: side-right.shelf-housings", "into: side-left.shelf-housings"),
    "workshop-table": OFF["workshop-table"],
}
ROUNDS = 3
MOST = 100


@contextmanager
def without_causes(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """Leave the joints that are off unexplained, and nothing tried where pieces are in others."""
    usual = poses.hearing_of

    def deaf(*given: Any, **named: Any) -> Any:
        return replace(usual(*given, **named), explains=False)

    with monkeypatch.context() as patch:
        patch.setattr(poses, "hearing_of", deaf)
        patch.setattr("kerfolio.proving.way_round._ways", lambda *_: ())
        patch.setattr("kerfolio.proving.way_round._misplaced", lambda *_: ())
        yield


def seconds(plan: str) -> float:
    """Return the least processor time of a few rounds of proving a plan's text at one thickness."""
    found = workshop(at_one_thickness(plan))
    times = []
    for _ in range(ROUNDS):
        start = process_time()
        prove_plan(found.plans[0], found.stock)
        times.append(process_time() - start)
    return min(times)


@pytest.mark.bench
@pytest.mark.parametrize("name", FAULTS)
def test_share_of_looking_for_causes(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    seconds(text("stool"))  # libraries are loaded once
    ratios = []
    for plan in (text(name), changed(name, FAULTS[name])):
        whole = seconds(plan)
        with without_causes(monkeypatch):
            ratios.append(whole / seconds(plan))
    print(f"\n{name}: sound {ratios[0]:.2f}, with a fault {ratios[1]:.1f} times as long")
    assert ratios[0] < 2.0
    assert ratios[1] < MOST
