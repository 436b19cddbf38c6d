"""How good the cut lists of boards are; run by hand with ``pytest -m bench -s``.

It prints a table: boards used, the known optimum (Falkenauer 1996, tests/data/boards1d), the bound
that was proven, and the seconds of processor time.
"""

from __future__ import annotations

from time import process_time

import pytest

from kerfolio.layouts.boards import cut_boards
from tests.layouts.instances import board_pieces, known


@pytest.mark.bench
def test_boards_of_published_instances() -> None:
    print("\ninstance      ours  best  ratio  bound  seconds")
    for name, row in known("boards1d").items():
        pieces, length = board_pieces(name)
        start = process_time()
        plan = cut_boards(pieces, [length], kerf=0.0)
        spent = process_time() - start
        ours, best = len(plan.boards), int(row["best_known_boards"])
        bound = round(plan.bound / length)
        print(f"{name:12}  {ours:4d}  {best:4d}  {ours / best:5.3f}  {bound:5d}  {spent:7.2f}")
        assert ours == best
