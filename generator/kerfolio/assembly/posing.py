"""A plan put together from where its pieces lie: bodies and joints in the world."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from kerfolio.assembly.assembled import Assembled, PosedJoint, PosedPiece
from kerfolio.assembly.links import Link
from kerfolio.assembly.pairing import Pairing
from kerfolio.assembly.panels import panel_of
from kerfolio.geometry.panel import Panel
from kerfolio.geometry.rigid import Rigid
from kerfolio.model.joint_kind import FINGER_JOINT
from kerfolio.settling.settled import SettledPlan


def panels_of(settled: SettledPlan) -> dict[str, Panel]:
    """Return the solid of every piece; pieces of one part share it."""
    made = ((part, panel_of(part)) for part in settled.parts)
    return {piece.label: panel for part, panel in made for piece in part.pieces}


def assembled_of(
    settled: SettledPlan,
    poses: Mapping[str, Rigid],
    panels: Mapping[str, Panel],
    pairings: Sequence[Pairing] = (),
    links: Sequence[Link] = (),
) -> Assembled:
    """Return the pieces that have a place, and the joints between them as they stand."""
    return Assembled(
        variant=settled.variant,
        pieces=tuple(_pieces(settled, poses, panels)),
        joints=tuple(_joints(pairings, links, poses)),
    )


def _pieces(
    settled: SettledPlan, poses: Mapping[str, Rigid], panels: Mapping[str, Panel]
) -> Iterator[PosedPiece]:
    for part in settled.parts:
        for piece in part.pieces:
            if piece.label in poses:
                yield PosedPiece(
                    label=piece.label,
                    mark=piece.mark,
                    part=part.name,
                    sheet=part.sheet,
                    panel=panels[piece.label],
                    pose=poses[piece.label],
                    mass=part.mass,
                )


def _joints(
    pairings: Sequence[Pairing], links: Sequence[Link], poses: Mapping[str, Rigid]
) -> Iterator[PosedJoint]:
    for each in pairings:
        link = links[each.link]
        frame = poses[each.a].after(each.pair[0])
        if link.kind is FINGER_JOINT:
            # A corner is pushed together along the first piece, or along the second (now x).
            frame = Rigid(frame.origin, frame.y, frame.z, frame.x)
        yield PosedJoint(
            kind=link.kind,
            a=each.a,
            b=each.b,
            ends=link.names(each.index),
            frame=frame,
            size=_size(link, each.index),
            place=link.joint.stated.place,
        )


def _size(link: Link, index: int) -> tuple[float, float]:
    """Return (along, across) of a joint, mm: what can be seen of it."""
    if link.b.features:
        feature = link.b.features[min(index, len(link.b.features) - 1)]
        along, across = feature.length.value, feature.width.value
        return max(along, across), min(along, across)
    return link.a.part.size
