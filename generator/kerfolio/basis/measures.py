"""The quantities that findings tell, each with the way it is told in a plan's unit."""

from __future__ import annotations

from collections.abc import Sequence

from kerfolio.basis.cutting_lengths import (
    acceleration_in,
    chip_in,
    chip_range_in,
    chosen_in,
    depth_in,
    feed_in,
    fit_in,
)
from kerfolio.basis.digits import LENGTH_DECIMALS, fixed
from kerfolio.basis.lengths import length_in, size_in, spot_in
from kerfolio.basis.masses import mass_in, own_mass_in
from kerfolio.basis.reader import Reader
from kerfolio.basis.said import Measure, Quantity, Words, said
from kerfolio.basis.thickness import precise_in, range_in, reading_in, sold_in


def length(name: str, mm: float) -> Measure:
    """Return a length as ``length_in`` tells it: ``2.3 mm``, ``3/32 in``."""
    return Measure((Quantity(name, mm, "mm"),), length_in)


def reading(name: str, mm: float) -> Measure:
    """Return what a calliper reads as ``reading_in`` tells it: ``17.82 mm``, ``0.702 in``."""
    return Measure((Quantity(name, mm, "mm"),), reading_in)


def precise(name: str, mm: float) -> Measure:
    """Return a width, depth or diameter as ``precise_in`` tells it: ``6.35 mm``, ``1/4 in``."""
    return Measure((Quantity(name, mm, "mm"),), precise_in)


def depth(name: str, mm: float) -> Measure:
    """Return how deep a cutter goes as ``depth_in`` tells it: ``7.87 mm``, ``0.31 in``."""
    return Measure((Quantity(name, mm, "mm"),), depth_in)


def sold(name: str, mm: float) -> Measure:
    """Return a thickness as ``sold_in`` tells it: ``17.8 mm``, ``23/32 in``."""
    return Measure((Quantity(name, mm, "mm"),), sold_in)


def clearance(mm: float) -> Measure:
    """Return the clearance on one side as ``fit_in`` tells it: ``0.125 mm``, ``0.005 in``."""
    return Measure((Quantity("fit", mm, "mm"),), fit_in)


def chosen(name: str, mm: float) -> Measure:
    """Return a fit or a cutter that was chosen as ``chosen_in`` tells it: ``3.175 mm``."""
    return Measure((Quantity(name, mm, "mm"),), chosen_in)


def readings(least: tuple[str, float], most: tuple[str, float]) -> Measure:
    """Return a range of thicknesses, each end with its name: ``17.2 to 18.6 mm``."""
    return Measure((Quantity(*least, "mm"), Quantity(*most, "mm")), range_in)


def size(sides: Sequence[float], of: str = "") -> Measure:
    """Return a width and a height in mm, ``of`` what before their names: ``360 x 450 mm``."""
    width, height = sides
    pair = Quantity(f"{of}width", width, "mm"), Quantity(f"{of}height", height, "mm")
    return Measure(pair, _size)


def spot(x: float, y: float) -> Measure:
    """Return a place in mm: ``120.5, 40 mm``."""
    return Measure((Quantity("x", x, "mm"), Quantity("y", y, "mm")), spot_in)


def point(x: float, y: float, which: str = "") -> Words:
    """Return a place on a part in mm, each with its unit: ``120.5 mm, 40 mm``."""
    return said("{}, {}", length(f"{which}x", x), length(f"{which}y", y))


def chip(mm: float) -> Measure:
    """Return a chip load in mm: ``0.006 mm``."""
    return Measure((Quantity("chip", mm, "mm"),), chip_in)


def chips(least: float, most: float) -> Measure:
    """Return a range of chip loads in mm: ``0.05 to 0.1 mm``."""
    ends = Quantity("least-chip", least, "mm"), Quantity("most-chip", most, "mm")
    return Measure(ends, chip_range_in)


def feed(name: str, mm_per_min: float) -> Measure:
    """Return a feed: ``4500 mm/min``, ``177 in/min``."""
    return Measure((Quantity(name, mm_per_min, "mm/min"),), feed_in)


def mass(name: str, kg: float) -> Measure:
    """Return a mass: ``8.2 kg``, ``18.1 lb``."""
    return Measure((Quantity(name, kg, "kg"),), mass_in)


def own_mass(kg: float) -> Measure:
    """Return what a thing weighs by itself, to a hundredth: ``0.75 kg``, ``1.65 lb``."""
    return Measure((Quantity("own-weight", kg, "kg"),), own_mass_in)


def acceleration(mm_per_s2: float) -> Measure:
    """Return an acceleration: ``500 mm/s²``, ``20 in/s²``."""
    return Measure((Quantity("acceleration", mm_per_s2, "mm/s²"),), acceleration_in)


def angle(name: str, degrees: float) -> Measure:
    """Return an angle: ``3.0 degrees``."""
    return Measure((Quantity(name, degrees, "deg"),), _degrees)


def number(name: str, value: float) -> Measure:
    """Return a count or another plain number, told in full."""
    return Measure((Quantity(name, value, ""),), _number)


def _size(width: float, height: float, reader: Reader) -> str:
    return size_in((width, height), reader)


def _degrees(value: float, _: Reader) -> str:
    return f"{fixed(value, 1)} degrees"


def _number(value: float, reader: Reader) -> str:
    return reader.digits(value, LENGTH_DECIMALS)
