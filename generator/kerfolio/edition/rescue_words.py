"""What saves a piece, in words: how it is laid, where it lies, what it is lined with."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from kerfolio.basis.cutting_lengths import chosen_in
from kerfolio.basis.digits import digits
from kerfolio.basis.lengths import size_in
from kerfolio.basis.reader import Reader
from kerfolio.basis.said import stated_name
from kerfolio.basis.words import counted, listed
from kerfolio.shop.shims import SLIPS, Shim, made_of

LAID = (
    "Lay the piece as the file shows it, show face up, its lower edge along a fence and its left "
    "edge at a stop: their corner is 0,0. Zero z as for the first cut, and try it above the piece."
)
GLUED = (
    "Glue each to one wall of its opening, or to what goes in there, let it dry and trim it flush."
)


def offcut_words(part: str, turn: float) -> str:
    """Return how a part lies on its offcut."""
    turned = f"turned by {digits(turn)} degrees" if turn else "as drawn"
    return f"`{part}` lies {turned}, in the lower left of the offcut."


def slip_words(shims: Iterable[Shim], loose: float, reader: Reader) -> Iterator[str]:
    """Yield what lines a joint that is ``loose`` mm too loose, a line each."""
    thick = dict(SLIPS)
    layers = listed(
        [
            f"{counted(count, 'layer')} of {name} ({chosen_in(thick[name], reader)})"
            for name, count in made_of(loose)
        ]
    )
    yield f"Slips of about {chosen_in(loose, reader)}: {layers}, as each usually is thick."
    rows: dict[tuple[str, float, float], int] = {}
    for each in shims:
        row = stated_name(each.feature), each.length, each.width
        rows[row] = rows.get(row, 0) + each.count
    for (name, *sides), count in rows.items():
        yield f"{name}: {count} of {size_in(sides, reader)}"
    yield GLUED
