"""CSV read back by another reader (Python's csv module); RFC 4180 for the form."""

from __future__ import annotations

import csv
import io
from decimal import Decimal

import pytest

from kerfolio.writing.table import csv_bytes

HEADER = ("item", "count", "price")


def read(content: bytes) -> list[list[str]]:
    return list(csv.reader(io.StringIO(content.decode("utf-8"), newline=""), strict=True))


def test_the_form_is_that_of_rfc_4180() -> None:
    rows = [("bolt M6 x 40", 4, Decimal("1.20")), ('3/4" ply, birch', 1, None)]
    assert csv_bytes(HEADER, rows) == (
        b'item,count,price\r\nbolt M6 x 40,4,1.20\r\n"3/4"" ply, birch",1,\r\n'
    )


@pytest.mark.parametrize(
    "cell",
    [
        "plain",
        "comma, inside",
        'quote " inside',
        "two\r\nlines",
        "line\nfeed",
        "  blanks kept  ",
        "Größe ø 8 × 40",
        "日本",
        '",\r\n"',
        "",
    ],
)
def test_tricky_cells_come_back_as_they_were(cell: str) -> None:
    assert read(csv_bytes(HEADER, [(cell, 1, cell)])) == [list(HEADER), [cell, "1", cell]]


@pytest.mark.parametrize(
    "cell", ["=1+2", "+49 30 1234", "-2+3", "@SUM(A1)", "\tx", "\rx", "=cmd|' /C calc'!A0", "＝1"]
)
def test_text_that_a_spreadsheet_would_run_is_guarded(cell: str) -> None:
    """The first characters are those of OWASP's page on CSV injection (from memory)."""
    assert read(csv_bytes(HEADER, [(cell, 0, "")]))[1][0] == f"'{cell}"


@pytest.mark.parametrize("number", [-5, -0.25, Decimal("-1.50"), "-12", "+3.2"])
def test_numbers_below_zero_stay_numbers(number: object) -> None:
    assert read(csv_bytes(HEADER, [("a", number, "")]))[1][1] == str(number)  # type: ignore[list-item]


def test_a_row_of_another_length_is_a_fault_of_the_program() -> None:
    with pytest.raises(ValueError, match="a row of 2 cells under a header of 3"):
        csv_bytes(HEADER, [("a", 1)])
