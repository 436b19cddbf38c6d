"""The forms of ``stock/*.yaml``, and the shipped library overlaid by the maker's own entries."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Any, TypeVar

from generator.basis.complaint import Complaint
from generator.basis.finding import Finding, error
from generator.model.stock import (
    BoardStock,
    CutterStock,
    HardwareStock,
    PaperStock,
    SheetStock,
    Stock,
)
from generator.reading.desk import Desk
from generator.reading.forms import Book, Form, ListOf, Schema
from generator.reading.nodes import Mapping, Node
from generator.reading.record import Fields, Key, Record
from generator.reading.values import (
    FLAG,
    MONEY,
    NUMBER,
    QUANTITY,
    SHEET_SIZE,
    TEXT,
    choice,
    name_fault,
    whole,
)

T = TypeVar("T")
Prices = tuple[tuple[tuple[float, float], Decimal], ...]
Kept = dict[str, dict[str, Fields]]
"""Read values by section and name, before records are made of them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PricesForm(Form[Prices]):
    """``{2440 x 1220: 92.50}``."""

    noun: str = "prices by sheet size"
    advice: str = "Write `prices: {2440 x 1220: 92.50}`."

    def read(self, node: Node, desk: Desk) -> Prices | None:
        """Return (size, price) pairs."""
        if not isinstance(node, Mapping):
            self.refuse(node, desk)
            return None
        pairs = [(SHEET_SIZE.read(e.key, desk), MONEY.read(e.value, desk)) for e in node.entries]
        found = [(size, price) for size, price in pairs if size is not None and price is not None]
        return tuple(found) if len(found) == len(pairs) else None

    def schema(self, book: Book) -> Schema:
        """Return the schema of a mapping from size to price."""
        return {"type": "object", "additionalProperties": MONEY.schema(book)}


def _sheet_faults(fields: Fields) -> tuple[Finding, ...]:
    least, actual, most = (fields.values[key] for key in ("least", "actual", "most"))
    if not least <= actual <= most:
        message = "`actual` is not between `least` and `most`"
        advice = "State the thickness you measured and the limits it lies within."
        return (error("wrong-value", message, fields.place, advice),)
    return ()


_TITLE = Key(name="title", form=TEXT, says="Its name for readers.", required=True)
_SOURCE = Key(name="source", form=TEXT, says="Where the figures come from.")
_DENSITY = Key(name="density", form=NUMBER, says="kg a cubic metre.", required=True)
_LISTED = "Write a list in brackets."


def _length(name: str, says: str, *, required: bool = False) -> Key:
    return Key(name=name, form=QUANTITY, says=says, required=required)


