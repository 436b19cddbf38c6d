"""The kinds of joint: what is declared of each of them, once for every room.

What a room does with a kind stands in that room's ``joint_kinds.py``, keyed by these constants.
"""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.model.feature_kind import (
    FINGERS,
    GROOVE,
    HOLE,
    NOTCH,
    POCKET,
    SLOT,
    TAB,
    WINDOW,
    FeatureKind,
)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class BareEnd:
    """What an end of a joint may name in place of a feature; ``noun`` is what it is called."""

    noun: str


PIECE = BareEnd(noun="a piece")
SIDE = BareEnd(noun="a side, such as `left`")

EndKind = FeatureKind | BareEnd
"""What an end of a joint may be."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class JointKind:
    """A kind of joint; one is told from another by identity (``joint.kind is FACE_JOINT``).

    ``name`` is its word in ``plan.json`` and the key of a joint's first end, ``other`` the key of
    the second one; ``first`` and ``second`` are what may stand there.

    ``flat``: it lays one piece flat on a face of the other.
    ``paired``: its ends are sets of the same count, and each meets the one of its number.
    ``interlocks``: both pieces are cut, so that each fills corners of the other.
    """

    name: str
    other: str
    first: tuple[EndKind, ...]
    second: tuple[EndKind, ...]
    flat: bool = False
    paired: bool = False
    interlocks: bool = False

    @property
    def ends(self) -> tuple[tuple[EndKind, ...], tuple[EndKind, ...]]:
        """What may stand at the first and at the second end."""
        return self.first, self.second

    @property
    def takes(self) -> bool:
        """Whether one of its pieces goes into what may say which sheet it takes."""
        return any(
            isinstance(each, FeatureKind) and each.takes for each in self.first + self.second
        )

    def __str__(self) -> str:
        return self.name


TAB_JOINT = JointKind(
    name="tab",
    other="into",
    first=(TAB,),
    second=(SLOT, NOTCH, GROOVE, POCKET, WINDOW),
    paired=True,
    interlocks=True,
)
NOTCH_JOINT = JointKind(
    name="notch",
    other="with",
    first=(NOTCH, SLOT),
    second=(NOTCH, SLOT),
    paired=True,
    interlocks=True,
)
FINGER_JOINT = JointKind(
    name="fingers",
    other="with",
    first=(FINGERS,),
    second=(FINGERS,),
    paired=True,
    interlocks=True,
)
FACE_JOINT = JointKind(
    name="face",
    other="on",
    first=(HOLE, PIECE),
    second=(HOLE, PIECE),
    flat=True,
    paired=True,
)
EDGE_JOINT = JointKind(name="edge", other="on", first=(SIDE,), second=(HOLE,))
WEDGE_JOINT = JointKind(name="wedge", other="through", first=(PIECE,), second=(SLOT, WINDOW))

JOINT_KINDS = (TAB_JOINT, NOTCH_JOINT, FINGER_JOINT, FACE_JOINT, EDGE_JOINT, WEDGE_JOINT)
"""Every kind, in the order in which a plan's schema lists them."""
