"""Bodies, holes and windows as a plan states them, in its unit."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from kerfolio.adopting.corners import Corner, corners_of, rounded_slot, upright
from kerfolio.adopting.linear import Linear, number_text
from kerfolio.adopting.outlined import Outlined
from kerfolio.adopting.recognised import Hole
from kerfolio.adopting.roundness import diameter_of
from kerfolio.basis.digits import digits
from kerfolio.basis.lengths import INCH
from kerfolio.geometry.arc import edges
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.transform import moved
from kerfolio.model.feature_kind import HOLE, POCKET, WINDOW

_FEW = 12
"""A body of so many curves is stated where none of it follows a sheet; one of more is drawn."""


@dataclass(frozen=True, slots=True)
class Pen:
    """Writes lengths and places in a plan's unit; ``sizes`` are sheets' thicknesses by name.

    ``clears`` says what holes are for, by their diameters in hundredths of a mm.
    """

    unit: str
    sizes: Mapping[str, tuple[str, float]]
    clears: Mapping[int, str] = field(default_factory=dict)

    def guess(self, diameter: float) -> str:
        """Return a comment on what a hole is for, by its diameter, mm; none where none is known."""
        key = round(diameter * 100)
        known = next((self.clears[k] for k in range(key - 5, key + 6) if k in self.clears), "")
        return f"   # guessed: as for {known}" if known else ""

    def text(self, length: Linear) -> str:
        """Return a length, perhaps as an expression."""
        return length.text(self.unit, self.sizes)

    def number(self, mm: float) -> str:
        """Return a plain length."""
        return number_text(mm, self.unit)

    def decimal(self, mm: float) -> str:
        """Return a plain length in decimals, as a path wants it."""
        return digits(mm / float(INCH), 5) if self.unit == "in" else number_text(mm, self.unit)

    def spot(self, spot: tuple[Linear, Linear]) -> str:
        """Return a place."""
        return f"[{self.text(spot[0])}, {self.text(spot[1])}]"

    def rounded(self, radius: float, *, inside: bool = False) -> str:
        """Return what is added for a rounding, nothing where there is none."""
        if not radius:
            return ""
        return (
            f", {{round: {self.number(radius)}}}" if inside else f", round: {self.number(radius)}"
        )


def angle_text(degrees: float) -> str:
    """Return what is added for a turn, nothing for none."""
    return f", angle: {digits(degrees, 3)}" if round(degrees, 3) % 360 else ""


def body_text(body: Outlined, pen: Pen) -> str | None:
    """Return a body as stated; None where it has to be drawn."""
    box = body.box
    if box is not None:
        width, height, radius = box
        sides = f"{pen.text(width)}, {pen.text(height)}"
        return f"{{rectangle: [{sides}]{pen.rounded(radius)}}}"
    if body.corners is None:
        return _round_body(body, pen) or _curved_body(body, pen)
    rows = [
        f"{pen.spot(body.corner(index))[:-1]}{pen.rounded(corner.radius, inside=True)}]"
        for index, corner in enumerate(body.corners)
    ]
    return f"{{polygon: [{', '.join(rows)}]}}"


def _round_body(body: Outlined, pen: Pen) -> str | None:
    """Return a body that is round, or has round ends and lies level; else None."""
    across = diameter_of(body.body)
    if across is not None:
        return f"{{circle: {pen.number(across)}}}"
    long = rounded_slot(body.body)
    if long is not None and round(long[3], 2) % 180 == 0:
        return f"{{rounded-slot: [{pen.number(long[1])}, {pen.number(long[2])}]}}"
    return None


def _curved_body(body: Outlined, pen: Pen) -> str | None:
    """Return a body of straight edges with curves between them as a path; None where it is none."""
    turnings = body.turnings
    if turnings is None or not (body.is_moved or sum(len(e.curves) for e in turnings) <= _FEW):
        return None
    words: list[str] = []
    for index, turning in enumerate(turnings):
        words.append(f"{'L' if words else 'M'} {_braced(body, index, turning.start, pen)}")
        for edge in turning.curves:
            assert edge.arc is not None, "a curve is an arc"
            radius, sweep = pen.decimal(edge.arc.radius), int(edge.arc.sweep > 0)
            for at in (edge.arc.point(edge.arc.start + edge.arc.sweep / 2), edge.end):
                words.append(f"A {radius} {radius} 0 0 {sweep} {_braced(body, index, at, pen)}")
    return f'{{path: "{" ".join([*words, "Z"])}"}}'


def _braced(body: Outlined, index: int, at: Point, pen: Pen) -> str:
    """Return a place in a path: what is more than a number stands in braces."""
    return " ".join(
        f"{{{pen.text(each)}}}" if any(each.per.values()) else pen.decimal(each.drawn)
        for each in body.at_turning(index, at)
    )


def hole_texts(body: Outlined, pen: Pen) -> Iterator[tuple[str, str]]:
    """Yield the names and statements of a part's holes, one for each diameter."""
    by_size: dict[float, list[Hole]] = {}
    for hole in body.part.made.holes:
        by_size.setdefault(round(hole.diameter, 2), []).append(hole)
    for place, (size, members) in enumerate(sorted(by_size.items())):
        spots = [pen.spot(body.free(each.at)) for each in members]
        at = spots[0] if len(spots) == 1 else f"[{', '.join(spots)}]"
        word = HOLE.name if len(members) == 1 else f"{HOLE.name}s"
        name = word if len(by_size) == 1 else f"{word}-{place + 1}"
        yield name, f"{{hole: {{at: {at}, diameter: {pen.number(size)}}}}}{pen.guess(size)}"


