"""Draws the pictures of the sample workshop from its own settled plans; run by hand.

    .venv/bin/python -m tests.tools.draw_sample_pictures

The sample has no photographs. Each picture is a parallel projection of the plan's parts, extruded
to their thickness, at poses stated below; pieces new in a step are tinted. Hidden surfaces are
settled pixel by pixel: every face is a plane, so its depth is linear over the picture.
"""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field
from math import cos, radians, sin
from pathlib import Path

import numpy as np
from PIL import Image, ImageDraw

from generator.geometry.flatten import points
from generator.reading.workshop import read_workshop
from generator.settling.settle import settle
from generator.settling.settled import SettledPart, SettledPlan
from generator.settling.variant import drawn_variant

SAMPLE = Path(__file__).resolve().parents[2] / "sample-site"
SIZE = (1600, 1200)
FINE = 2
PAPER, INK, ACCENT = "#fbf8f2", "#26221c", "#b5532a"
WOOD = ("#cdb088", "#dcc49d", "#ecdcbf")  # faces turned to x, to y and up
NEW = ("#cc8a5f", "#dca27a", "#ecc3a3")
SHADE = "#efe8da"

Vector = np.ndarray
Ring = list[tuple[float, float]]


@dataclass(frozen=True)
class Pose:
    """Where a part's 0,0 lies, where its x and y point; its sheet lies along x cross y."""

    origin: tuple[float, float, float]
    x: tuple[int, int, int]
    y: tuple[int, int, int]

    def at(self, u: float, v: float, w: float) -> Vector:
        x, y = np.array(self.x, float), np.array(self.y, float)
        return np.array(self.origin) + u * x + v * y + w * np.cross(x, y)


@dataclass(frozen=True)
class Shown:
    """A part in a picture: its pose, whether it is new, how far it is moved away."""

    part: SettledPart
    pose: Pose
    new: bool = False
    away: tuple[float, float, float] = (0.0, 0.0, 0.0)


class View:
    """A parallel projection: azimuth and elevation in degrees, fitted to the picture."""

    def __init__(self, azimuth: float, elevation: float) -> None:
        a, e = radians(azimuth), radians(elevation)
        self.right = np.array([cos(a), sin(a), 0.0])
        self.to_eye = np.array([sin(a) * cos(e), -cos(a) * cos(e), sin(e)])
        self.up = np.cross(self.to_eye, self.right)
        self.scale, self.shift = 1.0, np.zeros(2)

    def fit(self, spots: Sequence[Vector]) -> None:
        flat = np.array([[s @ self.right, s @ self.up] for s in spots])
        low, high = flat.min(0), flat.max(0)
        room = np.array(SIZE) * FINE
        self.scale = float(min(room * 0.84 / (high - low)))
        self.shift = room / 2 - self.scale * (low + high) / 2

    def pixel(self, spot: Vector) -> tuple[float, float]:
        u = self.scale * float(spot @ self.right) + self.shift[0]
        v = self.scale * float(spot @ self.up) + self.shift[1]
        return u, SIZE[1] * FINE - v

    def depth(self, spot: Vector) -> float:
        return float(spot @ self.to_eye)


def rings_of(part: SettledPart) -> list[Ring]:
    region = part.routed
    return [list(points(each, 0.1)) for each in (region.outer, *region.openings)]


