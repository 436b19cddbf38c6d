"""What a template says about a feature of each kind, a line each."""

from __future__ import annotations

from collections.abc import Callable

from kerfolio.basis.cutting_lengths import drill_text
from kerfolio.basis.exact_figures import exact_in, exact_text, exactly
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
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
from kerfolio.settling.settled import SettledFeature


def _fitted(feature: SettledFeature, reader: Reader) -> tuple[str, ...]:
    if not feature.width.reason:
        return _deep(feature, reader)
    wide = say(reader, "template-wide", size=exact_text(feature.width.value, reader))
    return (wide, *_deep(feature, reader), exactly(feature.width.reason, reader))


def _hole(feature: SettledFeature, reader: Reader) -> tuple[str, ...]:
    """Say the drill, and how deep it goes; a wider bore comes first, as it is bored."""
    drill, through = drill_text(feature.width.value, reader), int(not feature.depth)
    if feature.counterbore is None:
        return (
            say(reader, "template-bore", drill=drill, through=through),
            *_deep(feature, reader),
        )
    wide, deep = feature.counterbore
    return (
        say(reader, "template-bore-first", drill=drill_text(wide.value, reader)),
        say(reader, "template-deep", depth=exact_in(deep.value, reader)),
        say(reader, "template-bore-then", drill=drill, through=through),
        *_deep(feature, reader),
    )


def _bore(feature: SettledFeature, reader: Reader) -> tuple[str, ...]:
    """Say the drill, how deep it goes into the edge, and how high it lies where not half way."""
    drill = drill_text(feature.width.value, reader)
    return (say(reader, "template-edge-bore", drill=drill), *_deep(feature, reader))


def _nothing(_: SettledFeature, __: Reader) -> tuple[str, ...]:
    """Say nothing of what is cut just as its line is drawn."""
    return ()


def _deep(feature: SettledFeature, reader: Reader) -> tuple[str, ...]:
    if not feature.depth:
        return ()
    return (say(reader, "template-deep", depth=exact_in(feature.depth.value, reader)),)


FEATURE_WORDS: dict[FeatureKind, Callable[[SettledFeature, Reader], tuple[str, ...]]] = {
    SLOT: _fitted,
    NOTCH: _fitted,
    HOLE: _hole,
    WINDOW: _nothing,
    POCKET: _fitted,
    GROOVE: _fitted,
    TAB: _nothing,
    FINGERS: _nothing,
    ENGRAVING: _nothing,
    BORE: _bore,
}
"""What returns the words about each kind, the unit given named first."""
