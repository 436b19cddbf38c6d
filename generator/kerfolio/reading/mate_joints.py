"""The joints that follow from sets that are stated by their mates."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from kerfolio.model.joint import Joint
from kerfolio.model.part import Part
from kerfolio.model.plan import Assembly, Plan
from kerfolio.model.statement import Named
from kerfolio.reading.desk import Desk
from kerfolio.reading.followed import Following


@dataclass(frozen=True, slots=True, kw_only=True)
class Pair:
    """A set that follows its mate: a feature of a part, and of which piece, if that is named."""

    label: str
    feature: str
    part: Part
    mate: Named
    following: Following

    @property
    def own(self) -> str:
        """The end of a joint that it is."""
        return f"{self.label}.{self.feature}"

    @property
    def joint(self) -> Joint:
        """The joint that the two make."""
        own = Named(self.own, self.mate.place)
        a, b = (self.mate, own) if self.following.mate_first else (own, self.mate)
        return Joint(kind=self.following.joint, a=a, b=b, place=self.mate.place)

    @property
    def written(self) -> str:
        """The joint as it would be listed."""
        kind, made = self.following.joint, self.joint
        return f"{{{kind.name}: {made.a}, {kind.other}: {made.b}}}"


def with_pairs(plan: Plan, pairs: Sequence[Pair], desk: Desk) -> Plan:
    """Return a plan with the joints of sets and their mates that it does not list itself.

    A listed joint that says otherwise is refused and left out, so that nothing that follows from it
    is told; refused is a set of which it is not known which piece meets its mate, too.
    """
    _refuse_twins(pairs, desk)
    wrong = _refuse_others(pairs, plan.joints, desk)
    listed = tuple(each for each in plan.joints if each not in wrong)
    made = [each.joint for each in pairs if _is_new(each, listed, desk)]
    if not plan.assemblies:
        return replace(plan, joints=(*listed, *made))
    assemblies = tuple(
        replace(
            each,
            joints=(*(one for one in each.joints if one not in wrong), *_owned(made, each)),
        )
        for each in plan.assemblies
    )
    return replace(
        plan,
        assemblies=assemblies,
        joints=tuple(joint for each in assemblies for joint in each.joints),
    )


def _owned(joints: Iterable[Joint], assembly: Assembly) -> Iterator[Joint]:
    """Yield the joints of which an assembly owns the second end."""
    for joint in joints:
        label = joint.b.name.rpartition(".")[0]
        labels = (label, label.rpartition(".")[0], label.partition(".")[0])
        if any(each and assembly.owns(each) for each in labels):
            yield joint


def _is_new(pair: Pair, listed: Sequence[Joint], desk: Desk) -> bool:
    """Tell whether a pair's joint is to be made; refuse a pair of which too little is known."""
    ends = [(each, {each.a.name, each.b.name}) for each in listed]
    if not pair.label:
        own = {f"{label}.{pair.feature}" for label in pair.part.labels}
        if not any(pair.mate.name in both and own & both for _, both in ends):
            _refuse_which(pair, desk)
        return False
    return not any(both == {pair.own, pair.mate.name} for _, both in ends)


def _refuse_others(pairs: Sequence[Pair], listed: Sequence[Joint], desk: Desk) -> list[Joint]:
    """Refuse listed joints that take one of a pair elsewhere, each once, and return them."""
    wrong: list[Joint] = []
    known = [(each, {each.own, each.mate.name}) for each in pairs if each.label]
    meant = [ends for _, ends in known]
    for joint in listed:
        both = {joint.a.name, joint.b.name}
        if both in meant:
            continue
        kin = (pair for pair, ends in known if both & ends and pair.following.joint is joint.kind)
        first = next(kin, None)
        if first is not None:
            _refuse_other(first, joint, desk)
            wrong.append(joint)
    return wrong


def _refuse_twins(pairs: Sequence[Pair], desk: Desk) -> None:
    """Refuse a second set that follows what another one follows already."""
    first: dict[str, Pair] = {}
    for pair in pairs:
        other = first.setdefault(pair.mate.name, pair) if pair.label else pair
        if other is not pair:
            message = f"`{pair.mate}` is met by `{other.own}` and by `{pair.own}`"
            advice = "It meets one of them: see which one this follows."
            desk.refuse("mate-joint", message, pair.mate.place, advice)


def _refuse_which(pair: Pair, desk: Desk) -> None:
    name = pair.part.name
    message = f"nothing says which piece of `{name}` meets `{pair.mate}`"
    first, *more = pair.part.pieces
    each = f"{first}: {pair.mate}{''.join(f', {other}: ...' for other in more[:2])}"
    advice = f"Write `of: {{{each}}}`, a mate for each piece that has one."
    desk.refuse("mate-piece", message, pair.mate.place, advice)


def _refuse_other(pair: Pair, joint: Joint, desk: Desk) -> None:
    """Refuse a listed joint that takes one of a pair elsewhere."""
    one, other = joint.a.name, joint.b.name
    message = f"`{one}` meets `{other}` here, and `{pair.own}` follows `{pair.mate}`"
    advice = f"List `{pair.written}` or nothing, or let it follow what it meets."
    desk.refuse("mate-joint", message, joint.place, advice)
