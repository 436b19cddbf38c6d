"""What may be misplaced where all joints agree and pieces need the same space all the same.

A feature that no loop of joints holds in some direction may be off there, and nothing tells of it
but pieces that end up in each other. So what would move these out of each other is looked for: a
length or a depth that is off by as much, or a set that was stated on the opposite edge.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import partial

from kerfolio.assembly.amended import settled_with
from kerfolio.assembly.blame import FURTHEST, Blame, Culprit
from kerfolio.assembly.ends import pieces_of
from kerfolio.assembly.extent import corners, reach
from kerfolio.assembly.go_together import Clash
from kerfolio.assembly.hypotheses import Hypothesis, Slip
from kerfolio.assembly.links import Link, links_of, root_of
from kerfolio.assembly.other_edges import from_other_edges
from kerfolio.assembly.pairing import gaps_in, pairings_of, walked
from kerfolio.assembly.placing import walk
from kerfolio.assembly.posing import assembled_of, panels_of
from kerfolio.assembly.ranking import ranked
from kerfolio.assembly.regular import regularity_of
from kerfolio.assembly.standing import uprightness
from kerfolio.assembly.suspects import put_right, suspects_of
from kerfolio.assembly.trying import Standing, standing_of
from kerfolio.assembly.verdicts import charge, is_length
from kerfolio.basis.thickness import read_off
from kerfolio.geometry.rigid import Rigid, Vector, between, cross, dot, length, scaled
from kerfolio.settling.settled import SettledPlan

_MOST = 8
"""Of so many lengths the pieces are looked at."""

_STIRS = 0.5
"""What moves by less, mm, where something is moved by 1 mm, is not moved out by that."""

_ALONG = 0.9
"""The cosine, at least, between two ways of which one runs along the other."""

_STANDS = 1.0
"""So much more area, mm2, stands as it is drawn where more of the whole does."""


def misplaced(settled: SettledPlan, clashes: Sequence[Clash]) -> tuple[Hypothesis, ...]:
    """Return what may be off so that pieces are in each other, the likeliest first.

    With each of them all joints agree and nothing is in anything. All pieces must have a place,
    and all joints agree as they are. An edge is told where more of the whole then stands as it is
    drawn, and before lengths.
    """
    links = links_of(settled)[0]
    root = root_of(links)
    parts = {link.a.part.name for link in links} | {link.b.part.name for link in links}
    poses = walk(links, root)[0].poses

    def upright(changed: SettledPlan, at: Mapping[str, Rigid]) -> float:
        return uprightness(at, pieces_of(changed), settled.plan.standing)

    def standing(each: Hypothesis) -> tuple[SettledPlan, Standing | None]:
        changed = each.change(settled)
        made = standing_of(changed, root, len(links), parts)
        return changed, made if made is not None and made.is_sound else None

    now = upright(settled, poses)
    better: list[tuple[float, Hypothesis]] = []
    for each in from_other_edges(settled, links):
        changed, made = standing(each)
        gained = upright(changed, made.poses) - now if made is not None else 0.0
        if gained > _STANDS:
            better.append((-gained, each))
    moved = ranked(_moved(settled, links, root, clashes), regularity_of(settled))
    lengths = [each for each in map(_by_amount, moved[:_MOST]) if standing(each)[1] is not None]
    return (*(each for _, each in sorted(better, key=lambda pair: pair[0])), *lengths)


def _moved(
    settled: SettledPlan, links: Sequence[Link], root: str, clashes: Sequence[Clash]
) -> list[Blame]:
    """Return the features that, moved far enough, bring all pieces out of each other.

    Nothing is moved along the line in which two pieces cross by more than they are in each other:
    that mends nothing, it only clears away.
    """
    best = walk(links, root)[0]
    pairings = pairings_of(links, best.ways, best.poses)
    pieces = assembled_of(settled, best.poses, panels_of(settled)).pieces
    points = {each.label: corners(each) for each in pieces}
    found = []
    for suspect in suspects_of(pairings, links):
        for by in ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0)):
            then = walked(put_right(suspect, by, pairings), root)
            for mm in _amounts(clashes, best.poses, then, points):
                if abs(mm) < max(suspect.part.size):
                    there = (by[0] * mm, by[1] * mm, 0.0)
                    right = put_right(suspect, there, pairings)
                    poses = walked(right, root)
                    culprit = Culprit(suspect=suspect, by=there, gaps=())
                    if not gaps_in(right, poses):
                        found.append(Blame(culprits=(culprit,), poses=poses))
    return found


def _amounts(
    clashes: Sequence[Clash],
    now: Mapping[str, Rigid],
    then: Mapping[str, Rigid],
    points: Mapping[str, Sequence[Vector]],
) -> tuple[float, ...]:
    """Return how much more than by 1 mm, as ``then``, forward or back, parts all that clashes, mm.

    Nothing where some of it does not move against each other.
    """
    forward, back = 0.0, 0.0
    for each in clashes:
        if not {each.a, each.b} <= set(then):
            return ()
        was, is_ = (poses[each.a].inverse.point(poses[each.b].origin) for poses in (now, then))
        step = now[each.a].vector(between(was, is_))
        if length(step) < _STIRS:
            return ()
        way = scaled(step, 1 / length(step))
        (low, high), (least, most) = reach(points[each.a], way), reach(points[each.b], way)
        line = cross(now[each.a].z, now[each.b].z)
        if abs(dot(way, line)) > _ALONG and most - low > FURTHEST * each.depth < high - least:
            return ()
        forward = max(forward, (high - least) / length(step))
        back = max(back, (most - low) / length(step))
    return read_off(forward), -read_off(back)


def _by_amount(blame: Blame) -> Hypothesis:
    culprit = blame.culprits[0]
    suspect = culprit.suspect
    return Hypothesis(
        slip=Slip.MISPLACED,
        words=charge(culprit),
        cure="Nothing is in anything else once this is put right.",
        place=suspect.place,
        subject=suspect.part.name if is_length(culprit) else suspect.name,
        parts=frozenset((suspect.part.name,)),
        change=partial(_put_right, culprit=culprit),
    )


def _put_right(settled: SettledPlan, culprit: Culprit) -> SettledPlan:
    return settled_with(settled, (culprit,)) or settled
