"""A plan is proved where its files change their form, besides the ends of its range."""

from __future__ import annotations

import pytest

from kerfolio.basis.finding import has_errors
from kerfolio.basis.reader import METRIC
from kerfolio.fitted.form import Cell, Fitted, FittedFile, Number
from kerfolio.publishing.cell_ends import cell_ends, found_at_cell_ends
from kerfolio.publishing.fitted_files import Settling, fitted_files
from kerfolio.writing.formats import formats_in
from tests.plans import RACK, proved, small_layout, small_settled, workshop

TENT = RACK.replace("h: 120}", "h: 120, over: 'min(1.8 * (t - 17.6), 0.6 * (18.2 - t))'}").replace(
    "edge: left, at: 30, width: 60,", "edge: left, at: 30, width: 60 + over,"
)
"""A tab that is as wide as its slot at both ends, and 0.27 mm wider for 17.75 mm."""


def test_what_is_wrong_just_where_files_change_is_found() -> None:
    proof = proved(TENT)
    assert proof.drawn is not None
    assert not has_errors(proof.findings)
    found = workshop(TENT)
    fitted = fitted_files(Settling(proof.drawn), small_layout(), formats_in(("mm",)), METRIC)
    assert fitted is not None
    told = list(found_at_cell_ends(proof, found.stock, fitted))
    assert {each.rule for each in told} == {"pieces-clash", "tab-wider-than-slot"}
    assert all("(at 17.75mm)" in str(each.message) for each in told)


@pytest.mark.parametrize(
    ("name", "ends", "told"),
    [
        ("thickness.ply", (17.8, 18.0), ["17.8mm", "18.0mm"]),
        ("thickness.ply", (17.6, 18.2), []),
        ("cut.ply", (-0.1, 0.1), []),
    ],
)
def test_the_ends_of_the_range_have_been_proved_before(
    name: str, ends: tuple[float, float], told: list[str]
) -> None:
    least, most = (17.6, 18.2) if name == "thickness.ply" else (-0.3, 0.3)
    number = Number(name=name, least=least, most=most, drawn=least, decimals=3)
    cell = Cell(name=("a",), text=("b",), box=((name, ends),))
    fitted = Fitted(numbers=(number,), files=(FittedFile(cells=(cell,)),))
    assert [str(each.label) for each in cell_ends(fitted, small_settled())] == told
