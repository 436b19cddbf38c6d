"""Pictures as read: told for what they are, decoded, upright (Exif 2.3 orientation), in sRGB."""

from __future__ import annotations

import io
import random
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image, ImageCms

from kerfolio.basis.complaint import Complaint
from kerfolio.basis.finding import Severity
from kerfolio.basis.pixels import Pixels
from kerfolio.reading.desk import Desk
from kerfolio.reading.files import PictureFile
from kerfolio.reading.picture import MOST_SIDE, WIDEST, read_picture, what_it_is
from kerfolio.reading.shelf import Shelf
from tests.reading.desks import read
from tests.reading.photographs import (
    BLUE,
    GPS,
    MAKE,
    RED,
    camera_photo,
    decoded,
    grey_png,
    near,
    saved,
    text_chunk,
)

NOISE = Image.frombytes("RGB", (90, 60), random.Random(7).randbytes(90 * 60 * 3))
JPEG, PNG, WEBP = (saved(NOISE, form) for form in ("JPEG", "PNG", "WEBP"))
AGAIN = "Copy the picture here once more."
ANEW = "Open it in a picture program and save it anew, or copy it here once more."
SMALLER = "Make it smaller: no page shows more than 1600 pixels across."
OTHER = "Save it as a JPEG, PNG or WebP picture."
KNOWN = "Use a JPEG, PNG or WebP file named `.jpg`, `.png` or `.webp`."


def pixel(pixels: Pixels, x: int, y: int) -> tuple[int, ...]:
    depth = 4 if pixels.see_through else 3
    at = (y * pixels.width + x) * depth
    return tuple(pixels.content[at : at + depth])


def test_the_photo_really_carries_place_and_camera() -> None:
    exif = Image.open(io.BytesIO(camera_photo())).getexif()
    assert exif[MAKE] == "Invented Camera"
    assert exif.get_ifd(GPS)[1] == "N"


@pytest.mark.parametrize(
    ("orientation", "size", "red_at"),
    [
        (1, (400, 200), (40, 100)),
        (3, (400, 200), (360, 100)),
        (6, (200, 400), (100, 40)),
        (8, (200, 400), (100, 360)),
    ],
)
def test_the_picture_stands_upright(
    orientation: int, size: tuple[int, int], red_at: tuple[int, int]
) -> None:
    """Exif: 3 is half a turn; for 6 the stored row 0 is the right side, for 8 the left side."""
    picture = decoded(camera_photo(orientation))
    assert (picture.width, picture.height) == size
    assert near(pixel(picture, *red_at), RED)
    assert near(pixel(picture, size[0] - 1 - red_at[0], size[1] - 1 - red_at[1]), BLUE)


def test_no_more_is_kept_than_is_shown() -> None:
    picture = decoded(camera_photo(size=(4000, 1000)))
    assert (picture.width, picture.height) == (WIDEST, 400)


def test_a_photo_with_a_colour_profile_is_brought_to_srgb() -> None:
    profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    content = saved(Image.new("RGB", (40, 40), RED), "PNG", icc_profile=profile)
    assert near(pixel(decoded(content, "a.png"), 5, 5), RED)


@pytest.mark.parametrize("mode", ["L", "P", "CMYK"])
def test_other_colour_modes_are_read(mode: str) -> None:
    form, file = ("JPEG", "a.jpg") if mode == "CMYK" else ("PNG", "a.png")
    content = saved(Image.new("RGB", (40, 40), (153, 153, 153)).convert(mode), form)
    assert near(pixel(decoded(content, file), 5, 5), (153, 153, 153))


def test_grey_of_16_bits_keeps_its_shade() -> None:
    content = saved(Image.new("I;16", (8, 8), 0x8000), "PNG")
    assert pixel(decoded(content, "a.png"), 2, 2) == (128, 128, 128)


@pytest.mark.parametrize(("form", "file"), [("PNG", "a.png"), ("WEBP", "a.webp")])
def test_of_a_moving_picture_the_first_is_shown_and_told(
    form: str, file: str, tmp_path: Path
) -> None:
    frames = [Image.new("RGB", (50, 40), colour) for colour in (RED, BLUE)]
    content = saved(frames[0], form, save_all=True, append_images=frames[1:])
    assert near(pixel(decoded(content, file), 9, 9), RED)
    (tmp_path / file).write_bytes(content)
    desk = Desk(shelf=Shelf(folder=tmp_path, prefix=""))
    assert read(PictureFile(), file, desk) == (
        file,
        [
            f"`{file}` moves: the first of its 2 pictures is shown / "
            "Save the one you mean by itself; a film goes under `video`."
        ],
    )
    assert [each.severity for each in desk.findings] == [Severity.NOTE]


