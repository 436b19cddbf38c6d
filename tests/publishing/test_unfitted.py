"""What readers cannot have made for them is told to the maker."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import cache

import pytest

from kerfolio.fitted.form import Cell, Fitted, FittedFile, Number
from kerfolio.publishing.unfitted import unfitted
from tests.publishing.fitted_plans import PLANS, Fitting, fitting

TEMPLATES = FittedFile(cells=(Cell(name=("templates/17.8mm-roll.pdf",), text=("",)),))


@cache
def case() -> Fitting:
    return fitting(PLANS["one sheet"])


def whole() -> Fitted:
    return replace(case().fitted, files=(*case().fitted.files, TEMPLATES))


def with_templates_alone(*changed: Number | str) -> Fitted:
    """Return templates that follow the plan's numbers, some changed or, by name, left out."""
    names = {each if isinstance(each, str) else each.name for each in changed}
    kept = (each for each in whole().numbers if each.name not in names)
    numbers = (*kept, *(each for each in changed if isinstance(each, Number)))
    return replace(whole(), numbers=numbers, files=(TEMPLATES,))


def own_cutter() -> Number:
    cutter = next(each for each in whole().numbers if each.name == "cutter.ply")
    return replace(cutter, least=6.0, most=6.0, none=False)


@pytest.mark.parametrize(
    ("fitted", "told"),
    [
        (whole, []),
        (lambda: None, ["readers get ready-made files alone: no others follow their sheet"]),
        (lambda: case().fitted, ["templates are ready-made alone: no others follow the sheet"]),
        (
            lambda: with_templates_alone("fit.ply"),
            ["no fit can be chosen for `ply`: files do not follow it"],
        ),
        (
            lambda: with_templates_alone("cut.ply", own_cutter()),
            ["files cut from `ply` are for the plan's own cutter alone"],
        ),
    ],
    ids=["whole", "none", "no templates", "no fit", "own cutter"],
)
def test_what_is_left_out_is_told(fitted: Callable[[], Fitted | None], told: list[str]) -> None:
    assert [each.message for each in unfitted(case().drawn, fitted())] == told


def test_a_plan_for_one_thickness_needs_no_others() -> None:
    sheets = tuple(replace(each, published=(17.8, 17.8)) for each in case().drawn.sheets)
    assert list(unfitted(replace(case().drawn, sheets=sheets), None)) == []
