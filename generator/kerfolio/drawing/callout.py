"""Small blocks beside a picture: the hardware of a step, and that it is seen from below."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.drawing.arrow import open_path
from kerfolio.drawing.hatch import hatched
from kerfolio.drawing.lettering import CAPITAL, text_width, wrapped
from kerfolio.drawing.vocabulary import Ink, Item, Label, Stroke
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.shapes import circle, rectangle

_TEXT = 3.0
_LEADING = 4.6
_PAD = 2.0
_CORNER = 1.2
_NOTE = 42.0
"""How wide a note of the maker's may be, mm."""
_PERSON = 4.6
"""How wide a person is drawn, mm."""
_SHOULDERS = 1.1
"""How far an arc rises: tan of a quarter of the angle it spans."""


@dataclass(frozen=True, slots=True)
class Block:
    """Something that goes beside the picture: its size in mm, and its items at a lower left."""

    width: float
    height: float
    items: Callable[[Point], tuple[Item, ...]]


def hardware_block(hardware: Sequence[tuple[str, int]]) -> Block:
    """Return the hardware of a step with its counts, a line each, in a box."""
    return lines_block([(f"{count} ×", title) for title, count in hardware])


def lines_block(lines: Sequence[tuple[str, str]]) -> Block:
    """Return lines in a box, each a strong beginning, perhaps empty, and what follows it."""
    first = max(text_width(count, _TEXT, strong=True) for count, _ in lines)
    second = max(text_width(title, _TEXT) for _, title in lines)
    width = 2 * _PAD + first + 1.2 + second
    height = 2 * _PAD + _LEADING * (len(lines) - 1) + _TEXT * CAPITAL

    def items(at: Point) -> tuple[Item, ...]:
        x, y = at
        frame = rectangle(x, y, x + width, y + height, _CORNER)
        found: list[Item] = [Stroke(contour=frame, ink=Ink.FAINT, width=0.25, fill=Ink.PAPER)]
        for row, (count, title) in enumerate(lines):
            base = y + height - _PAD - _TEXT * CAPITAL - row * _LEADING
            start = x + _PAD + first + 1.2
            found += [
                Label(text=count, at=(x + _PAD, base), height=_TEXT, strong=True),
                Label(text=title, at=(start, base), height=_TEXT),
            ]
        return tuple(found)

    return Block(width, height, items)


def note_lines(note: str) -> tuple[str, ...]:
    """Return a note of the maker's in lines that stand beside a picture."""
    return wrapped(note, _TEXT, _NOTE) if note else ()


_SWATCH = (6.0, 3.4)


def hatched_block(words: str, note: str = "") -> Block:
    """Return what hatching stands for: a hatched swatch, the words, and a note of the maker's."""
    lines = [words, *note_lines(note)]
    start = _PAD + _SWATCH[0] + 1.6
    width = start + max(text_width(each, _TEXT) for each in lines) + _PAD
    height = 2 * _PAD + _LEADING * (len(lines) - 1) + _SWATCH[1]

    def items(at: Point) -> tuple[Item, ...]:
        x, y = at
        frame = rectangle(x, y, x + width, y + height, _CORNER)
        left, low = x + _PAD, y + height - _PAD - _SWATCH[1]
        box = (left, low, left + _SWATCH[0], low + _SWATCH[1])
        base = low + (_SWATCH[1] - _TEXT * CAPITAL) / 2
        return (
            Stroke(contour=frame, ink=Ink.FAINT, width=0.25, fill=Ink.PAPER),
            *hatched(box, apart=1.6, ink=Ink.ACCENT, width=0.25),
            Stroke(contour=rectangle(*box), ink=Ink.ACCENT, width=0.35),
            *(
                Label(text=line, at=(x + start, base - row * _LEADING), height=_TEXT)
                for row, line in enumerate(lines)
            ),
        )

    return Block(width, height, items)


def seen_from_block(reader: Reader, way: str) -> Block:
    """Return the mark of what is seen otherwise than usual: an eye, where it looks, and the words.

    ``way`` is from where it looks: below, above, behind, left or right.
    """
    words = say(reader, f"drawing-seen-from-{way}")
    width, height = 6.4 + text_width(words, _TEXT), 5.2

    def items(at: Point) -> tuple[Item, ...]:
        x, y = at
        middle = x + 2.2
        lid = 0.55
        eye = Contour(((x, y + 1.3, -lid), (x + 4.4, y + 1.3, -lid)), closed=True)
        arrow = _looking(way, (middle, y + 2.9))
        return (
            Stroke(contour=eye, ink=Ink.SOFT, width=0.3),
            Stroke(contour=circle((middle, y + 1.3), 1.1), width=None, fill=Ink.SOFT),
            *(Stroke(contour=path, ink=Ink.SOFT, width=0.3) for path in arrow),
            Label(text=words, at=(x + 6.4, y + 1.3 - _TEXT * 0.2), height=_TEXT, ink=Ink.SOFT),
        )

    return Block(width, height, items)


def _looking(way: str, foot: Point) -> tuple[Contour, ...]:
    """Return an arrow over the eye the way that it looks; from behind it looks round."""
    x, y = foot
    low, high, far, wing = y, y + 2.3, 1.8, 0.9
    if way in ("below", "above"):
        tip, tail = ((x, high), (x, low)) if way == "below" else ((x, low), (x, high))
        back = tip[1] + (-wing if way == "below" else wing)
        head = open_path((x - wing, back), tip, (x + wing, back))
        return open_path(tail, tip), head
    middle = (low + high) / 2
    if way == "behind":
        turn = Contour(((x + far, low + 0.3, 0.8), (x - far, low + 0.3, 0.0)), closed=False)
        tip = (x - far, low + 0.3)
        return turn, open_path((tip[0] - 0.5, tip[1] + 1.0), tip, (tip[0] + 1.0, tip[1] + 0.6))
    side = -far if way == "right" else far
    back = side - wing if side > 0 else side + wing
    head = open_path((x + back, middle - wing), (x + side, middle), (x + back, middle + wing))
    return open_path((x - side, middle), (x + side, middle)), head


def people_block(count: int) -> Block:
    """Return as many people as a step takes, side by side."""
    width, height = _PERSON * count, 7.0

    def items(at: Point) -> tuple[Item, ...]:
        x, y = at
        found: list[Item] = []
        for number in range(count):
            middle = x + (number + 0.5) * _PERSON
            half = 0.4 * _PERSON
            body = Contour(((middle - half, y, 0.0), (middle + half, y, _SHOULDERS)), closed=True)
            head = circle((middle, y + height - 1.5), 2.6)
            found += [Stroke(contour=each, width=None, fill=Ink.SOFT) for each in (body, head)]
        return tuple(found)

    return Block(width, height, items)
