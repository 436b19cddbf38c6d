"""Spoiled SVG drawings are read or told.

For ten minutes:
FUZZ_MINUTES=10 .venv/bin/python -m pytest -m fuzz -n 0 -s tests/fuzz/test_drawn_svg.py
"""

from __future__ import annotations

from pathlib import Path

import pytest

from kerfolio.reading.drawn_svg import read_svg
from tests.fuzz.findings import check_drawing
from tests.fuzz.hunt import hunt
from tests.fuzz.mutation import mutated
from tests.fuzz.seeds import texts

RICH = """\
<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"
 width="200mm" height="100mm" viewBox="0 0 200 100" preserveAspectRatio="xMidYMid meet">
<style>.a { fill: none; stroke: #000 } path.b { display: none }</style>
<defs><symbol id="s" viewBox="0 0 10 10"><circle cx="5" cy="5" r="4"/></symbol>
<g id="pair"><rect x="1" y="2" width="8" height="6" rx="1" ry="2"/><use href="#s" x="4"/></g></defs>
<g id="outline" transform="translate(10 20) rotate(30, 4, 5) scale(1 -1) skewX(3)">
<path d="M0 0 H60 V40 a5 5 0 0 1 -5,5 C 40 50 30 45 20 45 S 10 50 5 45 Q 2 42 1 30 T 0 10 Z"/>
</g>
<g transform="matrix(1 0 0 1 3 4)"><ellipse cx="30" cy="20" rx="9" ry="4" id="hole"/>
<polygon points="1,1 20,1 20,9"/><polyline points="1 2 3 4 5 1"/>
<line x1="0" y1="0" x2="9" y2="9"/>
</g><use xlink:href="#pair" transform="translate(50,20)"/><use href="#s" width="20" height="20"/>
<svg x="10%" y="5" width="50" height="25%" viewBox="0 0 100 50">
<rect width="100%" height="10"/></svg>
<text x="3" y="4">words</text><image href="a.png" width="3" height="3"/>
<path class="b" style="stroke-width: 2px; display: inline"
 d="M150 10 l 20,0 0 20 -20 0z m4 4 l5 0 0 5z"/>
</svg>
"""
WORDS = (
    *("M", "z", "A", "a", "C", "s", "T", "h", "mm", "in", "px", "%", "em", "none", "inherit"),
    *("matrix", "rotate", "scale", "viewBox", "path", "use", "symbol", "svg", "g", "rect", "d"),
    *("href", "width", "transform", "display", "style", "xlink", "NaN", "<!DOCTYPE", "&lol;"),
)
SEEDS = (RICH, RICH, *texts("plans/*/drawings/*.svg"))


@pytest.mark.fuzz
def test_a_spoiled_svg_is_read_or_told(tmp_path: Path) -> None:
    path = tmp_path / "part.svg"

    def check(text: str) -> None:
        path.write_bytes(text.encode("utf-8", "surrogatepass"))
        for art in (False, True):
            check_drawing(*read_svg(path, "drawings/part.svg", art=art), "drawings/part.svg")

    hunt(mutated(SEEDS, WORDS), check)
