"""What the features of a part are called, written on it: names of sets, numbers within."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass, field
from math import atan2, degrees, dist

from kerfolio.basis.digits import digits
from kerfolio.basis.lengths import place_decimal
from kerfolio.basis.names import set_name
from kerfolio.basis.reader import Reader
from kerfolio.basis.thickness import reading_number
from kerfolio.drawing.arrow import open_path
from kerfolio.drawing.block import Block, box_at, text_block
from kerfolio.drawing.expand import NARROW
from kerfolio.drawing.extent import apart, middle_of, padded
from kerfolio.drawing.lettering import CAPITAL, Box, label_box
from kerfolio.drawing.name_column import NAME, WORDS, Tag, beside, leader_end, spread
from kerfolio.drawing.seat import Seat
from kerfolio.drawing.vocabulary import Ink, Item, Label, Stroke
from kerfolio.geometry.boolean import contains, intersects
from kerfolio.geometry.contour import Contour, Point, Region
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.shapes import rectangle
from kerfolio.model.feature_kind import ENGRAVING, HOLE, WINDOW
from kerfolio.settling.settled import SettledFeature, SettledPart

_NUMBER = 2.8
_AIR = 0.7
_NEAR = (1.2, 3.0, 5.5)
"""How far beside a feature its name is tried, mm on paper."""
_OFF = 9.0
"""Between what is drawn and a column of names, mm."""
_ROW = NAME * CAPITAL + WORDS * 1.15 + 2.2
"""From one name in the column to the next, mm."""
_NEAR_SIDE = 30.0
"""So near to the right side, mm, a name goes there."""
_CROSS = 2.2
"""Half a cross on a point, mm."""
_MOST_NUMBERED = 60
"""Of larger sets only the first, the second and the last member are numbered."""

_Found = tuple[Point, Box | None]
"""Where the middle of words may stand, and what they name, None where they stand in it."""


@dataclass(slots=True)
class Tags:
    """Lettering on a part as it grows; ``taken`` are boxes on paper that nothing may cover.

    Features named in ``tinted`` have a ground of another colour.

    What finds no room on the part waits for the columns beside it. ``on_wood`` are the boxes of the
    words that have wood around them, the others stand in what they name.
    """

    part: SettledPart
    seat: Seat
    reader: Reader
    tinted: Collection[str] = ()
    taken: list[Box] = field(default_factory=list)
    items: list[Item] = field(default_factory=list)
    on_wood: list[Box] = field(default_factory=list)
    _waiting: list[Tag] = field(default_factory=list)
    _whole: Region = field(init=False)
    _recesses: tuple[Contour, ...] = field(init=False)

    def __post_init__(self) -> None:
        cuts = (cut for cut in self.part.cuts if cut.depth is not None)
        self._recesses = tuple(self.seat.contour(each) for cut in cuts for each in cut.contours)
        self._whole = self.seat.region(self.part.routed)

    def write(self) -> None:
        """Write the numbers of all members, then the names that find room on the part."""
        sets = _sets(self.part)
        for name, features in sets.items():
            if len(features) > 1:
                self._number(name, features)
        for name, features in sets.items():
            if any(each.ruler for each in features):
                continue  # which bears the name
            self._write(self._tag(name, features))

    def tell(self, at: Point, name: str, words: str) -> None:
        """Write what a point of the part is, and a cross on it; ``at`` is in the part's frame."""
        x, y = self.seat.point(at)
        for end in ((_CROSS, 0.0), (0.0, _CROSS)):
            line = open_path((x - end[0], y - end[1]), (x + end[0], y + end[1]))
            self.items.append(Stroke(contour=line, ink=Ink.ACCENT, width=2 * NARROW))
        box = (x - _CROSS, y - _CROSS, x + _CROSS, y + _CROSS)
        self.taken.append(box)
        lines = ((name, NAME, True), (words, WORDS, False))
        self._write(Tag(lines=lines, members=(box,), inside=False))

    def _write(self, tag: Tag) -> None:
        """Write a tag on the part, or let it wait for a column."""
        note = text_block(tag.lines)
        found = next(self._free(note, tag), None)
        if found is None:
            self._waiting.append(tag)
        else:
            self._set_down(note, *found)

    def columns(self, around: Box) -> Iterator[Item]:
        """Yield what is left over beside a box, to its left and right, each on a leader."""
        left, _, right, _ = around
        sides: dict[bool, list[Tag]] = {True: [], False: []}
        for each in self._waiting:
            sides[self._goes_right(each)].append(each)
        for goes_right, sets in sides.items():
            edge = right + _OFF if goes_right else left - _OFF
            sets.sort(key=lambda each: -leader_end(each, goes_right)[1])
            heights = spread([leader_end(each, goes_right)[1] for each in sets], _ROW)
            for each, y in zip(sets, heights, strict=True):
                yield from beside(each, (edge, y), goes_right)

    def _goes_right(self, tag: Tag) -> bool:
        """Tell whether a set's nearest member lies nearer to the right side, or near enough to it:
        there are no sizes to cross.
        """
        box = bounds(self._whole)
        to_right = min(box.x1 - each[2] for each in tag.members)
        return to_right <= max(_NEAR_SIDE, min(each[0] - box.x0 for each in tag.members))

    def _tag(self, name: str, features: Sequence[SettledFeature]) -> Tag:
        return Tag(
            lines=tuple(_lines(name, features, self.reader)),
            members=tuple(map(self._reach, features)),
            inside=features[0].kind is WINDOW,
        )

    def _number(self, name: str, features: Sequence[SettledFeature]) -> None:
        """Write the number of each member on it or beside it, the first and the last at once."""
        order = [features[0], features[-1], *features[1:-1]]
        for each in order if len(order) <= _MOST_NUMBERED else order[:3]:
            text = each.name.removeprefix(f"{name}.")
            ink = Ink.INK if each.name in self.tinted else Ink.ACCENT
            note = text_block([(text, _NUMBER, True)], ink=ink)
            found = next(self._beside(note, each), None)
            if found is not None:
                self._set_down(note, *found)

    def _beside(self, note: Block, feature: SettledFeature) -> Iterator[_Found]:
        """Yield where the number of a member may stand: in it, or in the wood beside it."""
        box = self._reach(feature)
        shapes = [self.seat.contour(each) for each in feature.shape if each.closed]
        around = rectangle(*padded(box_at(middle_of(box), note.width, note.height), 0.3))
        if any(contains(Region(each), around) for each in shapes):
            yield from self._if_clear(note, middle_of(box), None)
        for spot in _around(box, note, 0.8):
            if self._in_wood(box_at(spot, note.width, note.height)):
                yield from self._if_clear(note, spot, box)

    def _free(self, note: Block, tag: Tag) -> Iterator[_Found]:
        """Yield places in the wood beside a member, or in the window that is named."""
        for box in tag.members[:4]:
            wide, high = box[2] - box[0], box[3] - box[1]
            if tag.inside and note.width + 3 < wide and note.height + 3 < high:
                yield from self._if_clear(note, middle_of(box), None)
            for away in _NEAR:
                for spot in _around(box, note, away):
                    found = list(self._if_clear(note, spot, box))
                    if found and self._in_wood(box_at(spot, note.width, note.height)):
                        yield from found

    def _if_clear(self, note: Block, spot: Point, of: Box | None) -> Iterator[_Found]:
        box = padded(box_at(spot, note.width, note.height), _AIR)
        if all(apart(box, other) for other in self.taken):
            yield spot, of

    def _in_wood(self, box: Box) -> bool:
        frame = rectangle(*padded(box, _AIR))
        if not contains(self._whole, frame):
            return False
        return not any(intersects(each, frame) for each in self._recesses)

    def _set_down(self, note: Block, spot: Point, of: Box | None) -> None:
        """Write words in their place; what they name, unless they stand in it, is ``of``."""
        box = box_at(spot, note.width, note.height)
        words = note.seated(spot)
        self.taken.append(box)
        if of is not None:
            self.on_wood += [label_box(each) for each in words if isinstance(each, Label)]
            self.items += _pointer(box, of)
        self.items += words

    def _reach(self, feature: SettledFeature) -> Box:
        boxes = [bounds(self.seat.contour(each)) for each in feature.shape]
        if not boxes:
            x, y = self.seat.point(feature.at)
            return x, y, x, y
        return (
            min(each.x0 for each in boxes),
            min(each.y0 for each in boxes),
            max(each.x1 for each in boxes),
            max(each.y1 for each in boxes),
        )


