"""The pictures of a booklet: drawings made for their room as SVG, photos as they are."""

from __future__ import annotations

from base64 import b64encode
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from kerfolio.document.picture import Art, Picture, Room
from kerfolio.drawing.vocabulary import Dimension, Drawing, Label
from kerfolio.writing.pdf import picture_size

_LEAST = 7.5 * 25.4 / 72
"""Size of the smallest lettering, mm: 7.5 pt."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """A picture at the size it has on paper, mm: a drawing, or a photo's bytes."""

    content: Drawing | bytes
    width: float
    height: float
    alt: str


@dataclass(slots=True, kw_only=True)
class Gallery:
    """The pictures of one booklet, each made once for a room, and their files by name.

    ``pictures`` are the bytes of photos by their file; ``written`` makes a drawing's SVG. Only
    what is asked for by ``file_of`` becomes a file.
    """

    pictures: Mapping[str, bytes]
    written: Callable[[Drawing], bytes]
    files: dict[str, bytes] = field(default_factory=dict)
    _made: dict[tuple[str, Room], Drawing] = field(default_factory=dict)
    _named: dict[int, tuple[Drawing | bytes, str]] = field(default_factory=dict)
    _known: dict[bytes, str] = field(default_factory=dict)

    def has(self, picture: Picture) -> bool:
        """Tell whether a picture can be shown: a photo may not be at hand."""
        return isinstance(picture, Art) or picture.photo.file in self.pictures

    def legible(self, picture: Picture, room: Room) -> bool:
        """Tell whether what is written in a picture can be read in a room."""
        shown = self.shown(picture, room)
        return (
            shown is None
            or isinstance(shown.content, bytes)
            or shown.width / shown.content.width >= least_scale(shown.content)
        )

    def shown(self, picture: Picture, room: Room, alt: str = "") -> Shown | None:
        """Return a picture in a room, no larger than it is drawn; None for a photo that is not at
        hand.
        """
        if isinstance(picture, Art):
            return self._drawn(picture, room, alt)
        content = self.pictures.get(picture.photo.file)
        if content is None:
            return None
        wide, high = picture_size(content)
        scale = min(room[0] / wide, room[1] / high)
        return Shown(
            content=content,
            width=wide * scale,
            height=high * scale,
            alt=alt or picture.photo.alt,
        )

    def _drawn(self, art: Art, room: Room, alt: str) -> Shown:
        key = (art.name, (round(room[0], 1), round(room[1], 1)))
        if key not in self._made:
            self._made[key] = art.draw(key[1])
        drawing = self._made[key]
        scale = min(room[0] / drawing.width, room[1] / drawing.height, 1.0)
        scale = max(scale, min(1.0, least_scale(drawing), room[0] / drawing.width))
        return Shown(
            content=drawing,
            width=drawing.width * scale,
            height=drawing.height * scale,
            alt=alt or drawing.description or drawing.title,
        )

    def file_of(self, shown: Shown) -> str:
        """Return the name of a picture's file; what is the same is written once."""
        content = shown.content
        if id(content) not in self._named:
            made = framed(content) if isinstance(content, bytes) else self.written(content)
            self._named[id(content)] = (content, self._filed(made))
        return self._named[id(content)][1]

    def _filed(self, content: bytes) -> str:
        """Return the name of a file; what is the same is there once."""
        if content not in self._known:
            self._known[content] = f"picture-{len(self._known) + 1}.svg"
            self.files[self._known[content]] = content
        return self._known[content]


def framed(content: bytes) -> bytes:
    """Return a photo, as it is packed, within an SVG: files handed to typst must be text."""
    wide, high = picture_size(content)
    kind = "png" if content.startswith(b"\x89PNG") else "jpeg"
    return (
        b'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %d %d">'
        b'<image width="%d" height="%d" href="data:image/%s;base64,%s"/></svg>'
    ) % (wide, high, wide, high, kind.encode(), b64encode(content))


def least_scale(drawing: Drawing) -> float:
    """Return how far a drawing may shrink before its lettering is too small to read."""
    heights = [each.height for each in drawing.items if isinstance(each, Label | Dimension)]
    return _LEAST / min(heights) if heights else 0.0
