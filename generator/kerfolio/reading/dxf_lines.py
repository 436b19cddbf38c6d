"""The lines of a text DXF file on which its entities begin, by their handles."""

from __future__ import annotations

from pathlib import Path

from kerfolio.reading.dxf_damage import BINARY


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