def test_a_still_picture_is_not_told(tmp_path: Path) -> None:
    (tmp_path / "a.png").write_bytes(PNG)
    assert read(PictureFile(), "a.png", Desk(shelf=Shelf(folder=tmp_path, prefix="")))[1] == []


FAULTS = {
    "cut.jpg": (JPEG[: len(JPEG) // 2], "is cut short", AGAIN),
    "cut-in-its-head.jpg": (JPEG[:30], "is cut short", AGAIN),
    "without-its-end.jpg": (JPEG[:-2], "is cut short", AGAIN),
    "cut.png": (PNG[: len(PNG) // 2], "is cut short", AGAIN),
    "cut-in-its-head.png": (PNG[:20], "is cut short", AGAIN),
    "cut.webp": (WEBP[: len(WEBP) // 2], "is damaged and cannot be read", ANEW),
    "damaged.png": (
        PNG.replace(b"IDAT", b"IDAT\xff", 1)[:-1],
        "is damaged and cannot be read",
        ANEW,
    ),
    "no-pixels.png": (grey_png(0, 0), "is damaged and cannot be read", ANEW),
    "comment.png": (
        grey_png(8, 8, beside=text_chunk(5_000_000)),
        "carries far too much text",
        "Save it anew from a picture program, without comments.",
    ),
    "comments.png": (
        grey_png(8, 8, beside=text_chunk(900_000) * 80),
        "carries far too much text",
        "Save it anew from a picture program, without comments.",
    ),
    "large.png": (grey_png(10_000, 8_001), "has more than 80 million pixels", SMALLER),
    "huge.png": (grey_png(20_000, 20_000), "has more than 80 million pixels", SMALLER),
    "long.png": (grey_png(1, MOST_SIDE + 1), "has more than 30000 pixels along a side", SMALLER),
    "empty.jpg": (b"", "is empty", AGAIN),
    "gif.jpg": (saved(NOISE.convert("P"), "GIF"), "holds a GIF picture", OTHER),
    "tiff.jpg": (saved(NOISE, "TIFF"), "holds a TIFF picture", OTHER),
    "bmp.png": (saved(NOISE, "BMP"), "holds a BMP picture", OTHER),
    "avif.jpg": (b"\0\0\0\x1cftypavif\0\0\0\0", "holds an AVIF picture", OTHER),
    "heic.jpg": (b"\0\0\0\x18ftypheic\0\0\0\0", "holds a HEIC picture", OTHER),
    "film.jpg": (b"\0\0\0\x18ftypisom\0\0\0\0", "holds an MP4 film", OTHER),
    "pdf.jpg": (b"%PDF-1.4\n", "holds a PDF document", OTHER),
    "page.jpg": (b"<!DOCTYPE html><html>", "holds an HTML page", OTHER),
    "svg.png": (b'<?xml version="1.0"?>\n<svg/>', "holds an SVG drawing", OTHER),
    "png.jpg": (PNG, "holds a PNG picture", "Give the file the ending of a PNG picture."),
    "words.jpg": (b"not a picture", "is no picture of a known kind", KNOWN),
    "right.tif": (JPEG, "is no picture of a known kind", KNOWN),
}


@pytest.mark.parametrize("file", FAULTS)
def test_what_is_no_good_picture_is_told(file: str) -> None:
    content, words, advice = FAULTS[file]
    found = read_picture(content, file)
    assert isinstance(found, Complaint)
    assert (str(found), found.advice) == (f"`{file}` {words}", advice)


@settings(max_examples=200, deadline=None)
@given(st.sampled_from([JPEG, PNG, WEBP]), st.data())
def test_damage_anywhere_is_told_or_borne(content: bytes, data: st.DataObject) -> None:
    spoilt = bytearray(content)
    for at in data.draw(st.lists(st.integers(0, len(content) - 1), max_size=4)):
        spoilt[at] = data.draw(st.integers(0, 255))
    end = data.draw(st.integers(0, len(content)))
    file = {JPEG: "a.jpg", PNG: "a.png", WEBP: "a.webp"}[content]
    assert isinstance(read_picture(bytes(spoilt[:end]), file), Pixels | Complaint)


@pytest.mark.parametrize(
    ("content", "kind"),
    # First bytes: JPEG SOI and a marker, PNG signature (RFC 2083, section 3.1), RIFF with WEBP.
    [
        (b"\xff\xd8\xff\xe0rest", "a JPEG picture"),
        (saved(NOISE, "PNG"), "a PNG picture"),
        (b"RIFF\x10\x00\x00\x00WEBPVP8 ", "a WebP picture"),
        (b"GIF89a", "a GIF picture"),
        (b"<svg xmlns", "an SVG drawing"),
        (b"", ""),
    ],
)
def test_pictures_are_known_by_their_first_bytes(content: bytes, kind: str) -> None:
    assert what_it_is(content) == kind
