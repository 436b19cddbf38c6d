"""Photographs made ready to show: of one width, free of what the camera noted."""

from __future__ import annotations

import io
from typing import Literal

from PIL import Image

from kerfolio.basis.pixels import Pixels
from kerfolio.drawing.palette import PALETTE
from kerfolio.drawing.vocabulary import Ink

Kind = Literal["jpeg", "png", "webp"]

_SAVING: dict[str, dict[str, object]] = {
    "jpeg": {"quality": 82, "optimize": True, "progressive": True, "subsampling": "4:2:0"},
    "png": {"optimize": True},
    "webp": {"quality": 80, "method": 4},
}


def sized(pixels: Pixels, width: int, kind: Kind = "jpeg") -> bytes:
    """Return the picture at most ``width`` pixels wide; it is never enlarged."""
    mode = "RGBA" if pixels.see_through else "RGB"
    picture = Image.frombytes(mode, (pixels.width, pixels.height), pixels.content)
    return _saved(_scaled(picture, width), kind)


def _scaled(picture: Image.Image, width: int) -> Image.Image:
    if picture.width <= width:
        return picture
    height = max(1, round(picture.height * width / picture.width))
    return picture.resize((width, height), Image.Resampling.LANCZOS)


def _saved(picture: Image.Image, kind: Kind) -> bytes:
    if kind == "jpeg" and picture.mode == "RGBA":
        ground = Image.new("RGB", picture.size, PALETTE[Ink.PAPER])
        ground.paste(picture, mask=picture.getchannel("A"))
        picture = ground
    out = io.BytesIO()
    picture.save(out, format=kind.upper(), **_SAVING[kind])
    return out.getvalue()
