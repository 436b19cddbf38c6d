"""Forms of features: a kind with its measures, perhaps repeated and mirrored."""

from __future__ import annotations

from typing import Any

from kerfolio.basis.names import NAME
from kerfolio.basis.said import said, written
from kerfolio.model.feature import Feature, Repeat
from kerfolio.model.feature_kind import FEATURE_KINDS, SLOT
from kerfolio.reading.amounts import COUNT, SPOT
from kerfolio.reading.feature_kinds import FEATURE_FORMS
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
    advice=written("repeat: {count: 3, step: [0, 120]}", "repeat: {count: 3, step: [0, 5]}"),
)


def _make_feature(**values: Any) -> Feature:
    cutting = next(values.pop(each.key) for each in FEATURE_KINDS if each.key in values)
    return Feature(cutting=cutting, **values)


FEATURE: Record[Feature] = Record(
    name="feature",
    noun="a feature",
    keys=(
        *(Key(name=each.key, form=FEATURE_FORMS[each], says=each.says) for each in FEATURE_KINDS),
        Key(name="repeat", form=_REPEAT, says="More of it, in a row."),
        Key(name="mirror", form=MIRROR, says="Another one beyond a mirror line."),
    ),
    make=_make_feature,
    one_of=(tuple(each.key for each in FEATURE_KINDS),),
    advice=said("Write its kind first: `{}: {}}`.", f"{{{SLOT.key}", SLOT.example),
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
