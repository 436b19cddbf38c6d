"""The entities of a DXF file told from its bytes alone: how many, and on which lines they begin."""

from __future__ import annotations

import re
from pathlib import Path

from kerfolio.reading.dxf_damage import BINARY

_CORNERS = (b"VERTEX", b"SEQEND")
"""What old polylines are made of; these are counted as points."""

_KINDS = re.compile(
    rb"\0(?:LINE|CIRCLE|ARC|POINT|LWPOLYLINE|POLYLINE|SPLINE|ELLIPSE|INSERT|SOLID|HATCH|M?TEXT"
    rb"|DIMENSION|LEADER|3DFACE|BLOCK|LAYER)\0"
)
"""Kinds of entities as a binary file holds them: a text between zeros."""


def entity_count(content: bytes) -> int:
    """Return how many entities and other objects a DXF file holds, told before any is made."""
    if content.startswith(BINARY):
        return sum(1 for _ in _KINDS.finditer(content))
    rows = content.replace(b"\r\n", b"\n").replace(b"\r", b"\n").split(b"\n")
    pairs = zip(rows[::2], rows[1::2], strict=False)
    return sum(code.strip() == b"0" and value.strip() not in _CORNERS for code, value in pairs)


def entity_lines(path: Path) -> dict[str, int]:
    """Return the line (from 1) of each entity by its handle, upper case.

    Empty for a binary file, and without the entities of old files that carry no handles.
    """
    data = path.read_bytes()
    if data.startswith(BINARY):
        return {}
    rows = data.decode("utf-8", "replace").replace("\r\n", "\n").replace("\r", "\n").split("\n")
    found: dict[str, int] = {}
    begin = 0
    for index in range(0, len(rows) - 1, 2):
        code, value = rows[index].strip(), rows[index + 1].strip()
        if code == "0":
            begin = index + 2
        elif code == "5" and begin:
            found.setdefault(value.upper(), begin)
    return found
