"""Where the words about a feature find room on a template: chosen once for all its thicknesses."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from math import atan2, cos, degrees, radians, sin
from string import ascii_lowercase

from kerfolio.basis.figured import joined
from kerfolio.basis.names import set_name, spoken
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.drawing.block import Block, box_at, text_block
from kerfolio.drawing.extent import union
from kerfolio.drawing.feature_kinds import FEATURE_WORDS
from kerfolio.drawing.ground import Ground
from kerfolio.drawing.lettering import CAPITAL, Box, in_rows, rows_of, text_width
from kerfolio.drawing.vocabulary import Anchor, Ink, Label
from kerfolio.geometry.contour import Point
from kerfolio.model.feature_kind import BORE, HOLE, NOTCH
from kerfolio.settling.settled import SettledFeature

SIZE = 3.2
_AIR = 2.4
_KEY_AIR = 1.2
_PITCH = SIZE * (CAPITAL + 0.45)

Lines = tuple[str, ...]
Rows = tuple[tuple[int, ...], ...]
"""How many words of each line stand on each of its rows."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Note:
    """Where the words about a feature stand: ``labels`` bear them at one thickness.

    With ``rows`` they are inside the feature, at their distance from its middle, and go with it.
    With a ``key`` they are listed, and only the key stands at the feature, if it has room.
    """

    labels: tuple[Label, ...] = ()
    rows: Rows = ()
    key: str = ""

    def at(self, feature: SettledFeature, reader: Reader) -> tuple[Label, ...]:
        """Return the labels for the feature as it is at another thickness."""
        if self.key:
            return self.labels
        lines = FEATURE_WORDS[feature.kind](feature, reader)
        texts = in_rows(lines, self.rows) if self.rows else lines
        x, y = middle(feature) if self.rows else (0.0, 0.0)
        return tuple(
            replace(label, text=text, at=(label.at[0] + x, label.at[1] + y))
            for label, text in zip(self.labels, texts, strict=True)
        )


@dataclass(frozen=True, slots=True)
class Notes:
    """A note for each feature, and which of them are listed: the key, empty where it stands at no
    feature, and which feature it tells of.
    """

    each: tuple[Note, ...]
    listed: tuple[tuple[str, int], ...]


def place_notes(
    features: Sequence[Sequence[SettledFeature]],
    ground: Ground,
    drill: float,
    layer: str,
    reader: Reader = METRIC,
) -> Notes:
    """Return every feature's note: in it, beside it, or listed under a key letter.

    ``features`` are the same ones at every end of a range. ``drill`` is the largest diameter in mm
    of the holes drilled into the corners of openings, which words inside an opening keep clear of.
    Features that say the same share a key letter; it stands beside those of them that have room
    for it. ``reader`` is whom it is for.
    """
    notes: list[Note] = []
    keys: dict[str, tuple[str, int]] = {}
    for index, ends in enumerate(zip(*features, strict=True)):
        told = [FEATURE_WORDS[each.kind](each, reader) for each in ends]
        lines = _widest(told)
        if not lines:
            notes.append(Note())
            continue
        note = _inside(ends, lines, drill, layer) or _beside(ends, lines, ground, layer)
        if not note:
            key, _ = keys.setdefault(listed_words(ends[0], told[0]), (_key(len(keys)), index))
            placed = _beside(ends, (key,), ground, layer, _KEY_AIR)
            note = replace(placed or Note(), key=key)
        notes.append(note)
    shown = {note.key for note in notes if note.labels}
    listed = ((key if key in shown else "", index) for key, index in keys.values())
    return Notes(tuple(notes), tuple(listed))


def listed_words(feature: SettledFeature, lines: Lines) -> str:
    """Return what a list says of a feature: ``slot, 18 mm (45/64 in) wide``."""
    return joined(", ", (spoken(set_name(feature.name)), *lines))


def _widest(told: Sequence[Lines]) -> Lines:
    """Return lines with the text of each that needs most room."""
    return tuple(max(texts, key=_wide) for texts in zip(*told, strict=True))


def _wide(text: str) -> float:
    return text_width(text, SIZE)


def _key(number: int) -> str:
    high, low = divmod(number, 26)
    return (ascii_lowercase[high - 1] if high else "") + ascii_lowercase[low]


