"""Sets that follow their mates: looked up once all parts are read, written out, and joined."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from itertools import chain

from kerfolio.basis.complaint import Complaint
from kerfolio.basis.expression import parse
from kerfolio.basis.names import begins, did_you_mean, split_feature
from kerfolio.basis.place import Place
from kerfolio.basis.said import Text, said, stated_name
from kerfolio.model.feature import ByMate, Feature, Groove, Hole, Mated, Notch, Pocket, Slot
from kerfolio.model.feature_kind import FeatureKind
from kerfolio.model.outline import Drawn
from kerfolio.model.part import LeftOut, Part
from kerfolio.model.plan import Plan
from kerfolio.model.statement import Amount, Named, Spot
from kerfolio.reading.desk import Desk
from kerfolio.reading.followed import FOLLOWING, Mate, followed
from kerfolio.reading.mate_joints import Pair, with_pairs
from kerfolio.reading.mate_places import CannotFollowError


def with_mates(plan: Plan, desk: Desk) -> Plan:
    """Return a plan whose sets that follow their mates are written out, and joined with them.

    One that cannot be is told at the desk and left out; its name is kept there as unread.
    """
    book = _Book({label: part for part in plan.parts for label in part.labels}, desk)
    parts = tuple(map(book.written_out, plan.parts))
    return with_pairs(replace(plan, parts=parts), book.pairs, desk)


class _RefusedError(Exception):
    """A set that cannot follow: the rule, the place and the complaint; no words follow a fault."""

    def __init__(self, rule: str, complaint: Complaint, place: Place) -> None:
        super().__init__(complaint)
        self.rule, self.complaint, self.place = rule, complaint, place


@dataclass(frozen=True, slots=True, kw_only=True)
class _Found:
    """What a name means: a feature of a part, ``number`` of its copies or 0 for all."""

    part: Part
    feature: Feature
    number: int


class _Book:
    """All pieces of a plan by their labels; ``pairs`` gathers which features meet."""

    def __init__(self, pieces: Mapping[str, Part], desk: Desk) -> None:
        self.pairs: list[Pair] = []
        self._pieces, self._desk = pieces, desk

    def written_out(self, part: Part) -> Part:
        """Return a part with those features that follow their mates written out, or left out."""
        features, lost = list[Feature](), list[LeftOut]()
        for feature in part.features:
            if not isinstance(feature.cutting, ByMate):
                features.append(feature)
                continue
            try:
                made = self._written(part, feature, feature.cutting)
            except _RefusedError as refused:
                self._desk.complain(refused.rule, refused.complaint, refused.place)
                made = None
            if made is None:
                self._desk.unread.update(f"{each}.{feature.name}" for each in part.labels)
                at = feature.cutting.at
                spots = (at,) if isinstance(at, Spot) else ()
                lost.append(LeftOut(name=feature.name, spots=spots))
            else:
                features.append(made)
        return replace(part, features=tuple(features), left_out=(*part.left_out, *lost))

    def _written(self, part: Part, feature: Feature, stated: ByMate) -> Feature | None:
        """Return a set written out, None where only another mistake keeps it from being.

        Raises _RefusedError.
        """
        found = [self._mate(each.mate, feature, stated) for each in stated.of]
        labels = [_own_label(each, part) for each in stated.of]
        if None in found:
            return None
        first = next(each for each in found if each is not None)
        of = stated.of[0].mate
        mate = Mate(
            feature=first.feature,
            number=first.number,
            sheet=Named(first.part.sheet.name, of.place),
        )
        try:
            made = followed(feature, mate)
        except CannotFollowError as trouble:
            raise _refused("mate-places", str(trouble), of.place, trouble.advice) from trouble
        self._check_lengths(made, of)
        joint = FOLLOWING[stated.kind]
        self.pairs += (
            Pair(label=label, feature=feature.name, part=part, mate=each.mate, following=joint)
            for each, label in zip(stated.of, labels, strict=True)
        )
        return made

    def _mate(self, named: Named, own: Feature, stated: ByMate) -> _Found | None:
        """Return the feature that a set names as its mate. Raises _RefusedError."""
        if any(begins(named.name, each) for each in self._desk.unread):
            return None
        found = self._found(named, stated.kind)
        wanted = FOLLOWING[stated.kind].mate
        kind = found.feature.kind
        if isinstance(found.feature.cutting, ByMate):
            raise self._follows(named, found.feature.cutting, own)
        if kind is not wanted:
            message = (
                f"`{named.name}` is {kind.noun}, and `{stated.kind.by_mate}` follow {wanted.noun}"
            )
            piece = named.name.removesuffix(f".{found.feature.name}")
            fitting = [each for each in self._names(wanted) if begins(each, piece)]
            advice = did_you_mean("", fitting or self._names(wanted))
            raise _refused("mate-kind", message, named.place, advice)
        return found

    def _follows(self, named: Named, cutting: ByMate, own: Feature) -> _RefusedError:
        """Return what is said of a mate that follows another set, or the very one it is to lead."""
        behind = cutting.of[0].mate
        message = f"`{named.name}` follows `{behind.name}` itself"
        advice = "A set follows one that says its sizes: state one of the two in full."
        try:
            if self._found(behind, cutting.kind).feature is own:
                message = f"`{named.name}` and `{behind.name}` follow each other"
        except _RefusedError:
            pass  # told where that one is stated
        return _refused("mate-follows", message, named.place, advice)

    def _found(self, named: Named, kind: FeatureKind) -> _Found:
        label, rest = split_feature(named.name, self._pieces)
        wanted = FOLLOWING[kind].mate
        if not label:
            raise self._no_piece(named, wanted)
        part = self._pieces[label]
        for feature in part.features:
            if rest == feature.name:
                return _Found(part=part, feature=feature, number=0)
            if stated_name(rest) == feature.name and rest.count(".") == 1:
                number = int(rest.rpartition(".")[2])
                return _Found(part=part, feature=feature, number=number)
        if isinstance(part.shape, Drawn):
            message = f"`{label}` states no feature `{rest}`"
            raise _refused("unknown-mate", message, named.place, _in_full(named, kind))
        own = [each.name for each in part.features if each.kind is wanted]
        message = f"`{label}` has no feature `{rest}`"
        raise _refused("unknown-mate", message, named.place, did_you_mean(rest, own))

    def _no_piece(self, named: Named, wanted: FeatureKind) -> _RefusedError:
        part = next((p for p in self._pieces.values() if named.name.startswith(f"{p.name}.")), None)
        if part is not None:
            rest = named.name[len(part.name) + 1 :]
            message = f"`{part.name}` is several pieces, and `{named.name}` names none of them"
            advice = did_you_mean("", (f"{each}.{rest}" for each in part.labels))
            return _refused("unknown-mate", message, named.place, advice)
        message = f"no piece for `{named.name}`"
        advice = did_you_mean(named.name, self._names(wanted))
        return _refused("unknown-mate", message, named.place, advice)

    def _names(self, kind: FeatureKind) -> Iterator[str]:
        """Yield what may be named as a mate of a kind."""
        for label, part in self._pieces.items():
            yield from (f"{label}.{each.name}" for each in part.features if each.kind is kind)

    def _check_lengths(self, made: Feature, of: Named) -> None:
        """Raise _RefusedError where what a set comes to is too long to be an expression."""
        for amount in _amounts(made):
            if isinstance(parse(amount.text, self._desk.unit), Complaint):
                message = f"the places of `{of.name}` make too long an expression"
                advice = "Give parts of them names under `sizes`."
                raise _refused("mate-places", message, of.place, advice)


def _in_full(named: Named, kind: FeatureKind) -> Text:
    """Return how to state a set, and its joint, that cannot follow what it meets."""
    joint = FOLLOWING[kind].joint
    ends = (named.name, "...") if FOLLOWING[kind].mate_first else ("...", named.name)
    written = f"{{{joint.name}: {ends[0]}, {joint.other}: {ends[1]}}}"
    words = "What is drawn cannot be followed: write `{}: {}` in full, and the joint `{}`."
    return said(words, kind.key, kind.example, written)


def _refused(rule: str, message: str, place: Place, advice: Text) -> _RefusedError:
    return _RefusedError(rule, Complaint(message, advice), place)


def _own_label(mated: Mated, part: Part) -> str:
    """Return the piece that a mate is named for, empty where none is. Raises _RefusedError."""
    piece = mated.piece
    if not piece.name:
        return part.name if not part.pieces else ""
    if piece.name not in part.pieces:
        message = f"`{part.name}` has no piece `{piece.name}`"
        advice = did_you_mean(piece.name, part.pieces)
        raise _refused("unknown-mate", message, piece.place, advice)
    return f"{part.name}.{piece.name}"


def _amounts(feature: Feature) -> Iterator[Amount]:
    match feature.cutting:
        case Slot() | Pocket() | Hole():
            yield from chain.from_iterable((each.x, each.y) for each in feature.cutting.at)
        case Groove():
            for spot in (feature.cutting.start, feature.cutting.end):
                yield from (spot.x, spot.y)
        case Notch():
            yield from feature.cutting.at
        case _:
            return
