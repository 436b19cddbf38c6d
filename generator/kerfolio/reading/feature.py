"""Forms of features: a kind with its measures, perhaps repeated and mirrored."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from kerfolio.basis.finding import Finding, error
from kerfolio.basis.names import NAME
from kerfolio.basis.said import said, written
from kerfolio.model.feature import ByMate, Feature, Repeat
from kerfolio.model.feature_kind import FEATURE_KINDS, SLOT, FeatureKind
from kerfolio.reading.amounts import COUNT, SPOT
from kerfolio.reading.by_mate import BY_MATE_FORMS, StatedEitherWay, statements
from kerfolio.reading.feature_kinds import FEATURE_FORMS
from kerfolio.reading.forms import Form
from kerfolio.reading.outline import MIRROR
from kerfolio.reading.record import Entries, Fields, Key, Record
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


def _form_of(kind: FeatureKind) -> Form[Any]:
    alone, followed = FEATURE_FORMS[kind], BY_MATE_FORMS.get(kind)
    if followed is not None and kind.by_mate == kind.key:
        return StatedEitherWay(noun=alone.noun, advice=alone.advice, alone=alone, followed=followed)
    return alone


_KINDS = (
    *(Key(name=each.key, form=_form_of(each), says=each.says) for each in FEATURE_KINDS),
    *statements(),
)


def _make_feature(**values: Any) -> Feature:
    cutting = next(values.pop(each.name) for each in _KINDS if each.name in values)
    return Feature(cutting=cutting, **values)


def _not_copied(fields: Fields) -> Iterator[Finding]:
    """Yield a finding where a set that follows its mate is copied besides."""
    followed = any(isinstance(each, ByMate) for each in fields.values.values())
    for key in ("repeat", "mirror"):
        if followed and key in fields.places:
            message = f"`{key}` beside a set that follows its mate"
            advice = "Leave it out: there are as many as its mate has."
            yield error("one-too-many", message, fields.places[key], advice)


FEATURE: Record[Feature] = Record(
    name="feature",
    noun="a feature",
    keys=(
        *_KINDS,
        Key(name="repeat", form=_REPEAT, says="More of it, in a row, numbered on."),
        Key(
            name="mirror",
            form=MIRROR,
            says="As many beyond a mirror line, numbered on in the same order: they count back.",
        ),
    ),
    make=_make_feature,
    one_of=(tuple(each.name for each in _KINDS),),
    check=_not_copied,
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
