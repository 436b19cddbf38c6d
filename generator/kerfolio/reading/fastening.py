"""The form of fastenings: hardware with what it joins."""

from __future__ import annotations

from typing import Any

from kerfolio.basis.budgets import JOINTS as TAKEN
from kerfolio.model.fastening import FASTENING_KINDS, Fastening
from kerfolio.model.joint_kind import WEDGE_JOINT
from kerfolio.model.statement import Named
from kerfolio.reading.amounts import SPOT
from kerfolio.reading.forms import ListOf
from kerfolio.reading.record import Key, Record
from kerfolio.reading.reference import REFERENCE
from kerfolio.reading.step_title import STEP_TITLE
from kerfolio.reading.values import CELL_TEXT, LABEL, choice

_JOINS = ListOf(
    item=LABEL,
    noun="a list of what it joins",
    advice="Write `joins: [side.left.rail-bolt, rail.left-bore]`, the hole of its head first.",
    least=1,
)
_KINDS = tuple(
    Key(name=each.name, form=REFERENCE, says=f"{each.noun.capitalize()}, by its name in the stock.")
    for each in FASTENING_KINDS
)


def _make_fastening(**values: Any) -> Fastening:
    kind = next(each for each in FASTENING_KINDS if each.name in values)
    item: Named = values.pop(kind.name)
    return Fastening(kind=kind, item=item, **values)


_FASTENING: Record[Fastening] = Record(
    name="fastening",
    noun="a fastening",
    keys=(
        *_KINDS,
        Key(
            name="joins",
            form=_JOINS,
            says="What it goes through or into, in this order: holes and bores of pieces, last "
            "perhaps a side of a piece, a board or the `wall`. Sets pair by their order. Of a "
            "clamp the faces (`top.show`) or sides it presses on.",
            required=True,
        ),
        Key(name="nut", form=REFERENCE, says="The nut, barrel nut or insert a bolt goes into."),
        Key(name="washer", form=REFERENCE, says="The washer under its head."),
        Key(name="under-nut", form=REFERENCE, says="The washer under its nut."),
        Key(name="by", form=REFERENCE, says="The screws of a bracket or clamp, one a hole."),
        Key(
            name="head",
            form=choice("a face", "show", "back"),
            says="The face its head is on, where what it joins does not tell.",
            field="head_on",
        ),
        Key(
            name="step",
            form=STEP_TITLE,
            says="The title of the step it is done in; that in which its last piece joins if "
            "unsaid.",
        ),
        Key(
            name="at",
            form=SPOT,
            says="Where the first jaw of a clamp presses, as the part is drawn; over the middle of "
            "what the other one presses on if unsaid.",
        ),
        Key(name="for", form=CELL_TEXT, says="What it is for.", field="purpose"),
    ),
    make=_make_fastening,
    one_of=(tuple(each.name for each in FASTENING_KINDS),),
    instead={
        WEDGE_JOINT.name: "A wedge is a piece, and its place a joint: write "
        "`{wedge: peg, through: rail.tusk-slot}` in `joints`.",
        "count": "There is one for each place that `joins` names: name a set for several.",
    },
    advice="Write `{bolt: bolt-m6x50, nut: barrel-nut-m6, joins: [side.bolt, rail.left-bore]}`.",
)
FASTENINGS = ListOf(
    item=_FASTENING,
    budget=TAKEN,
    noun="a list of fastenings",
    advice="Write `- {bolt: bolt-m6x50, joins: [side.bolt, rail.left-bore]}`, a line each.",
    lenient=True,
)
