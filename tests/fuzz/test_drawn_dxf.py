"""Spoiled DXF drawings are read or told.

For ten minutes:
FUZZ_MINUTES=10 .venv/bin/python -m pytest -m fuzz -n 0 -s tests/fuzz/test_drawn_dxf.py
"""

from __future__ import annotations

import io
from functools import cache
from pathlib import Path

import ezdxf
import pytest
from ezdxf.document import Drawing as Document
from hypothesis import strategies as st

from kerfolio.reading.drawn_dxf import read_dxf
from tests.fuzz.findings import check_drawing
from tests.fuzz.hunt import hunt
from tests.fuzz.mutation import mutated, mutated_bytes

SMALL = """\
0|SECTION|2|HEADER|9|$ACADVER|1|AC1015|9|$INSUNITS|70|4|0|ENDSEC
0|SECTION|2|TABLES|0|TABLE|2|LAYER|70|1
0|LAYER|2|outline|70|0|62|7|6|CONTINUOUS|0|ENDTAB|0|ENDSEC
0|SECTION|2|BLOCKS|0|BLOCK|8|0|2|PAIR|70|0|10|0|20|0|30|0
0|CIRCLE|8|0|10|5|20|5|40|2|0|ENDBLK|8|0|0|ENDSEC
0|SECTION|2|ENTITIES
0|LWPOLYLINE|5|A1|8|outline|90|4|70|1|10|0|20|0|42|0.5|10|90|20|0|10|90|20|60|10|0|20|60
0|LINE|5|A2|8|slot|10|1|20|1|11|9|21|1|0|LINE|5|A3|8|slot|10|9|20|1|11|9|21|4
0|ARC|5|A4|8|slot|10|5|20|5|40|3|50|350|51|90
0|INSERT|5|A5|8|holes|2|PAIR|10|20|20|20|41|2|42|2|50|30|70|3|71|2|44|9|45|9
0|ELLIPSE|5|A6|8|art|10|40|20|30|11|9|21|2|40|0.4|41|0|42|6.283185
0|SPLINE|5|A7|8|art|70|8|71|3|72|8|73|4|74|0|40|0|40|0|40|0|40|0|40|1|40|1|40|1|40|1
10|0|20|0|30|0|10|5|20|9|30|0|10|9|20|9|30|0|10|14|20|0|30|0
0|POLYLINE|5|A8|8|old|66|1|70|1|0|VERTEX|8|old|10|1|20|1|42|1|0|VERTEX|8|old|10|9|20|1|0|SEQEND
0|TEXT|5|A9|8|notes|10|1|20|1|40|3|1|words|210|0|220|0|230|-1
0|ENDSEC|0|EOF
"""
"""Groups of a DXF file, told apart by bars for being read here."""

WORDS = (
    *("LINE", "CIRCLE", "ARC", "INSERT", "SPLINE", "ELLIPSE", "LWPOLYLINE", "POLYLINE", "VERTEX"),
    *("SEQEND", "BLOCK", "ENDBLK", "SECTION", "ENDSEC", "EOF", "HATCH", "MTEXT", "PAIR", "0"),
    *("SOLID", "DIMENSION", "LEADER", "MESH", "HELIX", "WIPEOUT", "IMAGE", "3DSOLID", "TABLE"),
)


@cache
def whole() -> tuple[Document, ...]:
    """Return documents of the DXF library of several releases, with one entity of each kind."""
    made = []
    for release in ("R12", "R2000", "R2010"):
        document = ezdxf.new(release)
        space = document.modelspace()
        space.add_circle((10, 20), 5, dxfattribs={"layer": "holes"})
        space.add_polyline2d([(0, 0), (90, 0), (90, 60)], close=True)
        block = document.blocks.new("PAIR")
        block.add_line((0, 0), (5, 5))
        block.add_arc((0, 0), 4, 0, 90)
        space.add_blockref("PAIR", (30, 30), dxfattribs={"xscale": -2, "rotation": 30})
        if release != "R12":
            space.add_spline([(0, 0, 0), (9, 5, 0), (14, 0, 0)])
            space.add_ellipse((0, 0), (9, 2, 0), 0.4)
            space.add_hatch().paths.add_polyline_path([(0, 0), (9, 0), (9, 9)], is_closed=True)
        made.append(document)
    return tuple(made)


def text_of(document: Document) -> str:
    out = io.StringIO()
    document.write(out)
    return out.getvalue()


def binary_of(document: Document) -> bytes:
    out = io.BytesIO()
    document.write(out, fmt="bin")
    return out.getvalue()


def inputs() -> st.SearchStrategy[bytes]:
    small = SMALL.replace("\n", "|").replace("|", "\n")
    texts = (*[small] * 6, *map(text_of, whole()))
    spoiled = mutated(texts, WORDS).map(lambda text: text.encode("utf-8", "surrogatepass"))
    return spoiled | spoiled | mutated_bytes([small.encode(), *map(binary_of, whole())])


@pytest.mark.fuzz
def test_a_spoiled_dxf_is_read_or_told(tmp_path: Path) -> None:
    path = tmp_path / "part.dxf"

    def check(content: bytes) -> None:
        path.write_bytes(content)
        check_drawing(*read_dxf(path, "drawings/part.dxf"), "drawings/part.dxf")

    hunt(inputs(), check)
