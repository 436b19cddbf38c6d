"""What readers cannot have made for them is told to the maker."""

from __future__ import annotations

from dataclasses import replace

import pytest

from kerfolio.fitted.form import Cell, Fitted, FittedFile, Number
from kerfolio.publishing.unfitted import unfitted
from tests.publishing.fitted_plans import PLANS, fitting

CASE = fitting(PLANS["one sheet"])
TEMPLATES = FittedFile(cells=(Cell(name=("templates/17.8mm-roll.pdf",), text=("",)),))
WHOLE = replace(CASE.fitted, files=(*CASE.fitted.files, TEMPLATES))


def numbers(*changed: Number | str) -> tuple[Number, ...]:
    """Return the numbers of the plan, some of them changed or, by name, left out."""
    names = {each if isinstance(each, str) else each.name for each in changed}
    kept = (each for each in WHOLE.numbers if each.name not in names)
    return (*kept, *(each for each in changed if isinstance(each, Number)))


CUTTER = next(each for each in WHOLE.numbers if each.name == "cutter.ply")
OWN_CUTTER = replace(CUTTER, least=6.0, most=6.0, none=False)


@pytest.mark.parametrize(
    ("fitted", "told"),
    [
        (WHOLE, []),
        (None, ["readers get ready-made files alone: no others follow their sheet"]),
        (CASE.fitted, ["templates are ready-made alone: no others follow the sheet"]),
        (
            replace(WHOLE, numbers=numbers("fit.ply"), files=(TEMPLATES,)),
            ["no fit can be chosen for `ply`: files do not follow it"],
        ),
        (
            replace(WHOLE, numbers=numbers("cut.ply", OWN_CUTTER), files=(TEMPLATES,)),
            ["files cut from `ply` are for the plan's own cutter alone"],
        ),
    ],
    ids=["whole", "none", "no templates", "no fit", "own cutter"],
)
def test_what_is_left_out_is_told(fitted: Fitted | None, told: list[str]) -> None:
    assert [each.message for each in unfitted(CASE.drawn, fitted)] == told


def test_a_plan_for_one_thickness_needs_no_others() -> None:
    sheets = tuple(replace(each, published=(17.8, 17.8)) for each in CASE.drawn.sheets)
    assert list(unfitted(replace(CASE.drawn, sheets=sheets), None)) == []