class Canvas:
    """A picture with the depth of what is seen at every pixel."""

    def __init__(self, view: View) -> None:
        self.view = view
        size = (SIZE[0] * FINE, SIZE[1] * FINE)
        self.image = Image.new("RGB", size, PAPER)
        self.depth = np.full((size[1], size[0]), -1e9)
        rows, columns = np.mgrid[0 : size[1], 0 : size[0]]
        self.grid = (columns + 0.5, rows + 0.5)

    def face(self, rings: Sequence[Sequence[Vector]], colour: str) -> None:
        """Paint a flat face with holes wherever nothing nearer was painted."""
        flat = [[self.view.pixel(spot) for spot in ring] for ring in rings]
        mask = Image.new("1", self.image.size)
        pen = ImageDraw.Draw(mask)
        pen.polygon(flat[0], fill=1)
        for hole in flat[1:]:
            pen.polygon(hole, fill=0)
        a, b, c = self._plane(rings[0])
        inside = np.array(mask)
        box = mask.getbbox()
        if box is None:
            return
        cut = np.s_[box[1] : box[3], box[0] : box[2]]
        depth = a * self.grid[0][cut] + b * self.grid[1][cut] + c
        seen = inside[cut] & (depth > self.depth[cut])
        self.depth[cut] = np.where(seen, depth, self.depth[cut])
        patch = Image.fromarray(seen)
        self.image.paste(colour, (box[0], box[1]), patch)

    def _plane(self, ring: Sequence[Vector]) -> tuple[float, float, float]:
        rows = np.array([[*self.view.pixel(spot), 1.0] for spot in ring])
        depths = np.array([self.view.depth(spot) for spot in ring])
        a, b, c = np.linalg.lstsq(rows, depths, rcond=None)[0]
        return float(a), float(b), float(c)

    def line(self, start: Vector, end: Vector, colour: str, width: float) -> None:
        """Draw the part of an edge that nothing hides."""
        slack = 1.2 / self.view.scale * FINE
        (x0, y0), (x1, y1) = self.view.pixel(start), self.view.pixel(end)
        count = max(2, int(max(abs(x1 - x0), abs(y1 - y0)) / 2))
        steps = np.linspace(0, 1, count)
        depths = self.view.depth(start) + steps * (self.view.depth(end) - self.view.depth(start))
        columns = np.clip((x0 + steps * (x1 - x0)).astype(int), 0, self.depth.shape[1] - 1)
        rows = np.clip((y0 + steps * (y1 - y0)).astype(int), 0, self.depth.shape[0] - 1)
        seen = depths >= self.depth[rows, columns] - slack
        pen = ImageDraw.Draw(self.image)
        for index in range(count - 1):
            if seen[index] and seen[index + 1]:
                s, t = steps[index], steps[index + 1]
                ends = [(x0 + k * (x1 - x0), y0 + k * (y1 - y0)) for k in (s, t)]
                pen.line(ends, fill=colour, width=round(width * FINE))

    def save(self, path: Path) -> None:
        path.parent.mkdir(parents=True, exist_ok=True)
        small = self.image.resize(SIZE, Image.Resampling.LANCZOS)
        small.quantize(96, dither=Image.Dither.NONE).save(path, optimize=True)


def shade(normal: Vector, new: bool) -> str:
    palette = NEW if new else WOOD
    return palette[int(np.argmax(np.abs(normal)))]


def solid(canvas: Canvas, shown: Shown, *, lines: bool) -> None:
    """Paint a part's faces, or draw its edges."""
    thick, move = shown.part.thickness, np.array(shown.away)

    def at(u: float, v: float, w: float) -> Vector:
        return shown.pose.at(u, v, w) + move

    rings = rings_of(shown.part)
    normal = np.cross(np.array(shown.pose.x, float), np.array(shown.pose.y, float))
    colour = ACCENT if shown.new else INK
    for level, outward in ((0.0, -normal), (thick, normal)):
        if float(outward @ canvas.view.to_eye) > 1e-9 and not lines:
            canvas.face(
                [[at(u, v, level) for u, v in ring] for ring in rings], shade(normal, shown.new)
            )
    for ring in rings:
        walls(canvas, ring, at, thick, colour, shown.new, lines)


def walls(
    canvas: Canvas,
    ring: Ring,
    at: Callable[[float, float, float], Vector],
    thick: float,
    colour: str,
    new: bool,
    lines: bool,
) -> None:
    for index, (u, v) in enumerate(ring):
        p, q = ring[index - 1], (u, v)
        quad = [at(*p, 0.0), at(*q, 0.0), at(*q, thick), at(*p, thick)]
        if not lines:
            wall = np.cross(quad[1] - quad[0], quad[3] - quad[0])
            canvas.face([quad], shade(wall, new))
            continue
        canvas.line(quad[0], quad[1], colour, 1.6)
        canvas.line(quad[2], quad[3], colour, 1.6)
        if sharp(ring, index):
            canvas.line(at(u, v, 0.0), at(u, v, thick), colour, 1.2)


def sharp(ring: Ring, index: int) -> bool:
    a, b, c = (np.array(ring[i % len(ring)]) for i in (index - 1, index, index + 1))
    one, two = b - a, c - b
    turn = abs(one[0] * two[1] - one[1] * two[0])
    return bool(turn > 0.35 * np.linalg.norm(one) * np.linalg.norm(two))


