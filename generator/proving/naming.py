"""Which pieces and features a plan states, as joints and steps name them."""

from __future__ import annotations

from collections.abc import Iterable

from generator.basis.names import did_you_mean
from generator.model.feature import Feature, Notch, Tabs
from generator.model.outline import Drawn
from generator.model.part import Part
from generator.model.plan import Plan


def labels_of(part: Part) -> tuple[str, ...]:
    """Return the labels of a part's pieces: ``side.left``, or the part's own name."""
    return tuple(f"{part.name}.{piece}" for piece in part.pieces) or (part.name,)


def pieces_of(plan: Plan) -> dict[str, Part]:
    """Return the part of every piece by the piece's label."""
    return {label: part for part in plan.parts for label in labels_of(part)}


def is_unread(name: str, plan: Plan) -> bool:
    """Tell whether a name begins with one that stands in the file but could not be read."""
    return any(name == each or name.startswith(f"{each}.") for each in plan.unread)


def knows_feature(part: Part, name: str) -> bool:
    """Tell whether a part has a feature of that name; numbered copies count (``tabs.2``)."""
    base, _, number = name.partition(".")
    drawn = part.shape.features if isinstance(part.shape, Drawn) else ()
    if any(rule.element.name == base for rule in drawn):
        return not number or number.isdigit()
    feature = next((each for each in part.features if each.name == base), None)
    return feature is not None and (not number or (number.isdigit() and _is_many(feature)))


def _is_many(feature: Feature) -> bool:
    cutting = feature.cutting
    listed = len(cutting.at) if isinstance(cutting, Notch | Tabs) else 1
    return bool(feature.repeat or feature.mirror or listed > 1)


def feature_names(part: Part) -> Iterable[str]:
    """Return the names of a part's features."""
    drawn = part.shape.features if isinstance(part.shape, Drawn) else ()
    return (*(rule.element.name for rule in drawn), *(each.name for each in part.features))


def split_feature(name: str, pieces: Iterable[str]) -> tuple[str, str]:
    """Return a joint's end as (piece, feature); the piece is empty when none is known by it."""
    fitting = [label for label in pieces if name.startswith(f"{label}.")]
    piece = max(fitting, key=len, default="")
    return (piece, name[len(piece) + 1 :]) if piece else ("", name)


def advice_for(name: str, known: Iterable[str]) -> str:
    """Return advice on an unknown name, short of listing a hundred known ones."""
    return did_you_mean(name, known)
