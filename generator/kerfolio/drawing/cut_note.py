"""The words on cut files: what each is for, and the squares that show whether it came whole."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from kerfolio.basis.figured import Figure, figured, replaced
from kerfolio.basis.lengths import size_text
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.basis.style import Rule, Style
from kerfolio.basis.thickness import range_in
from kerfolio.basis.words import counted
from kerfolio.layouts.layout import SheetLayout
from kerfolio.settling.coupon import size_of
from kerfolio.settling.measured import sheets_measured
from kerfolio.settling.settled import CENTRE, Coupon, SettledPart, SettledPlan, SettledSheet
from kerfolio.settling.titles import feature_title, part_title, sheet_title, within
from kerfolio.shop.art import Art
from kerfolio.shop.reopening import Reopening

CHECK_SQUARES = ((100.0, "100 mm"), (101.6, "4 in"))
"""Sides of the two check squares in mm, with the words in them."""

MEASURE = "Measure both ways"
"""What stands below either of these words."""

IN_MM, IN_INCHES = "Units: mm.", "Units: in."
"""What a file says of its own lengths."""

Lines = tuple[str, ...]

_OWN_FIT = ", some joints their own"
"""What is said after the sheet's fit where it is not that of all joints."""


def said_in_inches(line: str) -> str:
    """Return a line as the twin of a file says it that is in inches."""
    return replaced(line, IN_MM, IN_INCHES)


def sheet_note(
    settled: SettledPlan, layout: SheetLayout, reader: Reader = METRIC, what: str = ""
) -> Lines:
    """Return the lines on a sheet's cut file; ``reader`` is whom it is for.

    ``what`` is what the sheet is called, where not by its number.
    """
    count, sheet = len(layout.placements), settled.sheet(layout.sheet)
    laid = {each.part for each in layout.placements}
    parts = [part for part in settled.parts if part.name in laid]
    zero = "Middle" if sheet.datum == CENTRE else "Lower left corner"
    return (
        f"{_head(settled)}, {what or f'sheet {layout.number}'}: {counted(count, 'piece')}",
        *_sheet_lines(settled, sheet, parts, reader),
        figured("Files for {}", sheets_measured(settled, reader)),
        f"{IN_MM} {zero} of the sheet is 0,0.",
    )


def part_note(settled: SettledPlan, part: SettledPart, reader: Reader = METRIC) -> Lines:
    """Return the lines on a part's cut file."""
    return (
        _head(settled),
        f"Part {part.mark}, {part_title(settled.plan, part.name)}: cut {len(part.pieces)}",
        *_sheet_lines(settled, settled.sheet(part.sheet), (part,), reader),
        figured("Files for {}. {}", sheets_measured(settled, reader), IN_MM),
    )


def reopening_note(settled: SettledPlan, reopening: Reopening, reader: Reader = METRIC) -> Lines:
    """Return the lines on the file that opens a part's openings wider."""
    part, wider = reopening.part, Figure(reopening.by, _chosen(reader))
    called = reopened_title(settled, reopening)
    past = "Clamp it, then take both away: the cuts run over them"
    return (
        _head(settled),
        figured("Part {}, {}: openings wider by {}", part.mark, called, wider),
        *_sheet_lines(settled, settled.sheet(part.sheet), (part,), reader),
        "Show face up; lower edge to a fence, left edge to a stop",
        "0,0 is the corner of fence and stop, z as for the first cut",
        *((past,) if reopening.lying.past else ()),
        "Cut inside these lines; the piece’s edge is not cut",
        figured("Files for {}. {}", sheets_measured(settled, reader), IN_MM),
    )


def art_note(settled: SettledPlan, art: Art) -> Lines:
    """Return the lines on an engraving's cut file."""
    called = part_title(settled.plan, art.part.name)
    return (
        _head(settled),
        f"{feature_title(art.name)}, engraved on part {art.part.mark}, {called}",
        "0,0 is the middle of the art: set it over the mark on the piece",
        IN_MM,
    )


def coupon_note(settled: SettledPlan, coupon: Coupon, reader: Reader = METRIC) -> Lines:
    """Return the lines on a fit coupon's cut file."""
    return (
        f"{_head(settled)}, fit coupon",
        f"Steps for {sheet_title(settled, coupon.sheet)}, {_range(coupon, reader)} thick",
        "Cut this first: it tells what your cutter really cuts.",
        f"Takes a scrap of {size_text(size_of(coupon), reader)}.",
        IN_MM,
    )


def _range(coupon: Coupon, reader: Reader) -> str:
    """The coupon is the same for every thickness, so its file has none as its own."""
    thicknesses = [each.thickness for each in coupon.slots]
    return range_in(min(thicknesses), max(thicknesses), reader)


def reopened_title(settled: SettledPlan, reopening: Reopening) -> str:
    """Return what is opened wider: ``Rail``, of one feature alone ``Rail, end slots``."""
    part, _, feature = reopening.name.partition(".")
    called = part_title(settled.plan, part)
    return f"{called}, {within(feature_title(feature))}" if feature else called


def _head(settled: SettledPlan) -> str:
    return f"{settled.plan.title} {settled.plan.version}"


def _sheet_lines(
    settled: SettledPlan, sheet: SettledSheet, parts: Iterable[SettledPart], reader: Reader
) -> Lines:
    """Return what the files are cut for and with; figures of the same length for any sheet.

    The fit is the sheet's; that some joint of these parts has another room is said besides.
    """
    one, other = (Figure(sheet.thickness, style) for style in _thick(reader))
    chosen = _chosen(reader)
    cutter = replace(chosen, before="cutter ", none="no cutter")
    cut = replace(
        chosen, unless=0.0, signed=True, before=", true cut ", after=f"{chosen.after} built in"
    )
    return (
        figured("Cut for {} at {} ({})", sheet_title(settled, sheet.name), one, other),
        figured(
            "Fit {}{}, {}{}",
            Figure(sheet.fit, chosen),
            _OWN_FIT if any(map(_has_own_room, parts)) else "",
            Figure(sheet.diameter, cutter),
            Figure(sheet.cut, cut),
        ),
    )


def _thick(reader: Reader) -> tuple[Style, Style]:
    rule = Rule.SOLD if reader.unit == "in" else Rule.CALLIPER
    mm = Style(rule=Rule.FIXED, decimals=2, after=" mm", mark=reader.mark)
    inch = Style(rule=rule, after=" in", mark=reader.mark)
    return (inch, mm) if reader.unit == "in" else (mm, inch)


def _chosen(reader: Reader) -> Style:
    if reader.unit == "in":
        return Style(rule=Rule.CHOSEN, after=" in", mark=reader.mark)
    return Style(decimals=3, after=" mm", mark=reader.mark)


def _has_own_room(part: SettledPart) -> bool:
    """Tell whether a feature of a part has other room than its sheet's fit."""
    rooms = (each.room for each in part.features)
    return any(room is not None and (room.asked or any(room.allowed)) for room in rooms)
