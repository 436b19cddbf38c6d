"""The stock as lists: every figure with its unit, its source and the file it was written in."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from typing import Any

from kerfolio.basis.cutting_lengths import chip_pair, tool_pair
from kerfolio.basis.figures import figure
from kerfolio.basis.place import Place
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.basis.sheet_size import sizes_as_sold
from kerfolio.basis.thickness import thickness_pair
from kerfolio.model.stock import (
    FAMILIES,
    HARDWARE_KINDS,
    MACHINES,
    ChipLoad,
    DepthRule,
    Movement,
    Stock,
    StockItem,
)

Lines = tuple[str, ...]
"""A value in words: the reader's first unit, then perhaps the other."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """One value of an item: ``label`` names it, ``kind`` says what kind of value it is.

    ``rank`` is its place among all figures of the section.
    """

    rank: int
    label: str
    unit: str
    lines: Lines
    source: str
    place: Place
    kind: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class StockRow:
    """An item with the figures that are known of it."""

    name: str
    title: str
    figures: tuple[Figure, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class StockGroup:
    """Items of one family or kind, in the order of their size."""

    title: str
    rows: tuple[StockRow, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class StockList:
    """All items of one section of the stock; ``kind`` is the section's name in ``stock/``."""

    kind: str
    title: str
    groups: tuple[StockGroup, ...]


Form = Callable[[Any, Reader], Lines]


def _thickness(mm: float, reader: Reader) -> Lines:
    return thickness_pair(mm, reader)


def _length(mm: float, reader: Reader) -> Lines:
    return tool_pair(mm, reader)


def _chip(mm: float, reader: Reader) -> Lines:
    return chip_pair(mm, reader)


def _plain(value: float | str, _: Reader) -> Lines:
    return (value if isinstance(value, str) else figure(value),)


def _grams(kg: float, _: Reader) -> Lines:
    return (figure(kg * 1000),)


def _sizes(sizes: Sequence[tuple[float, float]], reader: Reader) -> Lines:
    return (sizes_as_sold(sizes, reader),)


def _lengths(lengths: Sequence[float], reader: Reader) -> Lines:
    return (sizes_as_sold([(each,) for each in lengths], reader),)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Column:
    """How one field of an item is said; ``kind`` is the field that holds its kind of value."""

    field: str
    label: str
    form: Form = _plain
    unit: str = ""
    kind: str = ""


def _column(field: str, label: str, form: Form = _plain, unit: str = "", kind: str = "") -> _Column:
    return _Column(field=field, label=label, form=form, unit=unit, kind=kind)


_BENDING = "N/mm²"
_SWELLING = "% for each % of moisture"
_COLUMNS: dict[str, tuple[_Column, ...]] = {
    "sheets": (
        _column("actual", "Measures", _thickness),
        _column("least", "At least", _thickness),
        _column("most", "At most", _thickness),
        _column("plies", "Plies"),
        _column("density", "Density", unit="kg/m³"),
        _column("stiffness_along", "Stiffness along", unit=_BENDING, kind="stiffness_kind"),
        _column("stiffness_across", "Stiffness across", unit=_BENDING, kind="stiffness_kind"),
        _column("strength_along", "Strength along", unit=_BENDING, kind="strength_kind"),
        _column("strength_across", "Strength across", unit=_BENDING, kind="strength_kind"),
        _column("shear_modulus_flat", "Shear modulus, flat", unit=_BENDING),
        _column("shear_modulus_edge", "Shear modulus, on edge", unit=_BENDING),
        _column("shear_strength_flat", "Shear strength, flat", unit=_BENDING),
        _column("shear_strength_edge", "Shear strength, on edge", unit=_BENDING),
        _column("bearing_strength", "Pressure on a face", unit=_BENDING),
        _column("creep", "Creep", unit="kdef"),
        _column("swelling", "Moisture"),
        _column("sizes", "Sold as", _sizes),
    ),
    "boards": (
        _column("nominal", "Called"),
        _column("thickness", "Thickness", _length),
        _column("width", "Width", _length),
        _column("density", "Density", unit="kg/m³"),
        _column("stiffness", "Stiffness", unit=_BENDING, kind="stiffness_kind"),
        _column("strength", "Strength", unit=_BENDING, kind="strength_kind"),
        _column("creep", "Creep", unit="kdef"),
        _column("lengths", "Lengths", _lengths),
    ),
    "cutters": (
        _column("diameter", "Diameter", _length),
        _column("flutes", "Edges"),
        _column("cutting_length", "Cutting length", _length),
        _column("up_cut_length", "Up-cut tip", _length),
        _column("angle", "Angle", unit="°"),
    ),
    "hardware": (
        _column("thread", "Thread or shank", _length),
        _column("head", "Head"),
        _column("clearance", "Clearance hole", _length),
        _column("pilot", "Pilot hole", _length),
        _column("counterbore_diameter", "Counterbore", _length),
        _column("counterbore_depth", "Its depth", _length),
        _column("length", "Length", _length),
        _column("mass", "Mass", _grams, "g"),
        _column("inch_twin", "In inches"),
    ),
    "papers": (_column("width", "Width", _length), _column("height", "Height", _length)),
    "chip-loads": (
        _column("diameter", "Cutter", _length),
        _column("least", "Least a tooth", _chip),
        _column("most", "Most a tooth", _chip),
        _column("depth", "At a depth of"),
    ),
    "depth-rules": (
        _column("diameters", "Depth", unit="diameters"),
        _column("share", "Chip load left", unit="of the full one"),
    ),
    "movements": (
        _column("thickness", "In thickness", unit=_SWELLING),
        _column("plane", "Along the sheet, or across the grain", unit=_SWELLING),
        _column("bought", "Sold at", unit="% moisture"),
        _column("takes_up", "Takes up moisture"),
    ),
    "finishes": (
        _column("wet", "A wet coat", _chip),
        _column("solids", "Solids by volume", unit="of it"),
    ),
}