def draw(path: Path, everything: Iterable[Shown], azimuth: float, elevation: float) -> None:
    shown = list(everything)
    view = View(azimuth, elevation)
    corners = [
        each.pose.at(u, v, w) + np.array(each.away)
        for each in shown
        for u, v in rings_of(each.part)[0]
        for w in (0.0, each.part.thickness)
    ]
    view.fit(corners)
    canvas = Canvas(view)
    floor = min(float(spot[2]) for spot in corners)
    shadow(canvas, corners, floor)
    for each in shown:
        solid(canvas, each, lines=False)
    for each in sorted(shown, key=lambda one: one.new):
        solid(canvas, each, lines=True)
    canvas.save(path)


def shadow(canvas: Canvas, corners: Sequence[Vector], floor: float) -> None:
    """A soft patch on the ground, so that the thing stands."""
    xs, ys = [s[0] for s in corners], [s[1] for s in corners]
    grow = 0.06 * max(max(xs) - min(xs), max(ys) - min(ys))
    x0, x1, y0, y1 = min(xs) - grow, max(xs) + grow, min(ys) - grow, max(ys) + grow
    ring = [np.array([x, y, floor - 0.5]) for x, y in ((x0, y0), (x1, y0), (x1, y1), (x0, y1))]
    canvas.face([ring], SHADE)


@dataclass(frozen=True)
class Scene:
    """How a plan is shown: poses of its pieces by label, moves of pieces new in a step."""

    poses: dict[str, Pose]
    moves: dict[str, tuple[float, float, float]]
    azimuth: float = 35.0
    elevation: float = 26.0
    alone: dict[int, tuple[str, ...]] = field(default_factory=dict)
    """Pieces shown by themselves in a step that adds none."""


def settled_plan(name: str) -> SettledPlan:
    workshop, _ = read_workshop(SAMPLE)
    assert workshop is not None
    plan = next(each for each in workshop.plans if each.name == name)
    variant = drawn_variant(plan, workshop.stock)
    assert variant is not None
    settled, findings = settle(plan, workshop.stock, variant)
    assert settled is not None, findings
    return settled


def illustrate(name: str, make: Callable[[SettledPlan], Scene]) -> None:
    settled = settled_plan(name)
    scene = make(settled)
    parts = {piece.label: part for part in settled.parts for piece in part.pieces}
    folder = SAMPLE / "plans" / name / "photos"
    standing: list[str] = []
    for number, step in enumerate(settled.plan.steps, start=1):
        new = [each.name for each in step.add]
        if not new:
            alone = [
                Shown(parts[each], scene.poses[each], new=True)
                for each in scene.alone.get(number, ())
            ]
            if alone:
                draw(folder / f"step-{number}.png", alone, scene.azimuth, scene.elevation)
            continue
        shown = [Shown(parts[label], scene.poses[label]) for label in standing]
        shown += [
            Shown(
                parts[label], scene.poses[label], new=True, away=scene.moves.get(label, (0, 0, 0))
            )
            for label in new
        ]
        draw(folder / f"step-{number}.png", shown, scene.azimuth, scene.elevation)
        standing += new
    whole = [Shown(parts[label], pose) for label, pose in scene.poses.items()]
    draw(folder / "finished.png", whole, scene.azimuth, scene.elevation)


X, Y, Z = (1, 0, 0), (0, 1, 0), (0, 0, 1)


def thickness_of(settled: SettledPlan, sheet: str) -> float:
    return settled.sheet(sheet).thickness


def size_of(settled: SettledPlan, name: str) -> float:
    return dict(settled.sizes)[name].value


def desk_rack(settled: SettledPlan) -> Scene:
    """Rails along x, dividers across; both stand on the table."""
    t = thickness_of(settled, "ply")
    poses = {
        "rail.front": Pose((0, 40 + t / 2, 0), X, Z),
        "rail.back": Pose((0, 140 + t / 2, 0), X, Z),
    }
    first, between = size_of(settled, "first"), size_of(settled, "between")
    for index in range(4):
        poses[f"divider.{index + 1}"] = Pose((first + index * between - t / 2, 0, 0), Y, Z)
    moves = {f"divider.{number}": (0.0, 0.0, 110.0) for number in range(1, 5)}
    return Scene(poses, moves, azimuth=-32, elevation=30)


def harbour_stool(settled: SettledPlan) -> Scene:
    """Sides across x, seat on top; y runs to the back."""
    t = thickness_of(settled, "ply")
    h, deep, between = (size_of(settled, each) for each in ("h", "deep", "between"))
    poses = {
        "side.left": Pose((-t, 0, 0), Y, Z),
        "side.right": Pose((between, 0, 0), Y, Z),
        "rail": Pose((0, deep / 2 + t / 2, h - 120), X, Z),
        "stretcher": Pose((0, deep / 2 + t / 2, size_of(settled, "bolt_y") - 40), X, Z),
        "seat": Pose((between / 2 - 200, deep / 2 - 175, h), X, Y),
    }
    moves = {
        "rail": (90.0, 0.0, 0.0),
        "side.right": (150.0, 0.0, 0.0),
        "stretcher": (70.0, 0.0, 0.0),
        "seat": (0.0, 0.0, 120.0),
    }
    return Scene(poses, moves, azimuth=-33, elevation=24, alone={1: ("stretcher",)})


