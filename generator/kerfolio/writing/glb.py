"""3-D models as glTF 2.0 binary (Khronos, glTF 2.0 specification): one mesh a shape, one node a
piece.

Lengths are metres. The model stands in its own axes (x right, y back, z up) below a root node that
turns them to glTF's (y up, the front looks along z). No normals are written: a reader then shades
every triangle flat (section 3.7.2.1), which is how boards look.
"""

from __future__ import annotations

import math
import struct
from collections.abc import Iterable
from typing import Any

import numpy as np
from numpy.typing import NDArray

from kerfolio.basis.colour import linear, rgb
from kerfolio.basis.digits import LENGTH_DECIMALS, rounded
from kerfolio.basis.json_text import Number, json_text, number
from kerfolio.drawing.model_3d import Model3d, Piece3d
from kerfolio.drawing.palette import PALETTE
from kerfolio.drawing.vocabulary import Ink
from kerfolio.geometry.panel_mesh import Mesh
from kerfolio.geometry.rigid import Rigid

_M_PER_MM = 0.001
_Z_UP_TO_Y_UP = (-math.sqrt(0.5), 0.0, 0.0, math.sqrt(0.5))
"""A quarter turn about x, as the quaternion (x, y, z, w)."""

_FLOAT, _SHORT, _LONG = 5126, 5123, 5125
_VERTICES, _INDICES = 34962, 34963
_METRE_DECIMALS = LENGTH_DECIMALS + 3
_TURN_DECIMALS = 9
_COLOUR_DECIMALS = 6
"""The last bits of a sine or a power may differ between machines."""


def glb_bytes(model: Model3d) -> bytes:
    """Return the model as one ``.glb`` file; the same model gives the same bytes.

    A node is named after its piece. Its ``extras`` hold the piece's mark, the step that adds it
    and ``explode``: metres to add to the node's translation to take the model apart.
    """
    tints = list(dict.fromkeys(shape.tint for shape in model.shapes))
    packed = _Packed()
    meshes = [
        {"name": shape.name, "primitives": [packed.primitive(shape.mesh, tints.index(shape.tint))]}
        for shape in model.shapes
    ]
    nodes = [_node(piece) for piece in model.pieces]
    root = {
        "name": model.title,
        "rotation": _numbers(_Z_UP_TO_Y_UP, _TURN_DECIMALS),
        "children": list(range(1, len(nodes) + 1)),
    }
    document = {
        "asset": {"version": "2.0", "generator": "Kerfolio"},
        "scene": 0,
        "scenes": [{"name": model.title, "nodes": [0]}],
        "nodes": [root, *nodes],
        "meshes": meshes,
        "materials": [_material(tint) for tint in tints],
        "accessors": packed.accessors,
        "bufferViews": packed.views,
        "buffers": [{"byteLength": len(packed.content)}],
    }
    return _container(json_text(document).encode(), bytes(packed.content))


def _container(text: bytes, binary: bytes) -> bytes:
    """Return header, JSON chunk and binary chunk, each padded to 4 bytes (section 4.4)."""
    chunks = ((b"JSON", _padded(text, b" ")), (b"BIN\0", _padded(binary, b"\0")))
    body = b"".join(struct.pack("<I4s", len(each), kind) + each for kind, each in chunks)
    return struct.pack("<4sII", b"glTF", 2, 12 + len(body)) + body


def _padded(content: bytes, by: bytes) -> bytes:
    return content + by * (-len(content) % 4)


class _Packed:
    """The binary chunk as it grows, with the views and accessors that find things in it."""

    def __init__(self) -> None:
        self.content = bytearray()
        self.views: list[dict[str, Any]] = []
        self.accessors: list[dict[str, Any]] = []

    def primitive(self, mesh: Mesh, material: int) -> dict[str, Any]:
        """Add a mesh; return the triangles as glTF names them."""
        metres = [[rounded(each * _M_PER_MM, _METRE_DECIMALS) for each in at] for at in mesh.points]
        points = np.array(metres).astype("<f4")
        short = len(mesh.points) < 0xFFFF
        indices = np.array(mesh.triangles).astype("<u2" if short else "<u4").ravel()
        position = self._add(points, _FLOAT, "VEC3", _VERTICES)
        self.accessors[position] |= {
            "min": _numbers(map(min, zip(*metres, strict=True)), _METRE_DECIMALS),
            "max": _numbers(map(max, zip(*metres, strict=True)), _METRE_DECIMALS),
        }
        order = self._add(indices, _SHORT if short else _LONG, "SCALAR", _INDICES)
        return {"attributes": {"POSITION": position}, "indices": order, "material": material}

    def _add(self, values: NDArray[Any], component: int, kind: str, target: int) -> int:
        content = values.tobytes()
        view = {"buffer": 0, "byteOffset": len(self.content), "byteLength": len(content)}
        self.views.append({**view, "target": target})
        self.content += _padded(content, b"\0")
        accessor = {"bufferView": len(self.views) - 1, "componentType": component}
        self.accessors.append({**accessor, "count": len(values), "type": kind})
        return len(self.accessors) - 1


def _node(piece: Piece3d) -> dict[str, Any]:
    return {
        "name": piece.label,
        "mesh": piece.shape,
        "translation": _metres(piece.pose.origin),
        "rotation": _numbers(quaternion(piece.pose), _TURN_DECIMALS),
        "extras": {"mark": piece.mark, "step": piece.step, "explode": _metres(piece.apart)},
    }


def _metres(values: Iterable[float]) -> list[Number]:
    return _numbers((each * _M_PER_MM for each in values), _METRE_DECIMALS)


def _numbers(values: Iterable[float], decimals: int) -> list[Number]:
    return [number(each, decimals) for each in values]


def quaternion(pose: Rigid) -> tuple[float, ...]:
    """Return a frame's turn as the unit quaternion (x, y, z, w), to 9 decimals.

    The largest component comes from the diagonal, the rest from sums and differences of the other
    entries (Shepperd 1978, Journal of Guidance and Control 1, 223-224). Of the two quaternions of
    a turn it is the one whose last component that is not 0 is positive.
    """
    (a, b, c), (d, e, f), (g, h, i) = pose.x, pose.y, pose.z
    squares = (1 + a - e - i, 1 - a + e - i, 1 - a - e + i, 1 + a + e + i)
    rows = (
        (squares[0], b + d, g + c, f - h),
        (b + d, squares[1], f + h, g - c),
        (g + c, f + h, squares[2], b - d),
        (f - h, g - c, b - d, squares[3]),
    )
    found = rows[squares.index(max(squares))]
    size = math.hypot(*found)
    numbers = [rounded(each / size, _TURN_DECIMALS) for each in found]
    last = next(each for each in reversed(numbers) if each)
    return tuple(math.copysign(1.0, last) * each + 0.0 for each in numbers)


def _material(tint: Ink) -> dict[str, Any]:
    colour = [linear(channel / 255) for channel in rgb(PALETTE[tint])]
    surface = {
        "baseColorFactor": _numbers((*colour, 1.0), _COLOUR_DECIMALS),
        "metallicFactor": number(0.0),
        "roughnessFactor": number(0.9),
    }
    return {"name": str(tint), "pbrMetallicRoughness": surface}
