"""The unit that a drawing file itself states for its numbers."""

from __future__ import annotations

from pathlib import Path

from kerfolio.basis.unconfigured import unconfigured
from kerfolio.reading.drawn_dxf import MM_PER_UNIT as MM_PER_INSUNITS
from kerfolio.reading.drawn_said import MM_PER_UNIT
from kerfolio.reading.svg_tree import read_tree

with unconfigured():
    from ezdxf import filemanagement

_OF_LENGTH = (*MM_PER_UNIT, "pt", "pc", "q")
"""Units that an SVG's width may have and that are lengths; px are whatever a program takes them for
(96, 90 or 72 to the inch)."""


def states_unit(path: Path) -> bool:
    """Tell whether a drawing says which unit it is in.

    False where it cannot be read, too: reading it will say why.
    """
    if path.suffix.lower() == ".dxf":
        return _dxf_states(path)
    root, _ = read_tree(path, path.name)
    if root is None:
        return False
    sides = (root.get("width") or "", root.get("height") or "")
    return any(side.lower().endswith(_OF_LENGTH) for side in sides)


def _dxf_states(path: Path) -> bool:
    try:
        unit = filemanagement.readfile(path).header.get("$INSUNITS", 0)
        return int(unit or 0) in MM_PER_INSUNITS
    # An unsound file makes the library fail in many ways; reading it tells.
    except Exception:
        return False
