"""Parallel pictures of flat panels: every surface a plane, hidden pixel by pixel, edges inked."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import cos, radians, sin
from pathlib import Path

import numpy as np
from PIL import Image, ImageDraw, ImageFilter

from kerfolio.geometry.contour import Contour
from kerfolio.geometry.flatten import points
from kerfolio.settling.settled import Operation, SettledPart
from tests.tools.sample_poses import Pose, Triple

SIZE = (1600, 1200)
FINE = 2  # pixels of the canvas to one of the picture
PAPER, INK, ACCENT, SHADE, GUIDE = "#cdd6d3", "#16201d", "#00412e", "#aab6b1", "#1c5c46"
WOOD = ("#b3a488", "#d3c6ac", "#f3ecdd")  # surfaces that look along x, along y and up
NEW = ("#5b9a80", "#79b99d", "#a9dcc5")

Vector = np.ndarray
Ring = list[tuple[float, float]]


@dataclass(frozen=True)
class Shown:
    """A piece in a picture: its place, whether it is new, how far it is moved from home."""

    part: SettledPart
    pose: Pose
    new: bool = False
    away: Triple = (0.0, 0.0, 0.0)

    @property
    def normal(self) -> Vector:
        """Return where its show face looks."""
        return np.cross(np.array(self.pose.x), np.array(self.pose.y))

    def at(self, u: float, v: float, w: float, *, home: bool = False) -> Vector:
        """Return the place of a point of the part, w above the rear of its sheet."""
        spot = np.array(self.pose.origin) + u * np.array(self.pose.x) + v * np.array(self.pose.y)
        return spot + w * self.normal + (0.0 if home else np.array(self.away))

    def corners(self) -> Iterator[Vector]:
        """Yield the corners of its outline on both faces."""
        for u, v in points(self.part.routed.outer, 0.5):
            yield self.at(u, v, 0.0)
            yield self.at(u, v, self.part.thickness)


class View:
    """A parallel projection: azimuth and elevation in degrees, fitted to the picture."""

    def __init__(self, azimuth: float, elevation: float) -> None:
        a, e = radians(azimuth), radians(elevation)
        self.right = np.array([cos(a), sin(a), 0.0])
        self.to_eye = np.array([sin(a) * cos(e), -cos(a) * cos(e), sin(e)])
        self.up = np.cross(self.to_eye, self.right)
        self.scale, self.shift = 1.0, np.zeros(2)

    def fit(self, spots: Iterable[Vector]) -> None:
        """Scale and centre so that all spots are seen with a margin."""
        flat = np.array([[s @ self.right, s @ self.up] for s in spots])
        low, high = flat.min(0), flat.max(0)
        room = np.array(SIZE) * FINE
        self.scale = float(min(room * 0.86 / (high - low)))
        self.shift = room / 2 - self.scale * (low + high) / 2

    def pixel(self, spot: Vector) -> tuple[float, float]:
        """Return column and row of a spot."""
        u = self.scale * float(spot @ self.right) + self.shift[0]
        v = self.scale * float(spot @ self.up) + self.shift[1]
        return u, SIZE[1] * FINE - v

    def depth(self, spot: Vector) -> float:
        """Return how near the eye a spot is, mm."""
        return float(spot @ self.to_eye)


class Canvas:
    """A picture that knows how near the eye each of its pixels is."""

    def __init__(self, view: View) -> None:
        self.view = view
        size = (SIZE[0] * FINE, SIZE[1] * FINE)
        self.image = Image.new("RGB", size, PAPER)
        self.near = np.full((size[1], size[0]), -1e9, dtype=np.float32)

    def face(self, rings: Sequence[Sequence[Vector]], colour: str) -> None:
        """Paint a flat face with holes wherever nothing nearer was painted."""
        mask = Image.new("1", self.image.size)
        pen = ImageDraw.Draw(mask)
        for number, ring in enumerate(rings):
            pen.polygon([self.view.pixel(spot) for spot in ring], fill=int(number == 0))
        box = mask.getbbox()
        plane = self._plane(rings[0])
        if box is None or plane is None:
            return
        a, b, c = plane
        cut = np.s_[box[1] : box[3], box[0] : box[2]]
        columns = np.arange(box[0], box[2])[None, :] + 0.5
        rows = np.arange(box[1], box[3])[:, None] + 0.5
        depth = (a * columns + b * rows + c).astype(np.float32)
        seen = np.array(mask.crop(box)) & (depth > self.near[cut])
        self.near[cut] = np.where(seen, depth, self.near[cut])
        self.image.paste(colour, (box[0], box[1]), Image.fromarray(seen))

    def _plane(self, ring: Sequence[Vector]) -> tuple[float, float, float] | None:
        """Return depth as a x column + b x row + c; None for a face seen edge on."""
        rows = np.array([[*self.view.pixel(spot), 1.0] for spot in ring])
        depths = np.array([self.view.depth(spot) for spot in ring])
        middle = rows[:, :2].mean(0)
        rows[:, :2] -= middle
        (a, b, c), _, rank, _ = np.linalg.lstsq(rows, depths, rcond=1e-9)
        return None if rank < 3 else (a, b, c - a * middle[0] - b * middle[1])

    def line(
        self, start: Vector, end: Vector, colour: str, width: float, dash: float = 0.0
    ) -> None:
        """Ink what is seen of a line; ``dash`` in pixels of the picture."""
        (x0, y0), (x1, y1) = self.view.pixel(start), self.view.pixel(end)
        size = float(np.hypot(x1 - x0, y1 - y0))
        count = max(2, int(size / 1.5))
        steps = np.linspace(0, 1, count)
        seen = self._seen(start, end, steps, (x0, y0), (x1, y1), size)
        if dash:
            seen &= (steps * size / (dash * FINE)).astype(int) % 2 == 0
        pen = ImageDraw.Draw(self.image)
        for first, last in _runs(seen):
            ends = [(x0 + k * (x1 - x0), y0 + k * (y1 - y0)) for k in (steps[first], steps[last])]
            pen.line(ends, fill=colour, width=round(width * FINE))

    def _seen(
        self,
        start: Vector,
        end: Vector,
        steps: Vector,
        a: tuple[float, float],
        b: tuple[float, float],
        size: float,
    ) -> Vector:
        """Say where along a line nothing lies in front, looking a little to both its sides."""
        near, far = self.view.depth(start), self.view.depth(end)
        depth = near + steps * (far - near)
        across = ((a[1] - b[1]) / size, (b[0] - a[0]) / size) if size > 1e-9 else (0.0, 0.0)
        seen = np.zeros(len(steps), dtype=bool)
        for off in (-1.6, 0.0, 1.6):
            columns = (a[0] + steps * (b[0] - a[0]) + off * across[0]).astype(int)
            rows = (a[1] + steps * (b[1] - a[1]) + off * across[1]).astype(int)
            columns = np.clip(columns, 0, self.near.shape[1] - 1)
            rows = np.clip(rows, 0, self.near.shape[0] - 1)
            seen |= depth >= self.near[rows, columns] - 0.9
        return seen

    def shadow(self, pieces: Iterable[Shown]) -> None:
        """Lay a soft shadow on the ground below the pieces."""
        pieces = list(pieces)
        floor = min(float(spot[2]) for each in pieces for spot in each.corners())
        mask = Image.new("L", self.image.size)
        pen = ImageDraw.Draw(mask)
        for each in pieces:
            flat = [np.array([s[0], s[1], floor]) for s in each.corners()]
            pen.polygon(_hull([self.view.pixel(spot) for spot in flat]), fill=255)
        mask = mask.filter(ImageFilter.GaussianBlur(14 * FINE))
        self.image.paste(SHADE, (0, 0), mask)

    def save(self, path: Path) -> None:
        """Write a PNG of few colours."""
        path.parent.mkdir(parents=True, exist_ok=True)
        small = self.image.resize(SIZE, Image.Resampling.LANCZOS)
        small.quantize(128, dither=Image.Dither.NONE).save(path, optimize=True)


def _runs(seen: Vector) -> Iterator[tuple[int, int]]:
    """Yield first and last index of each stretch that is seen."""
    edges = np.flatnonzero(np.diff(np.concatenate(([False], seen, [False])).astype(int)))
    for first, after in zip(edges[::2], edges[1::2], strict=True):
        if after - first > 1:
            yield int(first), int(after - 1)


def _hull(spots: Sequence[tuple[float, float]]) -> list[tuple[float, float]]:
    """Return the convex hull of some points (Andrew's monotone chain)."""
    ordered = sorted(set(spots))
    halves: list[list[tuple[float, float]]] = []
    for way in (ordered, ordered[::-1]):
        half: list[tuple[float, float]] = []
        for spot in way:
            while len(half) > 1 and _turn(half[-2], half[-1], spot) <= 0:
                half.pop()
            half.append(spot)
        halves.append(half[:-1])
    return halves[0] + halves[1]


def _turn(a: tuple[float, float], b: tuple[float, float], c: tuple[float, float]) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def tint(normal: Vector, *, new: bool) -> str:
    """Mix the three tints by how far a surface looks along x, along y and up."""
    weights = normal**2 / float(normal @ normal)
    tints = [[int(each[i : i + 2], 16) for i in (1, 3, 5)] for each in (NEW if new else WOOD)]
    mixed = np.array(tints).T @ weights
    return "#" + "".join(f"{round(value):02x}" for value in mixed)


def paint(canvas: Canvas, shown: Shown) -> None:
    """Paint all surfaces of a piece that look towards the eye."""
    part, thick = shown.part, shown.part.thickness
    through = [_ring(each) for each in (part.routed.outer, *part.routed.openings)]
    sunk = list(_recesses(part))
    if float(shown.normal @ canvas.view.to_eye) > 1e-9:
        rings = [*through, *(ring for _, ring in sunk)]
        canvas.face(_lifted(shown, rings, thick), tint(shown.normal, new=shown.new))
        for level, ring in sunk:
            inner = [each for each in through[1:] if _inside(each, ring)]
            canvas.face(_lifted(shown, [ring, *inner], level), tint(shown.normal, new=shown.new))
    else:
        canvas.face(_lifted(shown, through, 0.0), tint(shown.normal, new=shown.new))
    for level, ring in [(0.0, each) for each in through] + sunk:
        for p, q in zip(ring[-1:] + ring[:-1], ring, strict=True):
            quad = [shown.at(*s, w) for s, w in ((p, level), (q, level), (q, thick), (p, thick))]
            wall = np.cross(quad[1] - quad[0], quad[3] - quad[0])
            if float(wall @ wall) > 1e-12:
                canvas.face([quad], tint(wall, new=shown.new))


def ink(canvas: Canvas, shown: Shown) -> None:
    """Ink the edges and engraved lines of a piece."""
    part, thick = shown.part, shown.part.thickness
    colour = ACCENT if shown.new else INK
    through = [_ring(each) for each in (part.routed.outer, *part.routed.openings)]
    for level, ring in [(0.0, each) for each in through] + list(_recesses(part)):
        for index, q in enumerate(ring):
            p = ring[index - 1]
            for w in (level, thick):
                canvas.line(shown.at(*p, w), shown.at(*q, w), colour, 1.8)
            if _sharp(ring, index) or _outermost(canvas, shown, ring, index):
                canvas.line(shown.at(*q, level), shown.at(*q, thick), colour, 1.8)
    for cut in part.cuts:
        if cut.operation is Operation.ENGRAVE:
            for contour in cut.contours:
                _engraved(canvas, shown, contour, colour)


def _engraved(canvas: Canvas, shown: Shown, contour: Contour, colour: str) -> None:
    ring, thick = _ring(contour), shown.part.thickness
    pairs = list(pairwise(ring))
    for p, q in [*pairs, *([(ring[-1], ring[0])] if contour.closed else [])]:
        canvas.line(shown.at(*p, thick), shown.at(*q, thick), colour, 2.2)


def guide(canvas: Canvas, home: Vector, away: Vector) -> None:
    """Draw a fine broken line along which a piece comes home."""
    canvas.line(home, away, GUIDE, 2.0, dash=9)


def _ring(contour: Contour) -> Ring:
    return [(float(x), float(y)) for x, y in points(contour, 0.05)]


def _recesses(part: SettledPart) -> Iterator[tuple[float, Ring]]:
    """Yield the level of the floor and the edge of everything that is cut to a depth."""
    for cut in part.cuts:
        if cut.operation in (Operation.POCKET, Operation.HOLE) and cut.depth:
            for contour in cut.contours:
                yield part.thickness - cut.depth, _ring(contour)


def _lifted(shown: Shown, rings: Iterable[Ring], level: float) -> list[list[Vector]]:
    return [[shown.at(u, v, level) for u, v in ring] for ring in rings]


def _inside(ring: Ring, other: Ring) -> bool:
    (x, y), box = ring[0], np.array(other)
    (x0, y0), (x1, y1) = box.min(0), box.max(0)
    return bool(x0 <= x <= x1 and y0 <= y <= y1)


def _sharp(ring: Ring, index: int) -> bool:
    a, b, c = (np.array(ring[i % len(ring)]) for i in (index - 1, index, index + 1))
    one, two = b - a, c - b
    turn = abs(one[0] * two[1] - one[1] * two[0])
    return bool(turn > 0.42 * np.linalg.norm(one) * np.linalg.norm(two))


def _outermost(canvas: Canvas, shown: Shown, ring: Ring, index: int) -> bool:
    """Say whether a round wall turns away from the eye here."""
    a, b, c = (ring[i % len(ring)] for i in (index - 1, index, index + 1))
    eye = canvas.view.to_eye
    u, v = float(np.array(shown.pose.x) @ eye), float(np.array(shown.pose.y) @ eye)
    one = (b[1] - a[1]) * u - (b[0] - a[0]) * v
    two = (c[1] - b[1]) * u - (c[0] - b[0]) * v
    return one * two < 0
