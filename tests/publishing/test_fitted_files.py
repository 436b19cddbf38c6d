"""Fitted files of whole plans: filled in anywhere, they are what is settled and drawn there.

The clearance of joints is measured in the DXF, as ezdxf reads it, for sheets that no file was drawn
for.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from kerfolio.fitted.fill import PointError, fill
from kerfolio.fitted.form import Fitted, Point, Slot
from kerfolio.fitted.reading import read_fitted
from kerfolio.fitted.writing import fitted_json
from kerfolio.publishing.fitted_files import Settling, variant_at
from kerfolio.writing.read_svg import read_svg
from tests.plans import RACK
from tests.publishing.clearances import plays
from tests.publishing.fitted_plans import PLANS, PRESSED, Fitting, compared, fitting, points_of


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
    text = case.fitted.files[0].cells[0].text
    at = next(i for i, p in enumerate(text) if isinstance(p, Slot) and any(p.slopes))
    wrong = replace(case, fitted=spoiled(case.fitted, 0, at))
    assert len(compared(wrong, {"thickness.ply": 17.63}).wrong) == 1


def spoiled(fitted: Fitted, place: int, at: int) -> Fitted:
    """Return fitted files with 0.001 more for each mm of the first number in a slot of a file."""
    file = fitted.files[place]
    cell, slot = file.cells[0], file.cells[0].text[at]
    assert isinstance(slot, Slot)
    steep = replace(slot, slopes=(slot.slopes[0] + 0.001, *slot.slopes[1:]))
    text = (*cell.text[:at], steep, *cell.text[at + 1 :])
    other = replace(file, cells=(replace(cell, text=text), *file.cells[1:]))
    return replace(fitted, files=(*fitted.files[:place], other, *fitted.files[place + 1 :]))


def off_in_dxf(case: Fitting, at: Point, *fitted: Fitted) -> list[set[str]]:
    """Return the joints of fitted files whose clearance is not twice the fit, to 0.0005 mm, or its
    share by their purpose.

    Walls and thickness are written to 0.0001 mm.
    """
    settled = Settling(case.drawn).at(variant_at(case.drawn, at))
    assert settled is not None
    meant = {each.name: 2 * at.get(f"fit.{each.name}", each.fit) for each in settled.sheets}
    found = [list(plays(settled, dict(fill(each, at)))) for each in fitted]
    assert all(found)
    return [
        {p.what for p in each if not abs(p.mm - meant[p.takes] * PRESSED.get(p.what, 1)) < 0.0005}
        for each in found
    ]


@pytest.mark.parametrize("name", PLANS)
def test_the_clearance_in_the_dxf_is_the_stated_one_at_both_ends_and_between(name: str) -> None:
    case = fitting(PLANS[name])
    apart = ("cutter.", "cut.")
    numbers = [each for each in case.fitted.numbers if not each.name.startswith(apart)]
    for share in (0.0, 0.37, 0.5, 0.81, 1.0):
        at = {n.name: n.exact(n.least + share * (n.most - n.least)) for n in numbers}
        assert off_in_dxf(case, at, case.fitted) == [set()], at


def test_a_spoiled_slope_of_any_wall_is_measured_in_the_dxf() -> None:
    """Both walls and both ends of a slot and both walls of a notch have two ends each."""
    case = fitting(PLANS["one sheet"])
    names = [name for name, _ in fill(case.fitted, {})]
    place = names.index("cut/17.8mm/parts/side-17.8mm.dxf")
    text = case.fitted.files[place].cells[0].text
    sloped = [at for at, each in enumerate(text) if isinstance(each, Slot) and any(each.slopes)]
    wrong = [spoiled(case.fitted, place, at) for at in sloped]
    found = off_in_dxf(case, {"thickness.ply": 18.2}, *wrong)
    assert len([each for each in found if "side.foot" in each]) == 4
    assert len([each for each in found if "side.rail-slot" in each]) == 4
    assert len([each for each in found if "rail.left-tab along side.rail-slot" in each]) == 4


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
        ("cut.ply", -0.3, 0.3, 0.0, False),
    ]
    assert [each.name for each in fitted_of("two sheets").numbers] == [
        *("thickness.ply", "cutter.ply", "cut.ply"),
        *("thickness.thin", "cutter.thin", "cut.thin"),
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
    assert "Cut for Birch plywood 18 mm at 17.63 mm (0.694 in)" in words
    assert "Fit 0.08 mm, some joints their own, no cutter" in words


_SIDE = "cut/{0}/parts/side-{0}.svg".format("17.63mm-fit-0.08mm-no-cutter")


def test_the_data_is_small_and_comes_back() -> None:
    fitted = fitted_of("one sheet")
    text = fitted_json(fitted)
    assert read_fitted(text) == fitted
    assert len(text) < sum(len(told) for _, told in fill(fitted, {})) * 1.2


def test_without_a_choice_of_fit_there_is_no_number_for_it() -> None:
    names = [each.name for each in fitting(RACK).fitted.numbers]
    assert names == ["thickness.ply", "cutter.ply", "cut.ply"]