def _pointer(words: Box, of: Box) -> Iterator[Item]:
    """Yield a short line from words to what they name, where they do not stand right beside it."""
    start, end = _nearest(words, of), _nearest(of, words)
    if dist(start, end) > _NEAR[0] * 2:
        yield Stroke(contour=open_path(start, end), ink=Ink.INK, width=NARROW)


def _nearest(box: Box, other: Box) -> Point:
    """Return the point of a box that is nearest to the middle of what both share, or of another."""
    x = (max(box[0], other[0]) + min(box[2], other[2])) / 2
    y = (max(box[1], other[1]) + min(box[3], other[3])) / 2
    return min(max(x, box[0]), box[2]), min(max(y, box[1]), box[3])


def _sets(part: SettledPart) -> dict[str, list[SettledFeature]]:
    """Return the features of a part by the name that they share."""
    sets: dict[str, list[SettledFeature]] = {}
    for each in part.features:
        sets.setdefault(set_name(each.name), []).append(each)
    return sets


def _lines(
    name: str, features: Sequence[SettledFeature], reader: Reader
) -> Iterator[tuple[str, float, bool]]:
    first, count = features[0], len(features)
    yield (f"{name} 1 to {count}" if count > 1 else name), NAME, True
    x, y = (place_decimal(each, reader.unit) for each in first.at)
    where = f"; 1 at {x}, {y}" if count > 1 else f" at {x}, {y}"
    yield f"{feature_words(first, reader)}{where}", WORDS, False


def feature_words(feature: SettledFeature, reader: Reader) -> str:
    """Return how large a feature in the face is: ``slot 120 × 18.2``, in the reader's unit."""
    wide, long = (reading_number(each.value, reader) for each in (feature.width, feature.length))
    if feature.kind is ENGRAVING:
        return f"{feature.kind.name}"
    deep = f", {reading_number(feature.depth.value, reader)} deep" if feature.depth else ""
    if feature.kind is HOLE:
        return f"ø {wide}{deep}"
    return f"{feature.kind.name} {long} × {wide}{_turned(feature)}{deep}"


def _turned(feature: SettledFeature) -> str:
    """Return which way the length of a feature runs, where it is not along x."""
    angle = degrees(atan2(feature.direction[1], feature.direction[0])) % 180
    if not 1e-6 < angle < 180 - 1e-6:
        return ""
    return " upright" if abs(angle - 90) < 1e-6 else f" turned {digits(angle, 2)}°"


def _around(box: Box, note: Block, away: float) -> Iterator[Point]:
    """Yield middles of a note beside a box: above, below, to the right, to the left, at corners."""
    x, y = middle_of(box)
    dx = (box[2] - box[0] + note.width) / 2 + away
    dy = (box[3] - box[1] + note.height) / 2 + away
    for sx, sy in ((0, 1), (0, -1), (1, 0), (-1, 0), (1, 1), (1, -1), (-1, 1), (-1, -1)):
        yield x + sx * dx, y + sy * dy
