"""Tables as comma-separated values."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterable, Sequence
from decimal import Decimal

Cell = str | int | float | Decimal | None

_NUMBER = re.compile(r"[+-]?(\d+(\.\d*)?|\.\d+)")
_FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r", "\n", "\uff1d", "\uff0b", "\uff0d", "\uff20")


def csv_bytes(header: Sequence[str], rows: Iterable[Sequence[Cell]]) -> bytes:
    """Return a table as RFC 4180 text: CRLF, quoted only where needed, UTF-8 without a mark.

    None becomes an empty cell. Text that a spreadsheet would run as a formula gets an apostrophe
    in front (the usual guard against CSV injection); plain numbers stay as they are. Raises
    ValueError when a row has not as many cells as the header.
    """
    page = io.StringIO(newline="")
    writer = csv.writer(page, lineterminator="\r\n")
    writer.writerow([_plain(cell) for cell in header])
    for row in rows:
        if len(row) != len(header):
            raise ValueError(f"a row of {len(row)} cells under a header of {len(header)}")
        writer.writerow([_plain(cell) for cell in row])
    return page.getvalue().encode("utf-8")


def _plain(cell: Cell) -> str:
    if cell is None:
        return ""
    text = str(cell)
    if text.startswith(_FORMULA_STARTS) and not _NUMBER.fullmatch(text):
        return f"'{text}"
    return text
