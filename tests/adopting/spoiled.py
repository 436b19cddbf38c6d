"""Drawings as makers make them, from plans whose answer is known: spoiled at random, seeded.

    python -m tests.adopting.spoiled FOLDER

writes them all, each with its right answer beside it.
"""

from __future__ import annotations

import json
import math
import random
import sys
from collections.abc import Iterator, Sequence
from dataclasses import asdict, dataclass, replace
from functools import cache
from pathlib import Path
from typing import Any

import ezdxf

from kerfolio.geometry.arc import edges
from kerfolio.geometry.contour import Contour, Region
from kerfolio.geometry.flatten import points
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.relief import contour_corners, dog_bone_centre
from kerfolio.geometry.transform import mirrored_x, moved, turned
from kerfolio.model.feature_kind import FINGERS, HOLE, NOTCH, SLOT, TAB
from kerfolio.model.stock import Stock
from kerfolio.reading.workshop import read_workshop
from kerfolio.settling.points import proof_points
from kerfolio.settling.settle import settle
from kerfolio.settling.settled import SettledPlan

_SAMPLE = Path(__file__).parents[2] / "sample-site"
_GAP = 12.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Spoiling:
    """How a drawing is spoiled. ``unit`` is what its numbers are, mm; ``says`` what it states."""

    name: str
    plan: str
    form: str = "svg"
    seed: int = 1
    unit: float = 1.0
    says: str = "mm"
    turned: bool = False
    over: bool = False
    bones: str = ""
    layers: bool = False
    loose: bool = False
    gap: float = 0.0
    doubled: bool = False
    nodes: bool = False
    border: bool = True
    words: bool = True
    groups: bool = False
    blocks: bool = False
    splines: bool = False
    version: str = "R2010"
    fit: float = 0.0


