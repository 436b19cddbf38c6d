"""Checks of what finish and damp do: sheets that swell past their play, boards that cannot move."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import chain

from kerfolio.basis.finding import Finding, Severity, warning
from kerfolio.basis.measures import clearance, length
from kerfolio.basis.said import Text, Words, named, said
from kerfolio.basis.tolerance import NOISE
from kerfolio.model.climate import HEATED
from kerfolio.model.feature_kind import POCKET, SLOT
from kerfolio.model.joint_kind import NOTCH_JOINT, TAB_JOINT
from kerfolio.model.plan import SCREWS
from kerfolio.proving.marks import about
from kerfolio.proving.meeting import Met, meetings, openings, pairs
from kerfolio.proving.rule import Stated, after, before
from kerfolio.settling.moisture import swelling_in
from kerfolio.settling.settled import SettledBoard, SettledFeature, SettledPart, SettledPlan
from kerfolio.settling.surroundings import Needs, Surroundings
from kerfolio.shop.duration import is_unfit

GIVES = 0.5
"""How far a board moves, mm, before what holds it splits it (common practice, no single source)."""

_HANDBOOK = "Wood Handbook FPL-GTR-190, Chapters 4 and 13; CEN/TR 12872 (from memory)"


@dataclass(frozen=True, slots=True, kw_only=True)
class _Tight:
    """An opening with ``has`` mm of play on each side, and how much what goes in ``wants`` there.

    ``film`` and ``damp`` are what of it these take; ``where`` says which sides are meant.
    """

    met: Met
    part: SettledPart
    opening: SettledFeature
    entering: SettledPart
    where: str
    has: float
    wants: float
    film: float
    damp: float


@after(
    "swells-past-play",
    reason="What swells past its play cannot be taken apart, or splits what holds it.",
    source=_HANDBOOK,
    severity=Severity.WARNING,
)
def sheets_may_swell(settled: SettledPlan) -> Iterator[Finding]:
    """Look for sheets that film and damp make thicker or wider than what they go into."""
    if settled.surroundings is None or settled.variant.fit:
        return
    found = chain(_at_faces(settled, settled.surroundings), _at_ends(settled, settled.surroundings))
    for each in found:
        if each.wants > each.has + NOISE:
            yield _finding(settled, each)


def _at_faces(settled: SettledPlan, surroundings: Surroundings) -> Iterator[_Tight]:
    for met in meetings(settled, TAB_JOINT, NOTCH_JOINT):
        for opening, part, other in openings(met):
            needs = _needs(settled, surroundings, opening, part, other)
            yield _Tight(
                met=met,
                part=part,
                opening=opening,
                entering=other,
                where="a side",
                has=(opening.width.value - other.thickness) / 2,
                wants=needs.width,
                film=needs.film,
                damp=needs.swelling,
            )


def _at_ends(settled: SettledPlan, surroundings: Surroundings) -> Iterator[_Tight]:
    """Yield what goes in lengthwise: a tab, or a housed shelf, between the ends of its opening."""
    for met in meetings(settled, TAB_JOINT):
        for tab, opening in pairs(met):
            if opening.kind is SLOT or (opening.kind is POCKET and opening.takes):
                needs = _needs(settled, surroundings, opening, met.b.part, met.a.part)
                yield _Tight(
                    met=met,
                    part=met.b.part,
                    opening=opening,
                    entering=met.a.part,
                    where="at either end",
                    has=(opening.length.value - tab.width.value) / 2,
                    wants=needs.ends,
                    film=needs.ends_film,
                    damp=needs.ends_swelling,
                )


def _needs(
    settled: SettledPlan,
    surroundings: Surroundings,
    opening: SettledFeature,
    part: SettledPart,
    other: SettledPart,
) -> Needs:
    """Return what an opening needs for what goes in, whether or not it takes it by name."""
    if opening.room is not None:
        return opening.room.needs
    entering, into = (settled.sheet(each.sheet).stock for each in (other, part))
    sizes = other.thickness, opening.length.value
    return surroundings.needs(opening.kind, entering, into, sizes)


def _finding(settled: SettledPlan, each: _Tight) -> Finding:
    place = settled.plan.climate
    causes: list[Text] = []
    if each.film:
        causes.append(said("{} for film", clearance(each.film)))
    if each.damp and place:
        causes.append(said("{} for the damp of {}", clearance(each.damp), place.where))
    why: Text = said("{}, {}", *causes) if len(causes) > 1 else causes[0]
    message = said(
        "`{}` grows past its play in {}: {} {}, and it wants {}",
        *(each.entering.name, named(f"{each.part.name}.{each.opening.name}")),
        *(clearance(each.has), each.where, why),
    )
    fit = each.opening.room
    own = next((f for j, f in settled.plan.fits if j is each.met.joint and f is not None), None)
    if fit is not None and own is not None:
        advice: Text = said(
            "Write a purpose in place of the length, such as `fit: knock-down`: what film and damp "
            "want is added to it. Or state {}, with the play you want besides.",
            clearance(each.wants),
        )
        at = own.place
    else:
        advice = f"Write `takes: {each.entering.sheet}` in place of its size: that allows for both."
        at = each.opening.place
    return warning(
        "swells-past-play", message, at, advice, **about(settled, each.part, each.opening)
    )


@before(
    "sheet-too-damp",
    reason="Fibreboard and particleboard swell in damp air, stay swollen and lose their strength.",
    source="EN 1995-1-1, Table 3.1: no values for them in such a service class (from memory)",
    severity=Severity.WARNING,
)
def sheets_suit_the_place(stated: Stated) -> Iterator[Finding]:
    """Look for sheets of a material that is not for the place the thing lives in."""
    climate = stated.plan.climate
    for use in stated.plan.sheets if climate else ():
        stock = stated.stock.sheet(use.stock.name)
        if climate and stock and is_unfit(stock.family, climate):
            message = f"`{use.name}` is `{stock.name}`, which is not for {climate.where}"
            advice = "Take plywood for it, or state the `place` that it really lives in."
            yield warning("sheet-too-damp", message, use.place, advice, subject=use.name)


@after(
    "board-held-across",
    reason="A board moves across its grain, a sheet hardly does: held fast, the board splits.",
    source=_HANDBOOK,
    severity=Severity.WARNING,
)
def boards_may_move(settled: SettledPlan) -> Iterator[Finding]:
    """Look for boards that glue or screws hold across a part, so that they cannot move."""
    climate = settled.plan.climate or HEATED
    for board in settled.boards:
        movement = settled.stock.movement(board.stock.family)
        across = swelling_in(climate, movement).across
        if board.use.fixed and across * board.held_over > GIVES:
            yield _held(board, across, climate.where)


def _held(board: SettledBoard, across: float, where: str) -> Finding:
    fixed = board.use.fixed
    assert fixed is not None, "a board that is held says how"
    moves = across * board.held_over
    message = said(
        "`{}` is held by {} over {} of its width on `{}`, and moves by {} in {}",
        *(board.use.name, fixed.by, length("held", board.held_over), fixed.part.name),
        *(length("moves", moves), where),
    )
    advice = said(
        "Write `by: slotted holes`: slots across the board, {} longer than their screws are thick, "
        "and no glue.{}",
        length("longer", moves),
        _or_closer(across) if fixed.by == SCREWS else "",
    )
    return warning("board-held-across", message, fixed.place, advice, subject=board.use.name)


def _or_closer(across: float) -> Words:
    return said(" Or keep the screws within {} across it.", length("apart", GIVES / across))
