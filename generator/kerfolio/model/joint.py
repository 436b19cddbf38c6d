"""Joints as stated, and how the whole stands."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.place import NOWHERE, Place
from kerfolio.model.joint_kind import JointKind
from kerfolio.model.purpose import Purpose
from kerfolio.model.statement import Amount, Named, Spot


@dataclass(frozen=True, slots=True, kw_only=True)
class JointFit:
    """How much room a joint is given: by its ``purpose``, or clearances of its own on each side.

    ``width`` is that between a face and a wall, ``ends`` that at either end of a tab and at the
    bottom of a notch. What is None follows the purpose, without one the sheet's fit.
    """

    purpose: Purpose | None = None
    width: Amount | None = None
    ends: Amount | None = None
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Joint:
    """Two features of two pieces that meet.

    ``a`` and ``b`` are written ``piece.feature`` (``side.left.rail-slot``); where the kind allows
    it, an end is a side (``shelf.left``) or a piece.

    The rest says which way round, where the features leave it open: ``face`` is the face of the
    second piece that the first one comes to, ``show`` or ``back``; ``looking`` is where the first
    piece's show face looks: ``up``, ``down``, ``left`` or ``right`` as the second is drawn; of a
    face joint ``away`` or ``toward``. ``at`` and ``turn`` (degrees) place a piece on a face, ``at``
    alone the point of a wedge that lies in its slot. ``fit`` is stated for this joint alone.
    """

    kind: JointKind
    a: Named
    b: Named
    face: str = ""
    looking: str = ""
    at: Spot | None = None
    turn: Amount | None = None
    fit: JointFit | None = None
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """How the whole stands: where a piece's show face looks, and where its drawing's top points.

    Both are ``front``, ``back``, ``left``, ``right``, ``up`` or ``down``; ``top`` may be empty.
    """

    piece: Named
    looks: str
    top: str = ""
    place: Place = NOWHERE
