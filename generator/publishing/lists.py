"""The lists of a bundle as named CSV files."""

from __future__ import annotations

from decimal import Decimal

from generator.basis.lengths import inch_text, mm_number
from generator.edition.edition import Edition
from generator.publishing.names import LISTS
from generator.writing.table import csv_bytes

_Row = tuple[str, ...]


def _inches(mm: float) -> str:
    return inch_text(mm).removesuffix(" in")


def _money(amount: Decimal | None) -> str:
    return "" if amount is None else f"{amount:.2f}"


def _parts(edition: Edition) -> tuple[_Row, list[_Row]]:
    header: _Row = (
        *("marks", "part", "pieces", "count", "sheet", "thickness_mm", "width_mm", "height_mm"),
        *("width_in", "height_in", "area_cm2", "mass_kg_each", "grain", "note"),
    )
    rows: list[_Row] = [
        (
            " ".join(row.marks),
            row.part,
            " ".join(row.labels),
            str(row.count),
            row.sheet,
            mm_number(row.thickness, 2),
            mm_number(row.width),
            mm_number(row.height),
            _inches(row.width),
            _inches(row.height),
            f"{row.area / 100:.1f}",
            f"{row.mass:.3f}",
            row.grain,
            row.note,
        )
        for row in edition.parts
    ]
    return header, rows


def _hardware(edition: Edition) -> tuple[_Row, list[_Row]]:
    header: _Row = ("item", "title", "count", "for", "inch_alternative", "price_each", "currency")
    rows: list[_Row] = [
        (
            row.item,
            row.title,
            str(row.count),
            row.purpose,
            row.inch_twin,
            _money(row.price),
            edition.identity.currency if row.price is not None else "",
        )
        for row in edition.hardware
    ]
    return header, rows


def _sheets(edition: Edition) -> tuple[_Row, list[_Row]]:
    header: _Row = (
        *("sheet", "title", "thickness_mm", "along_grain_mm", "across_grain_mm"),
        *("along_grain_in", "across_grain_in", "count", "price_each", "currency"),
    )
    rows: list[_Row] = [
        (
            row.sheet,
            row.title,
            mm_number(row.thickness, 2),
            mm_number(row.width),
            mm_number(row.height),
            _inches(row.width),
            _inches(row.height),
            str(row.count),
            _money(row.price),
            edition.identity.currency if row.price is not None else "",
        )
        for row in edition.sheets
    ]
    return header, rows


def _boards(edition: Edition) -> tuple[_Row, list[_Row]]:
    header: _Row = ("board", "title", "thickness_mm", "width_mm", "length_mm", "length_in", "count")
    rows: list[_Row] = [
        (
            row.name,
            row.title,
            mm_number(row.thickness),
            mm_number(row.width),
            mm_number(row.length),
            _inches(row.length),
            str(row.count),
        )
        for row in edition.boards
    ]
    return header, rows


def _costs(edition: Edition) -> tuple[_Row, list[_Row]]:
    header: _Row = ("what", "count", "price_each", "total", "currency")
    rows: list[_Row] = [
        (row.what, str(row.count), _money(row.price), _money(row.total), edition.identity.currency)
        for row in edition.costs
    ]
    return header, rows


_ROWS = (_parts, _hardware, _sheets, _boards, _costs)


def list_files(edition: Edition) -> dict[str, bytes]:
    """Return every list as a CSV file by its name in the bundle."""
    return {name: csv_bytes(*rows(edition)) for name, rows in zip(LISTS, _ROWS, strict=True)}
