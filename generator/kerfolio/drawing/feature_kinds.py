"""What a template says about a feature of each kind, a line each."""

from __future__ import annotations

from collections.abc import Callable

from kerfolio.basis.lengths import cut_text, mm_text
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
from kerfolio.settling.settled import SettledFeature


def _fitted(feature: SettledFeature) -> tuple[str, ...]:
    if not feature.width.reason:
        return _deep(feature)
    return (f"{cut_text(feature.width.value)} wide", *_deep(feature), feature.width.reason)


def _hole(feature: SettledFeature) -> tuple[str, ...]:
    return (f"ø {cut_text(feature.width.value)}", *_deep(feature))


def _nothing(_: SettledFeature) -> tuple[str, ...]:
    """Say nothing of what is cut just as its line is drawn."""
    return ()


def _deep(feature: SettledFeature) -> tuple[str, ...]:
    return (f"{mm_text(feature.depth.value, 2)} deep",) if feature.depth else ()


FEATURE_WORDS: dict[FeatureKind, Callable[[SettledFeature], tuple[str, ...]]] = {
    SLOT: _fitted,
    NOTCH: _fitted,
    HOLE: _hole,
    WINDOW: _nothing,
    POCKET: _fitted,
    GROOVE: _fitted,
    TAB: _nothing,
    FINGERS: _nothing,
    ENGRAVING: _nothing,
}
"""What returns the words about each kind."""
