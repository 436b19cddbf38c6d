"""The shapes of each kind of feature, as it is stated."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from math import dist
from typing import Any

from kerfolio.geometry.shape_error import ShapeError
from kerfolio.model.feature import Feature, Fingers, Groove, Notch, Pocket, Slot
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
from kerfolio.settling.bench import Bench
from kerfolio.settling.copies import how_many
from kerfolio.settling.edge_bore import edge_bores
from kerfolio.settling.edge_feature import fingers, notches, tabs
from kerfolio.settling.engraving import engraving
from kerfolio.settling.face_feature import groove, pocket, through_slot, window
from kerfolio.settling.hole import holes
from kerfolio.settling.scope import Scope, misshapen
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
    BORE: edge_bores,
}
"""What makes the shapes of each kind, from how it is stated and what it is made from."""


def shapes_of(feature: Feature, bench: Bench) -> tuple[Shaped, ...]:
    """Return a feature's shapes before repeats and mirrors. Raises SettlingError."""
    bench = _fitted(feature, bench)
    try:
        return tuple(FEATURE_SHAPES[feature.kind](feature.cutting, feature, bench))
    except ShapeError as fault:
        raise misshapen(f"`{feature.name}`", fault, feature.place) from fault


def _fitted(feature: Feature, bench: Bench) -> Bench:
    """Return the bench with the room of a feature that takes a sheet. Raises SettlingError."""
    cutting, scope = feature.cutting, bench.fitting.scope
    if not isinstance(cutting, Slot | Notch | Pocket | Groove | Fingers) or cutting.takes is None:
        return bench
    # Chosen once, as the plan is drawn: so all lengths stay linear where a wall grows past a bound.
    contact = _contact(cutting, bench.fitting.drawn or scope)
    together = how_many(feature, scope)
    fitting = bench.fitting.fitted_to(
        (feature.name, feature.kind), cutting.takes, contact, together
    )
    return replace(bench, fitting=fitting)


def _contact(cutting: Slot | Notch | Pocket | Groove | Fingers, scope: Scope) -> float:
    """Return how long the walls are between which a sheet goes, mm. Raises SettlingError.

    Fingers are as long as a sheet is thick, which is short.
    """
    match cutting:
        case Slot() | Pocket() if cutting.length is not None:
            return scope.mm(cutting.length)
        case Notch():
            return scope.mm(cutting.depth)
        case Groove():
            return dist(scope.point(cutting.start), scope.point(cutting.end))
        case _:
            return 0.0
