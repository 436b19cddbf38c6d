"""Finds fitted files: from what is written at some points to texts that hold at all of them.

In a box of the range a file's slots are found from its numbers at the least corner and at one step
along each axis. Then it is written at other points of the box: at corners, and at one well inside
that chance picks. Where its structure is another there, or a number off, the box is cut in two and
each half is found for itself.
"""

from __future__ import annotations

import random
import re
from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import product
from math import inf

from kerfolio.basis.digits import rounded
from kerfolio.basis.style import Style, told_as
from kerfolio.fitted.fill import value_of
from kerfolio.fitted.form import (
    Cell,
    Fitted,
    FittedFile,
    Number,
    Point,
    Slot,
    Text,
    Within,
    trimmed,
)
from kerfolio.fitted.recorder import Draft, Recorded

MOST_CELLS = 12
"""Of one file: more say that something in it follows the numbers neither in steps nor in lines."""

_STILL = 1e-9
"""By which a number may move over a whole box and still stand still: mm, or a ratio."""

_STEPS_OFF = 20
"""Steps of the last decimal by which a slot may be off where it is not quite linear: 0.002 mm."""

_LONG = 60
"""Signs from which on words that several texts share are kept apart, to stand once."""

_LONG_LINE = re.compile(r"([^\n]{100,})")
"""A line that is looked at by itself: a font in a file of pages, say."""

Draw = Callable[[Point], Sequence[Draft]]
"""Returns every file of a plan at a point, in the same order at all of them."""

Values = tuple[float | None, ...]
"""A point: a value for each number in order."""


class CellsError(ValueError):
    """Says that a file cannot be fitted."""


class _OtherError(Exception):
    """Carries a point at which the structure is another."""

    def __init__(self, at: Values) -> None:
        super().__init__(at)
        self.at = at


class _BentError(Exception):
    """Carries the place of the number along which a text is bent most."""

    def __init__(self, place: int) -> None:
        super().__init__(place)
        self.place = place


@dataclass(frozen=True, slots=True)
class _Box:
    """A box of the range: least and most of each number, None where there is none of it."""

    numbers: tuple[Number, ...]
    sides: tuple[Within, ...]

    @property
    def long(self) -> tuple[int, ...]:
        """The places of the numbers that may differ."""
        pairs = enumerate(self.sides)
        return tuple(place for place, side in pairs if side is not None and side[0] < side[1])

    def corner(self, most: Sequence[int] = ()) -> Values:
        """Return the corner with the most of these numbers and the least of all others."""
        return tuple(
            None if side is None else side[place in most] for place, side in enumerate(self.sides)
        )

    def within(self, share: Callable[[], float]) -> Values:
        """Return a point at a share of the way along each side."""
        return tuple(
            None if side is None else n.exact(side[0] + share() * (side[1] - side[0]))
            for n, side in zip(self.numbers, self.sides, strict=True)
        )

    def checks(self, *, linear: bool) -> Iterator[Values]:
        """Yield points besides the least corner and its neighbours: corners and one inside.

        Numbers of one kind (all thicknesses, all cutters) are at their most together. Of what is
        ``linear`` as it is made, the farthest corner and the one inside are enough.
        """
        kinds = {self.numbers[place].name.split(".")[0] for place in self.long}
        for kind in () if linear else sorted(kinds):
            yield self.corner([p for p in self.long if self.numbers[p].name.startswith(kind)])
        yield self.corner(self.long)
        luck = random.Random(repr(self.sides))
        yield self.within(lambda: luck.uniform(0.25, 0.75))

    def cut(self, place: int, at: float) -> tuple[_Box, _Box]:
        """Return the part up to a value of a number, and the part from the next value on."""
        side, decimals = self.sides[place], self.numbers[place].decimals
        assert side is not None, "what there is none of is not cut"
        exact = rounded(at, decimals)
        following = rounded(exact + 10.0**-decimals, decimals)
        return self._with(place, (side[0], exact)), self._with(place, (following, side[1]))

    def middle_of(self, place: int) -> float:
        """Return the middle of a side."""
        side = self.sides[place]
        assert side is not None, "what there is none of has no middle"
        return self.numbers[place].exact((side[0] + side[1]) / 2)

    def without(self, gone: Sequence[int]) -> _Box:
        """Return the box where there is none of some numbers."""
        sides = enumerate(self.sides)
        return _Box(self.numbers, tuple(None if p in gone else side for p, side in sides))

    def with_all(self, whole: _Box, places: Sequence[int]) -> _Box:
        """Return the box with whole sides in some places."""
        sides = enumerate(zip(self.sides, whole.sides, strict=True))
        return _Box(self.numbers, tuple(w if p in places else own for p, (own, w) in sides))

    def _with(self, place: int, side: Within) -> _Box:
        return _Box(self.numbers, (*self.sides[:place], side, *self.sides[place + 1 :]))


