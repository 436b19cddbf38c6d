"""An order of putting together that the program finds itself."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from kerfolio.assembly.assembled import Assembled, BuildOrder, BuildStep, Move
from kerfolio.assembly.blocking import Blocking, blocking, members
from kerfolio.assembly.split import Split, core, group_of, split
from kerfolio.assembly.whole import Whole
from kerfolio.geometry.rigid import Vector


@dataclass(frozen=True, slots=True, kw_only=True)
class Deadlock:
    """Pieces that no straight moves put together: with any one gone, the others come apart.

    ``holds`` gives for each line of moving (unit vector; both ways along it) a shortest ring of
    pieces, each of which hits the next.
    """

    pieces: tuple[str, ...]
    holds: tuple[tuple[Vector, tuple[str, ...]], ...]


def find(assembled: Assembled, graphs: Blocking | None = None) -> BuildOrder | Deadlock:
    """Return an order in which all pieces come home along straight lines, or why there is none.

    The plan is parted in two again and again; the cheapest legal split is taken each time: small
    movers, along their joints, from above, off a base that stands by itself, few changes of
    direction. Lots made up beforehand come home as one body. Moves alike and one after another
    make one step. ``graphs`` are those of ``blocking`` where they are at hand. Straight, two-handed
    moves are judged exactly; tilting, turning and bending are not modelled.
    """
    known = blocking(assembled) if graphs is None else graphs
    bodies = [1 << each for each in range(len(known.labels))]
    if not bodies:
        return BuildOrder(steps=(), found=True)
    whole = Whole(assembled, known)
    tree = split(whole, bodies)
    if tree is None:
        return deadlock(known, bodies)
    stages: list[_Stage] = []
    for stage in _stages(whole, tree):
        if stages and _belong(whole, stages[-1], stage):
            stage = stages.pop().joined(stage)
        stages.append(stage)
    return BuildOrder(steps=_steps(known, stages), found=True)


def deadlock(graphs: Blocking, bodies: Sequence[int]) -> Deadlock:
    """Return who holds whom among bodies that do not come apart; bodies move only whole."""
    held = core(graphs, bodies)
    holds = [(graphs.ways[way], _ring(graphs, held, way)) for way in range(0, len(graphs.ways), 2)]
    return Deadlock(
        pieces=graphs.names(sum(held)),
        holds=tuple((way, tuple(graphs.labels[each] for each in ring)) for way, ring in holds),
    )


def _ring(graphs: Blocking, bodies: Sequence[int], way: int) -> tuple[int, ...]:
    """Return the shortest ring of the way's graph, named by the pieces that do the hitting."""
    rings = [_back_to(graphs, bodies, way, start) for start in range(len(bodies))]
    shortest = min((ring for ring in rings if ring), key=len)
    return tuple(next(members(bodies[each])) for each in shortest)


def _back_to(graphs: Blocking, bodies: Sequence[int], way: int, start: int) -> list[int]:
    """Return the shortest walk from a body back to itself along edges, by breadth."""
    walks, seen = [[start]], {start}
    for walk in walks:  # grows as it is walked
        hit = graphs.hit(bodies[walk[-1]], way)
        for each in range(len(bodies)):
            if not bodies[each] & hit:
                continue
            if each == start:
                return walk
            if each not in seen:
                seen.add(each)
                walks.append([*walk, each])
    return []


@dataclass(frozen=True, slots=True)
class _Stage:
    """Pieces set down or brought home: sets of one, and moves with the pieces as a set.

    ``begins`` marks the first stage of a lot that is made up apart.
    """

    added: tuple[int, ...]
    moves: tuple[tuple[int, Move], ...] = ()
    begins: bool = False

    def joined(self, other: _Stage) -> _Stage:
        """Return the stage in which both happen."""
        return _Stage((*self.added, *other.added), (*self.moves, *other.moves), self.begins)


def _stages(whole: Whole, tree: int | Split) -> Iterator[_Stage]:
    """Yield what happens, one piece or one move of a lot at a time, in order."""
    if isinstance(tree, int):
        yield _Stage((tree,))
        return
    yield from _stages(whole, tree.base)
    mover, base = group_of(tree.mover), group_of(tree.base)
    touching = whole.near(mover) & base
    home = ((mover, whole.move(mover, base, tree.way)),) if touching else ()
    if isinstance(tree.mover, int):
        yield _Stage((mover,), home)
        return
    first, *rest = _stages(whole, tree.mover)
    yield replace(first, begins=True)
    yield from rest
    if home:
        yield _Stage((), home)


def _belong(whole: Whole, before: _Stage, after: _Stage) -> bool:
    """Tell whether two stages make one step.

    They do when the later one carries home the lot just made, when it is the first to come on to
    a piece set down, and when both bring pieces of one part home along one way.
    """
    if not after.added:
        return True
    if after.begins:
        return False
    if not after.moves:
        return not before.moves
    if not before.moves:
        return len(before.added) == 1
    kinds = {whole.part(group) for group, _ in before.moves if group & (group - 1) == 0}
    ways = {move.direction for _, move in (*before.moves, *after.moves)}
    alone = all(group & (group - 1) == 0 for group, _ in before.moves)
    return alone and len(ways) == 1 and kinds == {whole.part(after.moves[0][0])}


def _steps(graphs: Blocking, stages: Sequence[_Stage]) -> tuple[BuildStep, ...]:
    steps: list[BuildStep] = []
    standing: tuple[str, ...] = ()
    for number, stage in enumerate(stages, 1):
        added = tuple(label for each in stage.added for label in graphs.names(each))
        moves = tuple(move for _, move in stage.moves)
        steps.append(BuildStep(number=number, standing=standing, added=added, moves=moves))
        standing = (*standing, *added)
    return tuple(steps)
