"""The stock as lists: every figure with its unit, its source and the file it was written in."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any

from kerfolio.basis.cutting_lengths import chip_pair, tool_pair
from kerfolio.basis.figures import figure
from kerfolio.basis.place import Place
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.basis.saying import day_text, listed, say
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


def _plain(value: float | str, reader: Reader) -> Lines:
    return (value if isinstance(value, str) else figure(value, reader=reader),)


def _grams(kg: float, reader: Reader) -> Lines:
    return (figure(kg * 1000, reader=reader),)


def _sizes(sizes: Sequence[tuple[float, float]], reader: Reader) -> Lines:
    return (sizes_as_sold(sizes, reader),)


def _days(days: date | Sequence[date], reader: Reader) -> Lines:
    every = [days] if isinstance(days, date) else days
    return (listed(reader, [day_text(reader, each) for each in every]),)


def _lengths(lengths: Sequence[float], reader: Reader) -> Lines:
    return (sizes_as_sold([(each,) for each in lengths], reader),)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Column:
    """How one field of an item is said; ``kind`` is the field that holds its kind of value.

    ``own`` is what only the maker is told.
    """

    field: str
    label: str
    form: Form = _plain
    unit: str = ""
    kind: str = ""
    own: bool = False


def _column(
    field: str,
    label: str,
    form: Form = _plain,
    unit: str = "",
    kind: str = "",
    *,
    own: bool = False,
) -> _Column:
    return _Column(field=field, label=label, form=form, unit=unit, kind=kind, own=own)


_BENDING = "N/mm²"
_SWELLING = "stocklist-unit-swelling"
_COLUMNS: dict[str, tuple[_Column, ...]] = {
    "sheets": (
        _column("actual", "stocklist-measures", _thickness),
        _column("least", "stocklist-at-least", _thickness),
        _column("most", "stocklist-at-most", _thickness),
        _column("plies", "stocklist-plies"),
        _column("face_ply", "stocklist-face-ply", _length),
        _column("density", "stocklist-density", unit="kg/m³"),
        _column(
            "stiffness_along", "stocklist-stiffness-along", unit=_BENDING, kind="stiffness_kind"
        ),
        _column(
            "stiffness_across", "stocklist-stiffness-across", unit=_BENDING, kind="stiffness_kind"
        ),
        _column("strength_along", "stocklist-strength-along", unit=_BENDING, kind="strength_kind"),
        _column(
            "strength_across", "stocklist-strength-across", unit=_BENDING, kind="strength_kind"
        ),
        _column("shear_modulus_flat", "stocklist-shear-modulus-flat", unit=_BENDING),
        _column("shear_modulus_edge", "stocklist-shear-modulus-on-edge", unit=_BENDING),
        _column("shear_strength_flat", "stocklist-shear-strength-flat", unit=_BENDING),
        _column("shear_strength_edge", "stocklist-shear-strength-on-edge", unit=_BENDING),
        _column("bearing_strength", "stocklist-pressure-on-a-face", unit=_BENDING),
        _column("creep", "stocklist-creep", unit="kdef"),
        _column("swelling", "stocklist-moisture"),
        _column("sizes", "stocklist-sold-as", _sizes),
    ),
    "boards": (
        _column("nominal", "stocklist-called"),
        _column("thickness", "stocklist-thickness", _length),
        _column("width", "stocklist-width", _length),
        _column("density", "stocklist-density", unit="kg/m³"),
        _column("stiffness", "stocklist-stiffness", unit=_BENDING, kind="stiffness_kind"),
        _column("strength", "stocklist-strength", unit=_BENDING, kind="strength_kind"),
        _column("creep", "stocklist-creep", unit="kdef"),
        _column("lengths", "stocklist-lengths", _lengths),
    ),
    "cutters": (
        _column("diameter", "stocklist-diameter", _length),
        _column("flutes", "stocklist-edges"),
        _column("cutting_length", "stocklist-cutting-length", _length),
        _column("up_cut_length", "stocklist-up-cut-tip", _length),
        _column("angle", "stocklist-angle", unit="°"),
        _column("tip_flat", "stocklist-tip-flat", _length),
        _column("true_cut", "stocklist-true-cut", _length, own=True),
        _column("in_use_since", "stocklist-in-use-since", _days, own=True),
        _column("sharpened", "stocklist-sharpened", _days, own=True),
        _column("metres_before", "stocklist-metres-before", unit="m", own=True),
    ),
    "hardware": (
        _column("thread", "stocklist-thread-or-shank", _length),
        _column("head", "stocklist-head"),
        _column("head_diameter", "stocklist-head-across", _length),
        _column("outside", "stocklist-across", _length),
        _column("height", "stocklist-thick", _length),
        _column("clearance", "stocklist-clearance-hole", _length),
        _column("pilot", "stocklist-pilot-hole", _length),
        _column("counterbore_diameter", "stocklist-counterbore", _length),
        _column("counterbore_depth", "stocklist-its-depth", _length),
        _column("length", "stocklist-length", _length),
        _column("leg", "stocklist-leg", _length),
        _column("other_leg", "stocklist-other-leg", _length),
        _column("width", "stocklist-width", _length),
        _column("thickness", "stocklist-thickness", _length),
        _column("holes", "stocklist-holes", _lengths),
        _column("opening", "stocklist-opening", _length),
        _column("reach", "stocklist-reach", _length),
        _column("mass", "stocklist-mass", _grams, "g"),
        _column("inch_twin", "stocklist-in-inches"),
    ),
    "papers": (
        _column("width", "stocklist-width", _length),
        _column("height", "stocklist-height", _length),
    ),
    "chip-loads": (
        _column("diameter", "stocklist-cutter", _length),
        _column("least", "stocklist-least-a-tooth", _chip),
        _column("most", "stocklist-most-a-tooth", _chip),
        _column("depth", "stocklist-at-a-depth-of"),
    ),
    "depth-rules": (
        _column("diameters", "stocklist-depth", unit="stocklist-unit-diameters"),
        _column("share", "stocklist-chip-load-left", unit="stocklist-unit-full"),
    ),
    "movements": (
        _column("thickness", "stocklist-in-thickness", unit=_SWELLING),
        _column("plane", "stocklist-along-the-sheet-or-across-the-grain", unit=_SWELLING),
        _column("bought", "stocklist-sold-at", unit="stocklist-unit-moisture"),
        _column("takes_up", "stocklist-takes-up-moisture"),
    ),
    "finishes": (
        _column("wet", "stocklist-a-wet-coat", _chip),
        _column("solids", "stocklist-solids-by-volume", unit="stocklist-unit-of-it"),
    ),
}

KINDS = tuple(_COLUMNS)
"""The sections of the stock, in the order they are listed."""


def stock_lists(
    stock: Stock, reader: Reader = METRIC, *, own: bool = False
) -> tuple[StockList, ...]:
    """Return every section that has items; ``reader`` is whom it is for.

    With ``own`` it is for the maker, who is told of the very cutters in the machine.
    """
    lists = (_list(stock, kind, reader, own=own) for kind in KINDS)
    return tuple(each for each in lists if each.groups)


def _list(stock: Stock, kind: str, reader: Reader, *, own: bool) -> StockList:
    columns = [each for each in _COLUMNS[kind] if own or not each.own]
    items: tuple[StockItem, ...] = getattr(stock, kind.replace("-", "_"))
    grouped: dict[str, list[StockItem]] = {}
    for item in sorted(items, key=lambda each: _order(kind, each)):
        grouped.setdefault(_group(kind, item), []).append(item)
    groups = tuple(
        StockGroup(title=_spoken(word, reader), rows=_rows(members, columns, reader))
        for word, members in grouped.items()
    )
    return StockList(kind=kind, title=say(reader, f"stocklist-kind-{kind}"), groups=groups)


def _rows(
    items: Iterable[StockItem], columns: Sequence[_Column], reader: Reader
) -> tuple[StockRow, ...]:
    return tuple(
        StockRow(
            name=item.name,
            title=_title(item, reader),
            figures=_figures(item, columns, reader),
        )
        for item in items
    )


def _figures(item: StockItem, columns: Sequence[_Column], reader: Reader) -> tuple[Figure, ...]:
    """Return what is known of an item; a field without a value gives no figure."""
    return tuple(
        Figure(
            rank=rank,
            label=say(reader, each.label),
            unit=_unit(each.unit, reader),
            lines=each.form(value, reader),
            source=item.source_of(each.field),
            place=item.came_from(each.field),
            kind=getattr(item, each.kind) if each.kind else "",
        )
        for rank, each in enumerate(columns)
        if (value := getattr(item, each.field)) not in (None, "", ())
    )


def _unit(unit: str, reader: Reader) -> str:
    """Return a unit; one that is words is a message."""
    return say(reader, unit) if unit.startswith("stocklist-") else unit


def _title(item: StockItem, reader: Reader) -> str:
    if isinstance(item, ChipLoad):
        return _spoken(item.family, reader)
    if isinstance(item, DepthRule):
        return say(reader, "stocklist-depth-rule", times=figure(item.diameters, reader=reader))
    if isinstance(item, Movement):
        return _spoken(item.name, reader)
    title: str = getattr(item, "title", item.name)
    return title


def _spoken(word: str, reader: Reader) -> str:
    """Return a family, a kind or a machine in words; empty for none."""
    if not word:
        return ""
    known, written = word.replace(" ", "-"), word.replace("-", " ").capitalize()
    return say(reader, "stocklist-word", word=known, otherwise=written)


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
