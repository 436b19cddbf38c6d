"""The lists of a bundle as named CSV files."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from kerfolio.basis.figures import area_number, money_number, summed
from kerfolio.basis.lengths import inch_number, mm_number
from kerfolio.edition.edition import Edition
from kerfolio.edition.names import LISTS
from kerfolio.shop.cut_time import CutTime
from kerfolio.shop.mass import PartMass, part_mass
from kerfolio.writing.table import csv_bytes

_Row = tuple[str, ...]


def _money(amount: Decimal | None) -> str:
    return "" if amount is None else money_number(amount)


def _parts(edition: Edition) -> tuple[_Row, list[_Row]]:
    header: _Row = (
        *("marks", "part", "pieces", "count", "sheet", "thickness_mm", "width_mm", "height_mm"),
        *("width_in", "height_in", "area_cm2", "mass_kg_each"),
        *("centre_x_mm", "centre_y_mm", "centre_z_mm", "grain", "note"),
    )
    masses = {part.name: part_mass(part) for part in edition.settled.parts}
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
            inch_number(row.width),
            inch_number(row.height),
            area_number(row.area),
            summed(row.mass),
            *_centre(masses[row.part]),
            row.grain,
            row.note,
        )
        for row in edition.parts
    ]
    return header, rows


def _centre(mass: PartMass) -> tuple[str, str, str]:
    """Return the centre of gravity in the part's frame, z from its rear face."""
    return mm_number(mass.x), mm_number(mass.y), mm_number(mass.z)


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
            inch_number(row.width),
            inch_number(row.height),
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
            inch_number(row.length),
            str(row.count),
        )
        for row in edition.boards
    ]
    return header, rows


def _board_cuts(edition: Edition) -> tuple[_Row, list[_Row]]:
    header: _Row = ("board", "title", "number", "length_mm", "length_in", "pieces", "waste_mm")
    rows: list[_Row] = [
        (
            plan.stock,
            plan.title,
            str(board.number),
            mm_number(board.length),
            inch_number(board.length),
            "; ".join(f"{piece.label} {mm_number(piece.length)}" for piece in board.pieces),
            mm_number(board.waste),
        )
        for plan in edition.board_plans
        for board in plan.boards
    ]
    return header, rows


def _costs(edition: Edition) -> tuple[_Row, list[_Row]]:
    header: _Row = ("copies", "what", "count", "price_each", "total", "currency")
    rows: list[_Row] = [
        (
            str(each.copies),
            row.what,
            str(row.count),
            _money(row.price),
            _money(row.total),
            edition.identity.currency,
        )
        for each in edition.copies
        for row in each.lines
    ]
    return header, rows


def _cutting(edition: Edition) -> tuple[_Row, list[_Row]]:
    header: _Row = (
        *("sheet", "material", "operation", "setting", "cutter"),
        *("cuts", "most_passes", "metres", "minutes"),
    )
    sheets = zip(edition.layout.sheets, edition.times, strict=True)
    rows = [(str(sheet.number), sheet.sheet, *row) for sheet, time in sheets for row in _cuts(time)]
    return header, rows


def _cuts(time: CutTime) -> Iterator[_Row]:
    """Yield a sheet's operations, then the time beside them; nothing without cut settings."""
    if not time.known:
        return
    for each in time.operations:
        yield (
            str(each.operation),
            each.setting,
            each.cutter,
            str(each.cuts),
            str(each.most_passes),
            summed(each.metres),
            _minutes(each.feed_seconds + each.plunge_seconds),
        )
    yield ("moves above the sheet", "", "", "", "", "", _minutes(time.rapid_seconds))
    if time.changes:
        changes, took = str(time.changes), _minutes(time.change_seconds)
        yield ("changes of cutter", "", "", changes, "", "", took)


def _minutes(seconds: float) -> str:
    return summed(seconds / 60)


_ROWS = (_parts, _hardware, _sheets, _boards, _board_cuts, _costs, _cutting)


def list_files(edition: Edition) -> dict[str, bytes]:
    """Return every list as a CSV file by its name in the bundle."""
    return {name: csv_bytes(*rows(edition)) for name, rows in zip(LISTS, _ROWS, strict=True)}
