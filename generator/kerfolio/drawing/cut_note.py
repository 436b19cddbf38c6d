"""The words on cut files: what each is for, and the squares that show whether it came whole."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from kerfolio.basis.figured import Figure, Figured, figured, joined, replaced
from kerfolio.basis.lengths import size_text
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.basis.saying import say
from kerfolio.basis.style import Rule, Style
from kerfolio.basis.thickness import range_in
from kerfolio.layouts.layout import SheetLayout
from kerfolio.settling.coupon import size_of
from kerfolio.settling.measured import sheets_measured
from kerfolio.settling.settled import CENTRE, Coupon, SettledPart, SettledPlan, SettledSheet
from kerfolio.settling.titles import feature_title, part_title, sheet_title, within
from kerfolio.shop.art import Art
from kerfolio.shop.reopening import Reopening

CHECK_SQUARES = ((100.0, "100 mm"), (101.6, "4 in"))
"""Sides of the two check squares in mm, with the words in them."""

IN_MM, IN_INCHES = ": mm.", ": in."
"""What ends, in every language, the words about the unit of a file's own lengths."""

Lines = tuple[str, ...]


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
    what = what or sheet_called(layout, reader)
    zero = "cutfile-zero-middle" if sheet.datum == CENTRE else "cutfile-zero-corner"
    return (
        say(reader, "cutfile-sheet", plan=_head(settled), sheet=what, pieces=count),
        *_sheet_lines(settled, sheet, parts, reader),
        say(reader, "cutfile-for", sheets=sheets_measured(settled, reader)),
        f"{say(reader, 'cutfile-units')} {say(reader, zero)}",
    )


def sheet_called(layout: SheetLayout, reader: Reader) -> str:
    """Return what a sheet is called by its number: ``sheet 1``."""
    return say(reader, "cutfile-a-sheet", number=layout.number)


def part_note(settled: SettledPlan, part: SettledPart, reader: Reader = METRIC) -> Lines:
    """Return the lines on a part's cut file."""
    return (
        _head(settled),
        say(
            reader,
            "cutfile-part",
            mark=part.mark,
            part=part_title(settled.plan, part.name, reader),
            count=len(part.pieces),
        ),
        *_sheet_lines(settled, settled.sheet(part.sheet), (part,), reader),
        _for_sheets(settled, reader),
    )


def reopening_note(settled: SettledPlan, reopening: Reopening, reader: Reader = METRIC) -> Lines:
    """Return the lines on the file that opens a part's openings wider."""
    part, wider = reopening.part, Figure(reopening.by, _chosen(reader))
    called = reopened_title(settled, reopening, reader)
    past = (say(reader, "cutfile-past"),) if reopening.lying.past else ()
    return (
        _head(settled),
        say(reader, "cutfile-wider", mark=part.mark, part=called, wider=wider),
        *_sheet_lines(settled, settled.sheet(part.sheet), (part,), reader),
        say(reader, "cutfile-laid"),
        say(reader, "cutfile-laid-zero"),
        *past,
        say(reader, "cutfile-inside"),
        _for_sheets(settled, reader),
    )


def _for_sheets(settled: SettledPlan, reader: Reader) -> str:
    sheets = say(reader, "cutfile-for", sheets=sheets_measured(settled, reader))
    return joined(". ", (sheets, say(reader, "cutfile-units")))


def art_note(settled: SettledPlan, art: Art, reader: Reader = METRIC) -> Lines:
    """Return the lines on an engraving's cut file."""
    return (
        _head(settled),
        say(
            reader,
            "cutfile-art",
            art=feature_title(art.name),
            mark=art.part.mark,
            part=part_title(settled.plan, art.part.name, reader),
        ),
        say(reader, "cutfile-art-zero"),
        say(reader, "cutfile-units"),
    )


def coupon_note(settled: SettledPlan, coupon: Coupon, reader: Reader = METRIC) -> Lines:
    """Return the lines on a fit coupon's cut file."""
    return (
        say(reader, "cutfile-coupon", plan=_head(settled)),
        say(
            reader,
            "cutfile-steps",
            sheet=sheet_title(settled, coupon.sheet),
            range=_range(coupon, reader),
        ),
        say(reader, "cutfile-first"),
        say(reader, "cutfile-scrap", size=size_text(size_of(coupon), reader)),
        say(reader, "cutfile-units"),
    )


def _range(coupon: Coupon, reader: Reader) -> str:
    """The coupon is the same for every thickness, so its file has none as its own."""
    thicknesses = [each.thickness for each in coupon.slots]
    return range_in(min(thicknesses), max(thicknesses), reader)


def reopened_title(settled: SettledPlan, reopening: Reopening, reader: Reader) -> str:
    """Return what is opened wider: ``Rail``, of one feature alone ``Rail, end slots``."""
    part, _, feature = reopening.name.partition(".")
    called = part_title(settled.plan, part, reader)
    return f"{called}, {within(feature_title(feature), reader)}" if feature else called


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
    cutter, none = say(reader, "cutfile-cutter"), say(reader, "cutfile-no-cutter")
    true_cut, built_in = say(reader, "cutfile-true-cut"), say(reader, "cutfile-built-in")
    cutting = replace(chosen, before=f"{cutter} ", none=none)
    cut = replace(
        chosen,
        unless=0.0,
        signed=True,
        before=f", {true_cut} ",
        after=f"{chosen.after} {built_in}",
    )
    own = int(any(map(_has_own_room, parts)))
    return (
        say(
            reader,
            "cutfile-cut-for",
            sheet=sheet_title(settled, sheet.name),
            thickness=figured("{} ({})", one, other),
        ),
        say(
            reader,
            "cutfile-fit",
            fit=Figure(sheet.fit, chosen),
            own=own,
            cutter=Figured(Figure(sheet.diameter, cutting), Figure(sheet.cut, cut)),
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
