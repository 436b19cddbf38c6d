"""What a figure shows: a drawing made for the room it gets, or one of the plan's photos."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from kerfolio.drawing.vocabulary import Drawing
from kerfolio.model.plan import Photo

Room = tuple[float, float]
"""Width and height that a drawing may take on paper, mm."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Art:
    """A drawing by its name in the document: ``sheet-1``, ``step-3``.

    ``draw`` makes it for a room, its lettering at the size it is read at; one that is ``still`` was
    made for one room alone, and takes no notice. ``slides`` says that it is wide and must not
    shrink to a phone's width. Drawings of one ``scale`` (mm on paper for a mm of wood) may be shown
    together; 0 where it is of its own.
    """

    name: str
    draw: Callable[[Room], Drawing]
    slides: bool = False
    scale: float = 0.0
    still: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Shot:
    """A photo of the plan, or what stands in for one; its words say what it shows."""

    photo: Photo


Picture = Art | Shot


def still(name: str, drawing: Drawing, *, slides: bool = False, scale: float = 0.0) -> Art:
    """Return a drawing that is there already."""
    return Art(name=name, draw=lambda _: drawing, slides=slides, scale=scale, still=True)
