"""What a save costs while watching: one size changed in one plan of the sample workshop.

Run by hand with ``pytest -m bench -n 0 -s``. Seconds are of the clock, from the save; shares are of
what the first look at that plan and its first proof take in the same process.
"""

from __future__ import annotations

import shutil
import time
from dataclasses import dataclass
from pathlib import Path

import pytest

from kerfolio.watching.prover import Prover
from kerfolio.watching.seen import Seen
from kerfolio.watching.watch import Stage, Watch
from tests.conftest import SAMPLE

EDITS = {
    "desk-rack": ("runner: 50", "runner: 51"),
    "harbour-stool": ("height - 95 ", "height - 96 "),
    "potting-bench": ("low: 250", "low: 251"),
    "window-shelf": ("long: 900", "long: 890"),
}
LOOK, PROOF = 0.8, 0.5
"""Shares that all four together may take: the picture of a look, the findings of a proof."""


class Timed(Stage):
    """A stage that keeps when what was shown."""

    def __init__(self) -> None:
        super().__init__()
        self.shown: list[tuple[float, Seen]] = []

    def show(self, seen: Seen) -> Seen:
        made = super().show(seen)
        self.shown.append((time.monotonic(), made))
        return made


@dataclass
class Took:
    """Seconds from a save until a part was drawn anew, the plan proved, all laid out."""

    drawn: float
    proved: float
    all: float


def round_of(watch: Watch, stage: Timed) -> Took:
    """Look at what was saved and prove it."""
    stage.shown.clear()
    began = time.monotonic()
    watch.look()
    watch.finish(lambda: False)
    states = [(at - began, plan) for at, seen in stage.shown for plan in seen.plans]
    drawn = next(at for at, plan in states if not plan.is_proven)
    return Took(
        drawn=drawn,
        proved=next(at for at, plan in states if at > drawn and plan.is_proven),
        all=states[-1][0],
    )


@pytest.mark.bench
def test_what_a_save_costs(tmp_path: Path) -> None:
    sums = [0.0] * 4
    for name, (old, new) in EDITS.items():
        shop = tmp_path / name
        shutil.copytree(SAMPLE, shop, ignore=shutil.ignore_patterns(".kerfolio", "site"))
        plan = shop / "plans" / name / "plan.yaml"
        text = plan.read_text("utf-8")
        assert old in text
        with Prover(shop) as prover:
            stage = Timed()
            watch = Watch(folder=shop, stage=stage, prove=prover, only=name)
            first = round_of(watch, stage)
            plan.write_text(text.replace(old, new), "utf-8")
            after = round_of(watch, stage)
        print(
            f"\n{name}: drawn after {after.drawn:.2f} s (first {first.drawn:.2f}), proved "
            f"{after.proved:.2f} s (first {first.proved:.2f}), laid out {after.all:.2f} s"
        )
        seconds = (first.drawn, after.drawn, first.proved, after.proved)
        sums = [a + b for a, b in zip(sums, seconds, strict=True)]
    print(f"in all: drawn {sums[1] / sums[0]:.0%}, proved {sums[3] / sums[2]:.0%} of the first")
    assert sums[1] <= LOOK * sums[0]
    assert sums[3] <= PROOF * sums[2]
