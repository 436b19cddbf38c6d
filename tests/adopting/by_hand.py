"""Drawings as several hands make them, of things that no sample plan is, each with its answer.

Those in SVG stand in ``hands`` as they were written; those in DXF are drawn here with ezdxf, each
in the habits of one maker. ``hands/NAME.json`` is the right answer, fixed by hand.

    python -m tests.adopting.by_hand FOLDER

writes them all.
"""

from __future__ import annotations

import json
import shutil
import sys
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from io import StringIO
from itertools import pairwise
from math import cos, hypot, radians, sin
from pathlib import Path
from typing import Any

import ezdxf

HANDS = Path(__file__).parent / "hands"

Spot = tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Right:
    """What is right about a part: its count, its outline's sides (mm), its features by kind.

    ``grows`` is how its outline, tabs and all, grows both ways while the sheet grows by 1 mm.
    """

    count: int
    size: Spot
    features: Mapping[str, int]
    grows: Spot = (0.0, 0.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class RightAnswer:
    """The right answer about a drawing; ``joints`` are what meets, by the parts' names."""

    name: str
    habit: str
    thickness: tuple[float, ...]
    parts: Mapping[str, Right]
    joints: Mapping[str, int]
    unplaced: tuple[str, ...] = field(default=())


def names(hands: Path = HANDS) -> tuple[str, ...]:
    """Return what the drawings of a folder are called."""
    return tuple(sorted(each.stem for each in hands.glob("*.json")))


def answer(name: str, hands: Path = HANDS) -> RightAnswer:
    """Return the right answer about a drawing."""
    data = json.loads((hands / f"{name}.json").read_text("utf-8"))
    parts = {
        part: Right(
            count=told["count"],
            size=tuple(told["size"]),
            features=told.get("features", {}),
            grows=tuple(told.get("grows", (0, 0))),
        )
        for part, told in data["parts"].items()
    }
    return RightAnswer(
        name=name,
        habit=data["habit"],
        thickness=tuple(data["thickness"]),
        parts=parts,
        joints=data["joints"],
        unplaced=tuple(data.get("unplaced", ())),
    )


def write(name: str, folder: Path, hands: Path = HANDS) -> Path:
    """Write a drawing into a folder; return its file."""
    made = _DXF.get(name) if hands == HANDS else None
    if made is None:
        source = next(each for each in hands.glob(f"{name}.*") if each.suffix != ".json")
        return Path(shutil.copyfile(source, folder / source.name))
    out = StringIO()
    made().write(out)
    file = folder / f"{name}.dxf"
    file.write_bytes(out.getvalue().encode("cp1252" if name == "shoe-rack" else "utf-8"))
    return file


def shoe_rack() -> Any:
    """R12 without a unit: single lines of any direction, German layers, guides and dimensions."""
    document = ezdxf.new("R12")
    space = document.modelspace()
    for layer in ("Kontur", "Bemaßung", "Hilfslinien", "Platte", "Beschriftung"):
        document.layers.add(layer)

    def run(spots: list[Spot], layer: str = "Kontur") -> None:
        for index, (a, b) in enumerate(zip(spots, spots[1:] + spots[:1], strict=True)):
            ends = (a, b) if index % 3 else (b, a)
            space.add_line(*ends, dxfattribs={"layer": layer})

    run([(0, 0), (2500, 0), (2500, 1250), (0, 1250)], "Platte")
    # An upright, halved from its right side; a shelf, halved from its front.
    side = [(50, 50), (350, 50)]
    for y in (80, 240, 400):
        side += [(350, 50 + y - 6.1), (200, 50 + y - 6.1), (200, 50 + y + 6.1), (350, 50 + y + 6.1)]
    run([*side, (350, 570), (50, 570)])
    shelf: list[Spot] = [(450, 50)]
    for x in (150, 450, 750):
        shelf += [
            (450 + x - 6.1, 50),
            (450 + x - 6.1, 200),
            (450 + x + 6.1, 200),
            (450 + x + 6.1, 50),
        ]
    run([*shelf, (1350, 50), (1350, 350), (450, 350)])
    text = {"layer": "Beschriftung"}
    space.add_text("Seite 3x", dxfattribs={**text, "insert": (120, 300), "height": 15})
    space.add_text("Boden 3x", dxfattribs={**text, "insert": (800, 250), "height": 15})
    for y in (130, 290, 450):
        space.add_line((0, y), (2500, y), dxfattribs={"layer": "Hilfslinien"})
    size = {"layer": "Bemaßung"}
    for x in (450, 1350):
        space.add_line((x, 360), (x, 420), dxfattribs=size)
    space.add_line((450, 410), (1350, 410), dxfattribs=size)
    for x, way in ((450, 1), (1350, -1)):
        space.add_line((x, 410), (x + way * 9, 413), dxfattribs=size)
        space.add_line((x, 410), (x + way * 9, 407), dxfattribs=size)
    space.add_text("900", dxfattribs={**size, "insert": (880, 415), "height": 12})
    return document


def side_table() -> Any:
    """R2010 in mm: polylines turned as they were left; legs lean and meet slanted ends."""
    document = ezdxf.new("R2010")
    document.header["$INSUNITS"] = 4
    space = document.modelspace()

    def poly(spots: list[Spot], layer: str, at: Spot, turn: float = 0.0) -> None:
        c, s = cos(radians(turn)), sin(radians(turn))
        there = [(at[0] + x * c - y * s, at[1] + x * s + y * c) for x, y in spots]
        space.add_lwpolyline(there, close=True, dxfattribs={"layer": layer})

    def box(x: float, y: float, wide: float, high: float) -> list[Spot]:
        a, b = wide / 2, high / 2
        return [(x - a, y - b), (x + a, y - b), (x + a, y + b), (x - a, y + b)]

    # Aprons: 300 along the top, 380 along the bottom, 150 high.
    slope = hypot(40, 150)
    ux, uy = 40 / slope, -150 / slope  # down the right end
    nx, ny = -uy, ux
    nx, ny = 150 / slope, 40 / slope  # out of it
    right: list[Spot] = []
    middle = (170.0, 75.0)
    for run, out in ((-30, 0), (-30, 15), (30, 15), (30, 0)):
        right.append((middle[0] + run * ux + out * nx, middle[1] + run * uy + out * ny))
    left = [(-x, y) for x, y in reversed(right)]
    top: list[Spot] = []
    for x in (-80, 80):
        top += [(x - 35, 150), (x - 35, 165), (x + 35, 165), (x + 35, 150)]
    apron = [(-190.0, 0.0), *left, (-150.0, 150.0), *top, (150.0, 150.0), *right, (190.0, 0.0)]
    poly(apron, "parts", (250, 60))
    poly(apron, "parts", (250, 300), 180)
    # Legs: their top lies 10 below the apron's, along the slope.
    for x, turn in ((700, 0), (1100, 180)):
        poly(box(0, 0, 340, 420), "parts", (x, 260), turn)
        for across in (-110, 110):
            high = 210 - (slope / 2 - 10)
            poly(box(across, high, 15, 60), "inside", (x, 260), turn)
    poly(box(0, 0, 480, 400), "parts", (1600, 330), 30)
    for y in (-110, 110):
        for x in (-80, 80):
            poly(box(x, y, 70, 15), "inside", (1600, 330), 30)
    for word, x, y in (("Zarge", 250, 120), ("Bein", 700, 200), ("Platte", 1600, 330)):
        space.add_text(word, dxfattribs={"insert": (x, y), "height": 20, "layer": "names"})
    return document


def toy_garage() -> Any:
    """R2010 in mm, all in blocks: half a wall mirrored, a side inserted again turned over.

    Openings are 0.2 mm wider than the sheet and 0.5 mm longer than the tabs; the arch is a bulge.
    """
    document = ezdxf.new("R2010")
    document.header["$INSUNITS"] = 4
    space = document.modelspace()

    def box(target: Any, x: float, y: float, wide: float, high: float) -> None:
        a, b = wide / 2, high / 2
        spots = [(x - a, y - b), (x + a, y - b), (x + a, y + b), (x - a, y + b)]
        target.add_lwpolyline(spots, close=True)

    half = document.blocks.new("HALF")
    rows = [
        (0, 60, 0.41421356),
        (-30, 30, 0),
        (-30, 0, 0),
        (-55, 0, 0),
        (-55, -6, 0),
        (-105, -6, 0),
        (-105, 0, 0),
        (-167, 0, 0),
        (-167, 60, 0),
        (-173, 60, 0),
        (-173, 90, 0),
        (-167, 90, 0),
        (-167, 140, 0),
        (0, 140, 0),
    ]
    half.add_lwpolyline(rows, format="xyb")
    space.add_blockref("HALF", (220, 620))
    space.add_blockref("HALF", (220, 620), dxfattribs={"xscale": -1})
    side = document.blocks.new("SIDE")
    outline: list[Spot] = [(0, 0)]
    for x in (40, 180):
        outline += [(x, 0), (x, -6), (x + 40, -6), (x + 40, 0)]
    outline += [(260, 0), (260, 150)]
    for x in (215, 75):
        outline += [(x, 150), (x, 156), (x - 30, 156), (x - 30, 150)]
    side.add_lwpolyline([*outline, (0, 150)], close=True)
    box(side, 245, 75, 6.2, 30.5)
    space.add_blockref("SIDE", (20, 400))
    space.add_blockref("SIDE", (580, 400), dxfattribs={"xscale": -1})
    base = document.blocks.new("BASE")
    box(base, 200, 150, 400, 300)
    for x in (30, 370):
        for y in (80, 220):
            box(base, x, y, 6.2, 40.5)
    for x in (120, 280):
        box(base, x, 265, 50.5, 6.2)
    space.add_blockref("BASE", (20, 40))
    roof = document.blocks.new("ROOF")
    box(roof, 200, 150, 400, 300)
    for x in (30, 370):
        for y in (80, 220):
            box(roof, x, y, 6.2, 30.5)
    space.add_blockref("ROOF", (460, 40))
    ramp = document.blocks.new("RAMP")
    box(ramp, 60, 100, 120, 200)
    space.add_blockref("RAMP", (900, 40))
    return document


def laptop_stand() -> Any:
    """R2000 in inches: lines, arcs and a spline by themselves, notes, circles over corners."""
    document = ezdxf.new("R2000")
    document.header["$INSUNITS"] = 1
    space = document.modelspace()

    def lines(spots: list[Spot], at: Spot) -> None:
        there = [(x + at[0], y + at[1]) for x, y in spots]
        for a, b in pairwise(there):
            space.add_line(a, b)

    def notch(x: float, level: float, end: float, at: Spot) -> list[Spot]:
        for corner in (x - 0.24, x + 0.24):
            space.add_circle((at[0] + corner, at[1] + end), 0.0625)
        return [(x - 0.24, level), (x - 0.24, end), (x + 0.24, end), (x + 0.24, level)]

    at = (1.0, 1.0)
    top = [*notch(2.0, 3.0, 2.0, at), *notch(7.5, 3.0, 2.0, at)]
    lines([(0, 0), (0, 3), *top, (9, 3), (9, 0)], at)
    under = [(9, 0), (8, 0), (6.5, 1.1), (4.5, 1.25), (2.5, 1.1), (1, 0), (0, 0)]
    space.add_spline(fit_points=[(x + at[0], y + at[1]) for x, y in under])
    for y in (5.5, 8.5):
        at = (1.0, y)
        low = [*notch(1.0, 0.0, 1.0, at), *notch(9.0, 0.0, 1.0, at)]
        lines([(0, 0), *low, (10, 0), (10, 1.75)], at)
        space.add_arc((at[0] + 9.75, at[1] + 1.75), 0.25, 0, 90)
        lines([(9.75, 2), (0.25, 2)], at)
        space.add_arc((at[0] + 0.25, at[1] + 1.75), 0.25, 90, 180)
        lines([(0, 1.75), (0, 0)], at)
    for words, x, y in (
        ("LEG x2", 4.5, 2.6),
        ("BAR", 5, 6.7),
        ("BAR", 5, 9.7),
        ("1/2 in ply, measure yours first", 1, 12),
    ):
        space.add_text(words, dxfattribs={"insert": (x, y), "height": 0.25})
    return document


_DXF: Mapping[str, Callable[[], Any]] = {
    "shoe-rack": shoe_rack,
    "side-table": side_table,
    "toy-garage": toy_garage,
    "laptop-stand": laptop_stand,
}


def main(folder: Path) -> None:
    """Write all drawings, with their answers."""
    folder.mkdir(parents=True, exist_ok=True)
    for name in names():
        write(name, folder)
        shutil.copyfile(HANDS / f"{name}.json", folder / f"{name}.json")


if __name__ == "__main__":
    main(Path(sys.argv[1]))
