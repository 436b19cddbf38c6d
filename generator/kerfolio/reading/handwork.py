"""The forms of work by hand in a step: names alone, or names with what else there is to say."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from kerfolio.model.handwork import Handwork, PencilLine
from kerfolio.reading.amounts import LENGTH
from kerfolio.reading.desk import Desk
from kerfolio.reading.edges import SIDES
from kerfolio.reading.forms import Book, Either, Form, ListOf, Schema
from kerfolio.reading.nodes import Mapping, Node
from kerfolio.reading.record import Key, Record
from kerfolio.reading.values import LABEL, TITLE_TEXT, choice, number, whole

_LINE = "`{on: board, from: [left, right], at: 110}`"


@dataclass(frozen=True, slots=True, kw_only=True)
class HandworkForm(Form[Handwork]):
    """Names in a list, or a mapping that holds them under ``of``."""

    noun: str
    advice: str
    names: ListOf[Any]
    more: Record[Handwork]

    def read(self, node: Node, desk: Desk) -> Handwork | None:
        """Return the work stated."""
        if isinstance(node, Mapping):
            return self.more.read(node, desk)
        names = self.names.read(node, desk)
        return None if names is None else Handwork(of=names, place=node.place)

    def schema(self, book: Book) -> Schema:
        """Return both schemas as alternatives."""
        return {"anyOf": [self.names.schema(book), self.more.schema(book)]}


def _form(
    name: str, noun: str, says: str, example: str, *own: Key, all_named: bool
) -> HandworkForm:
    """Return the form of one kind of work with the keys of its own."""
    advice = f"Write `{example}`."
    names = ListOf(item=LABEL, noun=noun, advice=advice, least=1, single=True)
    of = Key(name="of", form=names, says=says, required=all_named)
    note = Key(name="note", form=TITLE_TEXT, says="A few words that stand in the picture.")
    record = Record(name=name, noun=noun, keys=(of, *own, note), make=Handwork, advice=advice)
    return HandworkForm(noun=noun, advice=advice, names=names, more=record)


SANDS = _form(
    "sands",
    "what is sanded",
    "Pieces or parts (their edges), a side (`side.top`), a face (`top.show`) or a feature.",
    "sands: {of: [handle, top.show], grit: 120}",
    Key(name="grit", form=whole(12, 5000), says="The paper's grit."),
    all_named=True,
)
GLUES = _form(
    "glues",
    "what is glued",
    "Pieces, or features of theirs, whose joints are glued in this step.",
    "glues: [rail.left-tabs, pad]",
    all_named=True,
)
CLAMPS = _form(
    "clamps",
    "what is clamped",
    "Pieces, or features of theirs, whose joints are pressed; if not stated, those glued here.",
    "clamps: {count: 2, minutes: 30}",
    Key(name="count", form=whole(1, 24), says="How many clamps."),
    Key(name="minutes", form=number(1, 10_000), says="How long they stay on."),
    all_named=False,
)


def _make_line(**values: Any) -> PencilLine:
    return PencilLine(**values)


_MARKED = Record(
    name="pencil-line",
    noun="a line to mark",
    keys=(
        Key(name="on", form=LABEL, says="The piece or the part.", required=True),
        Key(
            name="from",
            form=ListOf(
                item=choice("a side", *SIDES),
                noun="a list of sides",
                advice="Write `from: left` or `from: [left, right]`.",
                least=1,
                single=True,
            ),
            says="The side that it runs along, or several: a line for each.",
            required=True,
            field="sides",
        ),
        Key(name="at", form=LENGTH, says="How far from that side.", required=True),
    ),
    make=_make_line,
    advice=f"Write {_LINE}.",
)
MARKS = ListOf(
    item=Either(
        scalar=LABEL,
        other=_MARKED,
        noun="what is marked",
        advice=f"Name a feature (`side.left.bolt`), or a line: {_LINE}.",
    ),
    noun="a list of what is marked",
    advice=f"Write `marks: [side.left.bolt]` or `marks: [{_LINE[1:-1]}]`.",
    least=1,
    single=True,
)
