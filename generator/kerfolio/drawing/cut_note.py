"""The words on cut files: what each is for, and the squares that show whether it came whole."""

from __future__ import annotations

from kerfolio.basis.thickness import range_in, sold_pair
from kerfolio.layouts.layout import SheetLayout
from kerfolio.settling.settled import CENTRE, Coupon, SettledPart, SettledPlan, SettledSheet
from kerfolio.shop.art import Art

CHECK_SQUARES = ((100.0, "100 mm"), (101.6, "4 in"))
"""Sides of the two check squares in mm, with the words in them."""

MEASURE = "Measure both ways"
"""What stands below either of these words."""

IN_MM, IN_INCHES = "Units: mm.", "Units: in."
"""What a file says of its own lengths."""

Lines = tuple[str, ...]


def said_in_inches(line: str) -> str:
    """Return a line as the twin of a file says it that is in inches."""
    return line.replace(IN_MM, IN_INCHES)


def sheet_note(settled: SettledPlan, layout: SheetLayout, first: str = "mm") -> Lines:
    """Return the lines on a sheet's cut file; ``first`` is the unit named first."""
    count, sheet = len(layout.placements), settled.sheet(layout.sheet)
    zero = "Middle" if sheet.datum == CENTRE else "Lower left corner"
    return (
        f"{settled.plan.title} {settled.plan.version}, sheet {layout.number}",
        _thickness_line(sheet, first),
        f"Files for {settled.variant.label}, {count} {'piece' if count == 1 else 'pieces'}",
        f"{IN_MM} {zero} of the sheet is 0,0.",
    )


def part_note(settled: SettledPlan, part: SettledPart, first: str = "mm") -> Lines:
    """Return the lines on a part's cut file."""
    return (
        f"{settled.plan.title} {settled.plan.version}",
        f"Part {part.mark}, {part.name}: cut {len(part.pieces)}",
        _thickness_line(settled.sheet(part.sheet), first),
        f"Files for {settled.variant.label}. {IN_MM}",
    )


def art_note(settled: SettledPlan, art: Art) -> Lines:
    """Return the lines on an engraving's cut file."""
    return (
        f"{settled.plan.title} {settled.plan.version}",
        f"Engraving {art.name} on part {art.part.mark}, {art.part.name}",
        "0,0 is the middle of the art: set it over the mark on the piece",
        IN_MM,
    )


def coupon_note(settled: SettledPlan, coupon: Coupon, first: str = "mm") -> Lines:
    """Return the lines on a fit coupon's cut file."""
    return (
        f"{settled.plan.title} {settled.plan.version}, fit coupon",
        f"Slots for {coupon.sheet} of {_range(coupon, first)}",
        "Cut this first. Use the files of the slot that fits the tab.",
        IN_MM,
    )


def _range(coupon: Coupon, first: str) -> str:
    """The coupon is the same for every thickness, so its file has none as its own."""
    thicknesses = [each.thickness for each in coupon.slots]
    return range_in(min(thicknesses), max(thicknesses), first)


def _thickness_line(sheet: SettledSheet, first: str) -> str:
    one, other = sold_pair(sheet.thickness, first)
    return f"Cut for {one} {sheet.name} ({other})"
