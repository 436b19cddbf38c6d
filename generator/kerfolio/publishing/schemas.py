"""Writes the JSON Schemas of the source files."""

from __future__ import annotations

import json
from pathlib import Path

from kerfolio.disk.put import put
from kerfolio.reading.schemas import schemas


def write_schemas(folder: Path) -> tuple[Path, ...]:
    """Write a schema for each file kind into a folder; return the files. Raises OSError."""
    written = []
    for name, schema in sorted(schemas().items()):
        target = folder / name
        put(target, (json.dumps(schema, indent=2, ensure_ascii=False) + "\n").encode())
        written.append(target)
    return tuple(written)
