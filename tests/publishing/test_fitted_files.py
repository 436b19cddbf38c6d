"""Fitted files of whole plans: filled in anywhere, they are what is settled and drawn there."""

from __future__ import annotations

from dataclasses import replace

import pytest

from kerfolio.fitted.fill import PointError, fill
from kerfolio.fitted.form import Fitted, Slot
from kerfolio.fitted.reading import read_fitted
from kerfolio.fitted.writing import fitted_json
from kerfolio.writing.read_svg import read_svg
from tests.plans import RACK
from tests.publishing.fitted_plans import PLANS, compared, fitting, points_of


@pytest.mark.parametrize("name", PLANS)
def test_what_is_filled_in_is_what_is_drawn_there(name: str) -> None:
    """The text between numbers is the same, and no number is more than one step off."""
    case = fitting(PLANS[name])
    found = [compared(case, at) for at in points_of(case.fitted, 7)]
    assert [each.wrong for each in found] == [()] * len(found)
    assert sum(each.numbers for each in found) > 8_000
    assert sum(each.off for each in found) <= sum(each.numbers for each in found) / 10_000


def test_the_comparison_sees_a_spoiled_slope() -> None:
    case = fitting(PLANS["two sheets"])
    file = case.fitted.files[0]
    cell = file.cells[0]
    place = next(i for i, p in enumerate(cell.text) if isinstance(p, Slot) and any(p.slopes))
    slot = cell.text[place]
    assert isinstance(slot, Slot)
    steep = replace(slot, slopes=tuple(each and each + 0.001 for each in slot.slopes))
    text = (*cell.text[:place], steep, *cell.text[place + 1 :])
    spoiled = replace(file, cells=(replace(cell, text=text), *file.cells[1:]))
    wrong = replace(case, fitted=replace(case.fitted, files=(spoiled, *case.fitted.files[1:])))
    assert len(compared(wrong, {"thickness.ply": 17.63}).wrong) == 1


def fitted_of(name: str) -> Fitted:
    return fitting(PLANS[name]).fitted


def test_a_plan_has_a_number_for_each_thickness_cutter_and_fit_that_may_be_chosen() -> None:
    told = [
        (each.name, each.least, each.most, each.drawn, each.none)
        for each in fitted_of("one sheet").numbers
    ]
    assert told == [
        ("thickness.ply", 17.6, 18.2, 17.8, False),
        ("fit.ply", 0.05, 0.2, 0.1, False),
        ("cutter.ply", 1.0, 8.0, 6.0, True),
    ]
    assert [each.name for each in fitted_of("two sheets").numbers] == [
        "thickness.ply",
        "cutter.ply",
        "thickness.thin",
        "cutter.thin",
    ]


def test_a_cutter_that_is_too_wide_is_refused_with_the_reason() -> None:
    with pytest.raises(PointError) as trouble:
        fill(fitted_of("one sheet"), {"cutter.ply": 9.0})
    assert str(trouble.value) == (
        "cutter.ply may be 1 to 8 mm, not 9 mm. "
        "A cutter of 9.525 mm does not do: pieces lie closer together than it is wide."
    )


def test_names_tell_what_is_not_the_plans_own() -> None:
    at = {"thickness.ply": 17.634, "fit.ply": 0.08, "cutter.ply": None}
    names = [name for name, _ in fill(fitted_of("one sheet"), at)]
    assert names[0] == ("cut/17.63mm-fit-0.08mm-no-cutter/sheet-1-17.63mm-fit-0.08mm-no-cutter.svg")
    assert fill(fitted_of("one sheet"), {})[0][0] == "cut/17.8mm/sheet-1-17.8mm.svg"
    inches = {"thickness.ply": 25.4 / 2, "cutter.ply": 25.4 * 3 / 32, "fit.ply": 0.003 * 25.4}
    name = fill(fitted_of("inches"), inches)[0][0]
    assert name == (
        "cut/1-2in-fit-0.003in-cutter-3-32in/sheet-1-1-2in-fit-0.003in-cutter-3-32in.svg"
    )


def test_words_in_a_file_say_what_it_is_for() -> None:
    at = {"thickness.ply": 17.63, "fit.ply": 0.08, "cutter.ply": None}
    words = read_svg(dict(fill(fitted_of("one sheet"), at))[_SIDE].encode()).words["note"]
    assert "Cut for 17.63 mm ply (0.694 in)" in words
    assert "Fit 0.08 mm, no cutter" in words


_SIDE = "cut/{0}/parts/side-{0}.svg".format("17.63mm-fit-0.08mm-no-cutter")


def test_the_data_is_small_and_comes_back() -> None:
    fitted = fitted_of("one sheet")
    text = fitted_json(fitted)
    assert read_fitted(text) == fitted
    assert len(text) < sum(len(told) for _, told in fill(fitted, {})) * 1.2


def test_without_a_choice_of_fit_there_is_no_number_for_it() -> None:
    names = [each.name for each in fitting(RACK).fitted.numbers]
    assert names == ["thickness.ply", "cutter.ply"]
