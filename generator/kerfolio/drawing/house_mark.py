"""The mark of a workshop without a logo: two plates whose seam is jointed, an initial cut in each.

It is made from the workshop's name alone, in cells of a grid, so that it is sharp at any size.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator

from kerfolio.drawing.vocabulary import Drawing, Ink, Stroke
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.shapes import CornerPoint, polygon

SIDE = 16.0
"""The plates together are a square of this side, mm; only proportions matter."""

_CUTS = {
    "A": "010 101 111 101 101",
    "B": "110 101 110 101 110",
    "C": "011 100 100 100 011",
    "D": "110 101 101 101 110",
    "E": "111 100 110 100 111",
    "F": "111 100 110 100 100",
    "G": "011 100 101 101 011",
    "H": "101 101 111 101 101",
    "I": "111 010 010 010 111",
    "J": "001 001 001 101 010",
    "K": "101 101 110 101 101",
    "L": "100 100 100 100 111",
    "M": "101 111 111 101 101",
    "N": "110 101 101 101 101",
    "O": "111 101 101 101 111",
    "P": "110 101 110 100 100",
    "Q": "111 101 101 111 001",
    "R": "110 101 110 101 101",
    "S": "011 100 010 001 110",
    "T": "111 010 010 010 010",
    "U": "101 101 101 101 111",
    "V": "101 101 101 101 010",
    "W": "101 101 111 111 101",
    "X": "101 101 010 101 101",
    "Y": "101 101 010 010 010",
    "Z": "111 001 010 100 111",
    "0": "010 101 101 101 010",
    "1": "110 010 010 010 111",
    "2": "110 001 010 100 111",
    "3": "110 001 010 001 110",
    "4": "101 101 111 001 001",
    "5": "111 100 110 001 110",
    "6": "011 100 110 101 010",
    "7": "111 001 010 010 010",
    "8": "010 101 010 101 010",
    "9": "010 101 011 001 110",
}
"""Letters as cells cut out of a plate, three across and five down."""

_LITTLE = frozenset({"a", "an", "and", "at", "by", "for", "in", "of", "on", "the", "to"})
_CELL = (1.5, 2.0)
_FOOT = 3.0
"""From the lower edge of the plates to the letters, mm."""

_FINGERS = (1, -1, 1, -1, 1)
_REACH, _KERF, _ROUND = 0.75, 0.5, 1.6
"""How far fingers reach over the middle, the saw's gap between the plates, their corners; mm."""


def house_mark(name: str) -> Drawing:
    """Return the mark of a workshop's name."""
    left, right = initials(name)
    return Drawing(
        box=(0.0, 0.0, SIDE, SIDE),
        items=(
            _plate(_left_plate(), left, 1.4, Ink.ACCENT),
            _plate(_right_plate(), right, SIDE - 1.4 - 3 * _CELL[0], Ink.INK),
        ),
        title=name,
    )


def initials(name: str) -> tuple[str, str]:
    """Return the two signs of a name that are cut: of its first words, or of its only one.

    Little words are passed over, accents fall away, and a sign that has no cells is left out.
    """
    words = name.split()
    said = [each for each in words if each.casefold() not in _LITTLE] or words
    first = [letters for each in said if (letters := _cut_letters(each))]
    found = first[0] if len(first) == 1 else [each[0] for each in first]
    one, other = (*found, "", "")[:2]
    return one, other


def _cut_letters(word: str) -> list[str]:
    """Return the signs of a word that there are cells for."""
    return [each for each in unicodedata.normalize("NFKD", word).upper() if each in _CUTS]


def _plate(outline: Contour, letter: str, x: float, fill: Ink) -> Stroke:
    return Stroke(contour=outline, holes=tuple(_letter(letter, x)), width=None, fill=fill)


def _left_plate() -> Contour:
    return polygon([(0, SIDE, _ROUND), (0, 0, _ROUND), *_seam(-_KERF / 2)])


def _right_plate() -> Contour:
    return polygon([(SIDE, 0, _ROUND), (SIDE, SIDE, _ROUND), *reversed(_seam(_KERF / 2))])


def _seam(away: float) -> list[CornerPoint]:
    """Return the corners of the joint from bottom to top, set off ``away`` to the right."""
    step, found = SIDE / len(_FINGERS), []
    for row, side in enumerate(_FINGERS):
        x = SIDE / 2 + side * _REACH + away
        low = row * step - side * away if row else 0.0
        high = (row + 1) * step + side * away if row + 1 < len(_FINGERS) else SIDE
        found += [(x, low, 0.0), (x, high, 0.0)]
    return found


def _letter(letter: str, x: float) -> Iterator[Contour]:
    """Yield the edges of the cells of a letter that stands at ``x``: around it and its islands."""
    rows = _CUTS.get(letter, "").split()
    cells = {
        (column, len(rows) - 1 - row)
        for row, line in enumerate(rows)
        for column, sign in enumerate(line)
        if sign == "1"
    }
    wide, high = _CELL
    for ring in _rings(cells):
        yield Contour(tuple((x + a * wide, _FOOT + b * high, 0.0) for a, b in ring))


Corner = tuple[int, int]


def _rings(cells: set[Corner]) -> Iterator[list[Corner]]:
    """Yield the closed lines between cells and what is none, filled area on the left."""
    ways: dict[Corner, list[Corner]] = {}
    for x, y in sorted(cells):
        around = [(x, y), (x + 1, y), (x + 1, y + 1), (x, y + 1)]
        beside = [(x, y - 1), (x + 1, y), (x, y + 1), (x - 1, y)]
        for a, b, other in zip(around, [*around[1:], around[0]], beside, strict=True):
            if other not in cells:
                ways.setdefault(a, []).append(b)
    while ways:
        start = at = min(ways)
        ring: list[Corner] = []
        while True:
            ring.append(at)
            onward = ways[at].pop()
            if not ways[at]:
                del ways[at]
            at = onward
            if at == start:
                break
        yield ring
