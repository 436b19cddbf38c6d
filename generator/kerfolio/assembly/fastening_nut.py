"""Where the nut of a fastening lies along its axis: across it, sunk into the wood, or behind it."""

from __future__ import annotations

from kerfolio.assembly.assembled import PosedPiece
from kerfolio.assembly.fastening_axis import (
    Entry,
    room_in,
)
from kerfolio.assembly.fastening_body import Body, Role
from kerfolio.geometry.rigid import (
    Rigid,
    Vector,
    between,
    cross,
    dot,
    scaled,
)
from kerfolio.model.fastening import (
    CROSS_NUT,
    SUNK_NUTS,
    TEE_NUT,
)
from kerfolio.model.stock import HardwareStock
from kerfolio.settling.fastened import SettledFastening

_NOWHERE: Vector = (0.0, 0.0, 0.0)


def nut_of(
    fastening: SettledFastening,
    frame: Rigid,
    entries: tuple[Entry, ...],
    pieces: dict[str, PosedPiece],
) -> tuple[float | None, Vector, tuple[Body, ...]]:
    """Return how far along the axis the nut's middle is, how far beside it, and its bodies."""
    nut, cross_hole = fastening.nut, fastening.cross
    if nut is None:
        return None, (0.0, 0.0, 0.0), ()
    if nut.kind == CROSS_NUT:
        if cross_hole is None or cross_hole.part is None:
            return None, (0.0, 0.0, 0.0), ()
        pose = pieces[cross_hole.piece].pose
        x, y, _ = cross_hole.mouth
        way = pose.vector((0.0, 0.0, 1.0))
        middle = pose.point((x, y, cross_hole.part.thickness / 2))
        gone = between(frame.origin, middle)
        along = dot(gone, frame.z)
        beside = between(scaled(frame.z, along), gone)
        aside = between(scaled(way, dot(beside, way)), beside)  # along its hole a nut slides
        lying = Rigid(middle, frame.z, cross(way, frame.z), way)
        return along, aside, (Body(item=nut, role=Role.NUT, frame=lying),)
    if nut.kind in SUNK_NUTS:
        return _sunk_nut(nut, fastening, frame, entries)
    high = nut.height or 0.0
    under = fastening.under_nut.height or 0.0 if fastening.under_nut else 0.0
    face = _far_face(fastening, entries)
    seated = frame.moved(scaled(frame.z, face + under))
    bodies = [Body(item=nut, role=Role.NUT, frame=seated)]
    if fastening.under_nut is not None:
        at = frame.moved(scaled(frame.z, face))
        bodies.append(Body(item=fastening.under_nut, role=Role.WASHER, frame=at))
    return face + under + high / 2, (0.0, 0.0, 0.0), tuple(bodies)


def sunk_length(nut: HardwareStock) -> float:
    """Return how long an insert or a tee nut is, mm: 2 or 1.5 threads where none is stated."""
    usual = 1.5 if nut.kind == TEE_NUT else 2.0
    return nut.length or usual * (nut.thread or 0.0)


def _sunk_nut(
    nut: HardwareStock, fastening: SettledFastening, frame: Rigid, entries: tuple[Entry, ...]
) -> tuple[float, Vector, tuple[Body, ...]]:
    """Return the same of an insert, in from where the bolt comes, or of a tee nut, from behind."""
    long = sunk_length(nut)
    if nut.kind == TEE_NUT:
        face = _far_face(fastening, entries)
        turned = Rigid(frame.origin, frame.x, scaled(frame.y, -1.0), scaled(frame.z, -1.0))
        seated = turned.moved(scaled(frame.z, face))
        return face - long / 2, _NOWHERE, (Body(item=nut, role=Role.NUT, frame=seated),)
    start = entries[-1].along if entries else _far_face(fastening, entries) - long
    seated = frame.moved(scaled(frame.z, start))
    return start + long / 2, _NOWHERE, (Body(item=nut, role=Role.NUT, frame=seated),)


def _far_face(fastening: SettledFastening, entries: tuple[Entry, ...]) -> float:
    """Return how far along the axis the wood ends that a bolt goes through, mm."""
    if entries:
        return entries[-1].along + room_in(entries[-1].seat)
    return room_in(fastening.first) - fastening.first.sunk
