"""Forms of features: a kind with its measures, perhaps repeated and mirrored."""

from __future__ import annotations

from typing import Any

from kerfolio.basis.names import NAME
from kerfolio.model.feature import Feature, Repeat
from kerfolio.reading.amounts import COUNT, SPOT
from kerfolio.reading.feature_kind import KINDS
from kerfolio.reading.forms import Form
from kerfolio.reading.outline import MIRROR
from kerfolio.reading.record import Entries, Key, Record
from kerfolio.reading.values import name_fault

_REPEAT: Record[Repeat] = Record(
    name="repeat",
    noun="a repeat",
    keys=(
        Key(name="count", form=COUNT, says="How many in all.", required=True),
        Key(name="step", form=SPOT, says="From one to the next: [x, y].", required=True),
    ),
    make=Repeat,
    advice="Write `repeat: {count: 3, step: [0, 120]}`.",
)


def _make_feature(**values: Any) -> Feature:
    cutting = next(values.pop(kind) for kind in KINDS if kind in values)
    return Feature(cutting=cutting, **values)


_SAYS = {
    "slot": "A slot through the part.",
    "notch": "A slot from an edge inwards.",
    "hole": "A round hole.",
    "window": "An opening of any shape.",
    "pocket": "A recess of any shape to a depth.",
    "groove": "A channel between two points.",
    "tabs": "Tabs that stand out of an edge.",
    "fingers": "Fingers along a whole edge.",
    "engrave": "A text or drawing scratched into the face.",
}
FEATURE: Record[Feature] = Record(
    name="feature",
    noun="a feature",
    keys=(
        *(Key(name=kind, form=form, says=_SAYS[kind]) for kind, form in KINDS.items()),
        Key(name="repeat", form=_REPEAT, says="More of it, in a row."),
        Key(name="mirror", form=MIRROR, says="Another one beyond a mirror line."),
    ),
    make=_make_feature,
    one_of=(tuple(KINDS),),
    advice="Write its kind first: `{slot: {at: [180, 370], length: 120, takes: ply}}`.",
    named=True,
)
FEATURES: Form[tuple[Feature, ...]] = Entries(
    record=FEATURE,
    noun="features by name",
    advice="Write `name: {slot: {...}}`, a line each.",
    fault=name_fault,
    pattern=NAME.pattern,
    strict=True,
)
