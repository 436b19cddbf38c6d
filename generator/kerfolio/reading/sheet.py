"""Forms of the sheets and boards a plan is cut from."""

from __future__ import annotations

import re
from dataclasses import dataclass
from itertools import repeat

from kerfolio.basis.budgets import READY_MADE
from kerfolio.basis.complaint import quoted
from kerfolio.basis.digits import digits
from kerfolio.basis.expression import Expression, ExpressionError, parse
from kerfolio.basis.ladder import MOST_RUNGS, rung_count, sparse_step
from kerfolio.basis.lengths import MM_PER_UNIT
from kerfolio.basis.names import NAME
from kerfolio.basis.place import Place
from kerfolio.basis.said import Text, written
from kerfolio.model.plan import (
    ALONG,
    FIXED_BY,
    BoardPlace,
    BoardUse,
    Clamp,
    FixedTo,
    Ladder,
    Offcut,
    SheetUse,
)
from kerfolio.model.statement import Amount
from kerfolio.reading.amounts import (
    CLEARANCE,
    LENGTH,
    SIDE,
    SPOT,
    STEP,
    THICKNESS,
    AmountForm,
    constant_mm,
    size_name_fault,
)
from kerfolio.reading.desk import Desk
from kerfolio.reading.fit import FIT
from kerfolio.reading.forms import Book, Form, ListOf, Schema
from kerfolio.reading.nodes import Node, Scalar
from kerfolio.reading.record import Entries, Key, Record
from kerfolio.reading.reference import REFERENCE
from kerfolio.reading.step_title import STEP_TITLE
from kerfolio.reading.values import (
    CELL_TEXT,
    FLAG,
    LABEL,
    SCALAR,
    TITLE_TEXT,
    choice,
    name_fault,
    split_size,
    whole,
)

_LADDER = re.compile(r"(.+?)\s+to\s+(.+?)(?:\s+by\s+(.+))?")
_RANGE = re.compile(r"(.+?)\s*(?:-|–|—|…|\.\.+)\s*(.+)")
_WIDE = 1.5
"""A ladder from one thickness to more than this many of it has a slip in an end (common practice,
no single source)."""

_LEAST_STEP = {"mm": 0.1, "in": 0.005}
"""Steps that advice proposes at least: a hand feels no finer ones (common practice, no single
source)."""


_A_LADDER = written("17.2 to 18.6", "11/16 in to 3/4 in", "Write `{}`, or one thickness.")


@dataclass(frozen=True, slots=True, kw_only=True)
class LadderForm(Form[Ladder]):
    """``17.2 to 18.6``, perhaps with ``by 0.2``, or a single thickness."""

    noun: str = "thicknesses"
    advice: Text = _A_LADDER

    def read(self, node: Node, desk: Desk) -> Ladder | None:
        """Return the range; a single thickness is both its ends."""
        if not isinstance(node, Scalar) or not node.text.strip():
            self.refuse(node, desk)
            return None
        text, place = " ".join(node.text.split()), node.place
        parts = _LADDER.fullmatch(text)
        amounts = " ".join(filter(None, parts.groups())) if parts else text
        if re.search(r"\b(to|by)\b", amounts):
            desk.refuse("wrong-value", f"{quoted(text)} is no range", place, self.advice)
            return None
        if parts is None and self._is_range(text, place, desk):
            return None
        first, last, step = parts.groups() if parts else (text, text, None)
        ends = [THICKNESS.amount(each, place, desk) for each in dict.fromkeys((first, last))]
        sound = None not in ends and self._ascends(first, last, place, desk)
        if not sound:
            return None
        by = None if step is None else self._step(first, last, step, place, desk)
        if step is not None and by is None:
            return None
        return Ladder(first=Amount(first, place), last=Amount(last, place), step=by, place=place)

    def _step(self, first: str, last: str, step: str, place: Place, desk: Desk) -> Amount | None:
        if self._has_too_many(first, last, step, place, desk):
            return None
        return STEP.amount(step, place, desk)

    def _is_range(self, text: str, place: Place, desk: Desk) -> bool:
        """Refuse two thicknesses with a dash between them, which is a subtraction to others."""
        ends = _RANGE.fullmatch(text)
        first, last = map(_constant, ends.groups(), repeat(desk.unit)) if ends else (None, None)
        if first is None or last is None or not 0 < first < last:
            return False
        advice = f"Write `{ends[1]} to {ends[2]}`." if ends else ""
        desk.refuse("wrong-value", f"{quoted(text)} is no range", place, advice)
        return True

    def _has_too_many(self, first: str, last: str, step: str, place: Place, desk: Desk) -> bool:
        """Refuse a step so small that no coupon could try them all."""
        low, high, by = (_constant(each, desk.unit) for each in (first, last, step))
        if low is None or high is None or by is None or by <= 0:
            return False
        count = rung_count(low, high, by)
        if count <= MOST_RUNGS:
            return False
        advice = f"Write {_sparser(first, last, low, high, desk.unit)}, say."
        if high > _WIDE * low:
            advice = "One kind of sheet differs by a millimetre or two: are both ends meant?"
        message = f"{count} thicknesses for the coupon, at most {MOST_RUNGS}"
        desk.refuse("coupon-too-fine", message, place, advice)
        return True

    def _ascends(self, first: str, last: str, place: Place, desk: Desk) -> bool:
        low, high = _constant(first, desk.unit), _constant(last, desk.unit)
        if low is None or high is None or low <= high:
            return True
        message = f"{quoted(first)} is more than {quoted(last)}"
        desk.refuse("out-of-range", message, place, "Put the thinner one first.")
        return False

    def schema(self, book: Book) -> Schema:  # noqa: ARG002 - nothing of it is named
        """Return the schema of a number or a text."""
        return dict(SCALAR)


