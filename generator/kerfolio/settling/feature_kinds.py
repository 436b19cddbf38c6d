"""The shapes of each kind of feature, as it is stated."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

from kerfolio.geometry.shape_error import ShapeError
from kerfolio.model.feature import Feature
from kerfolio.model.feature_kind import (
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
from kerfolio.settling.bench import Bench
from kerfolio.settling.edge_feature import fingers, notches, tabs
from kerfolio.settling.engraving import engraving
from kerfolio.settling.face_feature import groove, pocket, through_slot, window
from kerfolio.settling.hole import holes
from kerfolio.settling.scope import misshapen
from kerfolio.settling.shaped import Shaped

FEATURE_SHAPES: dict[FeatureKind, Callable[[Any, Feature, Bench], Iterator[Shaped]]] = {
    SLOT: through_slot,
    NOTCH: notches,
    HOLE: holes,
    WINDOW: window,
    POCKET: pocket,
    GROOVE: groove,
    TAB: tabs,
    FINGERS: fingers,
    ENGRAVING: engraving,
}
"""What makes the shapes of each kind, from how it is stated and what it is made from."""


def shapes_of(feature: Feature, bench: Bench) -> tuple[Shaped, ...]:
    """Return a feature's shapes before repeats and mirrors. Raises SettlingError."""
    try:
        return tuple(FEATURE_SHAPES[feature.kind](feature.cutting, feature, bench))
    except ShapeError as fault:
        raise misshapen(f"`{feature.name}`", fault, feature.place) from fault
