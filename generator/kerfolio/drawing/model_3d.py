"""A plan put together, as any 3-D picture of it needs it: shapes, and pieces that use them."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.drawing.vocabulary import Ink
from kerfolio.geometry.panel_mesh import Mesh
from kerfolio.geometry.rigid import Rigid, Vector


@dataclass(frozen=True, slots=True, kw_only=True)
class Shape3d:
    """A solid in its own frame, mm; ``tint`` is the colour of its sheet."""

    name: str
    mesh: Mesh
    tint: Ink


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece3d:
    """A piece in its place. World axes: x to the right, y to the back, z up; mm.

    ``title`` is what readers call it, ``size`` how large it is in words. ``shape`` counts in the
    model's shapes. ``step`` is the number of the step that adds it, 0 when none does. ``apart`` is
    how far it is drawn from its place when all is taken apart. ``is_hardware``: it is a bolt, say,
    and has no mark.
    """

    label: str
    mark: str
    title: str
    shape: int
    pose: Rigid
    step: int = 0
    apart: Vector = (0.0, 0.0, 0.0)
    size: str = ""
    is_hardware: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Step3d:
    """A step that adds pieces, numbered as in the plan."""

    number: int
    title: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Model3d:
    """All of it; every shape is used by at least one piece."""

    title: str
    shapes: tuple[Shape3d, ...]
    pieces: tuple[Piece3d, ...]
    steps: tuple[Step3d, ...] = ()
