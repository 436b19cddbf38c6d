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
from kerfolio.basis.thickness import reading_number
from kerfolio.edition.edition import Edition
from kerfolio.edition.names import LISTS
from kerfolio.shop.cut_time import CutTime
from kerfolio.shop.mass import PartMass, part_mass
from kerfolio.writing.table import csv_bytes

_Row = tuple[str, ...]


def _money(amount: Decimal | None) -> str:
    return "" if amount is None else money_number(amount)


def _sides(first: str, *names: str) -> _Row:
    """Return the heads of lengths that are listed in both units, those in the first unit first."""
    units = ("in", "mm") if first == "in" else ("mm", "in")
    return tuple(f"{name}_{unit}" for unit in units for name in names)


def _both(first: str, *lengths: float) -> _Row:
    """Return the lengths under these heads."""
    inches, metric = (tuple(map(number, lengths)) for number in (inch_number, mm_number))
    return (*inches, *metric) if first == "in" else (*metric, *inches)


def _parts(edition: Edition) -> tuple[_Row, list[_Row]]:
    first = edition.first
    header: _Row = (
        *("marks", "part", "pieces", "count", "sheet", f"thickness_{first}"),
        *_sides(first, "width", "height"),
        *(f"area_{area_unit(first)}", f"mass_{mass_unit(first)}_each"),
        *(f"centre_{axis}_{first}" for axis in "xyz"),
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
            reading_number(row.thickness, first),
            *_both(first, row.width, row.height),
            area_number(row.area, first),
            summed(in_mass_unit(row.mass, first)),
            *_centre(masses[row.part], first),
            row.grain,
            row.note,
        )
        for row in edition.parts
    ]
    return header, rows


def _centre(mass: PartMass, first: str) -> tuple[str, ...]:
    """Return the centre of gravity in the part's frame, z from its rear face."""
    return tuple(place_decimal(each, first) for each in (mass.x, mass.y, mass.z))


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
    first = edition.first
    header: _Row = (
        *("sheet", "title", f"thickness_{first}"),
        *_sides(first, "along_grain", "across_grain"),
        *("count", "price_each", "currency"),
    )
    rows: list[_Row] = [
        (
            row.sheet,
            row.title,
            reading_number(row.thickness, first),
            *_both(first, row.width, row.height),
            str(row.count),
            _money(row.price),
            edition.identity.currency if row.price is not None else "",
        )
        for row in edition.sheets
    ]
    return header, rows


def _boards(edition: Edition) -> tuple[_Row, list[_Row]]:
    first = edition.first
    section = (f"thickness_{first}", f"width_{first}")
    header: _Row = ("board", "title", *section, *_sides(first, "length"), "count")
    rows: list[_Row] = [
        (
            row.name,
            row.title,
            place_decimal(row.thickness, first),
            place_decimal(row.width, first),
            *_both(first, row.length),
            str(row.count),
        )
        for row in edition.boards
    ]
    return header, rows


def _board_cuts(edition: Edition) -> tuple[_Row, list[_Row]]:
    first = edition.first
    pieces, waste = f"pieces_{first}" if first == "in" else "pieces", f"waste_{first}"
    header: _Row = ("board", "title", "number", *_sides(first, "length"), pieces, waste)
    rows: list[_Row] = [
        (
            plan.stock,
            plan.title,
            str(board.number),
            *_both(first, board.length),
            "; ".join(
                f"{piece.label} {place_decimal(piece.length, first)}" for piece in board.pieces
            ),
            place_decimal(board.waste, first),
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
        *("cuts", "most_passes", way_unit(edition.first), "minutes"),
    )
    sheets = zip(edition.layout.sheets, edition.times, strict=True)
    rows = [
        (str(sheet.number), sheet.sheet, *row)
        for sheet, time in sheets
        for row in _cuts(time, edition.first)
    ]
    return header, rows


def _cuts(time: CutTime, first: str) -> Iterator[_Row]:
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
            summed(in_way_unit(each.metres, first)),
            _minutes(each.feed_seconds + each.plunge_seconds),
        )
    yield ("moves above the sheet", "", "", "", "", "", _minutes(time.rapid_seconds))
    if time.changes:
        changes, took = str(time.changes), _minutes(time.change_seconds)
        yield ("changes of cutter", "", "", changes, "", "", took)


def _minutes(seconds: float) -> str:
    return summed(seconds / 60)


def _edges(edition: Edition) -> tuple[_Row, list[_Row]]:
    first = edition.first
    way = way_unit(first)
    header: _Row = (
        *("treatment", "what", f"banding_thickness_{first}", f"radius_{first}", "faces"),
        *("sheet", f"sheet_thickness_{first}", "count", way, f"{way}_to_buy"),
    )
    rows: list[_Row] = [
        (
            row.edge.kind.name,
            row.edge.of,
            reading_number(row.edge.thickness, first) if row.edge.thickness else "",
            reading_number(row.edge.radius, first) if row.edge.radius else "",
            row.edge.faces if row.edge.radius else "",
            row.sheet,
            reading_number(row.thickness, first),
            str(row.count),
            summed(in_way_unit(row.length / 1000, first)),
            summed(in_way_unit(row.to_buy / 1000, first)) if row.to_buy else "",
        )
        for row in edition.edges
    ]
    return header, rows


_ROWS = (_parts, _hardware, _sheets, _boards, _board_cuts, _costs, _cutting, _edges)


def list_files(edition: Edition) -> dict[str, bytes]:
    """Return every list that has a row as a CSV file, by its name in the bundle."""
    made = {name: rows(edition) for name, rows in zip(LISTS, _ROWS, strict=True)}
    return {name: csv_bytes(header, rows) for name, (header, rows) in made.items() if rows}
