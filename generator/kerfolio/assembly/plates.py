"""Brackets and clamps as solids, of the measures that the stock has of them.

A bracket's frame: its outer corner is the origin, halfway across its width; one leg lies along x
with its outer face at y = 0, the other along y at x = 0. A clamp's: its first jaw presses at the
origin towards y, and its bar lies on the side of x.
"""

from __future__ import annotations

from kerfolio.geometry.plated import Plated, PlateHole
from kerfolio.geometry.turned import Frustum, Turned
from kerfolio.model.stock import HardwareStock

JAW, BAR, GAP = 0.12, 0.16, 0.3
"""How thick a clamp's jaws, how wide its bar, how far its screw stands out of its second jaw, in
reaches; in the proportions of those commonly sold (common practice, no single source)."""


def bracket_plate(item: HardwareStock) -> Plated | None:
    """Return a bracket bent at a right angle, None where its entry does not say enough."""
    one, thick, wide = item.leg, item.thickness, item.width
    if one is None or thick is None or wide is None:
        return None
    other = item.other_leg or one
    profile = ((0.0, 0.0), (one, 0.0), (one, thick), (thick, thick), (thick, other), (0.0, other))
    radius = (item.clearance or item.thread or 0.0) / 2
    bored = item.holes if radius else ()
    holes = (
        *(PlateHole(0, 2, at, radius) for at in bored if at < one),
        *(PlateHole(5, 3, other - at, radius) for at in bored if at < other),
    )
    return Plated(profile, wide, holes)


def clamp_plate(item: HardwareStock, grip: float) -> Plated | None:
    """Return a bar clamp set to what it spans, mm; None where its entry does not say enough."""
    reach, opening = item.reach, item.opening
    if reach is None or opening is None:
        return None
    wide = item.width or BAR * reach
    jaw, bar, pad = JAW * reach, BAR * reach, wide / 2
    second = grip + GAP * reach
    end = max(opening, second) + jaw
    profile = (
        (-pad, -jaw),
        (reach + bar, -jaw),
        (reach + bar, end),
        (reach, end),
        (reach, second + jaw),
        (-pad, second + jaw),
        (-pad, second),
        (reach, second),
        (reach, 0.0),
        (-pad, 0.0),
    )
    return Plated(profile, wide)


def clamp_screw(item: HardwareStock) -> Turned | None:
    """Return the screw of a clamp with its pad and its handle; z from the pad, where it presses."""
    if item.reach is None or item.opening is None:
        return None
    reach = item.reach
    pad, shaft, handle = 0.13 * reach, 0.06 * reach, 0.1 * reach
    neck, out = 0.06 * reach, (GAP + JAW + 0.1) * reach
    return Turned(
        (
            Frustum(0.0, neck, pad, pad),
            Frustum(neck, out, shaft, shaft),
            Frustum(out, out + 0.55 * reach, handle, 0.8 * handle),
        )
    )