class _File:
    """One file of a plan, drawn where it is asked for."""

    def __init__(
        self, drawn: Callable[[Values], Sequence[Draft]], place: int, *, linear: bool
    ) -> None:
        self._drawn, self._place, self._linear = drawn, place, linear

    def at(self, values: Values) -> Draft:
        return self._drawn(values)[self._place]

    def is_alike(self, one: Values, other: Values) -> bool:
        """Tell whether name and text have the same structure at two points."""
        return self.at(one).structure == self.at(other).structure

    def cells(self, whole: _Box) -> Iterator[Cell]:
        """Yield the cells: where there is some of each number, then without what counts.

        Of a number that does not count there is none either there; it may have any value.
        """
        present = list(self._found(whole, None))
        optional = [place for place, number in enumerate(whole.numbers) if number.none]
        counting = [each for each in optional if self._counts(whole, each, present)]
        idle = [each for each in optional if each not in counting]
        for box, cell in present:
            yield _bounded(cell, box, whole, counting)
        for taken in list(product((False, True), repeat=len(counting)))[1:]:
            gone = [place for place, is_gone in zip(counting, taken, strict=True) if is_gone]
            rest = whole.without([*gone, *idle])
            for box, cell in self._found(rest, present[0][1]):
                yield _bounded(cell, box.with_all(whole, idle), whole, counting)

    def _counts(self, whole: _Box, place: int, present: Iterable[tuple[_Box, Cell]]) -> bool:
        """Tell whether a file is another where there is none of a number, but for words on it."""
        slots = (s for _, cell in present for s in (*cell.name, *cell.text) if isinstance(s, Slot))
        moves = any(not s.style.none and any(s.slopes[place : place + 1]) for s in slots)
        return moves or not self.is_alike(whole.corner(), whole.without([place]).corner())

    def _found(self, whole: _Box, model: Cell | None) -> Iterator[tuple[_Box, Cell]]:
        waiting, count = [whole], 0
        while waiting:
            if count + len(waiting) > MOST_CELLS:
                raise CellsError(f"a file falls into more than {MOST_CELLS} cells")
            box = waiting.pop(0)
            try:
                cell = self._cell(box, model)
            except _OtherError as other:
                waiting = [*self._parts(box, other.at), *waiting]
                continue
            except _BentError as bent:
                waiting = [*box.cut(bent.place, box.middle_of(bent.place)), *waiting]
                continue
            count += 1
            yield box, cell

    def _cell(self, box: _Box, model: Cell | None) -> Cell:
        """Return the cell that a box is. Raises _OtherError or _BentError.

        What there is none of is told as in ``model``, which has some of it.
        """
        base, ends = box.corner(), {place: box.corner([place]) for place in box.long}
        for end in ends.values():
            if not self.is_alike(base, end):
                raise _OtherError(end)
        first, steps = self.at(base), {place: self.at(end) for place, end in ends.items()}
        name = _slots(first.name, {place: each.name for place, each in steps.items()}, box)
        text = _slots(first.text, {place: each.text for place, each in steps.items()}, box)
        if model is not None:
            name, text = _as_in(model.name, name), _as_in(model.text, text)
        for values in box.checks(linear=self._linear):
            draft = self.at(values)
            if not self.is_alike(base, values):
                raise _OtherError(values)
            if max(_off(name, draft.name, values), _off(text, draft.text, values)) > _STEPS_OFF:
                raise _BentError(self._most_bent(box, text))
        return Cell(name=_text(first.name, name), text=_text(first.text, text))

    def _most_bent(self, box: _Box, text: tuple[Slot, ...]) -> int:
        """Return the place of the number along which slots are off most in the middle."""

        def off(place: int) -> float:
            there = _moved(box.corner(), place, box.middle_of(place))
            alike = self.is_alike(box.corner(), there)
            return _off(text, self.at(there).text, there) if alike else inf

        return max(box.long, key=off)

    def _parts(self, box: _Box, at: Values) -> tuple[_Box, _Box]:
        """Return both parts of a box, cut where the structure changes on the way to a point."""
        here = box.corner()
        for place in box.long:
            there = _moved(here, place, at[place])
            if not self.is_alike(here, there):
                return box.cut(place, self._last_alike(box.numbers[place], here, there, place))
            here = there
        raise CellsError("a file changes where it did not")

    def _last_alike(self, number: Number, here: Values, there: Values, place: int) -> float:
        """Return the last value of a number on the way at which the file is as it was."""
        low, high = here[place], there[place]
        if low is None or high is None:
            raise CellsError("a file changes where it did not")
        while high - low > 1.5 * 10.0**-number.decimals:
            middle = number.exact((low + high) / 2)
            alike = self.is_alike(here, _moved(here, place, middle))
            low, high = (middle, high) if alike else (low, middle)
        return low


def find(numbers: Sequence[Number], draw: Draw, *, linear: bool = False) -> Fitted:
    """Return the fitted files of a plan; what is ``linear`` as it is made is looked at less.

    A point is drawn once for all of them. Raises CellsError where a file cannot be fitted, and
    whatever drawing raises.
    """
    drawn: dict[Values, Sequence[Draft]] = {}

    def at(values: Values) -> Sequence[Draft]:
        if values not in drawn:
            drawn[values] = draw(dict(zip((n.name for n in numbers), values, strict=True)))
        return drawn[values]

    whole = _Box(tuple(numbers), tuple((each.least, each.most) for each in numbers))
    files = [_File(at, place, linear=linear) for place in range(len(at(whole.corner())))]
    found = tuple(FittedFile(cells=tuple(each.cells(whole))) for each in files)
    return Fitted(numbers=tuple(numbers), files=_shared(found))


