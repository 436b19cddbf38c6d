"""Which turns a part may take on its sheet.

One with a grain lies with it or against it; ``any`` takes quarter turns, ``free`` slants too.
"""

from __future__ import annotations

from kerfolio.settling.settled import SettledPart, SettledSheet

_EVERY = (0.0, 90.0, 180.0, 270.0)
_ALONG = {"along x": (0.0, 180.0), "along y": (90.0, 270.0)}
_FREE = tuple(15.0 * step for step in range(24))
"""For parts whose grain is `free`: fine enough to fill slanted corners, few enough to try all."""


def turns_of(part: SettledPart, sheet: SettledSheet) -> tuple[float, ...]:
    """Return the turns in degrees an engine may use; the sheet's grain runs along its x."""
    if part.grain == "free":
        return _FREE
    return _ALONG.get(part.grain, _EVERY) if sheet.stock.grain else _EVERY


def keeps_grain(part: SettledPart, sheet: SettledSheet, turn: float) -> bool:
    """Tell whether a turn keeps the part's grain along the sheet's; any will do for some."""
    if not sheet.stock.grain or part.grain not in _ALONG:
        return True
    return any(abs((turn - each + 180.0) % 360.0 - 180.0) < 1e-6 for each in _ALONG[part.grain])
