"""Workshops that are too large, or large and honest, written by a few lines each."""

from __future__ import annotations

import math
import os
import resource
import subprocess
import sys
from collections.abc import Callable
from dataclasses import dataclass, field
from itertools import pairwise
from pathlib import Path

from tests.plans import lay_down

HEAD = """\
plan: Pegboard
version: 1.0.0
summary: A board full of holes.
sheets: {{ply: {{stock: birch-plywood-18, size: 2440 x 1220, published-for: {ladder}, fit: 0.1}}}}
releases: {{1.0.0: {{date: 2026-10-02, changed: First release.}}}}
"""
PART = "parts:\n  board:\n    sheet: ply\n    outline: {{rectangle: [{width}, {height}]}}\n"
DRAWN = """\
parts:
  board:
    sheet: ply
    drawing:
      file: drawings/board.{ending}
      outline: outline
      features: {{hole: hole}}
"""
SVG = '<svg xmlns="http://www.w3.org/2000/svg" width="900mm" height="900mm" viewBox="0 0 900 900">'
EDGE = '<path id="outline" d="M0 0H900V900H0Z"/>'
DEEPEST_MB = 1_500
ROW = 90


@dataclass(frozen=True, slots=True, kw_only=True)
class Large:
    """A plan's text and the drawings beside it, by their paths in the plan's folder."""

    plan: str
    drawings: dict[str, str] = field(default_factory=dict)

    def laid_down(self, folder: Path) -> Path:
        """Write the workshop into a folder that does not exist yet, and return it."""
        lay_down(folder, self.plan, "board")
        for name, text in self.drawings.items():
            path = folder / "plans" / "board" / name
            path.parent.mkdir(exist_ok=True)
            path.write_text(text, "utf-8")
        return folder


@dataclass(frozen=True, slots=True, kw_only=True)
class Spent:
    """What a command came to: exit code, processor time in s, peak memory in MB, its words."""

    code: int
    seconds: float
    megabytes: float
    words: str


def spent_by(*arguments: str, most_mb: int = DEEPEST_MB, most_seconds: int = 120) -> Spent:
    """Run the command line in a process of its own, stopped beyond its memory or time."""

    def bounded() -> None:
        resource.setrlimit(resource.RLIMIT_AS, (most_mb * 2**20, most_mb * 2**20))
        resource.setrlimit(resource.RLIMIT_CPU, (most_seconds, most_seconds))

    command = [sys.executable, "-c", "from kerfolio.cli import main; main()", *arguments]
    with subprocess.Popen(
        command, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, preexec_fn=bounded
    ) as child:
        assert child.stdout is not None
        words = child.stdout.read()
        _, status, used = os.wait4(child.pid, 0)
        child.returncode = os.waitstatus_to_exitcode(status)
    return Spent(
        code=child.returncode,
        seconds=used.ru_utime + used.ru_stime,
        megabytes=used.ru_maxrss / 1024,
        words=words,
    )


