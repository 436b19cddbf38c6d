"""What saves a piece, in words: how it is laid, where it lies, what it is lined with."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from kerfolio.basis.cutting_lengths import chosen_in
from kerfolio.basis.lengths import size_in
from kerfolio.basis.reader import Reader
from kerfolio.basis.said import stated_name
from kerfolio.basis.saying import listed, say
from kerfolio.shop.shims import SLIPS, Shim, made_of


def laid_words(reader: Reader) -> str:
    """Return how a piece is laid for a second cut."""
    return say(reader, "rescuewords-laid")


def glued_words(reader: Reader) -> str:
    """Return how slips are glued in."""
    return say(reader, "rescuewords-glued")


def slip_title(name: str, reader: Reader) -> str:
    """Return what slips of ``SLIPS`` are called within a sentence."""
    return say(reader, f"rescuewords-slip-{name}")


def offcut_words(part: str, turn: float, reader: Reader) -> str:
    """Return how a part lies on its offcut."""
    if not turn:
        return say(reader, "rescuewords-offcut", part=part)
    return say(reader, "rescuewords-offcut-turned", part=part, turn=reader.digits(turn, 4))


def slip_words(shims: Iterable[Shim], loose: float, reader: Reader) -> Iterator[str]:
    """Yield what lines a joint that is ``loose`` mm too loose, a line each."""
    thick = dict(SLIPS)
    layers = [
        say(
            reader,
            "rescuewords-layers",
            count=count,
            slip=slip_title(name, reader),
            thickness=chosen_in(thick[name], reader),
        )
        for name, count in made_of(loose)
    ]
    about = chosen_in(loose, reader)
    yield say(reader, "rescuewords-slips", about=about, layers=listed(reader, layers))
    rows: dict[tuple[str, float, float], int] = {}
    for each in shims:
        row = stated_name(each.feature), each.length, each.width
        rows[row] = rows.get(row, 0) + each.count
    for (name, *sides), count in rows.items():
        size = size_in(sides, reader)
        yield say(reader, "rescuewords-slip", name=name, count=count, size=size)
    yield glued_words(reader)
