"""Spoiled pictures are read or refused in words.

For ten minutes:
FUZZ_MINUTES=10 .venv/bin/python -m pytest -m fuzz -n 0 -s tests/fuzz/test_picture.py
"""

from __future__ import annotations

import re
import struct
import zlib
from functools import cache

import pytest
from hypothesis import strategies as st
from PIL import Image, ImageCms

from kerfolio.basis.complaint import Complaint
from kerfolio.reading.picture import read_picture
from tests.fuzz.hunt import hunt
from tests.fuzz.mutation import mutated_bytes
from tests.reading.photographs import camera_photo, saved, text_chunk

CHUNK = struct.Struct(">I4s")


@cache
def seeds() -> tuple[bytes, ...]:
    """Return small pictures of every kind that is read, in many ways of storing them."""
    wide = Image.linear_gradient("L").resize((60, 40))
    photo = Image.merge("RGB", (wide, wide.transpose(Image.Transpose.FLIP_TOP_BOTTOM), wide))
    profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    few = photo.quantize(16)
    frames = {"save_all": True, "append_images": [photo.rotate(90)], "duration": 50}
    return (
        *(camera_photo(each, (40, 20)) for each in (1, 6)),
        saved(photo, "JPEG", progressive=True, icc_profile=profile),
        saved(photo.convert("CMYK"), "JPEG"),
        saved(wide, "JPEG"),
        saved(photo, "PNG", icc_profile=profile),
        saved(photo.convert("RGBA"), "PNG"),
        saved(few, "PNG", transparency=3),
        saved(wide.convert("I;16"), "PNG"),
        saved(wide.convert("1"), "PNG"),
        saved(wide.convert("LA"), "PNG"),
        saved(photo, "PNG", **frames),
        saved(photo, "WEBP", exif=photo.getexif(), icc_profile=profile),
        saved(photo.convert("RGBA"), "WEBP", lossless=True),
        saved(photo, "WEBP", **frames),
        saved(photo, "PNG")[:-12] + text_chunk(9) + saved(photo, "PNG")[-12:],
    )


def summed(content: bytes) -> bytes:
    """Return a PNG with the check sums of its chunks put right, so that decoders look inside."""
    out, at = [content[:8]], 8
    while at + CHUNK.size <= len(content):
        length, kind = CHUNK.unpack_from(content, at)
        body = content[at + 8 : at + 8 + length]
        out += [content[at : at + 8], body, struct.pack(">I", zlib.crc32(kind + body))]
        at += 12 + len(body)
    return b"".join(out)


ENDINGS = ((b"\xff\xd8", "jpg"), (b"\x89PNG", "png"), (b"RIFF", "webp"), (b"", "png"))


def check(content: bytes) -> None:
    ending = next(each for start, each in ENDINGS if content.startswith(start))
    made = read_picture(content, f"photos/a.{ending}")
    if isinstance(made, Complaint):
        assert re.match("`photos/a.[a-z]+` ", made), "no file"
        assert made.advice, f"no advice for {made}"
        assert "\n" not in made, "words on several lines"
        return
    channels = 4 if made.see_through else 3
    assert len(made.content) == made.width * made.height * channels, "not all its pixels"


@pytest.mark.fuzz
def test_a_spoiled_picture_is_read_or_refused() -> None:
    spoiled = mutated_bytes(seeds())
    pngs = mutated_bytes([each for each in seeds() if each.startswith(b"\x89PNG")]).map(summed)
    hunt(st.one_of(spoiled, spoiled, pngs), check)