SECTIONS: dict[str, Record[Any]] = {
    "sheets": Record(
        name="sheet-stock",
        noun="a sheet",
        keys=(
            _TITLE,
            _length("nominal", "What it is sold as.", required=True),
            _length("actual", "What it measures on average.", required=True),
            _length("least", "The least it may measure.", required=True),
            _length("most", "The most it may measure.", required=True),
            _DENSITY,
            Key(
                name="sizes",
                form=ListOf(item=SHEET_SIZE, noun="a list of sizes", advice=_LISTED, least=1),
                says="Sheet sizes sold, side along the grain first.",
                required=True,
            ),
            Key(name="grain", form=FLAG, says="False for fibreboard."),
            Key(name="prices", form=PricesForm(), says="Price of one sheet, by size."),
            _SOURCE,
        ),
        make=SheetStock,
        named=True,
        check=_sheet_faults,
    ),
    "boards": Record(
        name="board-stock",
        noun="a board",
        keys=(
            _TITLE,
            _length("thickness", "Dressed thickness.", required=True),
            _length("width", "Dressed width.", required=True),
            Key(
                name="lengths",
                form=ListOf(item=QUANTITY, noun="a list of lengths", advice=_LISTED, least=1),
                says="Lengths sold.",
                required=True,
            ),
            _DENSITY,
            Key(name="price-per-metre", form=MONEY, says="Price of one metre."),
            _SOURCE,
        ),
        make=BoardStock,
        named=True,
    ),
    "cutters": Record(
        name="cutter-stock",
        noun="a cutter",
        keys=(
            _TITLE,
            _length("diameter", "Cutting diameter.", required=True),
            Key(
                name="kind",
                form=choice(
                    "a kind of cutter",
                    *("compression", "up-cut", "down-cut", "straight", "v", "ball", "drill"),
                ),
                says="What it does to the edge.",
                required=True,
            ),
            Key(name="flutes", form=whole(1, 20), says="Cutting edges.", required=True),
            _length("cutting-length", "Length of the cutting edges.", required=True),
            _length("up-cut-length", "Length of a compression cutter's up-cut tip."),
            _SOURCE,
        ),
        make=CutterStock,
        named=True,
    ),
    "hardware": Record(
        name="hardware-stock",
        noun="a fastener",
        keys=(
            _TITLE,
            _length("clearance", "Diameter of its clearance hole."),
            _length("pilot", "Diameter of its pilot hole."),
            _length("counterbore-diameter", "Diameter of the bore for its head."),
            _length("counterbore-depth", "Depth of the bore for its head."),
            _length("length", "Its length."),
            Key(name="mass", form=NUMBER, says="kg a piece."),
            Key(name="price", form=MONEY, says="Price of one."),
            Key(name="inch-twin", form=TEXT, says="What to buy in inches instead."),
            _SOURCE,
        ),
        make=HardwareStock,
        named=True,
    ),
    "papers": Record(
        name="paper-stock",
        noun="a paper",
        keys=(
            _TITLE,
            _length("width", "Width of the upright page.", required=True),
            _length("height", "Height of the upright page.", required=True),
            _SOURCE,
        ),
        make=PaperStock,
        named=True,
    ),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class SectionForm(Form[dict[str, Fields]]):
    """Entries of one kind by name, each perhaps only in part: it may overlay another."""

    record: Record[Any]
    noun: str
    advice: str = "Write `name: {...}`, an entry each."

    def read(self, node: Node, desk: Desk) -> dict[str, Fields] | None:
        """Return the values of each entry."""
        if not isinstance(node, Mapping):
            self.refuse(node, desk)
            return None
        kept = {}
        for entry in node.entries:
            name, place = entry.key.text, entry.key.place
            fault = name_fault(name)
            if fault is not None:
                desk.complain("name", fault, place)
            fields = self.record.fields(name, place, entry.value, desk, partial=True)
            if fields is not None and fault is None:
                kept[name] = fields
        return kept

    def schema(self, book: Book) -> Schema:
        """Return the schema of a mapping from name to a partial entry."""
        entry = self.record.open_schema(book, partial=True)
        return {"type": "object", "additionalProperties": entry}


def _make_sections(**sections: dict[str, Fields]) -> Kept:
    return sections


STOCK: Record[Kept] = Record(
    name="stock",
    noun="a stock file",
    keys=tuple(
        Key(
            name=section,
            form=SectionForm(record=record, noun=f"{section} by name"),
            says=f"The workshop's {section}, by name.",
        )
        for section, record in SECTIONS.items()
    ),
    make=_make_sections,
    advice="Begin with `sheets:`, `boards:`, `cutters:`, `hardware:` or `papers:`.",
    placed=False,
    lenient=True,
)


def overlay(lower: Kept, upper: Kept) -> Kept:
    """Return the lower entries with the upper ones laid over them, field by field."""
    merged: Kept = {section: dict(lower.get(section, {})) for section in SECTIONS}
    for section, entries in upper.items():
        for name, fields in entries.items():
            below = merged[section].get(name)
            merged[section][name] = fields if below is None else _laid_over(below, fields)
    return merged


def _laid_over(below: Fields, above: Fields) -> Fields:
    return Fields(
        values={**below.values, **above.values},
        places={**below.places, **above.places},
        place=above.place,
        name=above.name,
        sound=below.sound and above.sound,
    )


def make_stock(library: Kept, own: Kept, desk: Desk) -> Stock:
    """Return records of the library with the maker's own entries laid over it.

    An entry that cannot be read falls back to the library's; the names of those the library does
    not have are kept at the desk.
    """
    merged = overlay(library, own)
    made: dict[str, tuple[Any, ...]] = {}
    for section, record in SECTIONS.items():
        records = []
        for name in sorted(merged[section]):
            below = library.get(section, {}).get(name)
            made_record = _made(record, merged[section][name], desk)
            if made_record is None and below is not None:
                made_record = _made(record, below, Desk())
            if made_record is None:
                desk.unread.add(name)
            else:
                records.append(made_record)
        made[section] = tuple(records)
    return Stock(**made)


def _made(record: Record[T], fields: Fields, desk: Desk) -> T | None:
    missing = [k for k in record.keys if k.required and k.fills not in fields.values]
    for key in missing if fields.sound else ():
        message = f"`{key.name}` is missing"
        desk.refuse("missing-key", message, fields.place, key.missing_advice)
    return None if missing else record.finish(fields, desk)


def doubled(kept: Kept, other: Kept) -> list[tuple[Fields, Complaint]]:
    """Return the entries of ``other`` whose names the maker's files before it state already."""
    found = []
    for section, entries in other.items():
        for name, fields in entries.items():
            first = kept.get(section, {}).get(name)
            if first is not None:
                advice = f"It stands in {first.place.file} already; keep one of the two."
                found.append((fields, Complaint(f"`{name}` is stated twice", advice)))
    return found
