"""Small plans whose files are fitted, and what is filled in compared with what is drawn."""

from __future__ import annotations

import random
import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cache

from kerfolio.basis.reader import Reader
from kerfolio.basis.style import told_as
from kerfolio.fitted.fill import fill
from kerfolio.fitted.form import Fitted, Number, Point
from kerfolio.fitted.recorder import Draft, Recorded
from kerfolio.layouts.layout import Layout, Placement, SheetLayout
from kerfolio.publishing.cut_files import Formats
from kerfolio.publishing.fitted_files import (
    Printed,
    Settling,
    drafts,
    fitted_files,
    printed_drafts,
    variant_at,
)
from kerfolio.settling.making import set_of
from kerfolio.settling.settle import settle
from kerfolio.settling.settled import SettledPlan
from kerfolio.settling.variant import drawn_variant
from kerfolio.writing.formats import formats_in
from tests.agreement.spoilings import BOX
from tests.plans import RACK, workshop

TWO = """\
plan: Two sheets
version: 1.0.0
summary: A thick side that takes a thin shelf, and the other way round.
sizes: {t: thickness(ply), s: thickness(thin)}
sheets:
  ply: {stock: birch-plywood-18, size: 2440 x 1220, published-for: 17.4 to 18.4, fit: 0.15}
  thin: {stock: birch-plywood-12, size: 1525 x 1525, published-for: 11.6 to 12.4}
parts:
  side:
    sheet: ply
    outline: {polygon: [[0, 0], [300 - s, 0], [300 - s, 200, {round: 40}], [0, 200]]}
    features:
      shelf-slot: {slot: {at: [120, 90], length: 80, angle: 37, takes: thin}}
      bed: {pocket: {at: [200, 60], length: 60, takes: thin, depth: t / 3}}
  shelf:
    sheet: thin
    outline: {rectangle: [400 - 2 * t, 180]}
    features:
      tab: {tabs: {edge: left, at: 90, width: 80, takes: ply}}
      hook: {notch: {edge: bottom, at: 200, depth: 30, takes: ply}}
      bolt: {hole: {at: [60, 20 + t / 2], diameter: 12}}
releases: {1.0.0: {date: 2026-10-02, changed: First release.}}
"""
INCHES = BOX.replace(
    "published-for: 31/64 in, fit: 0.004",
    "published-for: 15/32 to 33/64 in, drawn-for: 31/64 in, ready-made: [1/2], "
    "fit: {value: 0.004, reader: 0.002 to 0.008}",
).replace("parts:", "relief: {style: dog-bone, cutter: compression-1-8in}\nparts:")
ANY_FIT = RACK.replace(
    "drawn-for: 17.6, fit: 0.1", "drawn-for: 17.8, fit: {value: 0.1, reader: 0.05 to 0.2}"
)
ANY_FIT += "cut-files: [mm, in]\njoint-fit: press\n"
PRESSED = {"side.rail-slot": 0.2}
"""The one joint of that plan that has a share of the fit: pressed in, though not at its ends."""

PLANS = {"one sheet": ANY_FIT, "two sheets": TWO, "inches": INCHES}


@dataclass(frozen=True, kw_only=True)
class Fitting:
    """A plan as drawn, with what its files are made from, and its fitted files."""

    drawn: SettledPlan
    layout: Layout
    formats: Formats
    reader: Reader
    fitted: Fitted
    printed: tuple[Printed, ...] = ()

    def drawn_at(self, at: Point) -> tuple[Draft, ...]:
        """Settle and draw the plan afresh at a point; what is printed follows no cutter."""
        variant = variant_at(self.drawn, at)
        settled = Settling(self.drawn).at(variant)
        uncut = Settling(self.drawn).at(replace(variant, cutter=(), cut=()))
        assert settled is not None
        assert uncut is not None
        files = drafts(settled, self.layout, self.formats, self.reader)
        return (*files, *(d for each in self.printed for d in printed_drafts(each(uncut))))


def side_by_side(settled: SettledPlan) -> Layout:
    """Return every piece in a row, with room for any thickness, on one sheet of each material."""
    sheets = []
    for number, name in enumerate(dict.fromkeys(p.sheet for p in settled.parts), start=1):
        x, placed = 30.0, []
        for part in settled.parts:
            for piece in part.pieces if part.sheet == name else ():
                turn = 90.0 * (len(placed) % 2)
                placed.append(
                    Placement(piece=piece.label, part=part.name, x=x + 300, y=40.0, turn=turn)
                )
                x += max(part.size) + 40
        size = settled.sheet(name).size
        sheets.append(SheetLayout(number=number, sheet=name, size=size, placements=tuple(placed)))
    return Layout(sheets=tuple(sheets), engine="by hand", computed_from="")


