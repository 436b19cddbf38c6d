"""Forms of the kinds of joint."""

from __future__ import annotations

from functools import partial
from typing import Any

from kerfolio.basis.place import Place
from kerfolio.model.joint import Joint
from kerfolio.model.joint_kind import (
    EDGE_JOINT,
    FACE_JOINT,
    FINGER_JOINT,
    NOTCH_JOINT,
    TAB_JOINT,
    WEDGE_JOINT,
    JointKind,
)
from kerfolio.reading.amounts import ANGLE, SPOT
from kerfolio.reading.fit import JOINT_FIT
from kerfolio.reading.record import Key, Record
from kerfolio.reading.values import LABEL, choice

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
_IN = Key(
    name="at",
    form=SPOT,
    says="The point of the wedge's drawing that lies in the middle of the slot; its centre of "
    "gravity if unsaid. A wedge is drawn along y, the end that goes in first at the bottom.",
)
_DRIVEN = Key(
    name="show",
    form=choice("a way to look", "out", "in"),
    says="Where the second piece's show face looks: a wedge goes in from its back (out) or from "
    "its show face (in).",
)
_FIT = Key(name="fit", form=JOINT_FIT, says="Its clearance: by its purpose, or lengths of its own.")
_TURN = Key(name="turn", form=ANGLE, says="How far the first piece is turned, degrees.")


def _make_joint(
    kind: JointKind, place: Place, show: str = "", side: str = "", **values: Any
) -> Joint:
    return Joint(kind=kind, face=side or _FACES.get(show, ""), place=place, **values)


def _form(kind: JointKind, *options: Key) -> Record[Joint]:
    return Record(
        name=f"{kind.name}-joint",
        noun="a joint",
        keys=(
            Key(
                name=kind.name,
                form=LABEL,
                says="The feature of one piece.",
                required=True,
                field="a",
            ),
            Key(name=kind.other, form=LABEL, says="The other one.", required=True, field="b"),
            *options,
            *((_FIT,) if kind.takes else ()),
        ),
        make=partial(_make_joint, kind),
        advice=f"Write `{{{kind.name}: piece.feature, {kind.other}: piece.feature}}`.",
    )


JOINT_FORMS: dict[JointKind, Record[Joint]] = {
    TAB_JOINT: _form(TAB_JOINT, _SHOW, _LOOKING),
    NOTCH_JOINT: _form(NOTCH_JOINT, _LOOKING),
    FINGER_JOINT: _form(FINGER_JOINT, _SHOW, _LOOKING),
    FACE_JOINT: _form(FACE_JOINT, _SIDE, _FACING, _ON, _TURN),
    EDGE_JOINT: _form(EDGE_JOINT, _SHOW, _LOOKING),
    WEDGE_JOINT: _form(WEDGE_JOINT, _DRIVEN, _LOOKING, _IN),
}
"""How each kind is written in a plan."""
