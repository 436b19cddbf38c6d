"""How a cut came out: grades of edges and of the face, marks, how the joint went together.

All are ordered words, not numbers: nobody measures an edge in the workshop, but everybody can say
which of two is better.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum, IntEnum, StrEnum


class Grade(IntEnum):
    """The five steps of an edge or a face, the higher the better."""

    SPOILED = 1
    TO_MEND = 2
    TO_SAND = 3
    NEARLY_CLEAN = 4
    CLEAN = 5

    @property
    def word(self) -> str:
        """The word that a log states it by."""
        return self.name.lower().replace("_", " ")


class Mark(StrEnum):
    """What is seen or heard on a cut, each with the word that a log states it by."""

    FUZZ = "fuzz"
    BURN = "burn"
    CHATTER = "chatter"
    TEAR_OUT = "tear-out"
    NOISE = "noise"


class Feel(IntEnum):
    """How a joint went together, from the loosest to the tightest."""

    RATTLES = 1
    BY_HAND = 2
    BY_PALM = 3
    BY_MALLET = 4
    STUCK = 5

    @property
    def word(self) -> str:
        """The word that a log states it by."""
        return self.name.lower().replace("_", " ")


class Operation(Enum):
    """What was cut, each with the word that a log states it by."""

    THROUGH = "through"
    PART_WAY = "part way"
    LETTERS = "letters"
    HOLES = "holes"


OLDER: dict[str, tuple[Grade, tuple[Mark, ...]]] = {
    "light fuzz": (Grade.NEARLY_CLEAN, (Mark.FUZZ,)),
    "fuzz to sand": (Grade.TO_SAND, (Mark.FUZZ,)),
    "chipped": (Grade.TO_MEND, (Mark.TEAR_OUT,)),
    "burned": (Grade.TO_MEND, (Mark.BURN,)),
}
"""Words that say a grade and what is seen at once; a log may state either way."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """How a cut came out: of the ``top`` edge (where the cutter enters), the ``bottom`` edge and
    the ``face``, or as a ``whole``; None where that was not looked at.
    """

    whole: Grade | None = None
    top: Grade | None = None
    bottom: Grade | None = None
    face: Grade | None = None
    marks: tuple[Mark, ...] = ()

    @property
    def grade(self) -> Grade | None:
        """The verdict: what is stated of the whole, else the worst of what was looked at."""
        seen = [each for each in (self.top, self.bottom, self.face) if each is not None]
        return self.whole or min(seen, default=None)

    @property
    def clean(self) -> bool:
        """Whether nothing was left to do."""
        return self.grade is Grade.CLEAN
