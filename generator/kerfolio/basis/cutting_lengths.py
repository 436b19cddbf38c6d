"""What cutters and drills make, and how they are fed, as people read it."""

from __future__ import annotations

import math
from collections.abc import Sequence

from kerfolio.basis.digits import fixed, rounded, steps
from kerfolio.basis.lengths import (
    INCH,
    both,
    in_order,
    inch_number,
    inch_text,
    mm_number,
    mm_text,
)
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.basis.thickness import caliper_inches, precise_in

_EXACT = 0.0005
_DRILLED = 0.005
"""Inches by which a drill may be larger than its hole and nobody is told: a drill in wood cuts no
closer (common practice, no single source). Below the first figure it is the hole."""


def cut_pair(mm: float, reader: Reader = METRIC) -> tuple[str, str]:
    """Return a size that a cutter makes (a slot's width, a hole, a depth): ``6.35 mm``, ``1/4 in``.

    It is told to a hundredth and to 1/64 in, since what is put into it is measured so.
    """
    return in_order(mm_text(mm, 2, reader), inch_text(mm, 64), reader)


def cut_text(mm: float, reader: Reader = METRIC) -> str:
    """Return such a size in both units on one line: ``6.35 mm (1/4 in)``."""
    return both(cut_pair(mm, reader))


def place_text(mm: float, reader: Reader) -> str:
    """Return where something is set on a piece: ``76.2 mm (3 in)``, ``3 in (76.2 mm)``.

    In inches the fraction that it is, else three decimals: a piece is not moved by 1/64 in.
    """
    if reader.unit == "in":
        return both((precise_in(mm, reader), mm_text(mm, 2, reader)))
    return cut_text(mm, reader)


def depth_in(mm: float, reader: Reader) -> str:
    """Return how deep a cutter goes, in one unit: ``7.87 mm``, ``0.31 in``.

    In inches it is a decimal, as machines show it: 0.01 in is not 1/64.
    """
    return depths_in((mm,), reader)


def depths_in(depths: Sequence[float], reader: Reader, last: str = ", ") -> str:
    """Return depths in one unit, ``last`` before the last of them: ``6, 8 mm``."""
    scale, places = (INCH, 3) if reader.unit == "in" else (1.0, 2)
    texts = [reader.digits(mm / scale, places) for mm in depths]
    head = ", ".join(texts[:-1])
    return f"{head}{last if head else ''}{texts[-1]} {reader.unit}"


def depth_text(mm: float, reader: Reader) -> str:
    """Return how deep a cutter goes in both units: ``8 mm (5/16 in)``, ``0.31 in (7.87 mm)``."""
    if reader.unit == "in":
        return both((depth_in(mm, reader), depth_in(mm, reader.metric)))
    return cut_text(mm, reader)


def fit_in(mm: float, reader: Reader) -> str:
    """Return the clearance on one side of a joint in one unit: ``0.125 mm``, ``0.005 in``."""
    return f"{reader.digits(mm / INCH, 4)} in" if reader.unit == "in" else mm_text(mm, 3, reader)


def drill_in(mm: float, reader: Reader) -> str:
    """Return the drill for a hole in one unit: ``6.6 mm``, ``1/4 in``.

    In inches the least of the fractional series, by 1/64 in, that is not smaller than the hole
    (ASME B94.11M, from memory), and by how much it is larger where that is over 0.005 in.
    """
    if reader.unit != "in":
        return mm_text(mm, reader=reader)
    size = math.ceil((mm / INCH - _EXACT) * 64)
    over = size / 64 - mm / INCH
    drill = f"{inch_number(size * INCH / 64, 64)} in"
    if over <= _DRILLED:
        return drill
    return reader.says("figures-drill-over", drill=drill, over=f"{reader.fixed(over, 3)} in")


def drill_pair(mm: float, reader: Reader) -> tuple[str, str]:
    """Return the drill for a hole in the first unit and the other, in mm the hole: ``9/32 in``."""
    if reader.unit == "in":
        return drill_in(mm, reader), mm_text(mm, 2, reader)
    return cut_pair(mm, reader)


def drill_text(mm: float, reader: Reader) -> str:
    """Return the drill for a hole in both units, in mm the hole: ``9/32 in (7.1 mm)``."""
    return both(drill_pair(mm, reader))


def tool_pair(mm: float, reader: Reader) -> tuple[str, str]:
    """Return a size by which tools and fasteners are sold: ``3.175 mm``, ``0.125 in``.

    Where inches stand in front they are told as sold: ``1/8 in``, ``0.164 in``.
    """
    inch = precise_in(mm, reader.inches) if reader.unit == "in" else caliper_inches(mm, reader)
    return in_order(mm_text(mm, 3, reader), inch, reader)


def tool_text(mm: float, reader: Reader) -> str:
    """Return such a size in both units: ``6 mm (0.236 in)``, ``1/4 in (6.35 mm)``."""
    return both(tool_pair(mm, reader))


def chosen_in(mm: float, reader: Reader) -> str:
    """Return a fit or a cutter that somebody chooses, to 0.001 mm: ``3.175 mm``, ``1/8 in``.

    In inches the fraction that it is to 0.001 mm, else the fewest decimals, three at least, that
    give it back.
    """
    return f"{chosen_number(mm, reader)} {reader.unit}"


def chosen_number(mm: float, reader: Reader) -> str:
    """Return it without the unit: ``3.175``, ``1/8``."""
    if reader.unit != "in":
        return mm_number(mm, 3, reader)
    inches, wanted = rounded(mm, 3) / INCH, steps(mm, 3)
    sixty_fourths = rounded(inches * 64, 0)
    if sixty_fourths and steps(sixty_fourths * INCH / 64, 3) == wanted:
        return inch_number(sixty_fourths * INCH / 64, 64)
    told = (fixed(inches, places) for places in range(3, 6))
    same = (each for each in told if steps(float(each) * INCH, 3) == wanted)
    return reader.number(next(same))


def chip_pair(mm: float, reader: Reader) -> tuple[str, str]:
    """Return the thickness of a chip: ``0.050 mm``, ``0.0020 in``."""
    return in_order(f"{reader.fixed(mm, 3)} mm", f"{reader.fixed(mm / INCH, 4)} in", reader)


def chip_in(mm: float, reader: Reader) -> str:
    """Return a chip load in a plan's unit: ``0.127 mm``, ``0.005 in``; a tenth of a mil at most."""
    return f"{reader.digits(mm / INCH, 4)} in" if reader.unit == "in" else mm_text(mm, 3, reader)


def chip_range_in(least: float, most: float, reader: Reader) -> str:
    """Return a range of chip loads in a plan's unit: ``0.05 to 0.1 mm``."""
    low = reader.digits(least / INCH, 4) if reader.unit == "in" else mm_number(least, 3, reader)
    return reader.says("figures-to", least=low, most=chip_in(most, reader))


def acceleration_in(mm_per_s2: float, reader: Reader) -> str:
    """Return an acceleration in a plan's unit: ``500 mm/s²``, ``20 in/s²``."""
    scale = INCH if reader.unit == "in" else 1.0
    return f"{reader.digits(mm_per_s2 / scale, 0)} {reader.unit}/s²"


def feed_in(mm_per_min: float, reader: Reader) -> str:
    """Return a feed in a plan's unit: ``4500 mm/min``, ``177 in/min``."""
    if reader.unit == "in":
        return f"{reader.digits(mm_per_min / INCH, 0)} in/min"
    return f"{mm_number(mm_per_min, 0, reader)} mm/min"
