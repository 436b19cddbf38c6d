"""Forms of features that are stated by what they meet: ``slots: {of: rail.left-tabs, ...}``."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import partial
from typing import Any

from kerfolio.basis.finding import Finding, error
from kerfolio.basis.place import NOWHERE, Place
from kerfolio.basis.said import Text, written
from kerfolio.model.feature import ByMate, Hole, Mated
from kerfolio.model.feature_kind import FINGERS, GROOVE, HOLE, NOTCH, POCKET, SLOT, FeatureKind
from kerfolio.model.statement import Named
from kerfolio.reading.amounts import ANGLE, LENGTH, SPOT
from kerfolio.reading.desk import Desk
from kerfolio.reading.feature_kinds import DEPTH, EDGE_KEY, FEATURE_FORMS
from kerfolio.reading.forms import Book, Form, Schema
from kerfolio.reading.nodes import Entry, Mapping, Node, Scalar, Sequence
from kerfolio.reading.record import Fields, Key, Record
from kerfolio.reading.values import FLAG, LABEL

_AN_OF = "Write `of: rail.left-tabs`, or of several pieces `of: {left: rail.left-tabs, ...}`."

_ONE = (
    "A set follows one feature: write a set of its own, with a name of its own, for each. One for "
    "each piece of this part is `of: {left: rail.left-tabs, right: rail.right-tabs}`."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class OfForm(Form[tuple[Mated, ...]]):
    """What a set follows: a feature of a piece, or one for each of the part's own pieces."""

    noun: str = "a feature that it meets"
    advice: Text = _AN_OF

    def read(self, node: Node, desk: Desk) -> tuple[Mated, ...] | None:
        """Return the mate of each piece that is named; one without a piece where none is."""
        if isinstance(node, Scalar):
            mate = LABEL.read(node, desk)
            return None if mate is None else (Mated(piece=Named("", node.place), mate=mate),)
        if isinstance(node, Sequence):
            named = [each.text for each in node.items if isinstance(each, Scalar)]
            shown = f": `{'`, `'.join(named[:3])}`" if named else ""
            desk.refuse("several-mates", f"`of` names several features{shown}", node.place, _ONE)
            return None
        if not isinstance(node, Mapping) or not node.entries:
            self.refuse(node, desk)
            return None
        found = [(each.key, LABEL.read(each.value, desk)) for each in node.entries]
        mated = [
            Mated(piece=Named(key.text, key.place), mate=mate)
            for key, mate in found
            if mate is not None
        ]
        return tuple(mated) if len(mated) == len(found) else None

    def schema(self, book: Book) -> Schema:
        """Return the schema of a name, or of a mapping from piece to name."""
        label = LABEL.schema(book)
        several = {"type": "object", "additionalProperties": label, "minProperties": 1}
        return {"anyOf": [label, several]}


_OF = Key(
    name="of",
    form=OfForm(),
    says="What it meets: a feature of a piece, or one for each piece of this part.",
    required=True,
    missing=_AN_OF,
)
_AT = Key(name="at", form=SPOT, says="Where the middle of the set lies: between first and last.")
_ZERO = Key(name="zero", form=SPOT, says="Where the 0 comes that its mate is measured from.")
_EDGE_AT = Key(name="at", form=LENGTH, says="Where along the edge the middle of the set lies.")
_EDGE_ZERO = Key(name="zero", form=LENGTH, says="Where along the edge its mate's 0 comes.")
_ANGLE = Key(name="angle", form=ANGLE, says="Which way it runs from first to last, degrees.")
_BACKWARD = Key(name="backward", form=FLAG, says="Whether it is counted the other way.")
_WHERE = (("at", "zero"),)


def _make(kind: FeatureKind, place: Place = NOWHERE, **values: Any) -> ByMate:
    sizes = {key: values.pop(key) for key in _SIZES if key in values}
    wide, deep = sizes.pop("counterbore", (None, None))
    bore = Hole(at=(), counterbore_diameter=wide, counterbore_depth=deep, **sizes)
    return ByMate(kind=kind, bore=bore if kind is HOLE else None, place=place, **values)


_SIZES = ("diameter", "for_", "pilot", "counterbore")


def _form(kind: FeatureKind, example: Text, *keys: Key, sized: bool = False) -> Record[ByMate]:
    own = {key.name for key in keys}
    stated = [key.name for key in FEATURE_FORMS[kind].keys if key.name not in own]
    alone = f"A set that follows its mate has that from it: write `{kind.key}` to state it alone."
    return Record(
        name=f"{kind.by_mate}-by-mate",
        noun="a set that follows its mate",
        keys=(_OF, *keys),
        make=partial(_make, kind),
        advice=example,
        one_of=_WHERE if any(key.name == "zero" for key in keys) else (),
        check=_one_size if sized else _nothing,
        instead=dict.fromkeys(stated, alone),
    )


