"""The words on cut files: what each is for, and the squares that show whether it came whole."""

from __future__ import annotations

from kerfolio.basis.lengths import mm_number, thickness_pair
from kerfolio.layouts.layout import SheetLayout
from kerfolio.settling.settled import CENTRE, Coupon, SettledPart, SettledPlan, SettledSheet
from kerfolio.shop.art import Art

CHECK_SQUARES = ((100.0, "100 mm"), (101.6, "4 in"))
"""Sides of the two check squares in mm, with the words in them."""

MEASURE = "Measure both ways"
"""What stands below either of these words."""

Lines = tuple[str, ...]


def sheet_note(settled: SettledPlan, layout: SheetLayout) -> Lines:
    """Return the lines on a sheet's cut file."""
    count, sheet = len(layout.placements), settled.sheet(layout.sheet)
    zero = "Middle" if sheet.datum == CENTRE else "Lower left corner"
    return (
        f"{settled.plan.title} {settled.plan.version}, sheet {layout.number}",
        _thickness_line(sheet),
        f"Files for {settled.variant.label}, {count} {'piece' if count == 1 else 'pieces'}",
        f"Units: mm. {zero} of the sheet is 0,0.",
    )


def part_note(settled: SettledPlan, part: SettledPart) -> Lines:
    """Return the lines on a part's cut file."""
    return (
        f"{settled.plan.title} {settled.plan.version}",
        f"Part {part.mark}, {part.name}: cut {len(part.pieces)}",
        _thickness_line(settled.sheet(part.sheet)),
        f"Files for {settled.variant.label}. Units: mm.",
    )


def art_note(settled: SettledPlan, art: Art) -> Lines:
    """Return the lines on an engraving's cut file."""
    return (
        f"{settled.plan.title} {settled.plan.version}",
        f"Engraving {art.name} on part {art.part.mark}, {art.part.name}",
        "0,0 is the middle of the art: set it over the mark on the piece",
        "Units: mm.",
    )


def coupon_note(settled: SettledPlan, coupon: Coupon) -> Lines:
    """Return the lines on a fit coupon's cut file."""
    return (
        f"{settled.plan.title} {settled.plan.version}, fit coupon",
        f"Slots for {coupon.sheet} of {_range(coupon)}",
        "Cut this first. Use the files of the slot that fits the tab.",
        "Units: mm.",
    )


def _range(coupon: Coupon) -> str:
    """The coupon is the same for every thickness, so its file has none as its own."""
    thicknesses = [each.thickness for each in coupon.slots]
    return f"{mm_number(min(thicknesses), 2)} to {mm_number(max(thicknesses), 2)} mm"


def _thickness_line(sheet: SettledSheet) -> str:
    metric, inch = thickness_pair(sheet.thickness, "mm")
    return f"Cut for {metric} {sheet.name} ({inch})"
