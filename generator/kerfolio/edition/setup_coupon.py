"""What is told of a fit coupon on the machine: cut first, alone, nothing corrected."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

from kerfolio.basis.lengths import size_text
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.edition.edition import Edition
from kerfolio.edition.setup_runs import RunLines, by_hand_line, cutting_time, run_lines
from kerfolio.edition.sheet_facts import cut_alone
from kerfolio.layouts.layout import Placement, SheetLayout
from kerfolio.settling.coupon import places_of, size_of
from kerfolio.settling.settled import Coupon, SettledPart, SettledPlan, SettledSheet, SheetSize
from kerfolio.settling.titles import sheet_title
from kerfolio.shop.cut_time import Placed

_ROUND = {"mm": 5.0, "in": 12.7}
"""A scrap need not be cut more truly than to so many mm, by the unit shown first."""
_EDGE = 20.0
"""mm of scrap round the pieces at least: the cutter runs there, and 0,0 is marked there."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SetupCoupon:
    """A coupon on its scrap: ``layout`` is that of both pieces, ``zero`` where its file has 0,0.

    ``settled`` is the plan with these two pieces alone, marked with what they are called;
    ``title`` heads its section where there are several: ``Fit coupon, Birch plywood 18 mm``.
    """

    coupon: Coupon
    title: str
    sheet: SettledSheet
    settled: SettledPlan
    layout: SheetLayout
    zero: tuple[float, float]
    runs: tuple[RunLines, ...]
    by_hand: tuple[str, ...]
    time: str
    size: str
    steps: tuple[str, ...]

    @property
    def made_of(self) -> str:
        """What its sheet is called."""
        return sheet_title(self.settled, self.sheet.name)


def setup_coupons(edition: Edition) -> tuple[SetupCoupon, ...]:
    """Return a record for every fit coupon of a plan."""
    return tuple(_coupon(edition, each) for each in edition.settled.coupons)


def _coupon(edition: Edition, coupon: Coupon) -> SetupCoupon:
    settled, reader = edition.settled, edition.reader
    sheet = settled.sheet(coupon.sheet)
    parts = (
        _called(coupon.plate, say(reader, "setupcoupon-plate")),
        _called(coupon.tab, say(reader, "setupcoupon-tab")),
    )
    edge = max(sheet.margin, _EDGE)
    zero = (edge, edge)
    places = [(zero[0] + x, zero[1] + y) for x, y in places_of(coupon)]
    placed = [Placed(part=part.name, x=x, y=y) for part, (x, y) in zip(parts, places, strict=True)]
    found = cut_alone(settled, sheet.name, parts, placed)
    here = found.here
    layout = SheetLayout(
        number=1,
        sheet=sheet.name,
        size=_scrap(size_of(coupon), edge, _ROUND[reader.unit]),
        placements=tuple(
            Placement(piece=part.pieces[0].label, part=part.name, x=each.x, y=each.y, turn=0.0)
            for part, each in zip(parts, placed, strict=True)
        ),
    )
    size = size_text(layout.size, reader)
    return SetupCoupon(
        coupon=coupon,
        title=say(reader, "setupcoupon-title", sheet=sheet_title(settled, sheet.name)),
        sheet=sheet,
        settled=replace(settled, parts=parts),
        layout=layout,
        zero=zero,
        runs=tuple(run_lines(found, each, reader) for each in here.runs),
        by_hand=tuple(by_hand_line(found, each, reader) for each in here.left),
        time=cutting_time(found, reader),
        size=size,
        steps=tuple(_steps(size, bool(sheet.stock.grain), reader)),
    )


def _called(part: SettledPart, name: str) -> SettledPart:
    return replace(part, pieces=tuple(replace(each, mark=name) for each in part.pieces))


def _scrap(size: SheetSize, edge: float, step: float) -> SheetSize:
    """Return what a scrap measures with an ``edge`` all round, rounded up to a ``step``, mm."""
    wide, high = (math.ceil((each + 2 * edge) / step) * step for each in size)
    return wide, high


def _steps(size: str, grained: bool, reader: Reader) -> Iterator[str]:
    yield say(reader, f"setupcoupon-scrap-{'grained' if grained else 'plain'}", size=size)
    yield say(reader, "setupcoupon-tape")
    yield say(reader, "setupcoupon-cutter")
    yield say(reader, "setupcoupon-zero")
    yield say(reader, "setupcoupon-cut")