def middle(feature: SettledFeature) -> Point:
    """Return the middle of the feature; a notch is known by its bottom, a bore by its mouth."""
    (x, y), (ux, uy) = feature.at, feature.direction
    ways = {NOTCH: 0.5, BORE: -0.5}
    reach = ways.get(feature.kind, 0.0) * feature.length.value
    return x + ux * reach, y + uy * reach


def _turn(feature: SettledFeature) -> float:
    """Return the angle of lettering along the feature, readable from below or the right."""
    angle = degrees(atan2(feature.direction[1], feature.direction[0]))
    while angle > 90 + 1e-6:
        angle -= 180
    while angle <= -90 + 1e-6:
        angle += 180
    return 0.0 if feature.kind is HOLE else angle


def _block(lines: Lines, layer: str) -> Block:
    return text_block([(line, SIZE, False) for line in lines], layer, Ink.INK)


def _seated(note: Block, at: Point, turn: float) -> tuple[Label, ...]:
    """Return labels that keep to where they begin when their figures change."""
    labels = (each for each in note.seated(at, turn=turn) if isinstance(each, Label))
    return tuple(map(_started, labels))


def _started(label: Label) -> Label:
    back, angle = _wide(label.text) / 2, radians(label.angle)
    x, y = label.at
    return replace(label, at=(x - back * cos(angle), y - back * sin(angle)), anchor=Anchor.START)


def _inside(ends: Sequence[SettledFeature], lines: Lines, drill: float, layer: str) -> Note | None:
    """Return the words inside an opening or recess wide enough for them, else nothing."""
    if ends[0].kind.round:
        return None
    room = min(each.length.value for each in ends) - 2 * drill - 2
    rows = tuple(rows_of(line, SIZE, room) for line in lines)
    broken = in_rows(lines, rows)
    fits = all(_wide(line) <= room for line in broken)
    if not fits or len(broken) * _PITCH > min(each.width.value for each in ends) - 2:
        return None
    return Note(labels=_seated(_block(broken, layer), (0.0, 0.0), _turn(ends[0])), rows=rows)


def _beside(
    ends: Sequence[SettledFeature],
    lines: Lines,
    ground: Ground,
    layer: str,
    air: float = _AIR,
) -> Note | None:
    """Return the words at the first free spot beside the feature and take it, else nothing."""
    block, clear = _block(lines, layer), 2 * air - _KEY_AIR
    for spot, turn in _spots(ends, block, air):
        level = abs(turn) < 45
        wide, high = (block.width, block.height) if level else (block.height, block.width)
        box = box_at(spot, wide, high)
        if ground.is_free(box_at(spot, wide + clear, high + clear)):
            ground.taken.append(box)
            return Note(labels=_seated(block, spot, turn))
    return None


def _reach(feature: SettledFeature) -> Box:
    """Return the box that words beside a feature keep clear of."""
    across, along = feature.width.value, feature.length.value
    wide, high = (across, along) if abs(_turn(feature)) > 45 else (along, across)
    if feature.kind is HOLE:
        wider = feature.counterbore[0].value if feature.counterbore else 0.0
        wide = high = max(across, wider, 6.0)
    return box_at(middle(feature), wide, high)


def _spots(
    ends: Sequence[SettledFeature], note: Block, air: float
) -> Iterator[tuple[Point, float]]:
    """Yield middles and turns beside the feature: along its sides first, then at its ends."""
    left, bottom, right, top = union(map(_reach, ends))
    x, y = (left + right) / 2, (bottom + top) / 2
    half_x, half_y = (right - left) / 2, (top - bottom) / 2
    upright = abs(_turn(ends[0])) > 45
    for turned in (90.0, 0.0) if upright else (0.0, 90.0):
        wide, high = (note.height, note.width) if turned else (note.width, note.height)
        dx, dy = half_x + wide / 2 + air, half_y + high / 2 + air
        sides = ((dx, 0.0), (-dx, 0.0)) if upright else ((0.0, dy), (0.0, -dy))
        along = ((0.0, dy), (0.0, -dy)) if upright else ((dx, 0.0), (-dx, 0.0))
        corners = ((dx, dy), (-dx, dy), (dx, -dy), (-dx, -dy))
        for sx, sy in (*sides, *along, *corners):
            yield (x + sx, y + sy), turned
