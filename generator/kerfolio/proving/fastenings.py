"""Checks of fastenings as stated: what they name is there, is of its kind, is counted once."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from kerfolio.assembly.ends import end_of
from kerfolio.assembly.ends import pieces_of as settled_pieces
from kerfolio.basis.finding import Finding, error
from kerfolio.basis.measures import number
from kerfolio.basis.names import begins, choice, did_you_mean, split_feature
from kerfolio.basis.said import said
from kerfolio.model.fastening import (
    BOLTED,
    CLAMPED,
    CROSS_NUT,
    INTO_WALL,
    SCREWED,
    Fastening,
    FasteningKind,
)
from kerfolio.model.feature_kind import FEATURE_KINDS, HOLE
from kerfolio.model.joint_kind import SIDE, EndKind
from kerfolio.model.part import Part
from kerfolio.model.plan import Assembly, HardwareUse
from kerfolio.model.statement import Named
from kerfolio.proving.naming import (
    is_unread,
    meant_by,
    names_of,
    pieces_meant,
    pieces_of,
)
from kerfolio.proving.rule import OUR_FORM, OWN_FIGURES, Stated, after, before
from kerfolio.settling.fastened import FACES, seats_meant
from kerfolio.settling.settled import SettledPlan

HEADED = (BOLTED, SCREWED)
"""The kinds that have a head, which bears on a face."""

_ROUND = tuple(each for each in FEATURE_KINDS if each.round)


@before(
    "fastening-item",
    reason="A fastening is of hardware that the stock knows, and of its own kind.",
    source=OUR_FORM,
)
def items_known(stated: Stated) -> Iterator[Finding]:
    """Look for fastenings of what is not in the stock, or is something else."""
    for fastening in stated.plan.fastenings:
        for item, kinds in fastening.parts:
            found = stated.stock.item(item.name)
            fitting = [each.name for each in stated.stock.hardware if each.kind in kinds]
            if found is not None and found.kind in kinds:
                continue
            wanted = kinds[0] if len(kinds) == 1 else f"{', '.join(kinds[:-1])} or {kinds[-1]}"
            message = f"no {kinds[0]} `{item.name}`"
            if found is not None:
                message = f"`{item.name}` is no {wanted}"
            advice = did_you_mean(item.name, fitting)
            if not fitting:
                advice = f"State a {kinds[0]} of that name under `hardware:` in `stock/`."
            yield error("fastening-item", message, item.place, advice, subject=item.name)


@before(
    "fastening-end",
    reason="A fastening goes through holes and bores that exist.",
    source=OUR_FORM,
    also=("fastening-kind",),
)
def ends_known(stated: Stated) -> Iterator[Finding]:
    """Look for fastenings that name no piece or feature, or one that takes no fastening."""
    pieces = pieces_of(stated.plan)
    boards = {each.name for each in stated.plan.boards}
    for fastening in stated.plan.fastenings:
        for index, end in enumerate(fastening.joins):
            if end.name in boards or is_unread(end.name, stated.plan):
                continue
            if _is_wall(fastening, index) and end.name not in pieces:
                continue
            if fastening.kind is CLAMPED and split_feature(end.name, pieces)[1] in FACES:
                continue
            kinds = _fitting(fastening, index)
            meant = meant_by(end.name, pieces)
            if meant is None:
                yield _missing(end, kinds, pieces, boards)
            elif meant.kind not in kinds:
                what = getattr(meant.kind, "noun", "a feature")
                message = f"`{end.name}` is {what}: {_wrong(fastening, index)}"
                advice = did_you_mean(end.name, names_of(pieces, kinds))
                yield error("fastening-kind", message, end.place, advice, subject=end.name)


def _is_wall(fastening: Fastening, index: int) -> bool:
    """Tell whether a place of ``joins`` is the last, and the wall."""
    last = index > 0 and index == len(fastening.joins) - 1
    return last and fastening.kind in HEADED and fastening.joins[index].name == INTO_WALL


def _fitting(fastening: Fastening, index: int) -> tuple[EndKind, ...]:
    """Return what may stand at a place of ``joins``."""
    if fastening.kind is CLAMPED:
        return (*_ROUND, SIDE)
    if index == 0:
        return (HOLE,) if fastening.kind in HEADED else _ROUND
    last = index == len(fastening.joins) - 1
    return (*_ROUND, SIDE) if last and fastening.kind in HEADED else _ROUND


def _wrong(fastening: Fastening, index: int) -> str:
    if index == 0 and fastening.kind in HEADED:
        return f"the head of {fastening.kind.noun} bears on a face, so that a hole comes first"
    if fastening.kind is CLAMPED:
        return "a clamp presses on faces, such as `top.show`, and on sides"
    return f"{fastening.kind.noun} goes through holes and bores"


def _missing(
    end: Named, kinds: tuple[EndKind, ...], pieces: Mapping[str, Part], boards: set[str]
) -> Finding:
    label, feature = split_feature(end.name, pieces)
    fitting = names_of(pieces, kinds)
    if label:
        message = f"`{label}` has no hole or bore `{feature}`"
        own = [each[len(label) + 1 :] for each in fitting if each.startswith(f"{label}.")]
        own = [each for each in own if meant_by(f"{label}.{each}", pieces) is not None]
        advice = did_you_mean(feature, own) if own else did_you_mean(end.name, fitting)
    else:
        meant = [each for each in pieces_meant(end.name, pieces) if each in fitting]
        message = f"no piece for `{end.name}`"
        advice = did_you_mean(end.name, (*fitting, *boards))
        if meant:
            advice = f"Did you mean {choice(meant[:4])}?"
    return error("fastening-end", message, end.place, advice, subject=end.name)


@before(
    "fastening-single",
    reason="A fastening joins two pieces, or holds something on one.",
    source=OUR_FORM,
    also=("fastening-nut", "fastening-at"),
)
def joins_enough(stated: Stated) -> Iterator[Finding]:
    """Look for fastenings that end where they begin, and for nuts without a bolt."""
    for each in stated.plan.fastenings:
        nuts = stated.stock.item(each.nut.name) if each.nut else None
        if each.at is not None and each.kind is not CLAMPED:
            message = f"{each.kind.noun} has its place by what it joins"
            advice = "Take `at` out: it says where a clamp presses."
            subject = each.item.name
            yield error("fastening-at", message, each.place, advice, subject=subject)
        if each.nut is not None and each.kind is not BOLTED:
            message = f"{each.kind.noun} takes no nut"
            advice = "Take `nut` out, or state a bolt."
            subject = each.nut.name
            yield error("fastening-nut", message, each.nut.place, advice, subject=subject)
        elif nuts is not None and nuts.kind == CROSS_NUT and len(each.joins) < 2:
            message = f"`{nuts.name}` lies in a piece that `joins` does not name"
            advice = "Name the bore that the bolt goes into, too: `joins: [side.bolt, rail.bore]`."
            yield error("fastening-single", message, each.place, advice, subject=each.item.name)
        elif len(each.joins) < 2 and _wants_two(each.kind):
            message = f"{each.kind.noun} joins two pieces, and `joins` names one"
            advice = "Name what it goes into, too: `joins: [side.holes, rail.left-bores]`."
            yield error("fastening-single", message, each.place, advice, subject=each.item.name)


def _wants_two(kind: FasteningKind) -> bool:
    return kind.items[0] in ("screw", "dowel")


@before(
    "fastening-twice",
    reason="What is bought is counted once: by the fastening that has a place.",
    source=OUR_FORM,
)
def counted_once(stated: Stated) -> Iterator[Finding]:
    """Look for hardware that is listed, or used in a step, besides the fastenings of it."""
    for thing in stated.plan.made:
        fastened = {item.name for each in thing.fastenings for item, _ in each.parts}
        for step in thing.steps:
            yield from _twice(step.hardware, fastened, f"`hardware` of step `{step.title}`")
    fastened = {item.name for each in stated.plan.fastenings for item, _ in each.parts}
    yield from _twice(stated.plan.hardware, fastened, "`hardware`")


def _twice(uses: tuple[HardwareUse, ...], fastened: set[str], where: str) -> Iterator[Finding]:
    for use in uses:
        if use.item.name in fastened:
            message = f"`{use.item.name}` is counted twice: in {where}, and by `fastenings`"
            advice = f"Take it out of {where}: fastenings tell how many, and in which step."
            name = use.item.name
            yield error("fastening-twice", message, use.item.place, advice, subject=name)


@before(
    "fastening-step",
    reason="A fastening is done in a step that the plan has.",
    source=OUR_FORM,
)
def steps_known(stated: Stated) -> Iterator[Finding]:
    """Look for fastenings done in a step that there is not, or before their pieces are there."""
    for thing in stated.plan.made:
        titles = [each.title for each in thing.steps]
        for each in thing.fastenings:
            if each.step is None:
                continue
            if each.step.name not in titles:
                message = f"no step `{each.step.name}`"
                advice = did_you_mean(each.step.name, titles)
                subject = each.item.name
                yield error("fastening-step", message, each.step.place, advice, subject=subject)
            else:
                yield from _too_early(each, thing, titles.index(each.step.name))


def _too_early(each: Fastening, thing: Assembly, number_: int) -> Iterator[Finding]:
    assert each.step is not None
    later = {piece.name for step in thing.steps[number_ + 1 :] for piece in step.add}
    for end in each.joins:
        missing = next((piece for piece in later if begins(end.name, piece)), None)
        if missing is not None:
            message = f"`{missing}` joins after step `{each.step.name}`, which fastens it"
            advice = "Name a later step, or leave `step` out."
            yield error("fastening-step", message, each.step.place, advice, subject=missing)
            return


@after(
    "fastening-sets",
    reason="Sets of holes pair by their order.",
    source=OWN_FIGURES,
)
def sets_pair(settled: SettledPlan) -> Iterator[Finding]:
    """Look for fastenings through sets of holes that are not as many."""
    pieces = settled_pieces(settled)
    for each in settled.plan.fastenings:
        known = all(
            end_of(end.name, pieces) is not None
            or _is_wall(each, index)
            or any(end.name == board.use.name for board in settled.boards)
            for index, end in enumerate(each.joins)
        )
        counts = [len(seats) for seats in seats_meant(each, settled)]
        several = [index for index, count in enumerate(counts) if count > 1]
        if not known or len({counts[index] for index in several}) < 2:
            continue
        one, other = several[0], next(i for i in several if counts[i] != counts[several[0]])
        names = each.joins[one].name, each.joins[other].name
        figures = number("count", counts[one]), number("other-count", counts[other])
        message = said("`{}` are {}, `{}` are {}", names[0], figures[0], names[1], figures[1])
        advice = "Sets pair by their order: name as many of both, such as `.1`."
        yield error("fastening-sets", message, each.place, advice, subject=names[0])
