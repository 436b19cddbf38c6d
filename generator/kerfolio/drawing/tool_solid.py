"""Tools in a scene: their flat bodies stand in it as pieces without a mark."""

from __future__ import annotations

from kerfolio.assembly.assembled import PosedPiece
from kerfolio.assembly.clamping import Clamp
from kerfolio.drawing.scene import ShownFitting
from kerfolio.geometry.facing import PosedPanel, PosedTurned
from kerfolio.geometry.turned import Frustum, Turned


def tool(label: str, posed: PosedPanel) -> PosedPiece:
    """Return the flat body of a tool as a piece of the scene."""
    return PosedPiece(
        label=label, mark="", part="", sheet="", panel=posed.panel, pose=posed.pose, mass=0.0
    )


def screw_of(clamp: Clamp) -> ShownFitting:
    """Return the screw of a clamp with its handle."""
    stretches = (Frustum(low, high, wide, wide) for low, high, wide in clamp.screw_stretches)
    return ShownFitting(PosedTurned(Turned(tuple(stretches)), clamp.screw), new=False)
