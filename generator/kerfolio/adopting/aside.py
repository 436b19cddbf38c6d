"""What of a drawing is beside the cutting: by its layer, or too small for any cutter."""

from __future__ import annotations

import re
from collections.abc import Iterable

from kerfolio.geometry.contour import Contour
from kerfolio.geometry.measure import area, bounds

_BESIDE = re.compile(
    r"(?:text|label|note|annotation|dim|dimension|hatch|guide|construction|centre ?line"
    r"|center ?line|defpoint|title ?block|beschriftung|bema(?:ss|ß)ung|ma(?:ss|ß)e|hilfslinie"
    r"|schraffur|mittellinie|schriftfeld|notiz(?:en)?|hinweise?)"
    r"(?:s|n|en)?[-_ .]?\d*",
    re.IGNORECASE,
)
_ENGRAVED = re.compile(
    r"(?:engrav\w*|scor(?:e|es|ing)|etch\w*|gravur\w*|gravier\w*)[-_ .]?\d*", re.IGNORECASE
)
"""Layers, whole names, as the trade calls them."""

_LEAST = 3.5
"""What is no hole and smaller, mm, is an arrowhead or a speck: no cutter goes round in it."""


def why_aside(names: Iterable[str], contour: Contour) -> str:
    """Return why something is not cut, empty where it is."""
    for name in names:
        if _BESIDE.fullmatch(name):
            return f"the layer `{name}` is not cut"
        if _ENGRAVED.fullmatch(name):
            return f"`{name}` is engraved: state it with `engrave`"
    box = bounds(contour)
    small = max(box.width, box.height) < _LEAST
    is_round = area(contour) > 0.7 * box.width * box.height if contour.closed else False
    return "it is smaller than any cutter" if small and not is_round else ""