@cache
def fitting(text: str) -> Fitting:
    """Fit the files of a plan from its text."""
    found = workshop(text)
    plan = found.plans[0]
    variant = drawn_variant(plan, found.stock)
    assert variant is not None
    settled, findings = settle(plan, found.stock, variant)
    assert settled is not None, findings
    formats = formats_in(found.identity.cut_files_of(plan))
    return fitting_of(
        set_of(settled), side_by_side(settled), formats, found.identity.reader_of(plan)
    )


def fitting_of(drawn: SettledPlan, layout: Layout, formats: Formats, reader: Reader) -> Fitting:
    """Fit the files of a settled plan."""
    fitted = fitted_files(Settling(drawn), layout, formats, reader)
    assert fitted is not None
    return Fitting(drawn=drawn, layout=layout, formats=formats, reader=reader, fitted=fitted)


def points_of(fitted: Fitted, count: int, seed: int = 9) -> Iterator[dict[str, float | None]]:
    """Yield both ends, no cutter, and points that chance picks among what fitting has not seen.

    Readings are typed in mm and in inches, with as many decimals as somebody types.
    """
    numbers, chance = fitted.numbers, random.Random(seed)
    yield {each.name: each.least for each in numbers}
    yield {each.name: each.most for each in numbers}
    yield {each.name: None for each in numbers if each.none}
    for _ in range(count - 3):
        at: dict[str, float | None] = {}
        for each in numbers:
            value = chance.uniform(each.least, each.most)
            inch = round(value / 25.4 * 64) / 64 * 25.4
            typed = chance.choice((value, round(value, 1), inch, round(value / 25.4, 3) * 25.4))
            at[each.name] = min(each.most, max(each.least, typed))
            if each.none and chance.random() < 0.25:
                at[each.name] = None
        yield at


_NUMBER = re.compile(r"-?\d+(?:\.\d+)?")


@dataclass(frozen=True)
class Compared:
    """How many numbers were compared, how many are one step off, and what is wrong."""

    numbers: int
    off: int
    wrong: tuple[str, ...]


def compared(case: Fitting, at: Point) -> Compared:
    """Compare what is filled in at a point with what is settled and drawn there afresh."""
    numbers, off, wrong = 0, 0, list[str]()
    exact = {n.name: None if value is None else n.exact(value) for n, value in _valued(case, at)}
    for (name, text), draft in zip(fill(case.fitted, at), case.drawn_at(exact), strict=True):
        if name != _told(draft.name):
            wrong.append(f"{name} is not {_told(draft.name)}")
        numbers += len(draft.text.values)
        meant = _told(draft.text)
        if text != meant:
            steps = _NUMBER.findall(text), _NUMBER.findall(meant)
            if _NUMBER.sub("#", text) != _NUMBER.sub("#", meant):
                wrong.append(f"{name}: other words")
            else:
                apart = [pair for pair in zip(*steps, strict=True) if pair[0] != pair[1]]
                off += len(apart)
                least = 0 if name.endswith(".pdf") else 4  # in the others noughts are trimmed
                far = [pair for pair in apart if _far(*pair, least)]
                wrong += [f"{name}: {one} is not {two}" for one, two in far]
    return Compared(numbers, off, tuple(wrong))


def _valued(case: Fitting, at: Point) -> Iterator[tuple[Number, float | None]]:
    return ((each, at.get(each.name, each.drawn)) for each in case.fitted.numbers)


def _far(one: str, two: str, least: int) -> bool:
    """Tell whether two numbers are more than a step of the last decimal apart."""
    decimals = max(least, *(len(each.partition(".")[2]) for each in (one, two)))
    return abs(float(one) - float(two)) > 1.01 * 10.0**-decimals


def _told(recorded: Recorded) -> str:
    pieces = [recorded.words[0]]
    for value, style, words in zip(
        recorded.values, recorded.styles, recorded.words[1:], strict=True
    ):
        pieces += [told_as(value, style), words]
    return "".join(pieces)
