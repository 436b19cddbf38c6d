"""Pieces of hardware in their place on a fastening."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from kerfolio.geometry.plated import Plated
from kerfolio.geometry.rigid import (
    Rigid,
)
from kerfolio.geometry.turned import Turned
from kerfolio.model.stock import HardwareStock


class Role(Enum):
    """What a piece of hardware does in its fastening."""

    SHANK = "shank"
    NUT = "nut"
    WASHER = "washer"
    FITTING = "fitting"
    BOARD = "board"


@dataclass(frozen=True, slots=True, kw_only=True)
class Body:
    """A piece of hardware in its place.

    ``frame`` in the world: z is the way that the fastening goes in, mm. Its origin is, of a shank,
    where its head's underside bears (of a countersunk screw or a dowel its very end), of a washer
    or a nut on its bolt the face nearer to the head. Of a barrel nut it is its middle, and z runs
    along the nut, x along the bolt. Brackets and clamps have a ``shape``, and lie in its frame.
    """

    item: HardwareStock
    role: Role
    frame: Rigid
    shape: Plated | Turned | None = None