def _constant(text: str, unit: str) -> float | None:
    """Return a text without names in mm, None when it is none or has no value."""
    expression = parse(text, unit)
    if not isinstance(expression, Expression) or expression.names or expression.sheets:
        return None
    try:
        return constant_mm(expression)
    except ExpressionError:
        return None


def _sparser(first: str, last: str, low: float, high: float, unit: str) -> str:
    """Return the ladder between two thicknesses, stated and in mm, that has a dozen rungs or less.

    Its step is in the plan's unit.
    """
    per = float(MM_PER_UNIT[unit])
    step = sparse_step(low / per, high / per, _LEAST_STEP[unit])
    count = rung_count(low / per, high / per, step)
    return f"`{first} to {last} by {digits(step)}` ({count} thicknesses)"


_A_SIZE = written("2440 x 1220", "96 x 48", "Write the side along the grain first: `{}`.")


@dataclass(frozen=True, slots=True, kw_only=True)
class SizeForm(Form[tuple[Amount, Amount]]):
    """``2440 x 1220``: along the grain first."""

    noun: str = "a sheet size"
    advice: Text = _A_SIZE

    def read(self, node: Node, desk: Desk) -> tuple[Amount, Amount] | None:
        """Return both sides."""
        if not isinstance(node, Scalar) or not node.text.strip():
            self.refuse(node, desk)
            return None
        sides = split_size(node.text)
        if sides is None:
            message = f"{quoted(node.text)} is no sheet size"
            desk.refuse("wrong-value", message, node.place, self.advice)
            return None
        along, across = (SIDE.amount(side, node.place, desk) for side in sides)
        return None if along is None or across is None else (along, across)

    def schema(self, book: Book) -> Schema:  # noqa: ARG002 - nothing of it is named
        """Return the schema of a text."""
        return {"type": "string", "pattern": "[xX×]"}


