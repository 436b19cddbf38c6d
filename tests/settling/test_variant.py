"""Variants: the thicknesses that files are made ready for, and what they are called."""

from __future__ import annotations

from dataclasses import replace

import pytest

from kerfolio.model.plan import Ladder
from kerfolio.model.statement import Amount
from kerfolio.settling.variant import variants
from tests.plans import RACK, proved, workshop

INCHES = RACK.replace("version: 1.0.0", "version: 1.0.0\nunits: in").replace(
    "size: 2440 x 1220", "size: 96 x 48"
)


def labels(ladder: str) -> list[str]:
    plan = workshop(RACK.replace("17.6 to 18.2 by 0.2, drawn-for: 17.6", ladder))
    return [each.label for each in variants(plan.plans[0], plan.stock)[0]]


def test_a_range_has_files_for_what_it_is_drawn_for() -> None:
    assert labels("17.2 to 18.6") == ["17.7mm"], "what the stock measures"
    assert labels("17.9 to 18.6") == ["17.9mm"], "the nearest of the range"
    assert labels("17.2 to 18.6 by 0.2, drawn-for: 18.04") == ["18.04mm"], "a step changes nothing"
    assert labels("18") == ["18.0mm"]


def test_ready_made_files_come_besides() -> None:
    assert labels("17.2 to 18.6, ready-made: [17.2, 23/32 in]") == ["17.2mm", "17.7mm", "18.26mm"]
    assert labels("17.6 to 18.2, ready-made: 17.7") == ["17.7mm"], "the drawn one, once"


def test_a_sheet_knows_what_it_is_published_for_and_the_fits_to_choose_from() -> None:
    fit = "fit: {value: 0.1, reader: 0.05 to 0.2}"
    text = RACK.replace("17.6 to 18.2 by 0.2", "17.5 to 18.2 by 0.2").replace("fit: 0.1", fit)
    drawn = proved(text).drawn
    assert drawn is not None
    (sheet,) = drawn.sheets
    assert (sheet.published, sheet.fit, sheet.fits) == ((17.5, 18.2), 0.1, (0.05, 0.2))
    assert proved().drawn.sheets[0].fits is None  # type: ignore[union-attr]


def test_in_inches_thicknesses_are_called_by_the_fractions_sold() -> None:
    ladder = "11/16 to 23/32, drawn-for: 11/16, ready-made: [11/16, 45/64, 23/32]"
    plan = workshop(INCHES.replace("17.6 to 18.2 by 0.2, drawn-for: 17.6", ladder))
    made, _ = variants(plan.plans[0], plan.stock)
    assert [each.label for each in made] == ["11-16in", "45-64in", "23-32in"]
    plan = workshop(INCHES.replace("17.6 to 18.2 by 0.2, drawn-for: 17.6", "0.709"))
    (made,), _ = variants(plan.plans[0], plan.stock)
    assert made.label == "0.709in"


def test_thicknesses_are_readings_of_a_calliper() -> None:
    plan = workshop(RACK.replace("17.6 to 18.2 by 0.2", "23/32 in"))
    (made,), _ = variants(plan.plans[0], plan.stock)
    assert made.thickness == (("ply", 18.26),), "18.25625 mm"
    ladder = "0.69 in to 0.75 in, ready-made: 0.69 in"
    plan = workshop(RACK.replace("17.6 to 18.2 by 0.2, drawn-for: 17.6", ladder))
    made, *_ = (each.thickness[0][1] for each in variants(plan.plans[0], plan.stock)[0])
    assert made == 17.53, "17.526 mm"


def test_a_stated_thickness_is_a_reading_too() -> None:
    plan = workshop(RACK.replace("published-for: 17.6 to 18.2 by 0.2, drawn-for: 17.6, ", ""))
    sheets = tuple(replace(each, actual=18.25625) for each in plan.stock.sheets)
    (made,), _ = variants(plan.plans[0], replace(plan.stock, sheets=sheets))
    assert made.thickness == (("ply", 18.26),)


def test_a_plan_is_drawn_for_the_real_sheet() -> None:
    # Birch plywood datasheet: an 18 mm sheet measures 17.7 mm on average.
    drawn = proved(RACK.replace("drawn-for: 17.6, ", "")).drawn
    assert drawn is not None
    assert drawn.variant.label == "17.7mm"


def test_drawn_for_chooses_the_thickness() -> None:
    drawn = proved(RACK.replace("drawn-for: 17.6", "drawn-for: 18.13")).drawn
    assert drawn is not None
    assert drawn.variant.label == "18.13mm"


@pytest.mark.parametrize(
    ("ladder", "rule"),
    [
        (("18.6", "17.2", "0.2"), "backwards-ladder"),
        (("0", "17.2", "0.2"), "not-positive"),
    ],
)
def test_wrong_ranges_are_findings(ladder: tuple[str, str, str], rule: str) -> None:
    shop = workshop()
    (plan,) = shop.plans
    first, last, step = map(Amount, ladder)
    use = replace(plan.sheets[0], published_for=Ladder(first=first, last=last, step=step))
    made, findings = variants(replace(plan, sheets=(use,)), shop.stock)
    assert made == ()
    assert [finding.rule for finding in findings] == [rule]