def window_texts(body: Outlined, pen: Pen) -> Iterator[tuple[str, str]]:
    """Yield the names and statements of a part's windows."""
    openings = [body.part.made.draft.openings[i].contour for i in body.part.made.windows]
    for place, contour in enumerate(openings):
        name = WINDOW.name if len(openings) == 1 else f"{WINDOW.name}-{place + 1}"
        yield name, f"{{window: {{{_opening(body, contour, pen)}}}}}"


def pocket_texts(body: Outlined, pen: Pen) -> Iterator[tuple[str, str]]:
    """Yield the names and statements of a part's pockets."""
    made = body.part.made
    for place, (index, deep) in enumerate(made.pockets):
        name = POCKET.name if len(made.pockets) == 1 else f"{POCKET.name}-{place + 1}"
        opening = _opening(body, made.draft.openings[index].contour, pen)
        yield name, f"{{pocket: {{{opening}, depth: {pen.number(deep)}}}}}"


def _opening(body: Outlined, contour: Contour, pen: Pen) -> str:
    """Return where an opening lies and its shape."""
    across = diameter_of(contour)
    if across is not None:
        at = pen.spot(body.free(bounds(contour).centre))
        return f"at: {at}, circle: {pen.number(across)}"
    long = rounded_slot(contour)
    if long is not None:
        centre, length, width, turn = long
        sizes = f"{pen.number(length)}, {pen.number(width)}"
        at = pen.spot(body.free(centre))
        return f"at: {at}, rounded-slot: [{sizes}]{angle_text(turn % 180)}"
    corners = corners_of(contour)
    box = upright(corners) if corners else None
    if box is not None:
        sizes = f"{pen.number(box.width)}, {pen.number(box.height)}"
        at = pen.spot(body.free(box.centre))
        return f"at: {at}, rectangle: [{sizes}]{pen.rounded(box.radius)}"
    x, y = body.origin
    if corners:
        rows = [_corner(each, (x, y), pen) for each in corners]
        return f"at: [0, 0], polygon: [{', '.join(rows)}]"
    return f'at: [0, 0], path: "{_path(moved(contour, -x, -y), pen)}"'


def _corner(corner: Corner, origin: Point, pen: Pen) -> str:
    x, y = corner.at[0] - origin[0], corner.at[1] - origin[1]
    return f"[{pen.number(x)}, {pen.number(y)}{pen.rounded(corner.radius, inside=True)}]"


def _path(contour: Contour, pen: Pen) -> str:
    """Return SVG path text, y up; an arc is written in two halves."""
    words: list[str] = []
    for edge in edges(contour):
        if not words:
            words.append(f"M {_pair(edge.start, pen)}")
        arc = edge.arc
        if arc is None:
            words.append(f"L {_pair(edge.end, pen)}")
            continue
        radius, sweep = pen.decimal(arc.radius), int(arc.sweep > 0)
        for each in (arc.point(arc.start + arc.sweep / 2), edge.end):
            words.append(f"A {radius} {radius} 0 0 {sweep} {_pair(each, pen)}")
    return " ".join([*words, "Z"])


def _pair(at: Point, pen: Pen) -> str:
    return f"{pen.decimal(at[0])} {pen.decimal(at[1])}"
