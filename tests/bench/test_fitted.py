"""Fitted files of six plans at two hundred points each: filled in by both programs, drawn afresh.

    .venv/bin/pytest -m bench -n 0 -s tests/bench/test_fitted.py

Two sheets, inches, drawn parts, oblique panels, pockets and fingers are among the plans. It prints
how long fitting takes, how large the data is and how many numbers are a step off.
"""

from __future__ import annotations

import zlib
from functools import cache
from time import process_time

import pytest

from kerfolio.basis.place import Place
from kerfolio.fitted.fill import fill
from kerfolio.fitted.writing import fitted_json
from kerfolio.layouts.thawing import thaw
from kerfolio.model.workshop import Workshop
from kerfolio.reading.workshop import read_workshop
from kerfolio.settling.making import set_of
from kerfolio.settling.settle import settle
from kerfolio.settling.variant import drawn_variant
from kerfolio.writing.formats import formats_in
from tests.conftest import SAMPLE
from tests.fitted.test_fill import answers
from tests.publishing.fitted_plans import INCHES, Fitting, compared, fitting, fitting_of, points_of

POINTS = 200
PLANS = ("desk-rack", "harbour-stool", "potting-bench", "tool-tote", "window-shelf", "inch box")


@cache
def sample() -> Workshop:
    found, findings = read_workshop(SAMPLE)
    assert found is not None, findings
    return found


def fitted(name: str) -> Fitting:
    if name == "inch box":
        return fitting(INCHES)
    shop = sample()
    plan = next(each for each in shop.plans if each.name == name)
    variant = drawn_variant(plan, shop.stock)
    assert variant is not None
    settled, findings = settle(plan, shop.stock, variant)
    assert settled is not None, findings
    text = (SAMPLE / "plans" / name / "layout.json").read_text("utf-8")
    layout, wrong = thaw(text, Place("layout.json"))
    assert layout is not None, wrong
    formats = formats_in(shop.identity.cut_files_of(plan))
    return fitting_of(set_of(settled), layout, formats, shop.identity.unit_for(plan))


@pytest.mark.bench
@pytest.mark.parametrize("name", PLANS)
def test_files_filled_in_are_those_drawn_afresh(name: str) -> None:
    start = process_time()
    case = fitted(name)
    took, data = process_time() - start, fitted_json(case.fitted)
    points = list(points_of(case.fitted, POINTS))
    found = [compared(case, at) for at in points]
    off, numbers = sum(each.off for each in found), sum(each.numbers for each in found)
    print(
        f"\n{name}: fitted in {took:.1f} s, {len(data) // 1000} kB of data, "
        f"{len(zlib.compress(data.encode())) // 1000} kB deflated; {off} of {numbers} numbers at "
        f"{len(points)} points a step off"
    )
    assert [each.wrong for each in found] == [()] * len(points)
    few = points[:20]
    for at, files in zip(few, answers(case.fitted, few), strict=True):
        assert [(each["name"], each["text"]) for each in files] == list(fill(case.fitted, at))
