"""Forms of parts, written or drawn."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from kerfolio.basis.complaint import Complaint, quoted
from kerfolio.basis.names import NAME, did_you_mean
from kerfolio.basis.place import Place
from kerfolio.basis.said import ByUnit, Text, said, written
from kerfolio.model.feature_kind import FEATURE_KINDS, NOTCH, OUTLINED, SLOT, TAB, FeatureKind
from kerfolio.model.outline import Drawn, DrawnEdgeRule, DrawnFeatureRule
from kerfolio.model.part import Part
from kerfolio.model.statement import Named
from kerfolio.reading.amounts import DRAWN_SPOT, LENGTH, THICKNESS
from kerfolio.reading.bridges import PART_BRIDGES
from kerfolio.reading.desk import Desk
from kerfolio.reading.drawn_said import MM_PER_UNIT
from kerfolio.reading.edges import EDGES
from kerfolio.reading.feature import FEATURES
from kerfolio.reading.feature_kinds import has_depth
from kerfolio.reading.files import DrawingFile
from kerfolio.reading.forms import Book, Form, ListOf, ScalarForm, Schema
from kerfolio.reading.nodes import Mapping, Node, Scalar, Sequence
from kerfolio.reading.outline import OUTLINE
from kerfolio.reading.record import Key, Record
from kerfolio.reading.reference import REFERENCE
from kerfolio.reading.values import CELL_TEXT, NAMED, TITLE_TEXT, choice, whole

_DRAWN = {each.key: each for each in FEATURE_KINDS if each.drawn}


def _element(node: Scalar) -> Named | Complaint:
    return Named(node.text.strip(), node.place)


ELEMENT: ScalarForm[Named] = ScalarForm(
    noun="a name in the drawing", advice="Write an id, a group's id or a layer.", convert=_element
)


_TAKES = re.compile(rf"takes\s+({NAME.pattern})")


def _edge_rule(node: Scalar) -> DrawnEdgeRule | Complaint:
    text = " ".join(node.text.split())
    if text == "as drawn":
        return DrawnEdgeRule()
    takes = _TAKES.fullmatch(text)
    if takes is None:
        return Complaint(f"{quoted(text)} does not say which sheet they take")
    return DrawnEdgeRule(takes=Named(takes[1], node.place))


EDGE_RULE: ScalarForm[DrawnEdgeRule] = ScalarForm(
    noun="what they take",
    advice="Write `takes ply`, or `as drawn` to leave them as they are.",
    convert=_edge_rule,
    json={"type": "string", "pattern": "^(takes |as drawn$)"},
)


_DRAWN_RULES = written(
    "{pocket: depth 6}",
    "{pocket: depth 1/4 in}",
    "Write `slots: {slot: takes ply}`, `holes: hole` or `dish: {}`.",
)
_THROUGH = "Write `{}: {}`, or for a recess {}."
_RECESS = ByUnit("`{pocket: depth 6}`", "`{pocket: depth 1/4 in}`")


def _words_of(kind: FeatureKind) -> tuple[str, ...]:
    """Return what may be said of a drawn feature besides its kind: as when it is written."""
    return (*(("takes",) if kind.takes else ()), *(("depth",) if has_depth(kind) else ()))


def _more_schema(kind: FeatureKind) -> Schema:
    return {"type": "string", "pattern": f"^({'|'.join(_words_of(kind))}) "}


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawnRules(Form[tuple[DrawnFeatureRule, ...]]):
    """Which elements of a drawing become which features."""

    noun: str = "elements of the drawing"
    advice: Text = _DRAWN_RULES

    def read(self, node: Node, desk: Desk) -> tuple[DrawnFeatureRule, ...] | None:
        """Return a rule for each element named."""
        if not isinstance(node, Mapping):
            self.refuse(node, desk)
            return None
        rules = [self._rule(each.key, each.value, desk) for each in node.entries]
        readable = tuple(rule for rule in rules if rule is not None)
        return readable if len(readable) == len(rules) else None

    def _rule(self, element: Scalar, value: Node, desk: Desk) -> DrawnFeatureRule | None:
        kind, more = value, None
        if isinstance(value, Mapping) and len(value.entries) == 1:
            kind, more = value.entries[0].key, value.entries[0].value
        if not isinstance(kind, Scalar) or kind.empty:
            self.refuse(value, desk)
            return None
        if kind.text not in _DRAWN:
            advice = did_you_mean(kind.text, _DRAWN)
            message = f"{quoted(kind.text)} is no drawn feature"
            desk.refuse("not-a-choice", message, kind.place, advice)
            return None
        named = Named(element.text, element.place)
        return self._with(named, _DRAWN[kind.text], kind.place, more, desk)

    def _with(
        self, element: Named, kind: FeatureKind, place: Place, more: Node | None, desk: Desk
    ) -> DrawnFeatureRule | None:
        text = more.text.strip() if isinstance(more, Scalar) else ""
        takes = _TAKES.fullmatch(text)
        if takes and kind.takes and more is not None:
            sheet = Named(takes[1], more.place)
            return DrawnFeatureRule(element=element, kind=kind, takes=sheet)
        if text.startswith("depth ") and has_depth(kind) and more is not None:
            depth = LENGTH.amount(text.removeprefix("depth").strip(), more.place, desk)
            if depth is None:
                return None
            return DrawnFeatureRule(element=element, kind=kind, depth=depth)
        if more is None and kind.opens:
            return DrawnFeatureRule(element=element, kind=kind)
        if kind.opens and not kind.takes and not has_depth(kind):
            message: Text = f"{kind.noun} goes right through"
            advice: Text = said(_THROUGH, element.name, kind.key, _RECESS)
        else:
            need = "`takes ply`" if kind is SLOT else ByUnit("`depth 6`", "`depth 1/4 in`")
            message, advice = said("`{}` needs {}", kind.key, need), self.advice
        desk.refuse("drawn-feature", message, more.place if more else place, advice)
        return None

    def schema(self, book: Book) -> Schema:  # noqa: ARG002 - nothing of it is named
        """Return the schema of a mapping from element to kind."""
        kinds = {key: _more_schema(kind) for key, kind in _DRAWN.items() if _words_of(kind)}
        one = {"type": "object", "properties": kinds, "additionalProperties": False}
        plain = {"enum": [key for key, kind in _DRAWN.items() if kind.opens]}
        one_kind = {**one, "minProperties": 1, "maxProperties": 1}
        return {"type": "object", "additionalProperties": {"anyOf": [plain, one_kind]}}


_TAKEN = {
    NOTCH: "The sheet that notches in the outline take: those as wide as `drawn-for`.",
    TAB: "The sheet that tabs of the outline go through: those as long as `drawn-for`.",
}


def _make_drawn(unit: str = "", guides: tuple[Named, ...] = (), **values: Any) -> Drawn:  # noqa: ARG001 - they are of the file
    return Drawn(**values)


DRAWN: Record[Drawn] = Record(
    name="drawing",
    noun="a drawing",
    keys=(
        Key(name="file", form=DrawingFile(), says="SVG or DXF file.", required=True),
        Key(
            name="outline",
            form=ELEMENT,
            says="The closed path that is the part's outline: an id, layer, or block by number.",
            required=True,
        ),
        Key(
            name="at",
            form=DRAWN_SPOT,
            says="A point inside the part, of several outlines of one name: x, and y upwards, from "
            "a DXF's 0,0 or an SVG's lower left.",
        ),
        Key(
            name="unit",
            form=choice("a unit of drawings", *MM_PER_UNIT),
            says="The drawing's unit, where the file does not say it.",
        ),
        Key(
            name="guides",
            form=ListOf(
                item=ELEMENT,
                noun="names in the drawing",
                advice="Write `guides: [GUIDES]`, the layers that nobody cuts.",
                single=True,
            ),
            says="Layers, groups or elements of the drawing that are not to be cut.",
        ),
        Key(name="drawn-for", form=THICKNESS, says="Thickness the slots were drawn at."),
        *(Key(name=each.outlined, form=EDGE_RULE, says=_TAKEN[each]) for each in OUTLINED),
        Key(name="features", form=DrawnRules(), says="What other elements are."),
    ),
    make=_make_drawn,
    advice="Write `{file: drawings/shelf.svg, outline: outline}`.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class PiecesForm(Form[tuple[Named, ...]]):
    """Names of pieces, each once: drawings and steps tell them apart by it."""

    noun: str = "a list of piece names"
    advice: str = "Write `pieces: [left, right]`."

    def read(self, node: Node, desk: Desk) -> tuple[Named, ...] | None:
        """Return the names."""
        names = self._list().read(node, desk)
        known: set[str] = set()
        sound = names is not None
        for each in names or ():
            if each.name in known:
                advice = "Give each piece its own name, or state `count` in place of names."
                message = f"two pieces are called {quoted(each.name)}"
                desk.refuse("doubled-name", message, each.place, advice)
                sound = False
            known.add(each.name)
        return names if sound else None

    def _list(self) -> ListOf[Named]:
        return ListOf(item=NAMED, noun=self.noun, advice=self.advice, least=1)

    def schema(self, book: Book) -> Schema:
        """Return an array's schema; its names differ."""
        return {**self._list().schema(book), "uniqueItems": True}


