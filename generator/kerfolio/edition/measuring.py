"""How a sheet is measured and its files are chosen: worded once, for pages and paper alike."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.cutting_lengths import chosen_in
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import listed, say
from kerfolio.basis.thickness import reading_in, sold_in
from kerfolio.edition.edition import Edition
from kerfolio.settling.settled import Coupon

_USUAL, _TOO_WIDE = 6.0, 0.2
"""A usual cutter, for a plan without sheets, and what one may cut too wide, mm: an example."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Measuring:
    """What a reader is told: where to measure and how often, which reading counts, what to take.

    ``points`` stands under the picture of the sheet, ``type`` where readings are typed, before
    examples for the very sheet, which the page's script gives. With the fit coupon stand
    ``coupon``, what it is for, ``read``, how it is read, ``rule``, where the correction belongs,
    and ``without``, what to do without a calliper; ``lies`` by its picture, ``play`` beside its
    table.
    ``makes`` tells whether the first page of the bundle makes files for a reading.
    """

    measure: str
    points: str
    type: str
    counts: str
    makes: bool
    take: str
    coupon: str
    read: str
    rule: str
    without: str
    lies: str
    play: str


def measuring_of(edition: Edition) -> Measuring:
    """Return the words for an edition, in its unit, for as many sets of files as it has."""
    reader = edition.reader
    many = len(edition.variants) > 1
    ranged = any(least < most for least, most in (s.published for s in edition.settled.sheets))
    made = ranged and edition.fitted
    unit = reader.unit
    cutter = _cutter(edition)
    return Measuring(
        measure=say(reader, "measuring-measure", unit=unit),
        points=say(reader, "measuring-points", unit=unit),
        type=say(reader, "measuring-type", unit=unit),
        counts=say(reader, "measuring-counts"),
        makes=made,
        take=_take(edition, many=many, ranged=ranged),
        coupon=say(reader, "measuring-coupon", **cutter),
        read=_read(edition, made=made),
        rule=" ".join(
            (
                say(reader, "measuring-rule", **cutter),
                *([say(reader, "measuring-built")] if made else []),
            )
        ),
        without=say(reader, "measuring-without"),
        lies=say(reader, "measuring-lies"),
        play=say(reader, "measuring-play"),
    )


def _cutter(edition: Edition) -> dict[str, str]:
    """Return how wide the plan's cutter is, and what it cuts where it cuts too wide."""
    reader, sheets = edition.reader, edition.settled.sheets
    wide = sheets[0].cutter.diameter if sheets else _USUAL
    return {"cutter": chosen_in(wide, reader), "cut": reading_in(wide + _TOO_WIDE, reader)}


def at_the_yard(reader: Reader) -> str:
    """Return what to measure where a sheet is bought."""
    return say(reader, "measuring-yard")


def _take(edition: Edition, *, many: bool, ranged: bool) -> str:
    """Return which set of files to take for what was measured."""
    reader = edition.reader
    if not many:
        only = _only(edition)
        return say(reader, "measuring-ready" if ranged else "measuring-one", thickness=only)
    sets = say(
        reader,
        "measuring-sets-made" if edition.fitted else "measuring-sets-next",
        unit=reader.unit,
    )
    several = len(edition.settled.sheets) > 1
    return f"{sets} {say(reader, 'measuring-each')}" if several else sets


def _read(edition: Edition, *, made: bool) -> str:
    """Return how the coupon is read, and where what is read is typed."""
    reader = edition.reader
    crossing = any(each.halving for each in edition.settled.coupons)
    said = (
        say(reader, "measuring-read"),
        say(reader, "measuring-typed") if made else "",
        say(reader, "measuring-crossing") if crossing else "",
    )
    return " ".join(each for each in said if each)


def arms_words(coupon: Coupon, reader: Reader) -> str:
    """Return how wide the steps of a coupon's arms are drawn, and how long its long slot is."""
    steps = listed(reader, [reading_in(each.width, reader) for each in coupon.steps])
    long = reading_in(coupon.opening, reader)
    return say(reader, "measuring-arms", steps=steps, long=long)


def _only(edition: Edition) -> str:
    reader, thickness = edition.reader, edition.settled.variant.thickness
    return listed(reader, [sold_in(thick, reader) for _, thick in thickness])
