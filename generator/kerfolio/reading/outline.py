"""Forms of outlines: the shapes of parts, windows and pockets."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Any

from kerfolio.basis.finding import Finding, error
from kerfolio.basis.place import NOWHERE, Place
from kerfolio.basis.said import Text, written
from kerfolio.geometry import path_grammar
from kerfolio.geometry.shape_error import ShapeError
from kerfolio.model.outline import (
    Circle,
    Corner,
    Ellipse,
    Mirror,
    Outline,
    PathText,
    Polygon,
    Rectangle,
    RoundedSlot,
)
from kerfolio.model.statement import Amount
from kerfolio.reading.amounts import LENGTH, SPOT, pair_of
from kerfolio.reading.decimal_comma import refused_commas
from kerfolio.reading.desk import Desk
from kerfolio.reading.forms import Book, Form, ListOf, Schema
from kerfolio.reading.nodes import Mapping, Node, Scalar, Sequence
from kerfolio.reading.record import Fields, Key, Record

SHAPES = ("rectangle", "polygon", "circle", "ellipse", "rounded-slot", "path")
_BRACES = re.compile(r"\{([^{}]*)\}")
MIRROR: Record[Mirror] = Record(
    name="mirror",
    noun="a mirror line",
    keys=(
        Key(name="x", form=LENGTH, says="A vertical mirror line at this x."),
        Key(name="y", form=LENGTH, says="A horizontal mirror line at this y."),
    ),
    make=Mirror,
    one_of=(("x", "y"),),
    advice="Write `{x: seat/2}` or `{y: height/2}`.",
)


_A_CORNER = written("[60, 0]` or `[60, 0, {round: 40}]", "[2, 0]` or `[2, 0, {round: 1.5}]")


@dataclass(frozen=True, slots=True, kw_only=True)
class CornerForm(Form[Corner]):
    """``[x, y]`` or ``[x, y, {round: 40}]``."""

    noun: str = "a corner [x, y]"
    advice: Text = _A_CORNER

    def read(self, node: Node, desk: Desk) -> Corner | None:
        """Return the corner."""
        if not isinstance(node, Sequence):
            self.refuse(node, desk)
            return None
        head = Sequence(items=node.items[:2], flow=node.flow, place=node.place)
        rounded = node.items[2] if len(node.items) == 3 else None
        if len(node.items) > 3 or (rounded is not None and not isinstance(rounded, Mapping)):
            if not refused_commas(node, 2, desk):
                message = f"expected {self.noun}, found {len(node.items)} entries"
                desk.refuse("wrong-kind", message, node.place, self.advice)
            return None
        spot = SPOT.read(head, desk)
        if rounded is None:
            return None if spot is None else Corner(at=spot)
        radius = _ROUNDING.read(rounded, desk)
        return None if spot is None or radius is None else Corner(at=spot, round=radius)

    def schema(self, book: Book) -> Schema:
        """Return the schema of a corner."""
        items = [LENGTH.schema(book), LENGTH.schema(book), _ROUNDING.schema(book)]
        return {"type": "array", "prefixItems": items, "items": False, "minItems": 2}


_ROUNDING: Record[Amount] = Record(
    name="corner-rounding",
    noun="a rounding",
    keys=(Key(name="round", form=LENGTH, says="Radius of the rounded corner.", required=True),),
    make=lambda round: round,
    placed=False,
)


_A_PATH = written(
    '"M 0 0 L {seat} 0 L 0 90 Z"',
    '"M 0 0 L {seat} 0 L 0 3.5 Z"',
    "Write SVG path text in quotes: `{}`.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class PathForm(Form[str]):
    """SVG path text with expressions in braces, each checked."""

    noun: str = "path text"
    advice: Text = _A_PATH

    def read(self, node: Node, desk: Desk) -> str | None:
        """Return the text."""
        if not isinstance(node, Scalar) or not node.text.strip():
            self.refuse(node, desk)
            return None
        fault = path_grammar.too_long(node.text)
        if fault is not None:
            desk.complain("path", fault, node.place)
            return None
        text = " ".join(node.text.split())
        amounts = [LENGTH.amount(each.strip(), node.place, desk) for each in _BRACES.findall(text)]
        try:
            path_grammar.check(_BRACES.sub(" 1 ", text))
        except ShapeError as trouble:
            advice = "Put sizes and sums in braces: `L {seat/2} 0`."
            desk.refuse("path", str(trouble), node.place, advice)
            return None
        return None if None in amounts else text

    def schema(self, book: Book) -> Schema:  # noqa: ARG002 - nothing of it is named
        """Return the schema of a text."""
        return {"type": "string"}


def _pair(first: Amount, second: Amount, _: Place) -> tuple[Amount, Amount]:
    return first, second


_CORNERS = ListOf(
    item=CornerForm(),
    noun="a list of corners",
    advice=written("[[0, 0], [60, 0], [60, 90]]", "[[0, 0], [2, 0], [2, 3]]"),
    least=2,
)
SHAPE_KEYS = (
    Key(
        name="rectangle",
        form=pair_of(_pair, "two sides", written("[360, 450]", "[14, 18]")),
        says="Width and height.",
    ),
    Key(name="polygon", form=_CORNERS, says="Corners in order; each may be rounded."),
    Key(name="circle", form=LENGTH, says="Diameter of a circle."),
    Key(
        name="ellipse",
        form=pair_of(_pair, "two sides", written("[300, 200]", "[12, 8]")),
        says="Width and height of an ellipse.",
    ),
    Key(
        name="rounded-slot",
        form=pair_of(_pair, "two sides", written("[300, 60]", "[12, 2]")),
        says="Length and width of a slot with half-round ends.",
    ),
    Key(name="path", form=PathForm(), says="SVG path text, y up, with expressions in braces."),
    Key(name="round", form=LENGTH, says="Radius of all corners of a rectangle."),
    Key(name="mirror", form=MIRROR, says="Adds the other half of a polygon or path."),
)


def shape_faults(fields: Fields) -> tuple[Finding, ...]:
    """Find modifiers that do not belong to the shape stated."""
    values, faults = fields.values, []
    if "round" in values and "rectangle" not in values:
        advice = "Only a rectangle has `round`; round a polygon's corners one by one."
        faults.append(_misplaced("round", fields, advice))
    if "mirror" in values and not {"polygon", "path"} & set(values):
        faults.append(_misplaced("mirror", fields, "Only a polygon or a path is mirrored."))
    polygon = values.get("polygon")
    if polygon is not None and len(polygon) < 3 and "mirror" not in values:
        message = f"a polygon of {len(polygon)} corners"
        advice = "A polygon needs three corners or more."
        faults.append(error("too-few", message, fields.places["polygon"], advice))
    return tuple(faults)


def _misplaced(key: str, fields: Fields, advice: Text) -> Finding:
    return error("one-too-many", f"`{key}` does not fit this shape", fields.places[key], advice)


def make_outline(place: Place = NOWHERE, **values: Any) -> Outline:
    """Return the outline stated by exactly one of the shape keys."""
    mirror = values.get("mirror")
    if "rectangle" in values:
        width, height = values["rectangle"]
        return Rectangle(width=width, height=height, round=values.get("round"), place=place)
    if "polygon" in values:
        return Polygon(corners=values["polygon"], mirror=mirror, place=place)
    if "circle" in values:
        return Circle(diameter=values["circle"], place=place)
    if "ellipse" in values:
        width, height = values["ellipse"]
        return Ellipse(width=width, height=height, place=place)
    if "rounded_slot" in values:
        length, width = values["rounded_slot"]
        return RoundedSlot(length=length, width=width, place=place)
    return PathText(text=values["path"], mirror=mirror, place=place)


OUTLINE: Record[Outline] = Record(
    name="outline",
    noun="an outline",
    keys=SHAPE_KEYS,
    make=make_outline,
    one_of=(SHAPES,),
    advice=written(
        "rectangle: [360, 450]", "rectangle: [14, 18]", "Write one shape, such as `{}`."
    ),
    check=shape_faults,
)
