"""Forms of the kinds of feature."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from kerfolio.basis.complaint import Complaint
from kerfolio.basis.finding import Finding, error
from kerfolio.basis.said import said, written
from kerfolio.model.feature import (
    TAB_ENDS,
    Cutting,
    EdgeBore,
    EdgeLine,
    Engraving,
    Fingers,
    Groove,
    Hole,
    Notch,
    Pocket,
    Slot,
    Tabs,
    Window,
)
from kerfolio.model.feature_kind import (
    BORE,
    ENGRAVING,
    FINGERS,
    GROOVE,
    HOLE,
    NOTCH,
    POCKET,
    SLOT,
    TAB,
    WINDOW,
    FeatureKind,
)
from kerfolio.model.outline import Rectangle
from kerfolio.model.statement import Amount
from kerfolio.reading.amounts import ANGLE, COUNT, LENGTH, LENGTHS, SPOT, SPOTS
from kerfolio.reading.files import DrawingFile
from kerfolio.reading.forms import Either, ScalarForm
from kerfolio.reading.nodes import Scalar
from kerfolio.reading.outline import SHAPE_KEYS, SHAPES, make_outline, shape_faults
from kerfolio.reading.record import Check, Fields, Key, Record, no_faults
from kerfolio.reading.reference import REFERENCE
from kerfolio.reading.values import FLAG, TEXT, choice

_SIDES = choice("an edge", "top", "bottom", "left", "right")


def _side(node: Scalar) -> EdgeLine | Complaint:
    side = _SIDES.convert(node)
    return side if isinstance(side, Complaint) else EdgeLine(side=side, place=node.place)


EDGE = Either(
    scalar=ScalarForm(
        noun="an edge", advice=_SIDES.advice, convert=_side, json=_SIDES.json, rule="not-a-choice"
    ),
    other=Record(
        name="edge",
        noun="an edge",
        keys=(
            Key(
                name="from", form=SPOT, says="Where the edge begins.", required=True, field="start"
            ),
            Key(name="to", form=SPOT, says="Where the edge ends.", required=True, field="end"),
        ),
        make=EdgeLine,
        advice="Write `top`, `bottom`, `left`, `right` or `{from: [x, y], to: [x, y]}`.",
    ),
    noun="an edge",
    advice="Write `top`, `bottom`, `left`, `right` or `{from: [x, y], to: [x, y]}`.",
)
_AT = Key(name="at", form=SPOT, says="Its centre, from the part's 0,0.", required=True)
_ALL_AT = Key(
    name="at",
    form=SPOTS,
    says="Its centre from the part's 0,0, or a list of centres, numbered in this order.",
    required=True,
)
DEPTH = Key(name="depth", form=LENGTH, says="Depth from the show face.", required=True)
_ANGLE = Key(name="angle", form=ANGLE, says="Degrees from the x axis, counter-clockwise.")
_TAKES = Key(name="takes", form=REFERENCE, says="The sheet that goes in.")
_WIDTH = Key(name="width", form=LENGTH, says="Width where no sheet is taken.")
_COUNTED = (
    "x along top and bottom, y along left and right, from the part's 0,0; along "
    "an edge between points from where it begins."
)
EDGE_KEY = Key(name="edge", form=EDGE, says="The part's edge it sits on.", required=True)
_MIDDLES = Key(
    name="at",
    form=LENGTHS,
    says=f"Its middle along the edge, or a list: {_COUNTED}",
    required=True,
)
_BORED = (
    Key(name="diameter", form=LENGTH, says="Diameter."),
    Key(name="for", form=REFERENCE, says="Clearance hole of this hardware.", field="for_"),
    Key(name="pilot", form=REFERENCE, says="Pilot hole of this screw."),
)
"""How wide a hole is said to be: by one of these."""
_ONE_WIDTH = (tuple(each.name for each in _BORED),)


def _form(
    kind: FeatureKind,
    make: Callable[..., Cutting],
    *keys: Key,
    one_of: tuple[tuple[str, ...], ...] = (),
    check: Check = no_faults,
    instead: Mapping[str, str] | None = None,
) -> Record[Cutting]:
    return Record(
        name=kind.key,
        noun=kind.noun,
        keys=keys,
        make=make,
        advice=said("Write `{}: {}`.", kind.key, kind.example),
        one_of=one_of,
        placed=False,
        check=check,
        instead=instead or {},
    )


def _make_hole(counterbore: tuple[Amount, Amount] | None = None, **values: Any) -> Hole:
    wide, deep = counterbore or (None, None)
    return Hole(counterbore_diameter=wide, counterbore_depth=deep, **values)


def _make_window(**values: Any) -> Window:
    kept = {key: values.pop(key) for key in ("at", "angle") if key in values}
    return Window(outline=make_outline(**values), **kept)


def _make_pocket(**values: Any) -> Pocket:
    own = ("at", "angle", "depth", "takes", "length")
    kept = {key: values.pop(key) for key in own if key in values}
    if "takes" not in kept:
        return Pocket(outline=make_outline(**values), **kept)
    # A housing's outline is its nominal rectangle; its fit is added where the plan is settled.
    across = Amount(f"thickness({kept['takes']})", kept["takes"].place)
    return Pocket(outline=Rectangle(width=kept["length"], height=across), **kept)


def _pocket_faults(fields: Fields) -> tuple[Finding, ...]:
    values = fields.values
    if "takes" in values and "length" not in values:
        message, advice = "`length` is missing", "Add `length:`, the length of the housing."
        return (error("missing-key", message, fields.places["takes"], advice),)
    if "length" in values and "takes" not in values:
        message = "`length` does not fit this shape"
        advice = "Only a pocket that `takes` a sheet has a length."
        return (error("one-too-many", message, fields.places["length"], advice),)
    return shape_faults(fields)


def _engraving_faults(fields: Fields) -> tuple[Finding, ...]:
    if "style" in fields.values and "drawing" in fields.values:
        message, advice = "`style` does not fit a drawing", "Leave it out: it is for texts."
        return (error("one-too-many", message, fields.places["style"], advice),)
    return ()


_COUNTERBORE: Record[tuple[Amount, Amount]] = Record(
    name="counterbore",
    noun="a counterbore",
    keys=(
        Key(name="diameter", form=LENGTH, says="Diameter of the wider bore.", required=True),
        Key(name="depth", form=LENGTH, says="Depth of the wider bore.", required=True),
    ),
    make=lambda diameter, depth: (diameter, depth),
    advice=written("{diameter: 14, depth: 6}", "{diameter: 9/16 in, depth: 1/4 in}"),
    placed=False,
)
_FITS = (("takes", "width"),)


def _slot() -> Record[Cutting]:
    return _form(
        SLOT,
        Slot,
        _ALL_AT,
        Key(name="length", form=LENGTH, says="Length along the angle.", required=True),
        *(_ANGLE, _TAKES, _WIDTH),
        one_of=_FITS,
        instead={"depth": "A slot goes right through: write `pocket` for a recess."},
    )


def _notch() -> Record[Cutting]:
    return _form(
        NOTCH,
        Notch,
        *(EDGE_KEY, _MIDDLES, DEPTH, _TAKES, _WIDTH),
        one_of=_FITS,
    )


def _hole() -> Record[Cutting]:
    return _form(
        HOLE,
        _make_hole,
        *(_ALL_AT, *_BORED),
        Key(name="depth", form=LENGTH, says="Depth; a hole goes through without one."),
        Key(name="counterbore", form=_COUNTERBORE, says="A wider bore on the show face."),
        one_of=_ONE_WIDTH,
    )


def _window() -> Record[Cutting]:
    keys = (_AT, *SHAPE_KEYS, _ANGLE)
    return _form(
        WINDOW,
        _make_window,
        *keys,
        one_of=(SHAPES,),
        check=shape_faults,
        instead={"depth": "A window goes right through: write `pocket` for a recess."},
    )


def _pocket() -> Record[Cutting]:
    return _form(
        POCKET,
        _make_pocket,
        *(_ALL_AT, *SHAPE_KEYS, DEPTH, _ANGLE, _TAKES),
        Key(name="length", form=LENGTH, says="Length of a housing that takes a sheet."),
        one_of=((*SHAPES, "takes"),),
        check=_pocket_faults,
    )


def _groove() -> Record[Cutting]:
    return _form(
        GROOVE,
        Groove,
        Key(name="from", form=SPOT, says="Where it begins.", required=True, field="start"),
        Key(name="to", form=SPOT, says="Where it ends.", required=True, field="end"),
        *(DEPTH, _TAKES, _WIDTH),
        one_of=_FITS,
    )


def _tabs() -> Record[Cutting]:
    return _form(
        TAB,
        Tabs,
        EDGE_KEY,
        Key(
            name="at",
            form=LENGTHS,
            says=f"Where each begins along the edge: {_COUNTED}",
            required=True,
        ),
        Key(name="width", form=LENGTH, says="Width of each tab.", required=True),
        Key(name="depth", form=LENGTH, says="How far each stands out."),
        Key(name="takes", form=REFERENCE, says="The sheet each goes through."),
        Key(name="round", form=LENGTH, says="Radius of its two outer corners."),
        Key(
            name="end",
            form=choice("an end", *TAB_ENDS),
            says="That they are to stand `proud` of what they go through, or stay `short` in it.",
        ),
        one_of=(("depth", "takes"),),
    )


def _fingers() -> Record[Cutting]:
    first = choice("a beginning", "finger", "gap")
    return _form(
        FINGERS,
        Fingers,
        EDGE_KEY,
        Key(name="count", form=COUNT, says="Fingers and gaps together.", required=True),
        Key(name="takes", form=REFERENCE, says="The sheet it meets.", required=True),
        Key(
            name="first",
            form=first,
            says="What stands where the edge begins, below or left.",
        ),
    )


def _engraving() -> Record[Cutting]:
    style = choice("a style", "stroke", "outline")
    return _form(
        ENGRAVING,
        Engraving,
        Key(name="text", form=TEXT, says="The text to engrave."),
        Key(name="drawing", form=DrawingFile(art=True), says="An SVG or DXF file instead."),
        _AT,
        Key(name="height", form=LENGTH, says="Height of its letters.", required=True),
        *(DEPTH, _ANGLE),
        Key(name="style", form=style, says="Single strokes or outlines."),
        one_of=(("text", "drawing"),),
        check=_engraving_faults,
    )


def _bore() -> Record[Cutting]:
    return _form(
        BORE,
        EdgeBore,
        *(EDGE_KEY, _MIDDLES),
        Key(name="depth", form=LENGTH, says="How deep it goes in from the edge.", required=True),
        *_BORED,
        Key(
            name="from-face",
            form=LENGTH,
            says="Its middle from the show face; half way through the sheet without it.",
        ),
        Key(
            name="guided",
            form=FLAG,
            says="Whether a drilling guide, or the hole it meets, leads the bit.",
        ),
        one_of=_ONE_WIDTH,
    )


FEATURE_FORMS: dict[FeatureKind, Record[Cutting]] = {
    SLOT: _slot(),
    NOTCH: _notch(),
    HOLE: _hole(),
    WINDOW: _window(),
    POCKET: _pocket(),
    GROOVE: _groove(),
    TAB: _tabs(),
    FINGERS: _fingers(),
    ENGRAVING: _engraving(),
    BORE: _bore(),
}
"""How each kind is written in a plan by itself."""


def has_depth(kind: FeatureKind) -> bool:
    """Tell whether a feature of a kind may, or must, state how deep it is."""
    return any(key.name == "depth" for key in FEATURE_FORMS[kind].keys)
