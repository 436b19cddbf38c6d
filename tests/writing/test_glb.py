"""3-D model files: read by a small reader of our own and by the Khronos glTF validator."""

from __future__ import annotations

import json
import math
import struct
import subprocess
import sys
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from kerfolio.drawing.model_3d import Model3d
from kerfolio.drawing.model_view import model_of
from kerfolio.geometry.panel_mesh import volume_and_centre
from kerfolio.geometry.rigid import Rigid, cross
from kerfolio.writing.glb import glb_bytes, quaternion
from tests.assembly.scenes import NAMES, assembled, order, settled, titles
from tests.drawing.built import built, fittings
from tests.outside import node_file

VALIDATE = """
const validator = require(process.argv[1]);
validator.validateBytes(new Uint8Array(require("fs").readFileSync(process.argv[2])))
  .then((report) => console.log(JSON.stringify(report)));
"""


def model(name: str) -> Model3d:
    return model_of(assembled(name), order(name), settled(name).plan.title, titles(name))


@dataclass(frozen=True)
class Read:
    """A file taken apart as section 4.4 of the glTF 2.0 specification lays it out."""

    document: dict[str, Any]
    binary: bytes

    def values(self, number: int) -> np.ndarray:
        accessor = self.document["accessors"][number]
        view = self.document["bufferViews"][accessor["bufferView"]]
        kind = {5126: "<f4", 5123: "<u2", 5125: "<u4"}[accessor["componentType"]]
        width = {"VEC3": 3, "SCALAR": 1}[accessor["type"]]
        start, count = view["byteOffset"], accessor["count"] * width
        return np.frombuffer(self.binary, kind, count, start).reshape(-1, width)

    def mesh(self, number: int) -> tuple[np.ndarray, np.ndarray]:
        (primitive,) = self.document["meshes"][number]["primitives"]
        corners = self.values(primitive["indices"]).reshape(-1, 3)
        return self.values(primitive["attributes"]["POSITION"]).astype(float), corners

    def world(self, node: dict[str, Any]) -> np.ndarray:
        """Return a node's points under the root node."""
        points, _ = self.mesh(node["mesh"])
        root = self.document["nodes"][self.document["scenes"][0]["nodes"][0]]
        local = points @ turn(node["rotation"]).T + np.array(node["translation"])
        return local @ turn(root["rotation"]).T


def read(content: bytes) -> Read:
    magic, version, size = struct.unpack_from("<III", content)
    assert (magic, version, size) == (0x46546C67, 2, len(content))
    chunks, at = {}, 12
    while at < size:
        length, kind = struct.unpack_from("<II", content, at)
        assert length % 4 == 0
        chunks[kind] = content[at + 8 : at + 8 + length]
        at += 8 + length
    assert list(chunks) == [0x4E4F534A, 0x004E4942]
    return Read(json.loads(chunks[0x4E4F534A]), chunks[0x004E4942])


def turn(q: list[float]) -> np.ndarray:
    """Return a unit quaternion's matrix (the formula of the glTF 2.0 specification, appendix)."""
    x, y, z, w = q
    return np.array(
        [
            [1 - 2 * (y * y + z * z), 2 * (x * y - z * w), 2 * (x * z + y * w)],
            [2 * (x * y + z * w), 1 - 2 * (x * x + z * z), 2 * (y * z - x * w)],
            [2 * (x * z - y * w), 2 * (y * z + x * w), 1 - 2 * (x * x + y * y)],
        ]
    )


def bolted() -> Model3d:
    """A model with hardware, whose pieces share meshes of their own."""
    whole, ordered = built("harbour-stool")
    return model_of(whole, ordered, "Stool", fittings=fittings("harbour-stool"))


@pytest.mark.node
@pytest.mark.parametrize("name", [*NAMES, "bolted"])
def test_the_khronos_validator_finds_nothing(name: str, tmp_path: Path) -> None:
    package = node_file("gltf-validator", "index.js")
    target = tmp_path / "model.glb"
    made = bolted() if name == "bolted" else model(name)
    target.write_bytes(glb_bytes(made))
    done = subprocess.run(
        ["node", "-e", VALIDATE, str(package), str(target)],
        capture_output=True,
        text=True,
        check=True,
    )
    report = json.loads(done.stdout)
    assert report["issues"]["messages"] == []
    assert report["info"]["totalTriangleCount"] > 100
    assert report["info"]["drawCallCount"] == len(made.shapes)


@pytest.mark.node
def test_the_validator_itself_sees_a_fault(tmp_path: Path) -> None:
    package = node_file("gltf-validator", "index.js")
    target = tmp_path / "model.glb"
    target.write_bytes(glb_bytes(model("desk-rack")).replace(b'"max":[', b'"max":[9', 1))
    arguments = ["node", "-e", VALIDATE, str(package), str(target)]
    done = subprocess.run(arguments, capture_output=True, text=True, check=True)
    assert json.loads(done.stdout)["issues"]["numErrors"] > 0


