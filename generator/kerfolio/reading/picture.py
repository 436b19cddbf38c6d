"""Pictures: told for what they are by their first bytes, decoded once, brought upright and to sRGB.

The library is loaded where it is used: a workshop without pictures need not wait for it.
"""

from __future__ import annotations

import io
import re
import warnings
from pathlib import PurePosixPath
from typing import TYPE_CHECKING

from kerfolio.basis.complaint import Complaint, quoted
from kerfolio.basis.pixels import Pixels

if TYPE_CHECKING:
    from PIL import Image

MOST_PICTURE_BYTES = 25_000_000
MOST_MILLIONS = 80
"""Millions of pixels that are decoded; each takes up to four bytes while it is."""

MOST_SIDE = 30_000
"""Pixels along a side: what every format of pictures can hold several times over."""

WIDEST = 1600
"""Pixels across that are kept: no page and no paper shows more."""

_MOVING = ("PNG", "WEBP")
"""Formats whose further pictures follow in time; those of a JPEG are the same from another side."""

_ENDINGS = {
    ".jpg": "a JPEG picture",
    ".jpeg": "a JPEG picture",
    ".png": "a PNG picture",
    ".webp": "a WebP picture",
}
_STARTS: tuple[tuple[str, re.Pattern[bytes]], ...] = tuple(
    (what, re.compile(start, re.DOTALL))
    for what, start in (
        ("a JPEG picture", rb"\xff\xd8\xff"),
        ("a PNG picture", rb"\x89PNG\r\n\x1a\n"),
        ("a WebP picture", rb"RIFF....WEBP"),
        ("a GIF picture", rb"GIF8[79]a"),
        ("an AVIF picture", rb"....ftypavi[fs]"),
        ("a HEIC picture", rb"....ftyp(?:hei[cmsx]|hev[cmx]|mif1|msf1)"),
        ("a JPEG XL picture", rb"\xff\x0a|\0\0\0\x0cJXL "),
        ("a TIFF picture", rb"II\*\0|MM\0\*"),
        ("a BMP picture", rb"BM.{12}"),
        ("an SVG drawing", rb"\s*(?:<\?xml[^>]*>\s*)?<svg\b"),
        ("a PDF document", rb"%PDF-"),
        ("an HTML page", rb"(?i)\s*<(?:!doctype html|html)\b"),
        ("an MP4 film", rb"....ftyp"),
        ("a ZIP archive", rb"PK\x03\x04"),
    )
)
"""What files are by their first bytes, as the specification of each format states them."""


def what_it_is(content: bytes) -> str:
    """Return what a file is by its first bytes, ``a GIF picture``; empty where unknown."""
    return next((what for what, start in _STARTS if start.match(content)), "")


def read_picture(content: bytes, file: str) -> Pixels | Complaint:
    """Return a picture upright, in sRGB, at most ``WIDEST`` pixels across; a Complaint if it fails.

    ``file`` is its path as written. What the camera noted is left behind.
    """
    return kind_fault(content, file) or _decoded(content, file)


def kind_fault(content: bytes, file: str) -> Complaint | None:
    """Return what is wrong with a picture by its name and its first bytes, or None."""
    stated = _ENDINGS.get(PurePosixPath(file).suffix.lower(), "")
    found = what_it_is(content)
    if not content:
        return Complaint(f"{quoted(file)} is empty", "Copy the picture here once more.")
    if not found or (not stated and found in _ENDINGS.values()):
        advice = "Use a JPEG, PNG or WebP file named `.jpg`, `.png` or `.webp`."
        return Complaint(f"{quoted(file)} is no picture of a known kind", advice)
    if found == stated:
        return None
    advice = "Save it as a JPEG, PNG or WebP picture."
    if found in _ENDINGS.values():
        advice = f"Give the file the ending of {found}."
    return Complaint(f"{quoted(file)} holds {found}", advice)


def _decoded(content: bytes, file: str) -> Pixels | Complaint:
    from PIL import Image

    try:
        with warnings.catch_warnings():
            warnings.simplefilter("error", Image.DecompressionBombWarning)
            with Image.open(io.BytesIO(content)) as photo:
                return _size_fault(photo, file) or _pixels(photo)
    except (Image.DecompressionBombError, Image.DecompressionBombWarning):
        return _too_many(file)
    except MemoryError:
        return Complaint(f"{quoted(file)} does not fit into memory", _SMALLER)
    except Exception as fault:  # what a decoder says of foreign bytes can be anything
        return _unreadable(file, str(fault))


_SMALLER = f"Make it smaller: no page shows more than {WIDEST} pixels across."


def _too_many(file: str) -> Complaint:
    return Complaint(f"{quoted(file)} has more than {MOST_MILLIONS} million pixels", _SMALLER)


def _size_fault(photo: Image.Image, file: str) -> Complaint | None:
    if photo.width * photo.height > MOST_MILLIONS * 1_000_000:
        return _too_many(file)
    if max(photo.size) > MOST_SIDE:
        message = f"{quoted(file)} has more than {MOST_SIDE} pixels along a side"
        return Complaint(message, _SMALLER)
    return None


def _unreadable(file: str, fault: str) -> Complaint:
    """Say in words what a decoder says of a picture."""
    said = fault.lower()
    if "text" in said and ("memory" in said or "too large" in said):
        advice = "Save it anew from a picture program, without comments."
        return Complaint(f"{quoted(file)} carries far too much text", advice)
    if "truncated" in said or "eof" in said:
        return Complaint(f"{quoted(file)} is cut short", "Copy the picture here once more.")
    advice = "Open it in a picture program and save it anew, or copy it here once more."
    return Complaint(f"{quoted(file)} is damaged and cannot be read", advice)


def _pixels(photo: Image.Image) -> Pixels:
    frames = getattr(photo, "n_frames", 1) if photo.format in _MOVING else 1
    photo.draft("RGB", (2 * WIDEST, 2 * WIDEST))
    picture = _scaled(_upright(photo))
    return Pixels(
        width=picture.width,
        height=picture.height,
        content=picture.tobytes(),
        see_through=picture.mode == "RGBA",
        frames=frames,
    )


def _upright(photo: Image.Image) -> Image.Image:
    from PIL import ImageOps

    profile = photo.info.get("icc_profile")
    turned = _eight_bits(ImageOps.exif_transpose(photo))
    see_through = "A" in turned.getbands() or "transparency" in turned.info
    plain = turned.convert("RGBA" if see_through else "RGB")
    return _in_srgb(plain, profile) if profile and not see_through else plain


def _eight_bits(photo: Image.Image) -> Image.Image:
    """Grey of 16 bits would come out white: the library cuts values off rather than scaling."""
    if not photo.mode.startswith("I"):
        return photo
    return photo.convert("I").point(lambda value: value * (1 / 256)).convert("L")


def _in_srgb(picture: Image.Image, profile: bytes) -> Image.Image:
    """Phones save in wider colour spaces; without its profile such a picture would look dull."""
    from PIL import ImageCms

    try:
        source = ImageCms.ImageCmsProfile(io.BytesIO(profile))
        target = ImageCms.createProfile("sRGB")
        converted = ImageCms.profileToProfile(picture, source, target, outputMode="RGB")
    except (ImageCms.PyCMSError, OSError):
        return picture
    return picture if converted is None else converted


def _scaled(picture: Image.Image) -> Image.Image:
    from PIL import Image

    if picture.width <= WIDEST:
        return picture
    height = max(1, round(picture.height * WIDEST / picture.width))
    return picture.resize((WIDEST, height), Image.Resampling.LANCZOS)
