"""A way for two ends of a joint to meet: which face, which way round."""

from __future__ import annotations

from dataclasses import dataclass
from math import dist

from kerfolio.assembly.ends import End
from kerfolio.assembly.frames import SHOW
from kerfolio.geometry.rigid import Rigid, Vector, dot
from kerfolio.model.joint_kind import JointKind
from kerfolio.settling.settled import SettledJoint

Pair = tuple[Rigid, Rigid]
"""The frames of two features, each in its own part: they coincide when the pieces are home."""

_ALIKE = 0.3
"""A direction counts as up, down, left or right where its share of it is above this."""

_WORDS: dict[str, Vector] = {
    "right": (1.0, 0.0, 0.0),
    "up": (0.0, 1.0, 0.0),
    "left": (-1.0, 0.0, 0.0),
    "down": (0.0, -1.0, 0.0),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Meeting:
    """A joint with what its ends mean."""

    joint: SettledJoint
    a: End
    b: End


@dataclass(frozen=True, slots=True, kw_only=True)
class Way:
    """One way to meet: a pair of frames for each two features.

    ``face`` is the face of the second piece that is met. ``rank`` says how unusual the way is:
    first of its faces (show faces look out), then of its turn (what is drawn up points up).
    ``slides`` says that the pieces may lie anywhere along x (a tongue in a longer groove).
    ``number`` tells it from the joint's other ways, at every thickness alike.
    """

    pairs: tuple[Pair, ...]
    face: str
    rank: tuple[int, int]
    slides: bool = False
    number: int = 0

    @property
    def look(self) -> Vector:
        """Where the first piece's show face looks, in the second part's frame."""
        return look_of(*self.pairs[0])

    def words(self, kind: JointKind) -> tuple[str, str]:
        """Return (face, looking) as a maker would state this way."""
        look = self.look
        if kind.flat:
            out = look[2] if self.face == SHOW else -look[2]
            return self.face, "away" if out > 0 else "toward"
        return self.face, max(_WORDS, key=lambda word: round(dot(look, _WORDS[word]), 6))

    def is_stated(self, kind: JointKind, face: str, looking: str) -> bool:
        """Tell whether a maker's words allow this way."""
        if face and face != self.face:
            return False
        if kind.flat:
            return self.words(kind)[1] == (looking or "away")
        if not looking:
            return True
        return dot(self.look, _WORDS[looking]) > _ALIKE


def look_of(first: Rigid, second: Rigid) -> Vector:
    """Return where the first piece's show face looks, in the second part's frame."""
    return second.vector(first.inverse.vector((0.0, 0.0, 1.0)))


def spread(way: Way) -> float:
    """Return how badly the features of two sets match when met this way, mm.

    It is the distance between two places of the second piece that two pairs ask for.
    """
    places = [first.after(second.inverse).origin for first, second in way.pairs]
    return max((dist(places[0], each) for each in places[1:]), default=0.0)
