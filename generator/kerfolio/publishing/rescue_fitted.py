"""Fitted files of second cuts: what opens each part wider, for every sheet and by any amount."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import cache, partial

from kerfolio.basis.reader import Reader
from kerfolio.drawing.cut_sheet import cut_reopening
from kerfolio.edition.names import rescue_name, wider_stem
from kerfolio.fitted.finding import CellsError, find
from kerfolio.fitted.form import Fitted, Number, Point
from kerfolio.fitted.recorder import Draft
from kerfolio.publishing.cut_files import CutFile, Formats
from kerfolio.publishing.fitted_files import Settling, draft_of, variant_at
from kerfolio.settling.reopened import LEAST_REOPEN, MOST_REOPEN, takers
from kerfolio.settling.settled import SettledPlan
from kerfolio.shop.reopening import Reopening, reopening

REOPEN = Number(name="reopen", least=LEAST_REOPEN, most=MOST_REOPEN, drawn=LEAST_REOPEN, decimals=3)
"""By how much a piece's joints are too tight, mm."""


def reopening_file(found: Reopening, settled: SettledPlan, reader: Reader) -> CutFile:
    """Return the cut file that opens a piece wider."""
    stem = wider_stem(found.name, found.by, settled.plan.units)
    return CutFile(
        named=partial(rescue_name, settled.variant.label, stem),
        drawn=cache(partial(cut_reopening, settled, found, reader)),
    )


def rescue_fitted(
    settling: Settling, numbers: Sequence[Number], formats: Formats, reader: Reader
) -> Fitted | None:
    """Return what opens each part wider that can be laid for it, by a plan's ``numbers``, too.

    They are for cutters: without one they are drawn by ``files`` alone. How a piece lies is chosen
    as the plan is drawn. None where they follow no rule, or there is no such part.
    """
    turns = dict(_turns(settling.drawn))

    def draw(at: Point) -> Sequence[Draft]:
        by = at[REOPEN.name]
        there = settling.at(variant_at(settling.drawn, _without(at)))
        if there is None or by is None:
            raise CellsError("the plan does not settle within its range")
        found = [_reopened(there, name, turn, by) for name, turn in turns.items()]
        files = [reopening_file(each, there, reader) for each in found]
        return [draft_of(file, form) for file in files for form in formats]

    if not turns:
        return None
    try:
        return find((*(replace(each, none=False) for each in numbers), REOPEN), draw, linear=True)
    except CellsError:
        return None


def _turns(drawn: SettledPlan) -> Iterator[tuple[str, float]]:
    """Yield how each part lies for a second cut, by its name, those that can lie so at all."""
    for part in drawn.parts:
        sheet = drawn.sheet(part.sheet)
        if takers(part.features):
            found = reopening(part.name, part, sheet, part.features, LEAST_REOPEN)
            if found is not None:
                yield part.name, found.lying.turn


def _reopened(there: SettledPlan, name: str, turn: float, by: float) -> Reopening:
    part = there.part(name)
    sheet = there.sheet(part.sheet)
    found = reopening(name, part, sheet, part.features, by, (turn,))
    if found is None:
        raise CellsError(f"{name} bears on no edge within its range")
    return found


def _without(at: Point) -> Point:
    return {name: value for name, value in at.items() if name != REOPEN.name}
