"""Forms of joints, and of how the whole stands."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from kerfolio.basis.budgets import JOINTS as JOINTS_TAKEN
from kerfolio.basis.finding import Finding, error
from kerfolio.model.joint import Joint, Standing
from kerfolio.model.joint_kind import JOINT_KINDS, TAB_JOINT
from kerfolio.reading.desk import Desk
from kerfolio.reading.forms import Book, Form, ListOf, Schema
from kerfolio.reading.joint_kinds import JOINT_FORMS
from kerfolio.reading.nodes import Mapping, Node
from kerfolio.reading.record import Fields, Key, Record
from kerfolio.reading.values import LABEL, choice

_A_JOINT = "(a joint)"
"""What stands for a joint that could not be read: nothing else is ever called so."""

_BY_WORD = {kind.name: kind for kind in JOINT_KINDS}


@dataclass(frozen=True, slots=True, kw_only=True)
class JointForm(Form[Joint]):
    """``{tab: rail.left-tabs, into: side.left.rail-slot}`` and its kin.

    The first key found decides which other ones belong to it.
    """

    noun: str = "a joint"
    advice: str = "Write `{tab: rail.left-tabs, into: side.left.rail-slot}`."

    def read(self, node: Node, desk: Desk) -> Joint | None:
        """Return the joint; one that cannot be read is kept at the desk as unread."""
        if not isinstance(node, Mapping):
            self.refuse(node, desk)
            desk.unread.add(_A_JOINT)
            return None
        kinds = [_BY_WORD[each.key.text] for each in node.entries if each.key.text in _BY_WORD]
        joint = JOINT_FORMS[kinds[0] if kinds else TAB_JOINT].read(node, desk)
        if joint is None:
            desk.unread.add(_A_JOINT)
        return joint

    def schema(self, book: Book) -> Schema:
        """Return the schema of every kind."""
        return {"anyOf": [record.schema(book) for record in JOINT_FORMS.values()]}


JOINTS = ListOf(
    item=JointForm(),
    budget=JOINTS_TAKEN,
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