def rows(count: int) -> list[tuple[int, int]]:
    """Return points of a grid of 25 mm, at most 90 in a row."""
    return [(40 + 25 * (index % ROW), 40 + 25 * (index // ROW)) for index in range(count)]


def pegboard(count: int, ladder: str = "18") -> Large:
    """Return a board with a list of holes in one ``at:``."""
    points = ", ".join(f"[{x}, {y}]" for x, y in rows(count))
    features = f"    features:\n      pegs: {{hole: {{at: [{points}], diameter: 8}}}}\n"
    return Large(plan=HEAD.format(ladder=ladder) + _board(count) + features)


def repeated(count: int, ladder: str = "18") -> Large:
    """Return the same board with a repeated hole for each row."""
    lines = [
        f"      row-{row}: {{hole: {{at: [40, {40 + 25 * row}], diameter: 8}}, "
        f"repeat: {{count: {min(ROW, count - ROW * row)}, step: [25, 0]}}}}\n"
        for row in range(-(-count // ROW))
    ]
    return Large(
        plan=HEAD.format(ladder=ladder) + _board(count) + "    features:\n" + "".join(lines)
    )


def named(count: int, ladder: str = "18") -> Large:
    """Return the same board with a feature for each hole."""
    lines = [
        f"      peg-{number}: {{hole: {{at: [{x}, {y}], diameter: 8}}}}\n"
        for number, (x, y) in enumerate(rows(count))
    ]
    return Large(
        plan=HEAD.format(ladder=ladder) + _board(count) + "    features:\n" + "".join(lines)
    )


def _board(count: int) -> str:
    return PART.format(width=2305, height=80 + 25 * (-(-count // ROW) - 1))


def computed(count: int) -> Large:
    """Return a board whose count of holes is an expression."""
    feature = (
        "    features:\n      pegs: {hole: {at: [40, 40], diameter: 8}, "
        "repeat: {count: many*1000, step: [0.01, 0]}}\n"
    )
    sizes = f"sizes: {{many: {count / 1000}}}\n"
    return Large(plan=HEAD.format(ladder="18") + sizes + _board(50) + feature)


def svg(body: str) -> Large:
    """Return a board drawn in SVG with these elements beside its outline."""
    text = f"{SVG}{EDGE}{body}</svg>"
    return Large(
        plan=HEAD.format(ladder="18") + DRAWN.format(ending="svg"),
        drawings={"drawings/board.svg": text},
    )


def dxf(entities: str, blocks: str = "") -> Large:
    """Return a board drawn in DXF with these entities beside its outline."""
    corners = ((0, 0), (900, 0), (900, 900), (0, 900), (0, 0))
    outline = "".join(
        tagged(0, "LINE", 8, "outline", 10, x, 20, y, 11, u, 21, v)
        for (x, y), (u, v) in pairwise(corners)
    )
    sections = tagged(0, "SECTION", 2, "HEADER", 9, "$ACADVER", 1, "AC1009")
    sections += tagged(9, "$INSUNITS", 70, 4, 0, "ENDSEC")
    sections += tagged(0, "SECTION", 2, "BLOCKS") + blocks + tagged(0, "ENDSEC")
    sections += tagged(0, "SECTION", 2, "ENTITIES") + outline + entities + tagged(0, "ENDSEC")
    return Large(
        plan=HEAD.format(ladder="18") + DRAWN.format(ending="dxf"),
        drawings={"drawings/board.dxf": sections + tagged(0, "EOF")},
    )


def tagged(*pairs: object) -> str:
    """Return group codes with their values, a line each."""
    return "".join(f"{each}\n" for each in pairs)


def block(name: str, entities: str) -> str:
    """Return a block of a DXF drawing."""
    head = tagged(0, "BLOCK", 8, "0", 2, name, 70, 0, 10, 0, 20, 0, 30, 0, 3, name)
    return head + entities + tagged(0, "ENDBLK", 8, "0")


def insert(name: str, columns: int = 1, rows: int = 1, layer: str = "hole") -> str:
    """Return a block put in, perhaps in rows and columns 20 mm apart."""
    pairs = (0, "INSERT", 8, layer, 2, name, 10, 0, 20, 0, 70, columns, 71, rows, 44, 20, 45, 20)
    return tagged(*pairs)


def circle(x: float = 10, y: float = 10, layer: str = "hole") -> str:
    """Return a circle of a DXF drawing."""
    return tagged(0, "CIRCLE", 8, layer, 10, x, 20, y, 40, 3)


def _clones(clones: int, paths: int) -> Large:
    path = "".join(f'<path d="M{n} 0h1v1h-1z"/>' for n in range(paths))
    uses = "".join(f'<use href="#many" x="{n}"/>' for n in range(clones))
    return svg(f'<defs><g id="many">{path}</g></defs><g id="hole">{uses}</g>')


def _nested_uses(levels: int, each: int) -> Large:
    """Return groups of clones of clones: ``each`` to the power of ``levels`` circles."""
    groups = ['<g id="g0"><circle cx="9" cy="9" r="3"/></g>']
    for level in range(1, levels + 1):
        uses = f'<use href="#g{level - 1}"/>' * each
        groups.append(f'<g id="g{level}">{uses}</g>')
    return svg(f'<defs>{"".join(groups)}</defs><g id="hole"><use href="#g{levels}"/></g>')


def _nested_blocks(levels: int, side: int) -> Large:
    blocks = block("b0", circle())
    for level in range(1, levels + 1):
        blocks += block(f"b{level}", insert(f"b{level - 1}", side, side, "0"))
    return dxf(insert(f"b{levels}"), blocks)


def _long_path(points: int) -> Large:
    steps = "".join(f"L{n % 800} {n // 800 * 0.5}" for n in range(points))
    return svg(f'<path id="hole" d="M0 0{steps}"/>')


def _circles(count: int) -> Large:
    shapes = "".join(
        f'<circle cx="{5 + 5 * (n % 177)}" cy="{5 + 5 * (n // 177)}" r="2"/>' for n in range(count)
    )
    return svg(f'<g id="hole">{shapes}</g>')


def drawn_holes(count: int, ladder: str = "18") -> Large:
    """Return a board with so many circles of 6 mm drawn on it, 14 mm apart."""
    shapes = "".join(
        f'<circle cx="{10 + 14 * (n % 62)}" cy="{10 + 14 * (n // 62)}" r="3"/>'
        for n in range(count)
    )
    large = svg(f'<g id="hole">{shapes}</g>')
    return Large(
        plan=large.plan.replace("published-for: 18,", f"published-for: {ladder},"),
        drawings=large.drawings,
    )


def jagged(points: int) -> Large:
    """Return a board whose upper edge is drawn as a zigzag of 20 mm with so many points."""
    top = "".join(
        f"L{900 - 900 * n / points:.3f} {880 + 10 * math.sin(0.9 * n):.3f}"
        for n in range(1, points)
    )
    hole = '<circle id="hole" cx="50" cy="50" r="4"/>'
    body = f'<path id="outline" d="M0 0H900V900{top}L0 890Z"/>{hole}'
    return Large(
        plan=HEAD.format(ladder="18") + DRAWN.format(ending="svg"),
        drawings={"drawings/board.svg": f"{SVG}{body}</svg>"},
    )


def _fingers(count: int) -> Large:
    feature = f"    features:\n      comb: {{fingers: {{edge: top, count: {count}, takes: ply}}}}\n"
    return Large(plan=HEAD.format(ladder="18") + _board(50) + feature)


def _pieces(count: int) -> Large:
    names = ", ".join(f"k{n}" for n in range(count))
    part = (
        f"parts:\n  slat: {{sheet: ply, pieces: [{names}], outline: {{rectangle: [200, 100]}}}}\n"
    )
    return Large(plan=HEAD.format(ladder="18") + part)


def _steps(count: int) -> Large:
    lines = "".join(f"  - title: Look at it {n}\n" for n in range(count))
    return Large(plan=HEAD.format(ladder="18") + _board(50) + f"steps:\n{lines}")


def _titled(letters: int) -> Large:
    plan = pegboard(2).plan.replace("Pegboard", "Peg board " * (letters // 10))
    return Large(plan=plan)


BEYOND: dict[str, Callable[[], Large]] = {
    "15,000 points in one at": lambda: pegboard(15_000),
    "15,000 holes by name": lambda: named(15_000),
    "30 rows of 500 by repeat": lambda: repeated(15_000),
    "a count of 1e9 by an expression": lambda: computed(10**9),
    "insert array of 30,000 x 30,000": lambda: dxf(
        insert("b", 30_000, 30_000), block("b", circle())
    ),
    "four blocks in blocks of 100 x 100": lambda: _nested_blocks(4, 100),
    "5,000 clones of 2,000 paths": lambda: _clones(5_000, 2_000),
    "ten clones of clones, ten deep": lambda: _nested_uses(10, 10),
    "30,000 circles": lambda: _circles(30_000),
    "a path of a million points": lambda: _long_path(1_000_000),
    "a title of 1.9 MB": lambda: _titled(1_900_000),
    "80,000 circles of a DXF file": lambda: dxf(circle() * 80_000),
    "a row of 3,900 fingers": lambda: _fingers(3_900),
    "1,000 pieces": lambda: _pieces(1_000),
    "300 steps": lambda: _steps(300),
}
"""Inputs beyond a budget, by what is too large in them."""

HONEST: dict[str, Callable[[int], Large]] = {
    "one list": pegboard,
    "rows by repeat": repeated,
    "a feature each": named,
    "drawn circles": drawn_holes,
}
"""A board with so many holes, stated in several ways."""
