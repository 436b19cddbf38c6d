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

_INSUNITS = {1: "in", 2: "ft", 4: "mm", 5: "cm", 6: "m"}
_OTHER = "other"


def stated_unit(path: Path) -> str:
    """Return the unit that a drawing says it is in: ``mm``, ``in``; empty where it says none.

    Empty, too, where it cannot be read: reading it will say why. Rare units are ``other``.
    """
    if path.suffix.lower() == ".dxf":
        return _of_dxf(path)
    root, _ = read_tree(path, path.name)
    sides = (root.get("width") or "", root.get("height") or "") if root else ()
    found = (unit for side in sides for unit in _OF_LENGTH if side.lower().endswith(unit))
    return max(found, key=len, default="")


def _of_dxf(path: Path) -> str:
    try:
        unit = int(filemanagement.readfile(path).header.get("$INSUNITS", 0) or 0)
    # An unsound file makes the library fail in many ways; reading it tells.
    except Exception:
        return ""
    return _INSUNITS.get(unit, _OTHER) if unit in MM_PER_INSUNITS else ""