def _moved(values: Values, place: int, to: float | None) -> Values:
    return (*values[:place], to, *values[place + 1 :])


def _bounded(cell: Cell, box: _Box, whole: _Box, counts: Sequence[int]) -> Cell:
    """Return a cell with the sides of its box that tell it from the others of its file."""
    sides = tuple(
        (number.name, side)
        for place, (number, side) in enumerate(zip(box.numbers, box.sides, strict=True))
        if place in counts or side != whole.sides[place]
    )
    return Cell(name=cell.name, text=cell.text, box=sides)


def _slots(base: Recorded, steps: Mapping[int, Recorded], box: _Box) -> tuple[Slot, ...]:
    """Return a slot for every number of a text, found from its values at one step each way."""
    moved = {place: each.values for place, each in steps.items()}
    return tuple(
        _slot(value, style, {place: each[index] for place, each in moved.items()}, box)
        for index, (value, style) in enumerate(zip(base.values, base.styles, strict=True))
    )


def _slot(value: float | None, style: Style, moved: Mapping[int, float | None], box: _Box) -> Slot:
    """Return a slot, its figures cut where they are only noise."""
    if value is None:
        return Slot(style=style, constant=0.0)
    slopes, constant, corner = [0.0] * len(box.sides), value, box.corner()
    for place, other in moved.items():
        side, start = box.sides[place], corner[place]
        if other is not None and side and start is not None and abs(other - value) > _STILL:
            slopes[place] = round((other - value) / (side[1] - side[0]), style.decimals + 8)
            constant -= slopes[place] * start
    constant = round(constant, style.decimals + 6)
    return Slot(style=style, constant=constant, slopes=trimmed(slopes))


def _as_in(model: Text, slots: tuple[Slot, ...]) -> tuple[Slot, ...]:
    """Return slots, those that have words for none as a text has them that has some of it."""
    told = iter(each for each in model if isinstance(each, Slot) and each.style.none)
    return tuple(next(told) if each.style.none else each for each in slots)


def _off(slots: tuple[Slot, ...], recorded: Recorded, values: Values) -> float:
    """Return by how many steps of its last decimal the worst slot is off at a point."""
    pairs = zip(slots, recorded.values, strict=True)
    return max(
        (_steps(value_of(slot, values), value, slot.style) for slot, value in pairs), default=0.0
    )


def _steps(one: float | None, other: float | None, style: Style) -> float:
    if one is None or other is None:
        return 0.0 if one is None and other is None else inf
    return abs(one - other) * 10.0**style.decimals


def _text(recorded: Recorded, slots: tuple[Slot, ...]) -> Text:
    """Return words and slots by turns; a slot that stands still is words too."""
    pieces: list[str | Slot] = [recorded.words[0]]
    for slot, words in zip(slots, recorded.words[1:], strict=True):
        still = not slot.slopes and not slot.style.none
        pieces += [told_as(slot.constant, slot.style) if still else slot, words]
    return tuple(pieces)


def _shared(files: tuple[FittedFile, ...]) -> tuple[FittedFile, ...]:
    """Return files whose words are put together, but for long ones that several texts have.

    Long lines are looked at by themselves: as they were written, and as they are put together.
    """
    texts = [_parted(cell.text, set()) for file in files for cell in file.cells]
    kept = _several(texts)
    texts = [_parted(_joined(text, kept), kept) for text in texts]
    kept |= _several(texts)
    made = iter(_joined(text, kept) for text in texts)
    return tuple(
        FittedFile(
            cells=tuple(
                Cell(name=_joined(cell.name, kept), text=next(made), box=cell.box)
                for cell in file.cells
            )
        )
        for file in files
    )


def _several(texts: Iterable[Text]) -> set[str]:
    """Return long words that stand several times."""
    counts = Counter(piece for text in texts for piece in text if isinstance(piece, str))
    return {words for words, count in counts.items() if count > 1 and len(words) >= _LONG}


def _parted(text: Text, kept: set[str]) -> Text:
    """Return a text whose long lines are pieces of their own, but for pieces that are kept."""
    return tuple(
        part
        for piece in text
        for part in (
            _LONG_LINE.split(piece) if isinstance(piece, str) and piece not in kept else (piece,)
        )
    )


def _joined(text: Text, kept: set[str]) -> Text:
    made: list[str | Slot] = []
    open_end = False
    for piece in text:
        if not isinstance(piece, str) or piece in kept:
            made.append(piece)
            open_end = False
        elif piece:
            made[-1:] = [f"{made[-1]}{piece}"] if open_end else [*made[-1:], piece]
            open_end = True
    return tuple(made)