def _nothing(_: Fields) -> tuple[Finding, ...]:
    return ()


def _one_size(fields: Fields) -> Iterator[Finding]:
    """Yield a finding where more than one size of a hole is stated."""
    stated = [key for key in ("diameter", "for", "pilot") if key in fields.places]
    if len(stated) > 1:
        message = f"`{stated[0]}` and `{stated[1]}` exclude each other"
        yield error("one-too-many", message, fields.places[stated[1]], "Keep one of them.")


def _example(kind: FeatureKind, mm: str, inch: str) -> Text:
    return written(f"{kind.by_mate}: {{{mm}}}", f"{kind.by_mate}: {{{inch}}}")


def _sizes_of_a_hole() -> tuple[Key, ...]:
    wanted = ("diameter", "for", "pilot", "counterbore")
    return tuple(key for key in FEATURE_FORMS[HOLE].keys if key.name in wanted)


BY_MATE_FORMS: dict[FeatureKind, Record[ByMate]] = {
    SLOT: _form(
        SLOT,
        _example(
            SLOT,
            "of: rail.left-tabs, at: [180, 370], angle: 90",
            "of: rail.left-tabs, at: [7, 15], angle: 90",
        ),
        *(_AT, _ZERO, _ANGLE),
    ),
    NOTCH: _form(
        NOTCH,
        _example(
            NOTCH,
            "of: runner.crossings.1, edge: bottom, at: 20",
            "of: runner.crossings.1, edge: bottom, at: 1",
        ),
        *(EDGE_KEY, _EDGE_AT, _EDGE_ZERO, _BACKWARD),
        Key(name="depth", form=LENGTH, says="Its depth, where it is not that of its mate."),
    ),
    HOLE: _form(
        HOLE,
        _example(
            HOLE,
            "of: pad.screws, at: [130, 48], pilot: screw-5x30",
            "of: pad.screws, at: [5, 2], pilot: screw-no8x3-4in",
        ),
        *(_AT, _ZERO, _ANGLE),
        Key(name="mirrored", form=FLAG, says="Whether the mate lies on the other side."),
        *_sizes_of_a_hole(),
        Key(name="depth", form=LENGTH, says="Depth; a hole goes through without one."),
        sized=True,
    ),
    POCKET: _form(
        POCKET,
        _example(
            POCKET,
            "of: divider.1.foot-tab, at: [100, 60], depth: 6",
            "of: divider.1.foot-tab, at: [4, 2], depth: 1/4 in",
        ),
        *(_AT, _ZERO, _ANGLE, DEPTH),
    ),
    GROOVE: _form(
        GROOVE,
        _example(
            GROOVE,
            "of: shelf.tongue, at: [180, 40], depth: 6",
            "of: shelf.tongue, at: [7, 2], depth: 1/4 in",
        ),
        *(_AT, _ZERO, _ANGLE, DEPTH),
    ),
    FINGERS: _form(
        FINGERS,
        _example(FINGERS, "of: end.left.corner, edge: left", "of: end.left.corner, edge: left"),
        *(EDGE_KEY, _BACKWARD),
    ),
}
"""How each kind is written that may follow its mate."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StatedEitherWay(Form[Any]):
    """A kind whose two ways of being stated share a key: what says ``of`` follows its mate."""

    noun: str
    advice: Text
    alone: Record[Any]
    followed: Record[ByMate]

    def read(self, node: Node, desk: Desk) -> Any:
        """Return what the fitting form reads."""
        follows = isinstance(node, Mapping) and node.get(_OF.name) is not None
        return (self.followed if follows else self.alone).read(node, desk)

    def home(self, entry: Entry, name: str, node: Node) -> str:
        """Return where an entry belongs in one that is stated by itself."""
        return self.alone.home(entry, name, node)

    def schema(self, book: Book) -> Schema:
        """Return both schemas as alternatives."""
        return {"anyOf": [self.alone.schema(book), self.followed.schema(book)]}


def statements() -> Iterator[Key]:
    """Yield the key of every kind that may follow its mate, as far as it has one of its own."""
    for kind, form in BY_MATE_FORMS.items():
        if kind.by_mate != kind.key:
            says = f"{kind.by_mate.capitalize()} that follow what they meet."
            yield Key(name=kind.by_mate, form=form, says=says)