KINDS = tuple(_COLUMNS)
"""The sections of the stock, in the order they are listed."""

_TITLES = {
    "chip-loads": "Chip loads",
    "depth-rules": "Depth of cut",
    "movements": "Swelling with moisture",
}
_SPOKEN = {
    "mdf": "MDF",
    "osb": "OSB",
    "v": "V cutters",
    "up-cut": "Up-cut",
    "down-cut": "Down-cut",
    "light hobby": "Light hobby machines",
    "small shop": "Machines of a small shop",
    "industrial": "Industrial machines",
    "screw": "Wood screws",
    "insert": "Threaded inserts",
}
_MANY = (
    *("bolt", "nut", "washer", "lock-nut", "tee-nut", "barrel-nut"),
    *("dowel", "connector", "shelf-pin"),
)


def stock_lists(stock: Stock, reader: Reader = METRIC) -> tuple[StockList, ...]:
    """Return every section that has items; ``reader`` is whom it is for."""
    lists = (_list(stock, kind, reader) for kind in KINDS)
    return tuple(each for each in lists if each.groups)


def _list(stock: Stock, kind: str, reader: Reader) -> StockList:
    items: tuple[StockItem, ...] = getattr(stock, kind.replace("-", "_"))
    grouped: dict[str, list[StockItem]] = {}
    for item in sorted(items, key=lambda each: _order(kind, each)):
        grouped.setdefault(_group(kind, item), []).append(item)
    groups = tuple(
        StockGroup(title=_spoken(word), rows=_rows(members, _COLUMNS[kind], reader))
        for word, members in grouped.items()
    )
    return StockList(kind=kind, title=_TITLES.get(kind, kind.capitalize()), groups=groups)


def _rows(
    items: Iterable[StockItem], columns: Sequence[_Column], reader: Reader
) -> tuple[StockRow, ...]:
    return tuple(
        StockRow(
            name=item.name,
            title=_title(item),
            figures=_figures(item, columns, reader),
        )
        for item in items
    )


def _figures(item: StockItem, columns: Sequence[_Column], reader: Reader) -> tuple[Figure, ...]:
    """Return what is known of an item; a field without a value gives no figure."""
    return tuple(
        Figure(
            rank=rank,
            label=each.label,
            unit=each.unit,
            lines=each.form(value, reader),
            source=item.source_of(each.field),
            place=item.came_from(each.field),
            kind=getattr(item, each.kind) if each.kind else "",
        )
        for rank, each in enumerate(columns)
        if (value := getattr(item, each.field)) not in (None, "", ())
    )


def _title(item: StockItem) -> str:
    if isinstance(item, ChipLoad):
        return _spoken(item.family)
    if isinstance(item, DepthRule):
        return f"{figure(item.diameters)} × the cutter's diameter"
    if isinstance(item, Movement):
        return _spoken(item.name)
    title: str = getattr(item, "title", item.name)
    return title


def _spoken(word: str) -> str:
    words = word.replace("-", " ").capitalize()
    return _SPOKEN.get(word, f"{words}s" if word in _MANY else words)


_GROUPED_BY = {"sheets": "family", "boards": "family", "chip-loads": "machine"}
_RANKS = {word: rank for rank, word in enumerate((*FAMILIES, *MACHINES, *HARDWARE_KINDS))}
_SIZES = ("nominal", "thickness", "thread", "diameter", "diameters", "width", "length")


def _group(kind: str, item: StockItem) -> str:
    """Return the word that an item is grouped by; empty where a section has one group."""
    word: str = getattr(item, _GROUPED_BY.get(kind, "kind"), "")
    return word


def _order(kind: str, item: StockItem) -> tuple[Any, ...]:
    """Return what sorts the items of a section: the group, then by size, then by name."""
    group = _group(kind, item)
    family = getattr(item, "family", "") if kind == "chip-loads" else ""
    sizes = (getattr(item, field, None) for field in _SIZES)
    numbers = tuple(float(size) for size in sizes if isinstance(size, (int, float)))
    return _RANKS.get(group, -1), group, _RANKS.get(family, -1), numbers, item.name
