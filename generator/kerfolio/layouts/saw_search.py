"""The search for the fewest sheets, then the fewest settings of the fence."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from random import Random

from kerfolio.layouts.saw_levels import Levels, Stock, filled, in_order

TRIES, TIDYING = (20_000, 600), (4_000, 100)
"""How often some sheets are laid out anew at most, and for each piece: for fewer sheets, then for
fewer settings."""

_MOST = 4
"""How many sheets at most are laid out anew at once."""

Rank = Callable[[Sequence[Levels]], tuple[int, ...]]


def fewest_sheets(
    stock: Stock, tries: int | None = None, tidying: int | None = None
) -> list[Levels]:
    """Return the sheets of all pieces, in order: the fewest, then with the fewest settings.

    Every piece must fit an empty sheet. Begins with pieces in falling order of some size, then
    lays the pieces of a few sheets out anew in an order changed at random, and keeps what is no
    worse; the generator's seed is fixed and the tries are counted.
    """
    random, count = Random(0), len(stock.sizes)
    best = min(_begun(stock), key=_by_waste)
    least = bound(stock)
    for _ in range(min(TRIES[0], TRIES[1] * count) if tries is None else tries):
        if len(best) <= least:
            break
        best = _mended(stock, best, random, _by_waste)
    for _ in range(min(TIDYING[0], TIDYING[1] * count) if tidying is None else tidying):
        best = _mended(stock, best, random, _by_settings)
    return [in_order(each) for each in sorted(best, key=lambda each: -each.area)]


def bound(stock: Stock) -> int:
    """Return a number of sheets that nothing can undercut.

    By area, or by pieces longer and wider than half a sheet whichever way they lie: no two of
    those share a sheet.
    """
    pieces = range(len(stock.sizes))
    x, y = stock.room
    area = -(-sum(stock.area(each) for each in pieces) // (x * y))
    large = sum(all(2 * w > x and 2 * h > y for w, h in ways) for ways in stock.sizes)
    return max(area, large)


def _longest(stock: Stock, piece: int) -> tuple[int, ...]:
    size = stock.sizes[piece][0]
    return max(size), min(size)


def _widest(stock: Stock, piece: int) -> tuple[int, ...]:
    return stock.sizes[piece][0]


def _highest(stock: Stock, piece: int) -> tuple[int, ...]:
    return stock.sizes[piece][0][::-1]


def _largest(stock: Stock, piece: int) -> tuple[int, ...]:
    return (stock.area(piece),)


_ORDERS = (_longest, _widest, _highest, _largest)


def _begun(stock: Stock) -> list[list[Levels]]:
    pieces = range(len(stock.sizes))
    return [
        filled(stock, sorted(pieces, key=lambda n: order(stock, n), reverse=True), turns)
        for order in _ORDERS
        for turns in ((False,), (True,), (False, True))
    ]


def _by_waste(sheets: Sequence[Levels]) -> tuple[int, ...]:
    """Rank by number, then by how unevenly they are filled: so one sheet runs empty."""
    return len(sheets), -sum(sheet.area**2 for sheet in sheets)


def _by_settings(sheets: Sequence[Levels]) -> tuple[int, ...]:
    """Rank by number, by settings, by cuts; rather ripped first; then by what strips take up."""
    return (
        len(sheets),
        sum(sheet.settings for sheet in sheets),
        sum(sheet.cuts for sheet in sheets),
        sum(sheet.turned for sheet in sheets),
        sum(sheet.used for sheet in sheets),
    )


def _mended(stock: Stock, sheets: list[Levels], random: Random, rank: Rank) -> list[Levels]:
    """Lay the pieces of a few sheets out anew; return the better."""
    picked = _some(len(sheets), 1 + int(random.random() * _MOST), random)
    old = [sheets[index] for index in picked]
    pieces = [piece for sheet in old for piece in sheet.pieces]
    order = _shaken(stock, pieces, random)
    turns = [random.random() < 0.5 for _ in picked]
    made = filled(stock, order, turns, len(old))
    if made and rank(made) <= rank(old):
        return [*(each for n, each in enumerate(sheets) if n not in picked), *made]
    return sheets


def _shaken(stock: Stock, pieces: Sequence[int], random: Random) -> list[int]:
    """Return pieces in falling order of some size, each moved by a random way."""
    order = _ORDERS[int(random.random() * len(_ORDERS))]
    swing = random.random() * len(pieces)
    ranked = sorted(pieces, key=lambda piece: order(stock, piece), reverse=True)
    places = {piece: place + swing * random.random() for place, piece in enumerate(ranked)}
    return sorted(pieces, key=places.__getitem__)


def _some(count: int, most: int, random: Random) -> list[int]:
    left = list(range(count))
    some: list[int] = []
    while left and len(some) < most:
        some.append(left.pop(int(random.random() * len(left))))
    return some
