"""Where the words about a feature find room on a template."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from math import atan2, degrees
from string import ascii_lowercase

from kerfolio.drawing.block import Block, box_at, text_block
from kerfolio.drawing.extent import apart
from kerfolio.drawing.feature_kinds import FEATURE_WORDS
from kerfolio.drawing.lettering import CAPITAL, Box, text_width, wrapped
from kerfolio.drawing.vocabulary import Ink, Item, Label
from kerfolio.geometry.boolean import contains, intersects
from kerfolio.geometry.contour import Contour, Point, Region
from kerfolio.geometry.shapes import rectangle
from kerfolio.model.feature_kind import HOLE, NOTCH
from kerfolio.settling.settled import SettledFeature

SIZE = 3.2
_AIR = 2.4
_KEY_AIR = 1.2
_PITCH = SIZE * (CAPITAL + 0.45)


@dataclass(frozen=True, slots=True)
class Ground:
    """Where lettering may stand: in the region, off the recesses, off the boxes taken so far."""

    region: Region
    recesses: tuple[Contour, ...]
    taken: list[Box] = field(default_factory=list)

    def is_free(self, box: Box) -> bool:
        """Tell whether a box lies in the material without covering anything."""
        if not all(apart(box, other) for other in self.taken):
            return False
        frame = rectangle(*box)
        if not contains(self.region, frame):
            return False
        return not any(intersects(recess, frame) for recess in self.recesses)


@dataclass(frozen=True, slots=True)
class Notes:
    """The words placed at their features, and those only listed (key letter or none, words)."""

    items: tuple[Item, ...]
    listed: tuple[tuple[str, str], ...]


def place_notes(
    features: tuple[SettledFeature, ...],
    ground: Ground,
    drill: float,
    layer: str,
    first: str = "mm",
) -> Notes:
    """Return every feature's note: in it, beside it, or listed under a key letter.

    ``drill`` is the diameter in mm of the holes drilled into the corners of openings, which words
    inside an opening keep clear of. Features that say the same share a key letter; it stands
    beside those of them that have room for it. ``first`` is the unit named first.
    """
    items: list[Item] = []
    keys: dict[str, str] = {}
    for feature in features:
        lines = FEATURE_WORDS[feature.kind](feature, first)
        if not lines:
            continue
        placed = _inside(feature, lines, drill, layer) or _first(feature, lines, ground, layer)
        if not placed:
            said = f"{_base(feature.name)}, {', '.join(lines)}"
            key = keys.setdefault(said, _key(len(keys)))
            placed = _first(feature, (key,), ground, layer, _KEY_AIR)
        items.extend(placed)
    shown = {item.text for item in items if isinstance(item, Label)}
    listed = ((key if key in shown else "", said) for said, key in keys.items())
    return Notes(tuple(items), tuple(listed))


def _key(number: int) -> str:
    high, low = divmod(number, 26)
    return (ascii_lowercase[high - 1] if high else "") + ascii_lowercase[low]


def _base(name: str) -> str:
    """Return a repeated feature's name without its number."""
    head, dot, tail = name.rpartition(".")
    return head if dot and tail.isdigit() else name


def middle(feature: SettledFeature) -> Point:
    """Return the middle of the feature; a notch is known by the middle of its bottom."""
    (x, y), (ux, uy) = feature.at, feature.direction
    reach = feature.length.value / 2 if feature.kind is NOTCH else 0.0
    return x + ux * reach, y + uy * reach


def _turn(feature: SettledFeature) -> float:
    """Return the angle of lettering along the feature, readable from below or the right."""
    angle = degrees(atan2(feature.direction[1], feature.direction[0]))
    while angle > 90 + 1e-6:
        angle -= 180
    while angle <= -90 + 1e-6:
        angle += 180
    return 0.0 if feature.kind is HOLE else angle


def _block(lines: tuple[str, ...], layer: str) -> Block:
    return text_block([(line, SIZE, False) for line in lines], layer, Ink.INK)


def _inside(
    feature: SettledFeature, lines: tuple[str, ...], drill: float, layer: str
) -> tuple[Item, ...]:
    """Return the words inside an opening or recess wide enough for them, else nothing."""
    if feature.kind is HOLE:
        return ()
    room = feature.length.value - 2 * drill - 2
    broken = tuple(part for line in lines for part in wrapped(line, SIZE, room))
    fits = all(text_width(line, SIZE) <= room for line in broken)
    if not fits or len(broken) * _PITCH > feature.width.value - 2:
        return ()
    return _block(broken, layer).seated(middle(feature), turn=_turn(feature))


def _first(
    feature: SettledFeature,
    lines: tuple[str, ...],
    ground: Ground,
    layer: str,
    air: float = _AIR,
) -> tuple[Item, ...]:
    """Return the words at the first free spot beside the feature and take it, else nothing."""
    note = _block(lines, layer)
    for spot, turn in _spots(feature, note, air):
        level = abs(turn) < 45
        wide, high = (note.width, note.height) if level else (note.height, note.width)
        box = box_at(spot, wide, high)
        if ground.is_free(box_at(spot, wide + air, high + air)):
            ground.taken.append(box)
            return note.seated(spot, turn=turn)
    return ()


def _spots(feature: SettledFeature, note: Block, air: float) -> Iterator[tuple[Point, float]]:
    """Yield middles and turns beside the feature: along its sides first, then at its ends."""
    x, y = middle(feature)
    turn = _turn(feature)
    upright = abs(turn) > 45
    across, along = feature.width.value, feature.length.value
    half_x, half_y = (across / 2, along / 2) if upright else (along / 2, across / 2)
    if feature.kind is HOLE:
        half_x = half_y = max(across / 2, 3.0)
    for turned in (90.0, 0.0) if upright else (0.0, 90.0):
        wide, high = (note.height, note.width) if turned else (note.width, note.height)
        dx, dy = half_x + wide / 2 + air, half_y + high / 2 + air
        sides = ((dx, 0.0), (-dx, 0.0)) if upright else ((0.0, dy), (0.0, -dy))
        ends = ((0.0, dy), (0.0, -dy)) if upright else ((dx, 0.0), (-dx, 0.0))
        corners = ((dx, dy), (-dx, dy), (dx, -dy), (-dx, -dy))
        for sx, sy in (*sides, *ends, *corners):
            yield (x + sx, y + sy), turned
