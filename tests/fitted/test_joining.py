"""Files that depend on fewer numbers, put together with those that depend on more."""

from __future__ import annotations

from dataclasses import replace

import pytest

from kerfolio.basis.style import Style
from kerfolio.fitted.fill import fill
from kerfolio.fitted.form import Cell, Fitted, FittedFile, Slot
from kerfolio.fitted.joining import joined
from tests.fitted.made import NUMBERS

PLY, FIT, CUTTER = NUMBERS


def file(name: str, *slopes: float) -> FittedFile:
    text = ("at ", Slot(style=Style(), constant=2.0, slopes=slopes))
    return FittedFile(cells=(Cell(name=(name,), text=text),))


def test_each_slope_goes_with_its_number() -> None:
    whole = Fitted(numbers=(FIT, CUTTER, PLY), files=(file("all", 1.0, 2.0, 3.0),))
    other = Fitted(numbers=(PLY, FIT), files=(file("two", 10.0, 100.0), file("one", 10.0)))
    at = {"thickness.ply": 18.0, "fit.ply": 0.1, "cutter.ply": 6.0}
    assert dict(fill(joined(whole, other), at)) == {
        "all": "at 68.1",  # 2 + 0.1 + 12 + 54
        "two": "at 192",  # 2 + 180 + 10
        "one": "at 182",
    }


def test_cells_keep_their_boxes() -> None:
    low = Cell(name=("x",), text=("low",), box=(("thickness.ply", (17.2, 18.0)),))
    high = Cell(name=("x",), text=("high",), box=(("thickness.ply", (18.01, 18.6)),))
    other = Fitted(numbers=(PLY,), files=(FittedFile(cells=(low, high)),))
    both = joined(Fitted(numbers=(FIT, PLY), files=()), other)
    assert [fill(both, {"thickness.ply": mm})[0][1] for mm in (18.0, 18.01)] == ["low", "high"]


@pytest.mark.parametrize("number", [CUTTER, replace(PLY, most=19.0)])
def test_numbers_must_be_those_of_both(number: object) -> None:
    other = Fitted(numbers=(number,), files=())  # type: ignore[arg-type]
    with pytest.raises(ValueError, match="is not a number of both"):
        joined(Fitted(numbers=(PLY,), files=()), other)