SPOILED = (
    Spoiling(name="rack-plain", plan="desk-rack"),
    Spoiling(name="rack-px", plan="desk-rack", unit=25.4 / 96, says="", words=False, turned=True),
    Spoiling(name="rack-r12", plan="desk-rack", form="dxf", version="R12", says="", layers=True),
    Spoiling(name="stool-bones", plan="harbour-stool", bones="path", turned=True, groups=True),
    Spoiling(name="stool-circles", plan="harbour-stool", form="dxf", bones="circles", layers=True),
    Spoiling(
        name="stool-loose", plan="harbour-stool", form="dxf", loose=True, gap=0.03, doubled=True
    ),
    Spoiling(
        name="stool-blocks",
        plan="harbour-stool",
        form="dxf",
        blocks=True,
        over=True,
        turned=True,
        unit=25.4,
        says="in",
    ),
    Spoiling(name="tote-inches", plan="tool-tote", unit=25.4, says="in", turned=True, nodes=True),
    Spoiling(name="tote-splines", plan="tool-tote", form="dxf", splines=True, border=False),
    Spoiling(name="cross-gaps", plan="window-shelf", form="dxf", loose=True, gap=0.4),
    Spoiling(name="bench-all", plan="potting-bench", bones="path", over=True, doubled=True),
    Spoiling(name="stool-fitted", plan="harbour-stool", fit=0.15, turned=True),
    Spoiling(name="rack-groups", plan="desk-rack", groups=True, over=True, nodes=True, seed=5),
)
"""The drawings: of five things, in both formats."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """What is right about a drawing: counts over all pieces, thicknesses as drawn, mm."""

    pieces: int
    parts: int
    thickness: tuple[float, ...]
    tabs: int
    slots: int
    notches: int
    rows: int
    holes: int


@cache
def _workshop() -> Any:
    return read_workshop(_SAMPLE, pictures=False)[0]


@cache
def drawn_plan(name: str, fit: float = 0.0) -> SettledPlan:
    """Return a sample plan settled as drawn, with so much play on each side, mm."""
    shop = _workshop()
    plan = next(each for each in shop.plans if each.name == name)
    stock: Stock = shop.stock
    point = proof_points(plan, stock)[0]
    fits = tuple((sheet, fit) for sheet, _ in point.thickness)
    made, findings = settle(plan, stock, replace(point, fit=fits))
    assert made is not None, "\n".join(map(str, findings))
    return made


def answer_of(settled: SettledPlan) -> Answer:
    """Return the right answer about a drawing of a plan: what a cut outline shows of it."""
    counts = dict.fromkeys((TAB, SLOT, NOTCH, FINGERS, HOLE), 0)
    for part in settled.parts:
        for feature in part.features:
            through = feature.depth is None
            if feature.kind in counts and through:
                counts[feature.kind] += len(part.pieces)
    return Answer(
        pieces=sum(len(part.pieces) for part in settled.parts),
        parts=len(settled.parts),
        thickness=tuple(sorted({part.thickness for part in settled.parts})),
        tabs=counts[TAB],
        slots=counts[SLOT],
        notches=counts[NOTCH],
        rows=counts[FINGERS],
        holes=counts[HOLE],
    )


@dataclass(frozen=True, slots=True)
class _Placed:
    """A piece on the drawing."""

    label: str
    part: str
    region: Region
    over: bool


def _placed(how: Spoiling) -> Iterator[_Placed]:
    """Yield the pieces of a plan side by side, perhaps turned and turned over."""
    chance = random.Random(how.seed)
    x = y = 2 * _GAP
    row = 0.0
    for part in drawn_plan(how.plan, how.fit).parts:
        for number, piece in enumerate(part.pieces):
            region = part.routed if how.bones == "path" else part.plain
            over = how.over and number > 0 and chance.random() < 0.7
            if over:
                region = mirrored_x(region)
            if how.turned:
                region = turned(region, chance.choice([0, 90, 180, 270, 37.0]))
            box = bounds(region)
            if x + box.width > 2400:
                x, y, row = 2 * _GAP, y + row + _GAP, 0.0
            yield _Placed(piece.label, part.name, moved(region, x - box.x0, y - box.y0), over)
            x, row = x + box.width + _GAP, max(row, box.height)


def spoiled(how: Spoiling) -> bytes:
    """Return the file of a drawing."""
    pieces = list(_placed(how))
    return _svg(pieces, how) if how.form == "svg" else _dxf(pieces, how)


# SVG ----------------------------------------------------------------------------------------------


def _svg(pieces: Sequence[_Placed], how: Spoiling) -> bytes:
    high = max(bounds(each.region).y1 for each in pieces) + 2 * _GAP
    k = 1 / how.unit
    wide, tall = 2440 * k, (1220 if how.border and high < 1220 else high) * k
    unit = how.says
    chance = random.Random(how.seed)
    lines = [
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{wide:.4f}{unit}" '
        f'height="{tall:.4f}{unit}" viewBox="0 0 {wide:.4f} {tall:.4f}">'
    ]
    if how.border:
        lines.append(f'<rect width="{wide:.4f}" height="{tall:.4f}" fill="none" stroke="red"/>')
    for number, each in enumerate(pieces):
        shift = (chance.uniform(-300, 300), chance.uniform(-300, 300)) if how.groups else (0.0, 0.0)
        paths = []
        for index, contour in enumerate((each.region.outer, *each.region.openings)):
            data = _data(contour, tall, k, shift, how, chance)
            name = f'id="path{number * 40 + index}"'
            paths.append(f'<path {name} fill="none" stroke="black" d="{data}"/>')
        if how.doubled and chance.random() < 0.3:
            paths.append(paths[0].replace("path", "again", 1))
        body = "\n".join(paths)
        if how.groups:
            dx, dy = shift[0] * k, -shift[1] * k
            body = f'<g transform="translate({dx:.6f} {dy:.6f})"><g>{body}</g></g>'
        lines.append(body)
        if how.words:
            (cx, cy) = bounds(each.region).centre
            lines.append(f'<text x="{cx * k:.3f}" y="{tall - cy * k:.3f}">{_word(each)}</text>')
    lines.append('<g id="guides"><path d="M 0 5 L 2000 5"/><path d="M 3 3 L 40 3 L 40 40 Z"/></g>')
    lines.append('<g style="display:none"><path d="M 0 0 L 9 9 L 0 9 Z"/></g>')
    return "\n".join([*lines, "</svg>"]).encode()


def _word(piece: _Placed) -> str:
    return piece.label.replace(".", " ")


def _data(
    contour: Contour,
    tall: float,
    k: float,
    shift: tuple[float, float],
    how: Spoiling,
    chance: random.Random,
) -> str:
    def at(point: tuple[float, float]) -> str:
        return f"{(point[0] - shift[0]) * k:.6f} {tall - (point[1] - shift[1]) * k:.6f}"

    words = []
    for edge in edges(contour):
        if not words:
            words.append(f"M {at(edge.start)}")
        arc = edge.arc
        if arc is None:
            if how.nodes and chance.random() < 0.5:
                middle = tuple((a + b) / 2 for a, b in zip(edge.start, edge.end, strict=True))
                words.append(f"L {at((middle[0], middle[1]))}")
            words.append(f"L {at(edge.end)}")
            continue
        half = arc.point(arc.start + arc.sweep / 2)
        turn = 0 if arc.sweep > 0 else 1
        radius = f"{arc.radius * k:.6f}"
        words += [f"A {radius} {radius} 0 0 {turn} {at(each)}" for each in (half, edge.end)]
    return " ".join([*words, "Z"])


# DXF ----------------------------------------------------------------------------------------------


def _dxf(pieces: Sequence[_Placed], how: Spoiling) -> bytes:
    document = ezdxf.new(how.version)
    if how.version != "R12":
        document.header["$INSUNITS"] = {"mm": 4, "in": 1, "": 0}[how.says]
    chance = random.Random(how.seed)
    space = document.modelspace()
    k = 1 / how.unit
    if how.border:
        _poly(space, [(0, 0), (2440 * k, 0), (2440 * k, 1220 * k), (0, 1220 * k)], "SHEET", how)
    for number, each in enumerate(pieces):
        target, shift = space, (0.0, 0.0)
        box = bounds(each.region)
        if how.blocks:
            target = document.blocks.new(f"{each.part.upper()}_{number}")
            shift = box.centre
        mirror = how.blocks and each.over
        for index, contour in enumerate((each.region.outer, *each.region.openings)):
            layer = ("OUTSIDE" if index == 0 else "SLOTS") if how.layers else "0"
            there = moved(contour, -shift[0], -shift[1])
            _contour(target, mirrored_x(there) if mirror else there, layer, k, how, chance)
            if how.bones == "circles":
                for centre, radius in _corner_circles(contour, clockwise=index > 0):
                    at = ((centre[0] - shift[0]) * k, (centre[1] - shift[1]) * k)
                    target.add_circle(at, radius * k, dxfattribs={"layer": "RELIEF"})
        if how.blocks:
            at = (shift[0] * k, shift[1] * k)
            scale = {"xscale": -1.0} if mirror else {}
            # A block in a block, as what was grouped twice.
            outer = document.blocks.new(f"GROUP_{number}")
            outer.add_blockref(f"{each.part.upper()}_{number}", at, dxfattribs=scale)
            space.add_blockref(f"GROUP_{number}", (0, 0))
        if how.words:
            at = (box.centre[0] * k, box.centre[1] * k)
            space.add_text(_word(each), dxfattribs={"insert": at, "height": 8 * k, "layer": "TEXT"})
    from io import StringIO

    out = StringIO()
    document.write(out)
    return out.getvalue().encode("utf-8", "surrogateescape")


def _contour(
    space: Any, contour: Contour, layer: str, k: float, how: Spoiling, chance: random.Random
) -> None:
    attributes = {"layer": layer}
    if how.loose:
        for edge in edges(contour):
            _edge(space, edge, layer, k, how, chance)
        return
    if how.splines and any(vertex[2] for vertex in contour.vertices):
        chain = [(x * k, y * k) for x, y in points(contour, 0.002)]
        space.add_lwpolyline(chain, close=True, dxfattribs=attributes)
        return
    rows = [(x * k, y * k, bulge) for x, y, bulge in contour.vertices]
    if how.version == "R12":
        _poly(space, rows, layer, how)
    else:
        space.add_lwpolyline(rows, format="xyb", close=True, dxfattribs=attributes)
        if how.doubled and chance.random() < 0.2:
            space.add_lwpolyline(rows, format="xyb", close=True, dxfattribs=attributes)


def _poly(space: Any, rows: Sequence[Sequence[float]], layer: str, how: Spoiling) -> None:
    if how.version == "R12":
        line = space.add_polyline2d(
            [row[:2] for row in rows], close=True, dxfattribs={"layer": layer}
        )
        for vertex, row in zip(line.vertices, rows, strict=True):
            vertex.dxf.bulge = row[2] if len(row) > 2 else 0.0
    else:
        space.add_lwpolyline(rows, format="xyb", close=True, dxfattribs={"layer": layer})


def _edge(
    space: Any, edge: Any, layer: str, k: float, how: Spoiling, chance: random.Random
) -> None:
    """Draw one edge by itself, its ends a little short where there are gaps."""
    arc = edge.arc
    short = how.gap / 2 if how.gap < 0.05 or chance.random() < 0.1 else 0.0
    attributes = {"layer": layer}
    if arc is None:
        (ax, ay), (bx, by) = edge.start, edge.end
        size = math.dist(edge.start, edge.end)
        ux, uy = (bx - ax) / size * short, (by - ay) / size * short
        ends = ((ax + ux) * k, (ay + uy) * k), ((bx - ux) * k, (by - uy) * k)
        if chance.random() < 0.5:
            ends = ends[::-1]
        space.add_line(*ends, dxfattribs=attributes)
        return
    start, end = math.degrees(arc.start), math.degrees(arc.start + arc.sweep)
    first, last = (start, end) if arc.sweep > 0 else (end, start)
    centre = (arc.centre[0] * k, arc.centre[1] * k)
    space.add_arc(centre, arc.radius * k, first, last, dxfattribs=attributes)


def _corner_circles(
    contour: Contour, *, clockwise: bool
) -> Iterator[tuple[tuple[float, float], float]]:
    """Yield a circle over each inside corner, as some draw their dog-bones."""
    del clockwise
    radius = 3.1
    for corner in contour_corners(contour):
        yield dog_bone_centre(corner.at, corner.first, corner.second, radius), radius


def main(folder: Path) -> None:
    """Write all drawings and their answers."""
    folder.mkdir(parents=True, exist_ok=True)
    for how in SPOILED:
        (folder / f"{how.name}.{how.form}").write_bytes(spoiled(how))
        right = asdict(answer_of(drawn_plan(how.plan)))
        (folder / f"{how.name}.json").write_text(json.dumps(right, indent=1) + "\n", "utf-8")


if __name__ == "__main__":
    main(Path(sys.argv[1]))
