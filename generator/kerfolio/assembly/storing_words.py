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
from kerfolio.geometry.rigid import Vector

Row = tuple[str, str]

_NIOSH = "NIOSH lifting equation"


def whole_rows(
    pieces: Sequence[PosedPiece], stability: Stability, top: OnTop | None, reader: Reader
) -> tuple[Row, ...]:
    """Return how a thing is stored and carried; ``top`` how a second one stands on it."""
    rows = [*_beside(pieces, reader)]
    if top is not None:
        rows.append(("A second one on top of it", _on_top(top, reader)))
    rows.append(("Put together, carried by", carriers(stability.mass, stability.size, reader)))
    return tuple(rows)


def set_rows(pieces: Sequence[PosedPiece], mass: float, reader: Reader) -> tuple[Row, ...]:
    """Return how the pieces of a set are stored flat and carried; ``mass`` is theirs, kg."""
    long, short, high = laid_flat(pieces)
    return (
        ("Flat, all of it in one pile", size_text(pile_of(pieces), reader)),
        *_beside(pieces, reader),
        ("Flat, carried by", carriers(mass, (high, long, short), reader)),
    )


def _beside(pieces: Sequence[PosedPiece], reader: Reader) -> Sequence[Row]:
    """Return the size of the pile with small pieces side by side, where that is lower."""
    flat, pile = laid_flat(pieces), pile_of(pieces)
    if flat[2] >= pile[2]:
        return ()
    return (("Flat, small pieces side by side", size_text(flat, reader)),)


def _on_top(top: OnTop, reader: Reader) -> str:
    lift, saved = (size_text((each,), reader) for each in (top.lift, top.saved))
    if not top.rests:
        lower = f" It would sit {saved} lower than its height." if top.nests else ""
        return f"does not stay there by itself: clamp the two to each other.{lower}"
    if top.nests:
        return f"nests: it stands {lift} higher, which saves {saved}"
    return f"stacks: it stands {lift} higher, its full height"


def carriers(mass: float, size: Vector, reader: Reader) -> str:
    """Return how many persons carry what weighs ``mass`` kg and is so large, and by what rule."""
    count, alone = carried_by(mass, size), lifted(size)
    one, two = (load_pair(kg, reader)[0] for kg in (alone, 2 * LOAD_CONSTANT))
    if count == 1:
        return f"one person: up to {one} so far from the body ({_NIOSH})"
    why = f"over {size_text((LONG,), reader)} long"
    if mass > alone:
        why = f"over {one} so far from the body ({_NIOSH})" if alone else "too deep for one"
    if count == 2:
        return f"two persons: {why}"
    return f"more than two, or in pieces: over {two}, twice {load_pair(LOAD_CONSTANT, reader)[0]}"
