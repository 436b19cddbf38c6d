"""Pictures for tests: of an invented camera, and odd or broken ones."""

from __future__ import annotations

import io
import struct
import zlib

from PIL import Image

from kerfolio.basis.pixels import Pixels
from kerfolio.reading.picture import read_picture

RED, BLUE = (200, 30, 30), (30, 30, 200)
ORIENTATION, GPS, MAKE = 0x0112, 0x8825, 0x010F


def camera_photo(orientation: int = 1, size: tuple[int, int] = (400, 200)) -> bytes:
    """Return a JPEG, left half red and right half blue, with the notes of an invented camera."""
    photo = Image.new("RGB", size, RED)
    photo.paste(BLUE, (size[0] // 2, 0, *size))
    exif = Image.Exif()
    exif[ORIENTATION] = orientation
    exif[MAKE] = "Invented Camera"
    exif.get_ifd(GPS).update({1: "N", 2: (52.0, 31.0, 12.0), 3: "E", 4: (13.0, 24.0, 36.0)})
    return saved(photo, "JPEG", exif=exif, quality=95, comment=b"at home")


def saved(picture: Image.Image, form: str, **how: object) -> bytes:
    """Return a picture's file."""
    out = io.BytesIO()
    picture.save(out, form, **how)
    return out.getvalue()


def decoded(content: bytes, file: str = "photo.jpg") -> Pixels:
    """Return what a good picture shows."""
    found = read_picture(content, file)
    assert isinstance(found, Pixels), found
    return found


def near(colour: object, other: tuple[int, int, int]) -> bool:
    """Tell whether two colours look alike."""
    assert isinstance(colour, tuple)
    return all(abs(a - b) < 25 for a, b in zip(colour, other, strict=True))


def grey_png(width: int, height: int, *, beside: bytes = b"", bits: int = 1) -> bytes:
    """Return a black PNG of any size, with further chunks before its rows; it is small."""
    head = struct.pack(">IIBBBBB", width, height, bits, 0, 0, 0, 0)
    packer, row = zlib.compressobj(9), bytes(1 + (width * bits + 7) // 8)
    rows = b"".join(packer.compress(row) for _ in range(height)) + packer.flush()
    chunks = chunk(b"IHDR", head) + beside + chunk(b"IDAT", rows) + chunk(b"IEND", b"")
    return b"\x89PNG\r\n\x1a\n" + chunks


def chunk(kind: bytes, content: bytes) -> bytes:
    """Return a chunk of a PNG (its specification, section 5.3)."""
    check = zlib.crc32(kind + content)
    return struct.pack(">I", len(content)) + kind + content + struct.pack(">I", check)


def text_chunk(letters: int) -> bytes:
    """Return a packed comment that unpacks to so many letters."""
    return chunk(b"zTXt", b"Comment\0\0" + zlib.compress(b"A" * letters))
