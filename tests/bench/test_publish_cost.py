"""What a publish costs as the ladder of thicknesses grows; run by hand with ``pytest -m bench -s``.

It prints a table: seconds of processor time and the ratio to a single thickness. Each thickness is
a whole set of cut files and templates, so the growth to expect is linear, less what all share.
"""

from __future__ import annotations

from pathlib import Path
from time import process_time

import pytest

from kerfolio.publishing.build import Request, publish
from tests.plans import RACK, lay_down

LADDERS = {1: "17.6", 2: "17.6 to 17.8 by 0.2", 4: "17.6 to 18.2 by 0.2", 8: "17.2 to 18.6 by 0.2"}


def cost_of(folder: Path, ladder: str) -> float:
    """Publish the probe rack for a ladder; return the processor time in seconds."""
    shop = lay_down(folder / "shop", RACK.replace("17.6 to 18.2 by 0.2", ladder))
    request = Request(folder=shop, out=folder / "site", supporters_out=folder / "handed")
    start = process_time()
    outcome = publish(request)
    spent = process_time() - start
    assert outcome.published
    return spent


@pytest.mark.bench
def test_growth_with_the_ladder(tmp_path: Path) -> None:
    cost_of(tmp_path / "warm-up", "17.6")  # fonts and libraries are loaded once
    costs = {n: cost_of(tmp_path / f"{n}", ladder) for n, ladder in LADDERS.items()}
    print("\nthicknesses  seconds  ratio")
    for count, cost in costs.items():
        print(f"{count:11d}  {cost:7.2f}  {cost / costs[1]:5.2f}")
