"""How good the saw diagrams are; run by hand with ``pytest -m bench -s``.

It prints a table: sheets used, the best known for three-stage guillotine cutting
(tests/data/guillotine2d), their ratio, the bound, and the seconds of processor time.
"""

from __future__ import annotations

from time import process_time

import pytest

from kerfolio.layouts.saw_search import bound, fewest_sheets
from tests.layouts.instances import known, saw_stock

MOST = {"fixed": 147, "rotatable": 140}
"""Totals of all instances that the search must not exceed."""


@pytest.mark.bench
@pytest.mark.parametrize("parts", ["fixed", "rotatable"])
def test_sheets_of_published_instances(parts: str) -> None:
    total = best_total = 0
    print(f"\n{parts:18}  ours  best  ratio  bound  settings  seconds")
    for name, row in known("guillotine2d").items():
        stock = saw_stock(name, rotatable=parts == "rotatable")
        start = process_time()
        sheets = fewest_sheets(stock)
        spent = process_time() - start
        ours, best = len(sheets), int(row[f"best_three_stage_{parts}"])
        settings = sum(sheet.settings for sheet in sheets)
        print(
            f"{name:18}  {ours:4d}  {best:4d}  {ours / best:5.3f}  {bound(stock):5d}  "
            f"{settings:8d}  {spent:7.2f}"
        )
        total, best_total = total + ours, best_total + best
    print(f"{'all':18}  {total:4d}  {best_total:4d}  {total / best_total:5.3f}")
    assert total <= MOST[parts]
