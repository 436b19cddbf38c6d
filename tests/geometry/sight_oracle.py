"""What an eye sees of solids, worked out another way: triangles, spot by spot."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from kerfolio.geometry.facing import PosedPanel
from kerfolio.geometry.view import View
from tests.geometry.panel_cases import put, reference

NOTHING = -1


class Oracle:
    """The triangles of all solids in view coordinates; ``nearest`` looks at single spots."""

    def __init__(self, solids: Sequence[PosedPanel], view: View) -> None:
        frame = np.array([view.right, view.up, view.to_viewer])
        corners, owner = [], []
        for number, each in enumerate(solids):
            mesh = put(reference(each.panel), each.pose).to_mesh64()
            spots = np.asarray(mesh.vert_properties)[:, :3] @ frame.T
            corners.append(spots[np.asarray(mesh.tri_verts)])
            owner.append(np.full(len(corners[-1]), number))
        self.corners, self.owner = np.concatenate(corners), np.concatenate(owner)
        a, b, c = self.corners.transpose(1, 0, 2)
        self.normal = np.cross(b - a, c - a)
        size = np.linalg.norm(self.normal, axis=1)
        self.unit = self.normal / np.maximum(size, 1e-12)[:, None]
        self.front = self.unit[:, 2] > 2e-3

    def nearest(self, spots: np.ndarray) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
        """Return for spots (n, 2) the solid seen, its depth and its surface's direction."""
        a, b, c = self.corners[self.front].transpose(1, 0, 2)
        normal, owner = self.normal[self.front], self.owner[self.front]
        p = spots[:, None, :]

        def side(u: np.ndarray, v: np.ndarray) -> np.ndarray:
            d = v[:, :2] - u[:, :2]
            return d[:, 0] * (p[..., 1] - u[:, 1]) - d[:, 1] * (p[..., 0] - u[:, 0])

        held = (side(a, b) >= -1e-9) & (side(b, c) >= -1e-9) & (side(c, a) >= -1e-9)
        off = normal[:, 0] * (p[..., 0] - a[:, 0]) + normal[:, 1] * (p[..., 1] - a[:, 1])
        depth = np.where(held, a[:, 2] - off / normal[:, 2], -np.inf)
        best = depth.argmax(axis=1)
        found = np.isfinite(depth.max(axis=1))
        solid = np.where(found, owner[best], NOTHING)
        return solid, depth.max(axis=1), self.unit[self.front][best]