_PIECES = PiecesForm()


def _make_part(
    pieces: tuple[Named, ...] = (), count: int = 1, features: Any = (), **values: Any
) -> Part:
    names = tuple(each.name for each in pieces)
    if count > 1:
        names = tuple(str(number) for number in range(1, count + 1))
    shape = values.pop("drawing", None) or values.pop("outline")
    return Part(pieces=names, shape=shape, features=features, **values)


PART: Record[Part] = Record(
    name="part",
    noun="a part",
    keys=(
        Key(name="sheet", form=REFERENCE, says="The sheet it is cut from.", required=True),
        Key(name="title", form=TITLE_TEXT, says="What readers know it by; else its name."),
        Key(name="pieces", form=_PIECES, says="Names of its pieces."),
        Key(name="count", form=whole(1, 200), says="How many, where they need no names."),
        Key(
            name="grain",
            form=choice("a grain", "along x", "along y", "any", "free"),
            says="Which way the grain of the face runs; `free` lets the part lie slanted, too.",
        ),
        Key(name="note", form=CELL_TEXT, says="A sentence for the parts list."),
        Key(name="outline", form=OUTLINE, says="Its shape, lower left corner at 0,0."),
        Key(name="drawing", form=DRAWN, says="Its shape from an SVG or DXF file."),
        Key(name="features", form=FEATURES, says="What is cut into it or stands out of it."),
        Key(name="bridges", form=PART_BRIDGES, says="Bridges of its own: how many, or where."),
        Key(name="edges", form=EDGES, says="What is done to its edges once it is cut."),
    ),
    make=_make_part,
    one_of=(("outline", "drawing"),),
    not_both=(("pieces", "count"),),
    advice=written("outline: {rectangle: [360, 450]}", "outline: {rectangle: [14, 18]}"),
    named=True,
)


def piece_labels(name: str, node: Node) -> Iterable[str]:
    """Return the names a part that cannot be read would have given to its pieces."""
    yield name
    if not isinstance(node, Mapping):
        return
    pieces, count = node.get("pieces"), node.get("count")
    if isinstance(pieces, Sequence):
        yield from (f"{name}.{each.text}" for each in pieces.items if isinstance(each, Scalar))
    if isinstance(count, Scalar) and re.fullmatch("[0-9]{1,3}", count.text):
        yield from (f"{name}.{number}" for number in range(1, int(count.text) + 1))