def potting_bench(settled: SettledPlan) -> Scene:
    """The front of the worktop lies along x at y = 0; the ends stand inset from its ends."""
    t, s = thickness_of(settled, "ply"), thickness_of(settled, "thin")
    h, over, inset = (size_of(settled, each) for each in ("h", "over", "inset"))
    between, deep = size_of(settled, "between"), size_of(settled, "deep")
    long, back_y, groove = (size_of(settled, each) for each in ("long", "back_y", "groove"))
    left = inset + t
    top = h + t
    shelf = size_of(settled, "shelf_y") + t / 2
    cheek = size_of(settled, "cheek_x")
    face = back_y - s / 2
    poses = {
        "end.left": Pose((inset, over, 0), Y, Z),
        "end.right": Pose((left + between, over, 0), Y, Z),
        "rail.front": Pose((left, over + 60 + t / 2, h - 120), X, Z),
        "rail.back": Pose((left, over + deep - 60 + t / 2, h - 120), X, Z),
        "shelf": Pose((left, over + 70, shelf - t), X, Y),
        "top": Pose((0, 0, h), X, Y),
        "lip.front": Pose((left + 2, over + 70 + 40 + s / 2, shelf), X, Z),
        "lip.back": Pose((left + 2, over + 70 + 320 + s / 2, shelf), X, Z),
        "back": Pose((inset, back_y + s / 2, top - groove), X, Z),
        "cheek.left": Pose((inset + cheek + s / 2, face, top), (0, -1, 0), Z),
        "cheek.right": Pose((long - inset - cheek + s / 2, face, top), (0, -1, 0), Z),
        "ledge": Pose((inset + cheek + s / 2, face - 140, top + 150 - s / 2), X, Y),
    }
    for number, (x, y) in enumerate(
        (
            (inset + t, over),
            (inset + t, over + deep - 80),
            (left + between - t, over),
            (left + between - t, over + deep - 80),
        ),
        start=1,
    ):
        poses[f"foot.{number}"] = Pose((x, y + 1, 0), Y, Z)
    moves: dict[str, tuple[float, float, float]] = {
        "top": (0, 0, 180),
        "lip.front": (0, -0.0, 110),
        "lip.back": (0, 0, 110),
        **dict.fromkeys(("back", "cheek.left", "cheek.right", "ledge"), (0, 0, 200)),
        **dict.fromkeys(("rail.front", "rail.back", "shelf"), (0, 0, 0)),
    }
    return Scene(poses, moves, azimuth=-30, elevation=22)


def tool_tote(settled: SettledPlan) -> Scene:
    """The walls run along x between the two ends."""
    t, inch = thickness_of(settled, "ply"), 25.4
    long = size_of(settled, "long") * inch
    poses = {
        "end.left": Pose((-t, 0, 0), Y, Z),
        "end.right": Pose((long, 0, 0), Y, Z),
        "side.front": Pose((0, 0.75 * inch + t / 2, 0.5 * inch), X, Z),
        "side.back": Pose((0, 8.25 * inch + t / 2, 0.5 * inch), X, Z),
        "floor": Pose((0, 0.75 * inch + t / 2, inch - t / 2), X, Y),
        "middle": Pose((0, 4.5 * inch + t / 2, inch + t / 2), X, Z),
    }
    moves = {
        "end.right": (130.0, 0.0, 0.0),
        "floor": (150.0, 0.0, 0.0),
        "side.front": (60.0, 0.0, 0.0),
        "side.back": (60.0, 0.0, 0.0),
        "middle": (60.0, 0.0, 0.0),
    }
    return Scene(poses, moves, azimuth=-38, elevation=30)


SCENES: dict[str, Callable[[SettledPlan], Scene]] = {
    "desk-rack": desk_rack,
    "harbour-stool": harbour_stool,
    "potting-bench": potting_bench,
    "tool-tote": tool_tote,
}


if __name__ == "__main__":
    for plan_name in sys.argv[1:] or SCENES:
        illustrate(plan_name, SCENES[plan_name])
