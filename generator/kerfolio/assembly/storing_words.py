"""What a reader is told of storing and carrying: rows for a table."""

from __future__ import annotations

from collections.abc import Sequence

from kerfolio.assembly.assembled import PosedPiece
from kerfolio.assembly.stability import Stability, pile_of
from kerfolio.assembly.storing import (
    LOAD_CONSTANT,
    LONG,
    OnTop,
    carried_by,
    laid_flat,
    lifted,
)
from kerfolio.basis.lengths import size_text
from kerfolio.basis.masses import load_pair
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.geometry.rigid import Vector

Row = tuple[str, str]


def whole_rows(
    pieces: Sequence[PosedPiece], stability: Stability, top: OnTop | None, reader: Reader
) -> tuple[Row, ...]:
    """Return how a thing is stored and carried; ``top`` how a second one stands on it."""
    rows = [*_beside(pieces, reader)]
    if top is not None:
        rows.append((say(reader, "storing-second"), _on_top(top, reader)))
    carried = carriers(stability.mass, stability.size, reader)
    rows.append((say(reader, "storing-carried"), carried))
    return tuple(rows)


def set_rows(pieces: Sequence[PosedPiece], mass: float, reader: Reader) -> tuple[Row, ...]:
    """Return how the pieces of a set are stored flat and carried; ``mass`` is theirs, kg."""
    long, short, high = laid_flat(pieces)
    return (
        (say(reader, "storing-flat"), size_text(pile_of(pieces), reader)),
        *_beside(pieces, reader),
        (say(reader, "storing-flat-carried"), carriers(mass, (high, long, short), reader)),
    )


def _beside(pieces: Sequence[PosedPiece], reader: Reader) -> Sequence[Row]:
    """Return the size of the pile with small pieces side by side, where that is lower."""
    flat, pile = laid_flat(pieces), pile_of(pieces)
    if flat[2] >= pile[2]:
        return ()
    return ((say(reader, "storing-beside"), size_text(flat, reader)),)


def _on_top(top: OnTop, reader: Reader) -> str:
    lift, saved = (size_text((each,), reader) for each in (top.lift, top.saved))
    if not top.rests:
        clamped = say(reader, "storing-clamp")
        return f"{clamped} {say(reader, 'storing-lower', saved=saved)}" if top.nests else clamped
    if top.nests:
        return say(reader, "storing-nests", lift=lift, saved=saved)
    return say(reader, "storing-stacks", lift=lift)


def carriers(mass: float, size: Vector, reader: Reader) -> str:
    """Return how many persons carry what weighs ``mass`` kg and is so large, and by what rule."""
    count, alone = carried_by(mass, size), lifted(size)
    one, two = (load_pair(kg, reader)[0] for kg in (alone, 2 * LOAD_CONSTANT))
    if count == 1:
        return say(reader, "storing-one", mass=one)
    if count > 2:
        half = load_pair(LOAD_CONSTANT, reader)[0]
        return say(reader, "storing-more", mass=two, half=half)
    if mass <= alone:
        return say(reader, "storing-two-long", long=size_text((LONG,), reader))
    return say(reader, "storing-two-heavy", mass=one) if alone else say(reader, "storing-two-deep")
