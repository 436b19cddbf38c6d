"""The forms of the entries of ``stock/*.yaml``, a section each."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from typing import Any

from kerfolio.basis.finding import Finding, error
from kerfolio.basis.measures import length
from kerfolio.basis.said import Text, said, written
from kerfolio.basis.tolerance import AS_LISTED
from kerfolio.basis.words import listed
from kerfolio.model.stock import (
    FAMILIES,
    HARDWARE_KINDS,
    MACHINES,
    TAKES_UP,
    VALUE_KINDS,
    BoardStock,
    ChipLoad,
    CutterStock,
    DepthRule,
    FinishStock,
    HardwareStock,
    Movement,
    PaperStock,
    SheetStock,
)
from kerfolio.reading.desk import Desk
from kerfolio.reading.forms import Book, Form, ListOf, Schema
from kerfolio.reading.nodes import Mapping, Node
from kerfolio.reading.record import Fields, Key, Record
from kerfolio.reading.values import (
    CELL_TEXT,
    DATE,
    FLAG,
    MONEY,
    SHEET_SIZE,
    TEXT,
    THING_LENGTH,
    TITLE_TEXT,
    choice,
    number,
    whole,
)

Prices = tuple[tuple[tuple[float, float], Decimal], ...]
Sources = tuple[tuple[str, str], ...]


_A_PRICE = written("prices: {2440 x 1220: 92.50}", "prices: {96 in x 48 in: 92.50}")


@dataclass(frozen=True, slots=True, kw_only=True)
class PricesForm(Form[Prices]):
    """``{2440 x 1220: 92.50}``."""

    noun: str = "prices by sheet size"
    advice: Text = _A_PRICE

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


@dataclass(frozen=True, slots=True, kw_only=True)
class SourcesForm(Form[Sources]):
    """``{stiffness: a table}``: the sources of single keys, or of all keys of one first word."""

    noun: str = "sources by key"
    advice: str = "Write `sources: {stiffness: The mill's datasheet}`."

    def read(self, node: Node, desk: Desk) -> Sources | None:
        """Return (key or first word, source) pairs."""
        if not isinstance(node, Mapping):
            self.refuse(node, desk)
            return None
        pairs = [(each.key.text, TEXT.read(each.value, desk)) for each in node.entries]
        found = [(key, text) for key, text in pairs if text is not None]
        return tuple(found) if len(found) == len(pairs) else None

    def schema(self, book: Book) -> Schema:
        """Return the schema of a mapping from key to text."""
        return {"type": "object", "additionalProperties": TEXT.schema(book)}


def _sheet_faults(fields: Fields) -> Iterator[Finding]:
    least, actual, most = (fields.values[key] for key in ("least", "actual", "most"))
    if not least - AS_LISTED <= actual <= most + AS_LISTED:
        message = "`actual` is not between `least` and `most`"
        advice = "State the thickness you measured and the limits it lies within."
        yield error("wrong-value", message, fields.place, advice + _elsewhere(fields))


def _elsewhere(fields: Fields) -> str:
    """Return which of the three thicknesses stand in other files than the entry itself."""
    found: dict[str, list[str]] = {}
    for key in ("least", "actual", "most"):
        found.setdefault(fields.places[key].file, []).append(f"`{key}`")
    found.pop(fields.place.file, None)
    told = (f" {listed(keys)} stand in {file}." for file, keys in sorted(found.items()))
    return "".join(told)


def _range_faults(fields: Fields) -> Iterator[Finding]:
    if not fields.values["least"] <= fields.values["most"]:
        message = "`least` is more than `most`"
        yield error("wrong-value", message, fields.place, "Write the smaller of the two first.")


def _cutter_faults(fields: Fields) -> Iterator[Finding]:
    if fields.values["kind"] == "v" and fields.values.get("angle") is None:
        advice = "Write `angle: 60`, what lies between its two edges: strokes widen by it."
        yield error("missing-key", "a V cutter needs an `angle`", fields.place, advice)
    flat = fields.values.get("tip_flat")
    if flat is not None and flat >= fields.values["diameter"]:
        message, advice = "`tip-flat` is no less than `diameter`", "Write how wide its tip is."
        yield error("wrong-value", message, fields.place, advice)
    yield from _own_cutter_faults(fields)


_OFF = 0.25
"""A cut is off its cutter's diameter by less than a quarter of it: run-out, wear and sharpening
come to tenths of a millimetre (common practice, no single source)."""


def _own_cutter_faults(fields: Fields) -> Iterator[Finding]:
    """Find what cannot be of a cutter in use: a cut of another size, a day before its first."""
    values, places = fields.values, fields.places
    cut, diameter = values.get("true_cut"), values["diameter"]
    if cut is not None and abs(cut - diameter) > _OFF * diameter:
        words = said("`true-cut` is far from the diameter of {}", length("diameter", diameter))
        advice = "Write how wide its cut is: 6.05 mm of a cutter of 6 mm, say."
        yield error("wrong-value", words, places["true-cut"], advice)
    days, since = values.get("sharpened", ()), values.get("in_use_since")
    if list(days) != sorted(set(days)):
        advice = "Write each day once, the first one first."
        yield error("wrong-value", "`sharpened` is not in order", places["sharpened"], advice)
    elif since is not None and days and days[0] < since:
        message = "it was sharpened before it was in use"
        advice = "See which of `in-use-since` and `sharpened` is right."
        yield error("wrong-value", message, places["sharpened"], advice)


_TITLE = Key(name="title", form=TITLE_TEXT, says="Its name for readers.", required=True)
_SOURCE = (
    Key(name="source", form=TEXT, says="Where the figures come from."),
    Key(name="sources", form=SourcesForm(), says="Sources of single keys, where they differ."),
)
_LISTED = "Write a list in brackets."
_KIND = choice("a kind of value", *VALUE_KINDS)


def _length(name: str, says: str, *, required: bool = False) -> Key:
    return Key(name=name, form=THING_LENGTH, says=says, required=required)


_STIFFNESS = (1.0, 1_000_000.0)
_STRENGTH = (0.01, 10_000.0)
"""Bounds leave out what no solid has; common knowledge, no single source."""


def _number(name: str, says: str, bounds: tuple[float, float], *, required: bool = False) -> Key:
    return Key(name=name, form=number(*bounds), says=says, required=required)


_DENSITY = _number("density", "kg a cubic metre.", (10, 25_000), required=True)
_CREEP = _number("creep", "kdef of EN 1995-1-1, service class 1: lasting load.", (0, 10))


def _family(*, required: bool = False) -> Key:
    form = choice("a family of material", *FAMILIES)
    return Key(name="family", form=form, says="What chip loads list it under.", required=required)


_SHEETS = Record(
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
        Key(name="plies", form=whole(3, 99), says="How many layers of veneer it is glued of."),
        _length("face-ply", "How thick the outer layer is: engravings stay within it."),
        _family(),
        _number(
            "stiffness-along", "Modulus of elasticity along the grain, N/mm2, flat.", _STIFFNESS
        ),
        _number(
            "stiffness-across", "Modulus of elasticity across the grain, N/mm2, flat.", _STIFFNESS
        ),
        Key(name="stiffness-kind", form=_KIND, says="What kind of value the stiffness is."),
        _number("strength-along", "Bending strength along the grain, N/mm2, flat.", _STRENGTH),
        _number("strength-across", "Bending strength across the grain, N/mm2, flat.", _STRENGTH),
        Key(name="strength-kind", form=_KIND, says="What kind of value the strength is."),
        _number("shear-modulus-flat", "Shear modulus lying flat, N/mm2.", _STIFFNESS),
        _number("shear-modulus-edge", "Shear modulus on edge, N/mm2.", _STIFFNESS),
        _number("shear-strength-flat", "Shear strength lying flat, N/mm2.", _STRENGTH),
        _number("shear-strength-edge", "Shear strength on edge, N/mm2.", _STRENGTH),
        _number("bearing-strength", "Strength against pressure on a face, N/mm2.", _STRENGTH),
        _CREEP,
        Key(name="swelling", form=TEXT, says="How it moves with moisture, as a standard says."),
        Key(name="prices", form=PricesForm(), says="Price of one sheet, by size."),
        *_SOURCE,
    ),
    make=SheetStock,
    named=True,
    check=_sheet_faults,
)

_BOARDS = Record(
    name="board-stock",
    noun="a board",
    keys=(
        _TITLE,
        _length("thickness", "Dressed thickness.", required=True),
        _length("width", "Dressed width.", required=True),
        Key(
            name="lengths",
            form=ListOf(item=THING_LENGTH, noun="a list of lengths", advice=_LISTED, least=1),
            says="Lengths sold.",
            required=True,
        ),
        _DENSITY,
        Key(name="nominal", form=CELL_TEXT, says="The size it is called by."),
        _family(),
        _number("stiffness", "Modulus of elasticity along the grain, N/mm2.", _STIFFNESS),
        Key(name="stiffness-kind", form=_KIND, says="What kind of value the stiffness is."),
        _number("strength", "Bending strength, N/mm2.", _STRENGTH),
        Key(name="strength-kind", form=_KIND, says="What kind of value the strength is."),
        _CREEP,
        Key(name="price-per-metre", form=MONEY, says="Price of one metre."),
        *_SOURCE,
    ),
    make=BoardStock,
    named=True,
)

_CUTTERS = Record(
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
        _number("angle", "Angle between the edges of a V cutter, degrees.", (1, 179)),
        _length("tip-flat", "How wide the tip of a V cutter is, none where it is sharp."),
        Key(name="in-use-since", form=DATE, says="Day that your own one was first used."),
        Key(
            name="sharpened",
            form=ListOf(
                item=DATE,
                noun="a list of days",
                advice="Write `sharpened: [2026-05-01, 2026-09-30]`.",
                single=True,
            ),
            says="Days that it was sharpened.",
        ),
        _length("true-cut", "How wide it really cuts."),
        _number("metres-before", "Metres that it cut before the log began.", (0, 1_000_000)),
        *_SOURCE,
    ),
    make=CutterStock,
    named=True,
    check=_cutter_faults,
)

_BORED = written("holes: [12 mm, 30 mm]", "holes: [1/2 in, 1-1/4 in]")
_HARDWARE = Record(
    name="hardware-stock",
    noun="a fastener",
    keys=(
        _TITLE,
        Key(
            name="kind",
            form=choice("a kind of hardware", *HARDWARE_KINDS),
            says="What it is.",
        ),
        _length("thread", "Nominal diameter of its thread, or of its shank."),
        Key(name="head", form=CELL_TEXT, says="What its head is: `countersunk`, say."),
        _length("head-diameter", "How wide its head is."),
        _length("head-height", "How high its head is."),
        _length("outside", "How wide it is across: a washer, or a nut over its flats."),
        _length("height", "How thick it is along its bolt: a washer, or a nut."),
        _length("clearance", "Diameter of its clearance hole."),
        _length("pilot", "Diameter of its pilot hole."),
        _length("counterbore-diameter", "Diameter of the bore for its head."),
        _length("counterbore-depth", "Depth of the bore for its head."),
        _length("length", "Its length."),
        _length("leg", "How far a bracket's leg reaches from its outer corner."),
        _length("other-leg", "How far its other leg does, where that differs."),
        _length("width", "How wide a bracket is, or the jaws of a clamp."),
        _length("thickness", "How thick a bracket's metal is."),
        Key(
            name="holes",
            form=ListOf(item=THING_LENGTH, noun="a list of lengths", advice=_BORED, least=1),
            says="How far the holes of each leg are from the outer corner of a bracket.",
        ),
        _length("opening", "The most that a clamp spans."),
        _length("reach", "How far a clamp reaches in from an edge."),
        _number("mass", "kg a piece.", (0, 1_000)),
        Key(name="price", form=MONEY, says="Price of one."),
        Key(name="inch-twin", form=CELL_TEXT, says="What to buy in inches instead."),
        *_SOURCE,
    ),
    make=HardwareStock,
    named=True,
)

_PAPERS = Record(
    name="paper-stock",
    noun="a paper",
    keys=(
        _TITLE,
        _length("width", "Width of the upright page.", required=True),
        _length("height", "Height of the upright page.", required=True),
        *_SOURCE,
    ),
    make=PaperStock,
    named=True,
)

_CHIP_LOADS = Record(
    name="chip-load",
    noun="a chip load",
    keys=(
        _family(required=True),
        _length("diameter", "The cutter's diameter; leave it out when the table does."),
        _length("least", "The least a tooth should take.", required=True),
        _length("most", "The most a tooth should take.", required=True),
        Key(
            name="machine",
            form=choice("a class of machine", *MACHINES),
            says="The class of machine it is meant for.",
            required=True,
        ),
        Key(name="depth", form=TEXT, says="The depth of cut it holds at."),
        *_SOURCE,
    ),
    make=ChipLoad,
    named=True,
    check=_range_faults,
)

_DEPTH_RULES = Record(
    name="depth-rule",
    noun="a depth rule",
    keys=(
        _number("diameters", "Depth of cut, in cutter diameters.", (0.1, 100), required=True),
        _number(
            "share", "Share of the chip load that is left at that depth.", (0.01, 1), required=True
        ),
        *_SOURCE,
    ),
    make=DepthRule,
    named=True,
)

_SWELLS = (0.0, 5.0)
"""Per cent of a size for each per cent of moisture: no wood reaches 1 (common knowledge)."""

_MOVEMENTS = Record(
    name="movement",
    noun="a movement",
    keys=(
        _number(
            "thickness", "Swelling in thickness, % for each % of moisture.", _SWELLS, required=True
        ),
        _number(
            "plane",
            "Swelling along the sheet, of solid wood across the grain, % for each % of moisture.",
            _SWELLS,
            required=True,
        ),
        _number("bought", "Moisture it is sold and measured at, %.", (0, 30), required=True),
        Key(
            name="takes-up",
            form=choice("a way of taking up moisture", *TAKES_UP),
            says="How much moisture it takes from damp air.",
            required=True,
        ),
        *_SOURCE,
    ),
    make=Movement,
    named=True,
)

_FINISHES = Record(
    name="finish-stock",
    noun="a finish",
    keys=(
        _TITLE,
        _length("wet", "How thick one coat is while it is wet.", required=True),
        _number("solids", "Share of it by volume that stays when dry.", (0.01, 1), required=True),
        *_SOURCE,
    ),
    make=FinishStock,
    named=True,
)

SECTIONS: dict[str, Record[Any]] = {
    "sheets": _SHEETS,
    "boards": _BOARDS,
    "cutters": _CUTTERS,
    "hardware": _HARDWARE,
    "papers": _PAPERS,
    "chip-loads": _CHIP_LOADS,
    "depth-rules": _DEPTH_RULES,
    "movements": _MOVEMENTS,
    "finishes": _FINISHES,
}
"""The form of an entry of each section; the sections are those of ``model.stock.Stock``."""
