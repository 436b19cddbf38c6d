"""The lists of a bundle as named CSV files."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from kerfolio.basis.figures import (
    area_number,
    area_unit,
    in_way_unit,
    money_number,
    summed,
    way_unit,
)
from kerfolio.basis.lengths import inch_number, mm_number, place_decimal
from kerfolio.basis.masses import in_mass_unit, mass_unit
from kerfolio.basis.reader import Reader
from kerfolio.basis.thickness import reading_number
from kerfolio.edition.edition import Edition
from kerfolio.edition.names import LISTS
from kerfolio.shop.cut_time import CutTime
from kerfolio.shop.mass import PartMass, part_mass
from kerfolio.writing.table import csv_bytes

_Row = tuple[str, ...]


def _money(amount: Decimal | None) -> str:
    return "" if amount is None else money_number(amount)


def _sides(reader: Reader, *names: str) -> _Row:
    """Return the heads of lengths that are listed in both units, those in the first unit first."""
    units = ("in", "mm") if reader.unit == "in" else ("mm", "in")
    return tuple(f"{name}_{unit}" for unit in units for name in names)


def _both(reader: Reader, *lengths: float) -> _Row:
    """Return the lengths under these heads."""
    inches, metric = (tuple(map(number, lengths)) for number in (inch_number, mm_number))
    return (*inches, *metric) if reader.unit == "in" else (*metric, *inches)


def _parts(edition: Edition) -> tuple[_Row, list[_Row]]:
    reader, unit = edition.reader.plain, edition.reader.unit
    header: _Row = (
        *("marks", "part", "pieces", "count", "sheet", f"thickness_{unit}"),
        *_sides(reader, "width", "height"),
        *(f"area_{area_unit(reader)}", f"mass_{mass_unit(reader)}_each"),
        *(f"centre_{axis}_{unit}" for axis in "xyz"),
        *("grain", "note"),
    )
    masses = {part.name: part_mass(part) for part in edition.settled.parts}
    rows: list[_Row] = [
        (
            " ".join(row.marks),
            row.part,
            " ".join(row.labels),
            str(row.count),
            row.sheet,
            reading_number(row.thickness, reader),
            *_both(reader, row.width, row.height),
            area_number(row.area, reader),
            summed(in_mass_unit(row.mass, reader)),
            *_centre(masses[row.part], reader),
            row.grain,
            row.note,
        )
        for row in edition.parts
    ]
    return header, rows


def _centre(mass: PartMass, reader: Reader) -> tuple[str, ...]:
    """Return the centre of gravity in the part's frame, z from its rear face."""
    return tuple(place_decimal(each, reader.unit) for each in (mass.x, mass.y, mass.z))


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
    reader, unit = edition.reader.plain, edition.reader.unit
    header: _Row = (
        *("sheet", "title", f"thickness_{unit}"),
        *_sides(reader, "along_grain", "across_grain"),
        *("count", "price_each", "currency"),
    )
    rows: list[_Row] = [
        (
            row.sheet,
            row.title,
            reading_number(row.thickness, reader),
            *_both(reader, row.width, row.height),
            str(row.count),
            _money(row.price),
            edition.identity.currency if row.price is not None else "",
        )
        for row in edition.sheets
    ]
    return header, rows


def _boards(edition: Edition) -> tuple[_Row, list[_Row]]:
    reader, unit = edition.reader.plain, edition.reader.unit
    section = (f"thickness_{unit}", f"width_{unit}")
    header: _Row = ("board", "title", *section, *_sides(reader, "length"), "count")
    rows: list[_Row] = [
        (
            row.name,
            row.title,
            place_decimal(row.thickness, unit),
            place_decimal(row.width, unit),
            *_both(reader, row.length),
            str(row.count),
        )
        for row in edition.boards
    ]
    return header, rows


def _board_cuts(edition: Edition) -> tuple[_Row, list[_Row]]:
    reader, unit = edition.reader.plain, edition.reader.unit
    pieces, waste = f"pieces_{unit}" if unit == "in" else "pieces", f"waste_{unit}"
    header: _Row = ("board", "title", "number", *_sides(reader, "length"), pieces, waste)
    rows: list[_Row] = [
        (
            plan.stock,
            plan.title,
            str(board.number),
            *_both(reader, board.length),
            "; ".join(
                f"{piece.label} {place_decimal(piece.length, unit)}" for piece in board.pieces
            ),
            place_decimal(board.waste, unit),
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
        *("cuts", "most_passes", way_unit(edition.reader), "minutes"),
    )
    sheets = zip(edition.layout.sheets, edition.times, strict=True)
    rows = [
        (str(sheet.number), sheet.sheet, *row)
        for sheet, time in sheets
        for row in _cuts(time, edition.reader)
    ]
    return header, rows


def _cuts(time: CutTime, reader: Reader) -> Iterator[_Row]:
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
            summed(in_way_unit(each.metres, reader)),
            _minutes(each.feed_seconds + each.plunge_seconds),
        )
    yield ("moves above the sheet", "", "", "", "", "", _minutes(time.rapid_seconds))
    if time.changes:
        changes, took = str(time.changes), _minutes(time.change_seconds)
        yield ("changes of cutter", "", "", changes, "", "", took)


def _minutes(seconds: float) -> str:
    return summed(seconds / 60)


def _edges(edition: Edition) -> tuple[_Row, list[_Row]]:
    reader, unit = edition.reader.plain, edition.reader.unit
    way = way_unit(reader)
    header: _Row = (
        *("treatment", "what", f"banding_thickness_{unit}", f"radius_{unit}", "faces"),
        *("sheet", f"sheet_thickness_{unit}", "count", way, f"{way}_to_buy"),
    )
    rows: list[_Row] = [
        (
            row.edge.kind.name,
            row.edge.of,
            reading_number(row.edge.thickness, reader) if row.edge.thickness else "",
            reading_number(row.edge.radius, reader) if row.edge.radius else "",
            row.edge.faces if row.edge.radius else "",
            row.sheet,
            reading_number(row.thickness, reader),
            str(row.count),
            summed(in_way_unit(row.length / 1000, reader)),
            summed(in_way_unit(row.to_buy / 1000, reader)) if row.to_buy else "",
        )
        for row in edition.edges
    ]
    return header, rows


_ROWS = (_parts, _hardware, _sheets, _boards, _board_cuts, _costs, _cutting, _edges)


def list_files(edition: Edition) -> dict[str, bytes]:
    """Return every list that has a row as a CSV file, by its name in the bundle."""
    made = {name: rows(edition) for name, rows in zip(LISTS, _ROWS, strict=True)}
    return {name: csv_bytes(header, rows) for name, (header, rows) in made.items() if rows}
