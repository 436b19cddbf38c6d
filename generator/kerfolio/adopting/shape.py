"""What a drawing is made of, once it is cleaned: closed shapes, loose lines, words."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.place import NOWHERE, Place
from kerfolio.geometry.contour import Contour, Point


@dataclass(frozen=True, slots=True, kw_only=True)
class Shape:
    """A path of a drawing, mm, y up; ``names`` are its own, its groups' and its layer's."""

    contour: Contour
    names: tuple[str, ...] = ()
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Dropped:
    """Something that is not made: what it is, why, and where it stands in the drawing."""

    what: str
    why: str
    at: Point
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """Something the drawing leaves open: its answers, the likeliest first.

    ``about`` is what it is about, as the plan names it, or empty; ``key`` names the question, the
    same for the same drawing, so that an answer can be kept.
    """

    key: str
    words: str
    answers: tuple[str, ...]
    about: str = ""
    at: Point | None = None
    place: Place = NOWHERE

    @property
    def default(self) -> str:
        """The answer taken where nobody is asked."""
        return self.answers[0]
