"""The yard card in words: what to ask for, and where the yard's saw makes it small enough."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from kerfolio.basis.lengths import INCH, both_text, size_text
from kerfolio.basis.masses import KG_PER_MM3, mass_text
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import listed, say
from kerfolio.basis.sheet_size import sheet_text
from kerfolio.basis.thickness import sold_range_text
from kerfolio.edition.edition import Edition
from kerfolio.edition.measuring import at_the_yard
from kerfolio.layouts.guillotine import Box
from kerfolio.layouts.layout import Placement, SheetLayout
from kerfolio.layouts.panel_cuts import (
    KERF,
    MOST_CUTS,
    PanelBlank,
    PanelCut,
    PanelCuts,
    box_of,
    panel_cuts,
)
from kerfolio.settling.settled import SettledSheet
from kerfolio.shop.rows import SheetRow

Size = tuple[float, float]

_STEPS = {"mm": 1.0, "in": INCH / 8}
"""What a yard's fence is set to: whole millimetres, or eighths of an inch."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ask:
    """A line of what to ask for: how many of what, what is to be known, what all of it weighs."""

    count: int
    title: str
    details: tuple[str, ...]
    weight: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class BlankWords:
    """A blank: its number on the drawing, size, weight, pieces by their marks, and its corner."""

    number: int
    size: str
    weight: str
    marks: tuple[str, ...]
    corner: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SawnSheet:
    """One sheet at the yard: a sentence, its cuts in order, and the blanks they leave."""

    number: int
    title: str
    words: str
    cuts: tuple[str, ...] = ()
    blanks: tuple[BlankWords, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class YardCard:
    """The whole card."""

    asks: tuple[Ask, ...]
    weight: str
    limits: str
    sheets: tuple[SawnSheet, ...]
    sawn: str
    measure: str


def has_card(edition: Edition) -> bool:
    """Tell whether there is anything to buy at a yard."""
    return any(_bought(edition)) or any(plan.to_buy for plan in edition.board_plans)


def yard_card(edition: Edition) -> YardCard | None:
    """Return the card of an edition; None where there is nothing to buy at a yard."""
    if not has_card(edition):
        return None
    bought = tuple(_bought(edition))
    total = math.fsum(row.count * _row_mass(edition, row) for row in bought)
    return YardCard(
        asks=(*(_sheet_ask(edition, row) for row in bought), *_board_asks(edition)),
        weight=mass_text(total, edition.reader) if total else "",
        limits=_limits(edition),
        sheets=tuple(_sawn(edition, each) for each in edition.layout.sheets),
        measure=at_the_yard(edition.reader),
        sawn=say(edition.reader, "yard-sawn", saw=both_text(KERF, edition.reader)),
    )


def cuts_of(edition: Edition, layout: SheetLayout) -> PanelCuts | None:
    """Return the fewest cuts after which every blank of a sheet can be taken home; None: none do.

    Each lies on the bed, too, where that can be had.
    """
    identity, sheet = edition.identity, edition.settled.sheet(layout.sheet)
    carried, bed = identity.carries, identity.bed
    pieces = {each.piece: _box(each, edition) for each in layout.placements}
    step = _STEPS[edition.reader.unit]

    def cut_for(limits: Sequence[Size]) -> PanelCuts | None:
        def fits(box: Box, laden: bool) -> bool:
            size = box[2] - box[0], box[3] - box[1]
            # An offcut may stay at the yard.
            light = not laden or _mass(sheet, size) <= carried.kg
            return light and all(not laden or _within(size, each) for each in limits)

        sides = tuple(dict.fromkeys(side for each in limits for side in each))
        return panel_cuts(layout.size, pieces, fits, sides, step, sheet.margin)

    found = cut_for((carried.size, bed)) if bed else None
    return found or cut_for((carried.size,))


def _box(placed: Placement, edition: Edition) -> Box:
    return box_of(placed, edition.corners or (edition.settled,))


def _within(size: Size, most: Size) -> bool:
    """Tell whether a blank is no larger than that, whichever way it is laid."""
    return min(size) <= min(most) and max(size) <= max(most)


def _mass(sheet: SettledSheet, size: Size) -> float:
    return size[0] * size[1] * sheet.thickness * sheet.stock.density * KG_PER_MM3


def _bought(edition: Edition) -> Iterator[SheetRow]:
    """Yield the sheets to buy: offcuts at hand have another title."""
    titles = {each.name: each.stock.title for each in edition.settled.sheets}
    yield from (row for row in edition.sheets if row.title == titles.get(row.sheet))


def _row_mass(edition: Edition, row: SheetRow) -> float:
    return _mass(edition.settled.sheet(row.sheet), (row.width, row.height))


def _sheet_ask(edition: Edition, row: SheetRow) -> Ask:
    reader, sheet = edition.reader, edition.settled.sheet(row.sheet)
    grade = next((each.grade for each in edition.plan.sheets if each.name == row.sheet), "")
    least, most = sheet.published
    plies = sheet.stock.plies
    details = (
        sheet_text((row.width, row.height), reader),
        *([say(reader, "yard-grade", grade=grade)] if grade else []),
        *([say(reader, "yard-plies", count=plies)] if plies else []),
        say(reader, "yard-thick", range=sold_range_text(least, most, reader)),
    )
    weight = mass_text(_row_mass(edition, row), reader)
    if row.count > 1:
        weight = say(reader, "yard-each", weight=weight)
    return Ask(count=row.count, title=row.title, details=details, weight=weight)


def _board_asks(edition: Edition) -> Iterator[Ask]:
    for plan in edition.board_plans:
        for length, count in plan.to_buy:
            long = both_text(length, edition.reader)
            words = (say(edition.reader, "yard-long", length=long),)
            yield Ask(count=count, title=plan.title, details=words)


def _limits(edition: Edition) -> str:
    reader, carried, bed = edition.reader, edition.identity.carries, edition.identity.bed
    size, mass = sheet_text(carried.size, reader), mass_text(carried.kg, reader)
    if bed is None:
        return say(reader, "yard-limits", size=size, mass=mass)
    return say(reader, "yard-limits-bed", size=size, mass=mass, bed=sheet_text(bed, reader))


def _sawn(edition: Edition, layout: SheetLayout) -> SawnSheet:
    reader, sheet = edition.reader, edition.settled.sheet(layout.sheet)
    title = say(
        reader,
        "yard-sheet",
        number=layout.number,
        sheet=sheet.stock.title,
        size=sheet_text(layout.size, reader),
    )
    found = cuts_of(edition, layout)
    if found is None:
        return SawnSheet(number=layout.number, title=title, words=_none(edition, layout))
    marks = _marks(edition)
    return SawnSheet(
        number=layout.number,
        title=title,
        words=" ".join(filter(None, (_words(found, reader), _off_bed(found, edition)))),
        cuts=tuple(_cut(each, reader) for each in found.cuts),
        blanks=tuple(
            _blank(each, number, sheet, marks, reader)
            for number, each in enumerate(found.laden, start=1)
        ),
    )


def _marks(edition: Edition) -> Mapping[str, str]:
    return {piece.label: piece.mark for part in edition.settled.parts for piece in part.pieces}


def _words(found: PanelCuts, reader: Reader) -> str:
    if not found.cuts:
        return say(reader, "yard-no-cut")
    words = say(
        reader,
        "yard-cuts",
        cuts=say(reader, "yard-straight-cuts", count=len(found.cuts)),
        blanks=len(found.laden),
    )
    empty = "; ".join(sheet_text(each.size, reader) for each in found.blanks if not each.pieces)
    return f"{words} {say(reader, 'yard-left', blanks=empty)}" if empty else words


def _off_bed(found: PanelCuts, edition: Edition) -> str:
    """Return which blanks are larger than the bed, where no cuts make them smaller."""
    bed = edition.identity.bed
    laden = enumerate(found.laden, start=1)
    large = [str(number) for number, each in laden if bed and not _within(each.size, bed)]
    if not large:
        return ""
    reader = edition.reader
    return say(reader, "yard-off-bed", count=len(large), blanks=listed(reader, large))


def _none(edition: Edition, layout: SheetLayout) -> str:
    """Return why a sheet cannot be cut small enough, naming the pieces that are too large."""
    marks, large = _marks(edition), []
    for each in layout.placements:
        x0, y0, x1, y1 = _box(each, edition)
        if not _within((x1 - x0, y1 - y0), edition.identity.carries.size):
            large.append(marks[each.piece])
    reader = edition.reader
    if large:
        return say(reader, "yard-whole-large", count=len(large), pieces=listed(reader, large))
    return say(reader, "yard-whole-crossed", cuts=MOST_CUTS)


def _cut(cut: PanelCut, reader: Reader) -> str:
    way = "across" if cut.across else "along"
    at = say(reader, f"yard-cut-{way}", at=both_text(cut.from_edge, reader))
    if not cut.within:
        return f"{at[:1].upper()}{at[1:]}"
    within = [say(reader, f"yard-{side}-of", number=number) for side, number in cut.within]
    where = within[0]
    for each in within[1:]:
        where = say(reader, "lists-and", head=where, item=each)
    return say(reader, "yard-cut-within", where=where, cut=at)


def _blank(
    blank: PanelBlank, number: int, sheet: SettledSheet, marks: Mapping[str, str], reader: Reader
) -> BlankWords:
    ways = zip(blank.box[:2], ("right", "up"), strict=True)
    corner = ", ".join(
        say(reader, f"yard-corner-{way}", far=both_text(mm, reader)) for mm, way in ways if mm
    )
    return BlankWords(
        number=number,
        size=size_text(blank.size, reader),
        weight=mass_text(_mass(sheet, blank.size), reader),
        marks=tuple(marks[piece] for piece in blank.pieces),
        corner=corner or say(reader, "yard-corner-own"),
    )
