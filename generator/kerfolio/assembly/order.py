"""The maker's order of putting together, tried move by move, and how the whole comes apart.

A piece comes home along one straight line past all that it will touch. What is already joined is
one body; bodies that nothing joins yet lie beside each other and are in nobody's way until a piece
joins them. Not modelled: tilting in, turning, bending, and weight. A piece that would slide a
little and then turn away counts as blocked, so that a fault says "not along a straight line", not
"never".
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from kerfolio.assembly.assembled import Assembled, BuildOrder, BuildStep, Move
from kerfolio.assembly.blocking import Blocking, blocking
from kerfolio.assembly.directions import opposite
from kerfolio.assembly.found import Deadlock, find
from kerfolio.assembly.split import core, moves, split, stuck
from kerfolio.assembly.whole import Whole
from kerfolio.geometry.rigid import Vector

Steps = Sequence[Sequence[str]]
"""The pieces that each step adds, by label."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BlockedStep:
    """Pieces that no straight move brings home in their step.

    Along ``direction`` (unit, the way they would move; the least bad one) ``blockers`` stand in
    their way. ``proposal`` is an order of steps that works, empty when none is found; in it the
    pieces were only added sooner, just before the piece ``before``, or, where that is empty, the
    whole order is another.
    """

    number: int
    pieces: tuple[str, ...]
    blockers: tuple[str, ...]
    direction: Vector
    before: str = ""
    proposal: tuple[tuple[str, ...], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class TakenApart:
    """How the finished whole comes apart without glue.

    ``moves`` undo the order, last move first; each goes the other way than it came. ``free`` are
    the pieces that can leave the finished whole alone, each with the ways it can do so, ``captive``
    those that no straight moves set free. What hardware, glue or friction holds besides is not
    known here.
    """

    moves: tuple[Move, ...]
    free: tuple[tuple[str, tuple[Vector, ...]], ...]
    captive: tuple[str, ...]

    @property
    def first(self) -> tuple[str, ...]:
        """The pieces that can leave the finished whole alone."""
        return tuple(label for label, _ in self.free)


def verify(
    assembled: Assembled, steps: Steps, graphs: Blocking | None = None
) -> tuple[BuildOrder, tuple[BlockedStep, ...]]:
    """Return the moves that bring each step's new pieces home, and the steps where none do.

    Pieces come in the order in which their step lists them, each alone, if that goes; else in
    another order, or some as one body, or the standing pieces move. A piece that touches nothing
    there is set down; so a step may begin a lot of its own, which a later step carries along. A
    piece that is blocked still gets a move, the least bad one, so that the step can be shown.
    Labels without a place, and those named before, are passed over. ``graphs`` are those of
    ``blocking`` where they are at hand.
    """
    known = blocking(assembled) if graphs is None else graphs
    whole = Whole(assembled, known)
    listed = _once(known, steps)
    order, faults = _built(whole, listed)
    mended = [_mended(whole, listed, fault) for fault in faults]
    if all(fault.proposal for fault in mended):
        return order, tuple(mended)
    other = find(assembled, known)
    if isinstance(other, Deadlock):
        return order, tuple(mended)
    proposal = tuple(step.added for step in other.steps)
    return order, tuple(
        fault if fault.proposal else replace(fault, proposal=proposal) for fault in mended
    )


def take_apart(
    assembled: Assembled, order: BuildOrder, graphs: Blocking | None = None
) -> TakenApart:
    """Return how a plan that is put together in some order comes apart again."""
    known = blocking(assembled) if graphs is None else graphs
    every = [1 << each for each in range(len(known.labels))]
    back = [
        replace(move, direction=opposite(move.direction))
        for step in reversed(order.steps)
        for move in reversed(step.moves)
    ]
    return TakenApart(
        moves=tuple(back),
        free=tuple(_free(known, every)),
        captive=known.names(sum(core(known, every))),
    )


def _free(graphs: Blocking, bodies: Sequence[int]) -> Iterator[tuple[str, tuple[Vector, ...]]]:
    """Yield the bodies of which each can leave the others alone, with the ways it can."""
    if len(bodies) < 2:
        return
    for body in bodies:
        numbers = range(len(graphs.ways))
        ways = [graphs.ways[e] for e in numbers if graphs.carried(body, e, bodies) == body]
        if ways:
            (label,) = graphs.names(body)
            yield label, tuple(ways)


def _once(graphs: Blocking, steps: Steps) -> tuple[tuple[str, ...], ...]:
    """Return the steps with every label that has a place where it is named first."""
    known, seen = set(graphs.labels), set[str]()
    found = []
    for step in steps:
        new = [each for each in dict.fromkeys(step) if each in known and each not in seen]
        seen.update(new)
        found.append(tuple(new))
    return tuple(found)


def _built(whole: Whole, steps: Sequence[tuple[str, ...]]) -> tuple[BuildOrder, list[BlockedStep]]:
    """Put steps together; their labels are known and each is named once."""
    made: list[BuildStep] = []
    faults: list[BlockedStep] = []
    bench = _Bench()
    for number, step in enumerate(steps, 1):
        if not step:
            continue
        new = [whole.graphs.group([label]) for label in step]
        after = _added(whole, bench, new, number)
        standing = tuple(label for before in steps[: number - 1] for label in before)
        made.append(BuildStep(number=number, standing=standing, added=step, moves=after.moves))
        faults += after.faults
        bench = replace(after, moves=(), faults=())
    return BuildOrder(steps=tuple(made)), faults


@dataclass(frozen=True, slots=True)
class _Bench:
    """What lies there: bodies that nothing joins to each other, and the pieces as they came.

    ``last`` is the way out of the move before; moves and faults are those of the step at hand.
    """

    came: tuple[int, ...] = ()
    bodies: tuple[int, ...] = ()
    last: int | None = None
    moves: tuple[Move, ...] = ()
    faults: tuple[BlockedStep, ...] = ()

    def heaps(self, whole: Whole, new: Sequence[int]) -> list[list[int]]:
        """Return what new pieces bring together: they, and the bodies that they touch."""
        every = [*self.bodies, *new]
        heaps = [[each for each in every if each & lot] for lot in whole.lots(every)]
        return [heap for heap in heaps if any(each in new for each in heap)]

    def joined(self, heap: Sequence[int], made: Sequence[tuple[int, Move]]) -> _Bench:
        """Return the bench with a heap made one body by moves."""
        return replace(
            self,
            came=(*self.came, *(each for each in heap if each not in self.bodies)),
            bodies=(*(each for each in self.bodies if each not in heap), sum(heap)),
            last=made[-1][0] if made else self.last,
            moves=(*self.moves, *(move for _, move in made)),
        )


def _added(whole: Whole, bench: _Bench, new: Sequence[int], number: int) -> _Bench:
    """Return the bench after a step: each piece alone as listed, else however it goes."""
    for lots in ([[piece] for piece in new], [new]):
        done = _brought(whole, bench, lots)
        if done is not None:
            return done
    return _forced(whole, bench, new, number)


def _brought(whole: Whole, bench: _Bench, lots: Sequence[Sequence[int]]) -> _Bench | None:
    """Return the bench with lots of pieces added in turn, None when some cannot come home."""
    for lot in lots:
        for heap in bench.heaps(whole, lot):
            tree = split(whole, heap, sum(bench.bodies), bench.last)
            if tree is None:
                return None
            bench = bench.joined(heap, list(moves(whole, tree)))
    return bench


def _forced(whole: Whole, bench: _Bench, new: Sequence[int], number: int) -> _Bench:
    """Return the bench with each piece added as listed, whatever stands in its way."""
    for piece in new:
        for heap in bench.heaps(whole, [piece]):
            tree = split(whole, heap, sum(bench.bodies), bench.last)
            if tree is not None:
                bench = bench.joined(heap, list(moves(whole, tree)))
                continue
            mover, way = _least_bad(whole, bench, heap, piece)
            hit = whole.graphs.hit(mover, way) & sum(heap)
            fault = BlockedStep(
                number=number,
                pieces=whole.graphs.names(mover),
                blockers=whole.graphs.names(hit),
                direction=opposite(whole.graphs.ways[way]),
            )
            home = whole.move(mover, sum(heap) & ~mover & ~hit, way)
            bench = bench.joined(heap, [(way, home)])
            bench = replace(bench, faults=(*bench.faults, fault))
    return bench


def _least_bad(whole: Whole, bench: _Bench, heap: Sequence[int], piece: int) -> tuple[int, int]:
    """Return (what should move, way out) for a piece that cannot join its heap.

    The best way lies along most of the joints, then meets the fewest pieces, then those that came
    last.
    """
    graphs = whole.graphs
    held = stuck(graphs, heap)
    mover = piece if piece in held else held[-1]
    base = sum(heap) & ~mover

    def badness(way: int) -> tuple[int, int, int, int]:
        hit = graphs.hit(mover, way) & base
        first = min((place for place, each in enumerate(bench.came) if each & hit), default=0)
        return whole.askew(mover, base, way), hit.bit_count(), -first, way

    return mover, min(range(len(graphs.ways)), key=badness)


def _mended(whole: Whole, steps: Sequence[tuple[str, ...]], fault: BlockedStep) -> BlockedStep:
    """Return a fault with its pieces added just before what stands in their way, if that works."""
    ranked = [label for step in steps for label in step]
    for before in sorted(fault.blockers, key=ranked.index):
        sooner = _sooner(steps, fault.pieces, before)
        if not _built(whole, sooner)[1]:
            return replace(fault, before=before, proposal=tuple(each for each in sooner if each))
    return fault


def _sooner(
    steps: Sequence[tuple[str, ...]], pieces: tuple[str, ...], before: str
) -> list[tuple[str, ...]]:
    """Return steps with pieces moved to just before another."""
    found = []
    for step in steps:
        kept = [label for label in step if label not in pieces]
        if before in kept:
            kept[kept.index(before) : kept.index(before)] = pieces
        found.append(tuple(kept))
    return found
