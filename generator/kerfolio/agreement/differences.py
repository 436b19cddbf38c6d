"""What differs between the contours a file must hold and those it holds, in words."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field, replace
from math import hypot

from kerfolio.agreement.meant import Meant, placed
from kerfolio.agreement.same_contour import NEAR, same
from kerfolio.basis.digits import rounded
from kerfolio.basis.measures import number, precise, spot
from kerfolio.basis.said import Text, Words, said
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.measure import Box, bounds
from kerfolio.writing.read_back import Layers

_MOST = 150
"""So many contours are looked at for a common move; more tell nothing new."""
_SCALED = 1e-4

Found = tuple[str, Contour]
Map = Callable[[Contour], Contour]


def differences(meant: Sequence[Meant], layers: Layers) -> tuple[Text, ...]:
    """Return what is missing, added, elsewhere or of another shape; nothing where all agrees.

    What a move, another scale or a mirror explains is told once.
    """
    found = [(name, each) for name, contours in layers.items() for each in contours]
    if _in_order(meant, layers):
        return ()
    leftover = _paired(meant, found)
    if not leftover.missing and not leftover.stray:
        return ()
    whole = _whole(meant, layers, found)
    return (whole,) if whole else tuple(dict.fromkeys(_one_by_one(leftover)))


def _in_order(meant: Sequence[Meant], layers: Layers) -> bool:
    wanted: dict[str, list[Contour]] = {}
    for each in meant:
        wanted.setdefault(each.layer, []).append(each.contour)
    return wanted.keys() == layers.keys() and all(
        len(contours) == len(layers[name]) and all(map(same, contours, layers[name]))
        for name, contours in wanted.items()
    )


@dataclass(slots=True)
class _Leftover:
    """Contours that were meant and not found, found and not meant, and those that agree."""

    agreed: list[Meant] = field(default_factory=list)
    missing: list[Meant] = field(default_factory=list)
    stray: list[Found] = field(default_factory=list)

    def take(self, wanted: Meant, found: Found) -> None:
        """Count both as explained."""
        self.missing.remove(wanted)
        self.stray.remove(found)


def _paired(meant: Sequence[Meant], found: Sequence[Found]) -> _Leftover:
    made = _Leftover(stray=list(found))
    for each in meant:
        match = next(
            (one for one in made.stray if one[0] == each.layer and same(each.contour, one[1])), None
        )
        if match:
            made.stray.remove(match)
        (made.agreed if match else made.missing).append(each)
    return made


def _whole(meant: Sequence[Meant], layers: Layers, found: Sequence[Found]) -> Text | None:
    """Return how everything alike is changed, None where no one change explains all."""
    if not found or len(meant) != len(found):
        return None
    one = _around([each.contour for each in meant])
    other = _around([contour for _, contour in found])
    for change, tell in _changes(one, other):
        changed = [replace(each, contour=change(each.contour)) for each in meant]
        to = _around([each.contour for each in changed])
        off = (other.x0 - to.x0, other.y0 - to.y0)
        moved = [replace(each, contour=placed(each.contour, off)) for each in changed]
        if _in_order(moved, layers) or not _paired(moved, found).missing:
            return tell or said("everything lies elsewhere, {}", _by(off))
    return None


def _changes(one: Box, other: Box) -> Iterator[tuple[Map, Text]]:
    yield lambda contour: contour, ""
    yield lambda contour: _mapped(contour, -1.0, 1.0), "everything is mirrored"
    yield lambda contour: _mapped(contour, 1.0, -1.0), "everything is mirrored"
    size = hypot(one.width, one.height)
    factor = hypot(other.width, other.height) / size if size else 1.0
    if abs(factor - 1) > _SCALED:
        words = said("everything is {} times as large", number("factor", factor))
        yield lambda contour: _mapped(contour, factor, factor), words


def _mapped(contour: Contour, across: float, up: float) -> Contour:
    flips = -1.0 if across * up < 0 else 1.0
    vertices = tuple((x * across, y * up, flips * b) for x, y, b in contour.vertices)
    return Contour(vertices, contour.closed)


def _around(contours: Sequence[Contour]) -> Box:
    boxes = [bounds(each) for each in contours]
    return Box(
        min(each.x0 for each in boxes),
        min(each.y0 for each in boxes),
        max(each.x1 for each in boxes),
        max(each.y1 for each in boxes),
    )


def _by(off: Point) -> Words:
    x, y = (rounded(each, 3) for each in off)  # the rounding of the files is no move
    return said("by {} across and {} up", precise("across", x), precise("up", y))


def _one_by_one(left: _Leftover) -> Iterator[Text]:
    yield from _on_other_layers(left)
    yield from _of_other_shape(left)
    yield from _moved(left)
    for each in left.missing:
        yield said("{} is missing on layer `{}`", _contour(each.contour, each.of), each.layer)
    for layer, contour in left.stray:
        if any(each.layer == layer and same(each.contour, contour) for each in left.agreed):
            yield said("{} stands on layer `{}` twice", _contour(contour), layer)
        else:
            yield said("{} on layer `{}` was not meant", _contour(contour), layer)


def _contour(contour: Contour, of: str = "") -> Words:
    x, y = bounds(contour).centre
    return said("a contour{} at {}", f" of `{of}`" if of else "", spot(x, y))


def _on_other_layers(left: _Leftover) -> Iterator[Text]:
    for each in tuple(left.missing):
        match = next((one for one in left.stray if same(each.contour, one[1])), None)
        if match:
            left.take(each, match)
            what = _contour(each.contour, each.of)
            yield said("{} is on layer `{}`, not on `{}`", what, match[0], each.layer)


def _of_other_shape(left: _Leftover) -> Iterator[Text]:
    """What has its corners or at least its middle in the right place, but runs otherwise."""
    for alike, words in (
        (_covers, "{} on layer `{}` bends elsewhere"),
        (_centred, "{} on layer `{}` has another shape"),
    ):
        for each in tuple(left.missing):
            match = next(
                (one for one in left.stray if one[0] == each.layer and alike(one[1], each.contour)),
                None,
            )
            if match:
                left.take(each, match)
                yield said(words, _contour(each.contour, each.of), each.layer)


def _covers(found: Contour, meant: Contour) -> bool:
    spots = iter(found.vertices)
    return all(
        any(abs(x - u) <= NEAR and abs(y - v) <= NEAR for u, v, _ in spots)
        for x, y, _ in meant.vertices
    )


def _centred(found: Contour, meant: Contour) -> bool:
    (x, y), (u, v) = bounds(found).centre, bounds(meant).centre
    return abs(x - u) <= NEAR and abs(y - v) <= NEAR


def _moved(left: _Leftover) -> Iterator[Text]:
    """What has its shape but not its place, the most common move first."""
    moves = Counter(
        (each.of, _rounded(_way(each, one)))
        for each in left.missing[:_MOST]
        for one in left.stray[:_MOST]
        if _same_moved(each, one)
    )
    for (of, off), _ in moves.most_common():
        moved = False
        for each in tuple(left.missing):
            match = next(
                (
                    one
                    for one in left.stray
                    if each.of == of and _rounded(_way(each, one)) == off and _same_moved(each, one)
                ),
                None,
            )
            if match:
                left.take(each, match)
                moved = True
        if moved:
            yield said("`{}` lies elsewhere, {}", of, _by(off))


def _way(meant: Meant, found: Found) -> Point:
    one, other = bounds(meant.contour), bounds(found[1])
    return other.x0 - one.x0, other.y0 - one.y0


def _rounded(off: Point) -> Point:
    return rounded(off[0], 2), rounded(off[1], 2)


def _same_moved(meant: Meant, found: Found) -> bool:
    return meant.layer == found[0] and same(placed(meant.contour, _way(meant, found)), found[1])
