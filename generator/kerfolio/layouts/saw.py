"""Saw diagrams: sheets cut into blanks by cuts from edge to edge, in an order to follow."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from kerfolio.basis.finding import Finding, note
from kerfolio.basis.measures import size
from kerfolio.basis.said import said
from kerfolio.layouts.guillotine import is_guillotine
from kerfolio.layouts.saw_blank import Blank, blank_of
from kerfolio.layouts.saw_cuts import NM, sheet_cuts
from kerfolio.layouts.saw_levels import Levels, Stock
from kerfolio.layouts.saw_search import fewest_sheets
from kerfolio.layouts.saw_sheet import Saw, SawBlank, SawSheet
from kerfolio.layouts.turns import turns_of
from kerfolio.settling.settled import SettledPart, SettledPiece, SettledPlan, SettledSheet

SAW = Saw()
"""A 1/8 in blade, 5 mm off the edges, 10 mm round shaped parts (common practice)."""


def saw_plan(settled: SettledPlan, saw: Saw = SAW) -> tuple[SawSheet, ...]:
    """Cut the blanks of all pieces from the fewest sheets found, with the fewest fence settings.

    Sheets count from 1 over the plan, in the order of its sheet materials. The grain is kept:
    blanks turn by 90 degrees only where their part may. A part whose blank no sheet holds is left
    out: see ``saw_faults``. Deterministic: the search is bounded by counted work.
    """
    sheets: list[SawSheet] = []
    for sheet in settled.sheets:
        parts = [part for part in settled.parts if part.sheet == sheet.name]
        sheets += _Cutter(sheet, saw, parts).sheets(len(sheets) + 1)
    return tuple(sheets)


def saw_faults(settled: SettledPlan, saw: Saw = SAW) -> tuple[Finding, ...]:
    """Return a note for each part that cannot be sawn from its sheet."""
    return tuple(
        _too_large(part, sheet, saw)
        for sheet in settled.sheets
        for part in settled.parts
        if part.sheet == sheet.name and not _blanks(part, sheet, saw)
    )


def _too_large(part: SettledPart, sheet: SettledSheet, saw: Saw) -> Finding:
    message = f"`{part.name}` is too large to saw from its sheet"
    advice = said(
        "It measures {}; inside trimmed edges the sheet `{}` has {}.",
        size(part.size),
        sheet.name,
        size(_room(sheet, saw), "room-"),
    )
    return note("saw-too-large", message, part.place, advice, subject=part.name)


def _room(sheet: SettledSheet, saw: Saw) -> tuple[float, float]:
    return sheet.size[0] - 2 * saw.trim, sheet.size[1] - 2 * saw.trim


def _blanks(part: SettledPart, sheet: SettledSheet, saw: Saw) -> tuple[Blank, ...]:
    """Return a part's blank in the ways it may lie on its sheet, a square one once."""
    ways: dict[tuple[int, int], Blank] = {}
    for turn in (0.0, 90.0):
        blank = blank_of(part, turn, saw.allowance, _room(sheet, saw))
        if blank is not None and turn in turns_of(part, sheet):
            ways.setdefault(_nm(blank.size, 0.0), blank)
    return tuple(ways.values())


@dataclass(frozen=True, slots=True)
class _Cutter:
    """One sheet material with the parts cut from it."""

    sheet: SettledSheet
    saw: Saw
    parts: Sequence[SettledPart]

    def sheets(self, first: int) -> Iterator[SawSheet]:
        """Yield the sheets; pieces of a part are named in the order they are met."""
        ways = {part.name: _blanks(part, self.sheet, self.saw) for part in self.parts}
        owners = [part for part in self.parts if ways[part.name] for _ in part.pieces]
        if not owners:
            return
        sizes = tuple(
            tuple(_nm(way.size, self.saw.kerf) for way in ways[part.name]) for part in owners
        )
        stock = Stock(_nm(_room(self.sheet, self.saw), self.saw.kerf), sizes)
        names = {part.name: iter(part.pieces) for part in self.parts}
        for number, levels in enumerate(fewest_sheets(stock), first):
            parts = [owners[index] for index in levels.pieces]
            own = [(part, next(names[part.name])) for part in parts]
            yield self._sheet(number, levels, own, ways)

    def _sheet(
        self,
        number: int,
        levels: Levels,
        own: Sequence[tuple[SettledPart, SettledPiece]],
        ways: dict[str, tuple[Blank, ...]],
    ) -> SawSheet:
        cutting = sheet_cuts(levels, [piece.mark for _, piece in own], self.sheet.size, self.saw)
        boxes = [(p.x, p.y, p.x + p.width, p.y + p.height) for p in cutting.places]
        if not is_guillotine(boxes, self.saw.kerf):
            raise AssertionError(f"saw sheet {number} cannot be cut from edge to edge")
        blanks = tuple(
            SawBlank(
                piece=piece.label,
                mark=piece.mark,
                part=part.name,
                at=place,
                blank=next(
                    way
                    for way in ways[part.name]
                    if _nm(way.size, 0.0) == _nm((place.width, place.height), 0.0)
                ),
            )
            for (part, piece), place in zip(own, cutting.places, strict=True)
        )
        return SawSheet(
            number=number,
            sheet=self.sheet.name,
            size=self.sheet.size,
            saw=self.saw,
            blanks=blanks,
            cuts=cutting.cuts,
            offcuts=cutting.offcuts,
        )


def _nm(size: tuple[float, float], kerf: float) -> tuple[int, int]:
    return round((size[0] + kerf) * NM), round((size[1] + kerf) * NM)
