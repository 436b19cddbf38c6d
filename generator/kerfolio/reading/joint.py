"""Forms of joints, and of how the whole stands."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from kerfolio.basis.finding import Finding, error
from kerfolio.basis.place import Place
from kerfolio.model.joint import Joint, Standing
from kerfolio.reading.amounts import ANGLE, SPOT
from kerfolio.reading.desk import Desk
from kerfolio.reading.forms import Book, Form, ListOf, Schema
from kerfolio.reading.nodes import Mapping, Node
from kerfolio.reading.record import Fields, Key, Record
from kerfolio.reading.values import LABEL, choice

_OTHERS = {
    "tab": "into",
    "notch": "with",
    "fingers": "with",
    "face": "on",
    "edge": "on",
    "wedge": "through",
}
"""The key of a joint's second end, by the key of its first, which is its kind."""

_FACES = {"out": "back", "in": "show"}
"""A piece whose show face looks out meets the other one with its back."""

_SHOW = Key(
    name="show",
    form=choice("a way to look", "out", "in"),
    says="Where the second piece's show face looks: out, away from the first one, or in.",
)
_LOOKING = Key(
    name="looking",
    form=choice("a direction", "up", "down", "left", "right"),
    says="Where the first piece's show face looks, as the second one is drawn.",
)
_SIDE = Key(
    name="side",
    form=choice("a side", "show", "back"),
    says="The side of the second piece that the first one lies on.",
)
_FACING = Key(
    name="looking",
    form=choice("a direction", "away", "toward"),
    says="Whether the first piece's show face looks away from the second one.",
)
_ON = Key(
    name="at", form=SPOT, says="Where the first piece's 0,0 lies on the second one's drawing."
)
_IN = Key(name="at", form=SPOT, says="The point of the wedge that lies in the slot.")
_TURN = Key(name="turn", form=ANGLE, says="How far the first piece is turned, degrees.")

_OPTIONS: dict[str, tuple[Key, ...]] = {
    "tab": (_SHOW, _LOOKING),
    "notch": (_LOOKING,),
    "fingers": (_SHOW, _LOOKING),
    "face": (_SIDE, _FACING, _ON, _TURN),
    "edge": (_SHOW, _LOOKING),
    "wedge": (_SHOW, _LOOKING, _IN),
}


def _make_joint(place: Place, show: str = "", side: str = "", **values: Any) -> Joint:
    kind = next(each for each in _OTHERS if each in values)
    ends = {"a": values.pop(kind), "b": values.pop(_OTHERS[kind].replace("with", "with_"))}
    return Joint(kind=kind, face=side or _FACES.get(show, ""), place=place, **ends, **values)


@dataclass(frozen=True, slots=True, kw_only=True)
class JointForm(Form[Joint]):
    """``{tab: rail.left-tabs, into: side.left.rail-slot}`` and its kin.

    The first key found decides which other ones belong to it.
    """

    noun: str = "a joint"
    advice: str = "Write `{tab: rail.left-tabs, into: side.left.rail-slot}`."

    def read(self, node: Node, desk: Desk) -> Joint | None:
        """Return the joint."""
        if not isinstance(node, Mapping):
            self.refuse(node, desk)
            return None
        kinds = [each.key.text for each in node.entries if each.key.text in _OTHERS]
        return _RECORDS[kinds[0] if kinds else "tab"].read(node, desk)

    def schema(self, book: Book) -> Schema:
        """Return the schema of every kind."""
        return {"anyOf": [record.schema(book) for record in _RECORDS.values()]}


def _record(kind: str, other: str) -> Record[Joint]:
    field = other.replace("with", "with_")
    return Record(
        name=f"{kind}-joint",
        noun="a joint",
        keys=(
            Key(name=kind, form=LABEL, says="The feature of one piece.", required=True),
            Key(name=other, form=LABEL, says="The other one.", required=True, field=field),
            *_OPTIONS[kind],
        ),
        make=_make_joint,
        advice=f"Write `{{{kind}: piece.feature, {other}: piece.feature}}`.",
    )


_RECORDS = {kind: _record(kind, other) for kind, other in _OTHERS.items()}
JOINTS = ListOf(
    item=JointForm(),
    noun="a list of joints",
    advice="Write `- {tab: rail.left-tabs, into: side.left.rail-slot}`, a line each.",
    lenient=True,
)

_WAYS = ("front", "back", "left", "right", "up", "down")
_LINE = {"front": 0, "back": 0, "left": 1, "right": 1, "up": 2, "down": 2}


def _along_its_face(fields: Fields) -> Iterator[Finding]:
    looks, top = fields.values.get("looks"), fields.values.get("top")
    if looks and top and _LINE[looks] == _LINE[top]:
        message = f"the show face looks {looks}, so the drawing's top cannot point {top}"
        yield error("standing", message, fields.places["top"], "State another `top`.")


STANDING: Record[Standing] = Record(
    name="standing",
    noun="how the whole stands",
    keys=(
        Key(name="piece", form=LABEL, says="A piece to go by.", required=True),
        Key(
            name="looks",
            form=choice("a direction", *_WAYS),
            says="Where its show face looks.",
            required=True,
        ),
        Key(name="top", form=choice("a direction", *_WAYS), says="Where its drawing's top points."),
    ),
    make=Standing,
    check=_along_its_face,
    advice="Write `standing: {piece: side.left, looks: left}`.",
)
