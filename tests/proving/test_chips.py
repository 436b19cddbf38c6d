"""Chip loads against the published ranges of the library; a clean trial of the maker outranks them.

Feed = speed x flutes x chip load (definition). The ranges checked are those of the shipped tables.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from kerfolio.model.outcome import Grade, Mark, Outcome
from kerfolio.model.statement import Named
from kerfolio.model.stock import MACHINES
from kerfolio.model.trial import Trial
from kerfolio.proving.prove import prove_plan
from kerfolio.shop.chip_load import chip_ranges
from tests.plans import workshop
from tests.proving.two_panels import plan_text

SPEED = 18000


def text(feed: float, passes: str = "[6, rest]") -> str:
    setting = (
        f"cutter: compression-6, speed: {SPEED} rpm, feed: {feed:.1f} mm/min, passes: {passes}"
    )
    return plan_text(head=f"cuts:\n  profile: {{sheet: ply, {setting}, skim: 0.3, bridges: 4}}")


def told(feed: float, *trials: Trial, passes: str = "[6, rest]") -> list[str]:
    found = workshop(text(feed, passes))
    proof = prove_plan(found.plans[0], found.stock, trials)
    rules = ("chip-too-thin", "chip-too-thick")
    return [each.message for each in proof.findings if each.rule in rules]


def ends() -> tuple[float, float]:
    """Return the least and the largest chip load that any table gives, mm."""
    stock = workshop(text(4500)).stock
    sheet = stock.sheet("birch-plywood-18")
    assert sheet is not None
    ranges = [each for kind in MACHINES for each in chip_ranges(stock, sheet.family, 6.0, kind)]
    return min(each.least for each in ranges), max(each.most for each in ranges)


def test_the_tables_run_from_a_thousandth_to_eighteen_thousandths_of_an_inch() -> None:
    # 0.001 in for a light machine, 0.018 in for a heavy one (public tables; common practice).
    least, most = ends()
    assert least == pytest.approx(0.001 * 25.4)
    assert 0.010 * 25.4 < most <= 0.018 * 25.4


def test_what_lies_within_some_range_is_not_remarked_on() -> None:
    least, most = ends()
    for chip in (least * 1.05, 0.125, most * 0.95):
        assert told(SPEED * 2 * chip) == []


def test_thin_chips_burn_and_thick_ones_overload() -> None:
    least, most = ends()
    (thin,) = told(SPEED * 2 * least * 0.9)
    assert thin.endswith("mm rubs and burns")
    (thick,) = told(SPEED * 2 * most * 1.1)
    assert thick.endswith("mm overloads the cutter")


def test_deep_passes_leave_less_of_the_range() -> None:
    # Two diameters deep three quarters of a chip load are left (common practice).
    _, most = ends()
    feed = SPEED * 2 * most * 0.85
    assert told(feed) == []
    assert len(told(feed, passes="[12, rest]")) == 1


def test_the_advice_names_classes_of_machine_and_sources() -> None:
    found = workshop(text(300))
    (finding,) = [
        each
        for each in prove_plan(found.plans[0], found.stock).findings
        if each.rule == "chip-too-thin"
    ]
    assert all(machine in finding.advice for machine in MACHINES)
    assert "common practice" in finding.advice


TRIAL = Trial(
    date=date(2026, 9, 1),
    title="Slow and clean",
    stock=Named("birch-plywood-18"),
    cutter=Named("compression-6"),
    speed_rpm=SPEED,
    feed_mm_per_min=310,
    outcome=Outcome(whole=Grade.CLEAN),
)


@pytest.mark.parametrize(
    ("trial", "silent"),
    [
        (TRIAL, True),
        (replace(TRIAL, outcome=Outcome(whole=Grade.TO_MEND, marks=(Mark.BURN,))), False),
        (replace(TRIAL, stock=Named("birch-plywood-9")), False),
        (replace(TRIAL, cutter=Named("down-cut-6")), False),
        (replace(TRIAL, feed_mm_per_min=600), False),
    ],
)
def test_the_makers_own_clean_trial_outranks_the_tables(trial: Trial, silent: bool) -> None:
    assert (told(300, trial) == []) is silent