@pytest.mark.parametrize("name", NAMES)
def test_pieces_stand_in_metres_with_y_up_and_the_front_along_z(name: str) -> None:
    made = model(name)
    found = read(glb_bytes(made))
    nodes = {node["name"]: node for node in found.document["nodes"] if "mesh" in node}
    assert sorted(nodes) == sorted(piece.label for piece in assembled(name).pieces)
    for piece in made.pieces:
        points = made.shapes[piece.shape].mesh.points
        expected = [
            (x / 1000, z / 1000, -y / 1000) for x, y, z in (piece.pose.point(p) for p in points)
        ]
        assert found.world(nodes[piece.label]) == pytest.approx(np.array(expected), abs=1e-6)


def test_a_mesh_stands_once_for_all_pieces_of_its_shape() -> None:
    found = read(glb_bytes(model("desk-rack"))).document
    dividers = [node for node in found["nodes"] if node["name"].startswith("divider.")]
    assert len(dividers) == 4
    assert len({node["mesh"] for node in dividers}) == 1
    assert len(found["meshes"]) < len(assembled("desk-rack").pieces)


@pytest.mark.parametrize("name", NAMES)
def test_the_meshes_hold_the_volume_of_the_boards(name: str) -> None:
    """Area times thickness (shapely), less the recesses; the settled mass says the same.

    The mass is that of the routed part: the relief of its inside corners takes up to 1 %.
    """
    found = read(glb_bytes(model(name)))
    for piece in assembled(name).pieces:
        (node,) = [each for each in found.document["nodes"] if each["name"] == piece.label]
        points, corners = found.mesh(node["mesh"])
        a, b, c = (points[corners[:, each]] for each in range(3))
        volume = float(np.einsum("ij,ij->i", a, np.cross(b, c)).sum() / 6) * 1e9
        sheet = settled(name).sheet(piece.sheet)
        assert volume == pytest.approx(piece.mass / sheet.stock.density * 1e9, rel=1e-2)
        if not piece.panel.recesses:
            board = piece.panel.shape.area * piece.panel.thickness
            assert volume == pytest.approx(board, rel=2e-4)


def test_extras_carry_mark_step_and_way_apart() -> None:
    made = model("harbour-stool")
    nodes = {each["name"]: each for each in read(glb_bytes(made)).document["nodes"]}
    for piece in made.pieces:
        extras = nodes[piece.label]["extras"]
        assert (extras["mark"], extras["step"]) == (piece.mark, piece.step)
        assert extras["explode"] == pytest.approx([each / 1000 for each in piece.apart])


def test_many_points_are_counted_in_32_bits() -> None:
    made = model("desk-rack")
    shape = made.shapes[0]
    mesh = shape.mesh
    copies = 70_000 // len(mesh.points) + 1
    points = tuple((x, y, z + 500 * n) for n in range(copies) for x, y, z in mesh.points)
    step = len(mesh.points)
    corners = tuple(
        (a + n * step, b + n * step, c + n * step)
        for n in range(copies)
        for a, b, c in mesh.triangles
    )
    large = replace(shape, mesh=replace(mesh, points=points, triangles=corners))
    found = read(glb_bytes(replace(made, shapes=(large, *made.shapes[1:]))))
    assert found.mesh(0)[1].max() == len(points) - 1
    kinds = [each["componentType"] for each in found.document["accessors"]]
    assert kinds[:2] == [5126, 5125]
    assert volume_and_centre(large.mesh)[0] > 0


def test_the_same_model_gives_the_same_bytes_whatever_the_hash_seed() -> None:
    program = (
        "import hashlib; from tests.writing.test_glb import model, glb_bytes;"
        "print(hashlib.sha256(glb_bytes(model('tool-tote'))).hexdigest())"
    )
    sums = {
        subprocess.run(
            [sys.executable, "-c", program],
            env={"PYTHONHASHSEED": seed, "PATH": ""},
            cwd=Path(__file__).parents[2],
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed in ("1", "2")
    }
    assert len(sums) == 1


def frames() -> list[Rigid]:
    """Return the 24 ways to lay a box on the axes, and some slanted ones."""
    axes = [tuple(float(s) if k == n else 0.0 for k in range(3)) for n in range(3) for s in (1, -1)]
    square = [
        Rigid((0.0, 0.0, 0.0), x, y, cross(x, y))
        for x in axes
        for y in axes
        if not any(a * b for a, b in zip(x, y, strict=True))
    ]
    slanted = []
    for degrees in (15, 75, 100, 179.99):
        c, s = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
        about_z = Rigid((0.0, 0.0, 0.0), (c, s, 0.0), (-s, c, 0.0), (0.0, 0.0, 1.0))
        slanted += [about_z.after(each) for each in square[:6]]
    return square + slanted


@pytest.mark.parametrize("pose", frames())
def test_quaternions_turn_as_the_frames_do(pose: Rigid) -> None:
    found = quaternion(pose)
    assert math.hypot(*found) == pytest.approx(1.0, abs=1e-8)
    expected = np.array([pose.x, pose.y, pose.z]).T
    assert turn(list(found)) == pytest.approx(expected, abs=1e-8)
    assert next(each for each in reversed(found) if each) > 0
