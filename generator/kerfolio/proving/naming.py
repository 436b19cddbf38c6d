"""Which pieces and features a plan states, as joints and steps name them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from kerfolio.assembly.ends import SIDES
from kerfolio.basis.names import begins, split_feature
from kerfolio.basis.said import stated_name
from kerfolio.model.feature import Feature, places_of
from kerfolio.model.feature_kind import OUTLINED, TAB, FeatureKind
from kerfolio.model.joint_kind import PIECE, SIDE, EndKind
from kerfolio.model.outline import Drawn, DrawnFeatureRule
from kerfolio.model.part import Part
from kerfolio.model.plan import Plan


@dataclass(frozen=True, slots=True, kw_only=True)
class Meant:
    """What one end of a joint means: a piece, its part, a feature's kind and what it takes."""

    piece: str
    part: Part
    feature: str
    kind: EndKind
    takes: str


def pieces_of(plan: Plan) -> dict[str, Part]:
    """Return the part of every piece by the piece's label."""
    return {label: part for part in plan.parts for label in part.labels}


def is_unread(name: str, plan: Plan) -> bool:
    """Tell whether a name begins with one that stands in the file but could not be read."""
    return any(begins(name, each) for each in plan.unread)


def feature_names(part: Part) -> tuple[str, ...]:
    """Return the names of a part's features, drawn ones first."""
    return tuple(dict.fromkeys(name for name, *_ in _features(part)))


def names_of(pieces: Mapping[str, Part], kinds: Iterable[EndKind]) -> tuple[str, ...]:
    """Return all that may stand where a joint wants one of some kinds."""
    wanted = {*kinds}
    found = [
        f"{label}.{name}"
        for label, part in pieces.items()
        for name, kind, takes, _ in _features(part)
        if kind in wanted and (takes or not _may_be_drawn(name, kind, part))
    ]
    found += pieces if PIECE in wanted else ()
    found += (f"{label}.{side}" for label in pieces for side in SIDES if SIDE in wanted)
    return tuple(dict.fromkeys(found))


def pieces_meant(name: str, pieces: Mapping[str, Part]) -> tuple[str, ...]:
    """Return what a name means that names a part in place of one of its pieces, with each of them.

    ``rib.top-tabs`` means ``rib.left.top-tabs`` or ``rib.right.top-tabs``, ``wedge.5`` one of
    ``wedge.1`` to ``wedge.4``. Nothing where it does neither.
    """
    fitting = [p for p in pieces.values() if p.pieces and begins(name, p.name)]
    if not fitting:
        return ()
    part = max(fitting, key=lambda each: len(each.name))
    rest = name[len(part.name) + 1 :]
    known = feature_names(part)
    if rest.partition(".")[0] not in known:  # then it is a piece that there is not
        rest = rest.partition(".")[2]
    ends = [f"{label}.{rest}" if rest else label for label in part.labels]
    return tuple(each for each in ends if meant_by(each, pieces) is not None)


def meant_by(name: str, pieces: Mapping[str, Part]) -> Meant | None:
    """Return what a joint's end means, None when the piece or the feature is not there.

    Numbered copies count: ``tabs.2`` where there are several. A piece by itself is meant, too, and
    a side of it (``shelf.left``).
    """
    if name in pieces:
        return Meant(piece=name, part=pieces[name], feature="", kind=PIECE, takes="")
    piece, feature = split_feature(name, pieces)
    if not piece:
        return None
    part = pieces[piece]
    for known, kind, takes, many in _features(part):
        if known == feature or (many and known == stated_name(feature)):
            return Meant(piece=piece, part=part, feature=feature, kind=kind, takes=takes)
    if feature in SIDES:
        return Meant(piece=piece, part=part, feature=feature, kind=SIDE, takes="")
    return None


def _drawn(part: Part) -> tuple[DrawnFeatureRule, ...]:
    return part.shape.features if isinstance(part.shape, Drawn) else ()


def _features(part: Part) -> Iterator[tuple[str, FeatureKind, str, bool]]:
    """Yield (name, kind, sheet taken, whether there may be numbered copies) of every feature."""
    for rule in _drawn(part):
        yield rule.element.name, rule.kind, str(rule.takes or ""), True
    if isinstance(part.shape, Drawn):
        yield from _edges(part.shape)
    for each in part.features:
        takes = getattr(each.cutting, "takes", None)
        yield each.name, each.kind, str(takes or ""), _is_many(each)


def _edges(drawn: Drawn) -> Iterator[tuple[str, FeatureKind, str, bool]]:
    """Yield the same of the notches and tabs that a drawn outline may have."""
    for kind in OUTLINED:
        rule = drawn.said_of(kind)
        if rule is None and drawn.drawn_for is not None:
            yield kind.outlined, kind, "", True
        elif rule is not None and rule.takes is not None:
            yield kind.outlined, kind, str(rule.takes), True


def _may_be_drawn(name: str, kind: FeatureKind, part: Part) -> bool:
    """Tell whether a feature is only looked for in a drawn outline, and may not be there."""
    return isinstance(part.shape, Drawn) and name == kind.outlined


def taken_by(part: Part) -> frozenset[str]:
    """Return the names of the sheets that a part's features take."""
    return frozenset(takes for _, _, takes, _ in _features(part) if takes)


def takers_of(part: Part) -> Iterator[tuple[str, str]]:
    """Yield each feature that says which sheet goes into it, and that sheet; tabs say another."""
    for name, kind, takes, _ in _features(part):
        if takes and kind is not TAB:
            yield name, takes


def _is_many(feature: Feature) -> bool:
    return bool(feature.repeat or feature.mirror or places_of(feature.cutting) > 1)
