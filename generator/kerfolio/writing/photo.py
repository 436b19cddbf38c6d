"""Photographs made ready to show: upright, of one width, free of what the camera noted."""

from __future__ import annotations

import io
from typing import Literal

from PIL import Image, ImageCms, ImageOps, UnidentifiedImageError

from kerfolio.drawing.vocabulary import Ink
from kerfolio.writing.palette import PALETTE

Kind = Literal["jpeg", "png", "webp"]

_SAVING: dict[str, dict[str, object]] = {
    "jpeg": {"quality": 82, "optimize": True, "progressive": True, "subsampling": "4:2:0"},
    "png": {"optimize": True},
    "webp": {"quality": 80, "method": 4},
}


def sized(content: bytes, width: int, kind: Kind = "jpeg") -> bytes:
    """Return the picture at most ``width`` pixels wide, upright, without any metadata.

    The orientation noted by the camera is applied, colours are brought to sRGB, and place, time,
    camera and comments are left behind. A picture is never enlarged. Raises ValueError when the
    content is no picture that can be read, or is absurdly large.
    """
    try:
        with Image.open(io.BytesIO(content)) as photo:
            photo.draft("RGB", (2 * width, 2 * width))
            return _saved(_scaled(_upright(photo), width), kind)
    except (UnidentifiedImageError, Image.DecompressionBombError, OSError, SyntaxError) as fault:
        raise ValueError(f"not a readable picture: {fault}") from fault


def _upright(photo: Image.Image) -> Image.Image:
    profile = photo.info.get("icc_profile")
    turned = ImageOps.exif_transpose(photo)
    see_through = "A" in turned.getbands() or "transparency" in turned.info
    plain = turned.convert("RGBA" if see_through else "RGB")
    return _in_srgb(plain, profile) if profile and not see_through else plain


def _in_srgb(picture: Image.Image, profile: bytes) -> Image.Image:
    """Phones save in wider colour spaces; without its profile such a picture would look dull."""
    try:
        source = ImageCms.ImageCmsProfile(io.BytesIO(profile))
        target = ImageCms.createProfile("sRGB")
        converted = ImageCms.profileToProfile(picture, source, target, outputMode="RGB")
    except (ImageCms.PyCMSError, OSError):
        return picture
    return picture if converted is None else converted


def _scaled(picture: Image.Image, width: int) -> Image.Image:
    if picture.width <= width:
        return picture
    height = max(1, round(picture.height * width / picture.width))
    return picture.resize((width, height), Image.Resampling.LANCZOS)


def _saved(picture: Image.Image, kind: Kind) -> bytes:
    bare = Image.new(picture.mode, picture.size)
    bare.paste(picture)
    if kind == "jpeg" and bare.mode == "RGBA":
        ground = Image.new("RGB", bare.size, PALETTE[Ink.PAPER])
        ground.paste(bare, mask=bare.getchannel("A"))
        bare = ground
    out = io.BytesIO()
    bare.save(out, format=kind.upper(), **_SAVING[kind])
    return out.getvalue()