_SIZE = SizeForm()
_ALONG = AmountForm(
    noun="a length",
    advice=written("600 mm", "24 in", "Write a number or a quantity such as `{}`."),
    within=(0.0, 20_000.0),
)
_OFFCUT: Record[Offcut] = Record(
    name="offcut",
    noun="an offcut",
    keys=(
        Key(name="size", form=_SIZE, says="Its size, side along the grain first.", required=True),
        Key(name="count", form=whole(1, 200), says="How many there are."),
    ),
    make=Offcut,
    advice=written("{size: 1100 x 600, count: 2}", "{size: 43 x 24, count: 2}"),
)
_CLAMP: Record[Clamp] = Record(
    name="clamp",
    noun="a clamp",
    keys=(
        Key(
            name="edge",
            form=choice("an edge", "top", "bottom", "left", "right"),
            says="The sheet's edge it sits on.",
            required=True,
        ),
        Key(
            name="at",
            form=ListOf(
                item=_ALONG,
                noun="a length or a list of lengths",
                advice=written("[300, 2100]", "[12, 84]"),
                least=1,
                single=True,
            ),
            says="Its middle along the edge, from the left or from below.",
            required=True,
        ),
        Key(name="width", form=CLEARANCE, says="Along the edge.", required=True),
        Key(name="depth", form=CLEARANCE, says="Into the sheet.", required=True),
    ),
    make=Clamp,
    advice=written(
        "{edge: left, at: [300, 900], width: 80, depth: 40}",
        "{edge: left, at: [12, 36], width: 3, depth: 1.5}",
    ),
)
_SHEET: Record[SheetUse] = Record(
    name="sheet",
    noun="a sheet",
    keys=(
        Key(name="stock", form=REFERENCE, says="The sheet material, by its name.", required=True),
        Key(name="title", form=TITLE_TEXT, says="What readers know it by; else its stock's title."),
        Key(name="grade", form=CELL_TEXT, says="What to ask a yard for: `BB/BB`, say."),
        Key(name="size", form=SizeForm(), says="The sheet bought, side along the grain first."),
        Key(
            name="published-for",
            form=LadderForm(),
            says="The range of thicknesses that the plan is for.",
        ),
        Key(
            name="ready-made",
            form=ListOf(
                item=THICKNESS,
                noun="a thickness or a list of thicknesses",
                advice=written("[17.2 mm, 23/32 in]", "[11/16, 23/32]"),
                budget=READY_MADE,
                single=True,
            ),
            says="Thicknesses of that range to have cut files ready for.",
        ),
        Key(name="drawn-for", form=THICKNESS, says="The thickness that pictures show."),
        Key(name="fit", form=FIT, says="Clearance on each side of a joint."),
        Key(name="margin", form=CLEARANCE, says="Kept clear along the sheet's edges."),
        Key(name="gap", form=CLEARANCE, says="Kept clear between pieces."),
        Key(
            name="datum",
            form=choice("a datum", "corner", "centre"),
            says="Where cut files have 0,0: the sheet's lower left `corner`, or its `centre`.",
        ),
        Key(
            name="also",
            form=ListOf(
                item=_SIZE,
                noun="a size or a list of sizes",
                advice=written("[1220 x 1220]", "[48 x 48]"),
                single=True,
            ),
            says="Other sizes it may be bought in, such as half a sheet.",
        ),
        Key(
            name="offcuts",
            form=ListOf(
                item=_OFFCUT,
                noun="a list of offcuts",
                advice=written("[{size: 1100 x 600}]", "[{size: 43 x 24}]"),
            ),
            says="Left-over sheets at hand, used first where that saves a sheet.",
        ),
        Key(
            name="clamps",
            form=ListOf(
                item=_CLAMP,
                noun="a list of clamps",
                advice=written(
                    "[{edge: left, at: 600, width: 80, depth: 40}]",
                    "[{edge: left, at: 24, width: 3, depth: 1.5}]",
                ),
            ),
            says="Zones at the edges of every sheet that pieces keep clear of.",
        ),
    ),
    make=SheetUse,
    advice="Write `ply: {stock: birch-plywood-18}`.",
    named=True,
)
SHEETS: Entries[SheetUse] = Entries(
    record=_SHEET,
    noun="sheets by name",
    advice="Write `ply: {stock: birch-plywood-18}`.",
    fault=size_name_fault,
    pattern="[a-z][a-z0-9_]*",
)
_A_BOARD = written(
    "rail: {stock: pine-45x45, length: 600, count: 4}",
    "rail: {stock: pine-45x45, length: 24, count: 4}",
)
_FIXED: Record[FixedTo] = Record(
    name="fixed-board",
    noun="how a board is fixed",
    keys=(
        Key(name="part", form=REFERENCE, says="The part it lies across.", required=True),
        Key(
            name="by",
            form=choice("a way to fix a board", *FIXED_BY),
            says="`slotted holes` let its screws move with it, the others do not.",
            required=True,
        ),
        Key(
            name="apart",
            form=LENGTH,
            says="How far its outermost screws are apart across it; its width where not stated.",
        ),
    ),
    make=FixedTo,
    advice="Write `{part: top, by: slotted holes}`.",
)
_LIES = "Write `{on: splashback.back, at: [wide/2, 300], along: x}`."
_PLACE: Record[BoardPlace] = Record(
    name="board-place",
    noun="where a board lies",
    keys=(
        Key(
            name="on",
            form=LABEL,
            says="A face or a side of a piece: `rear.back`, `rear.show`, `shelf.left`.",
            required=True,
        ),
        Key(
            name="at",
            form=SPOT,
            says="Its middle: on a face as its part is drawn, on a side along it and from the "
            "back face. The middle of that face or side where not stated.",
        ),
        Key(
            name="along",
            form=choice("a way to run", *ALONG),
            says="Which way it runs on a face; along a side it runs by itself.",
        ),
        Key(
            name="on-edge",
            form=FLAG,
            says="Whether it lies there with its thickness, not with its width.",
        ),
        Key(name="step", form=STEP_TITLE, says="The title of the step that adds it."),
    ),
    make=BoardPlace,
    advice=_LIES,
)
_PLACES: ListOf[BoardPlace] = ListOf(
    item=_PLACE,
    noun="where a board lies, or a list of places",
    advice=_LIES,
    least=1,
    single=True,
)
_BOARD: Record[BoardUse] = Record(
    name="board",
    noun="a board",
    keys=(
        Key(name="stock", form=REFERENCE, says="The board, by its name.", required=True),
        Key(name="length", form=LENGTH, says="Length it is cut to.", required=True),
        Key(name="count", form=whole(1, 200), says="How many."),
        Key(
            name="fixed",
            form=_FIXED,
            says="On which part it lies with its width, and how it is held there.",
        ),
        Key(
            name="lies",
            form=_PLACES,
            says="Where it lies in the whole, one place for each; else the fastenings that end in "
            "it tell.",
        ),
    ),
    make=BoardUse,
    advice=_A_BOARD,
    named=True,
)
BOARDS: Entries[BoardUse] = Entries(
    record=_BOARD,
    noun="boards by name",
    advice=_A_BOARD,
    fault=name_fault,
    pattern=NAME.pattern,
)
