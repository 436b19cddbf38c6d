"""What hardware goes through a hole of a diameter."""

from __future__ import annotations

from kerfolio.model.stock import Stock


def clears(stock: Stock) -> dict[int, str]:
    """Return what hardware goes through holes, by their diameters in hundredths of a mm."""
    found: dict[int, list[str]] = {}
    for each in stock.hardware:
        if each.clearance:
            names = found.setdefault(round(each.clearance * 100), [])
            kind = each.name.rpartition("x")[0] or each.name
            names += [kind] if kind not in names else []
    return {diameter: " or ".join(names[:2]) for diameter, names in sorted(found.items())}
