"""Photographs: upright, of one width, without what the camera noted (Exif 2.3 orientation)."""

from __future__ import annotations

import io

import pytest
from PIL import Image, ImageCms

from kerfolio.writing.photo import Kind, sized

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
    out = io.BytesIO()
    photo.save(out, "JPEG", exif=exif, quality=95, comment=b"at home")
    return out.getvalue()


def opened(content: bytes) -> Image.Image:
    return Image.open(io.BytesIO(content))


def near(colour: object, other: tuple[int, int, int]) -> bool:
    assert isinstance(colour, tuple)
    return all(abs(a - b) < 25 for a, b in zip(colour, other, strict=True))


def test_the_sample_really_carries_place_and_camera() -> None:
    exif = opened(camera_photo()).getexif()
    assert exif[MAKE] == "Invented Camera"
    assert exif.get_ifd(GPS)[1] == "N"


@pytest.mark.parametrize("kind", ["jpeg", "png", "webp"])
def test_nothing_of_place_camera_or_comment_is_left(kind: Kind) -> None:
    content = sized(camera_photo(), 200, kind)
    picture = opened(content)
    assert dict(picture.getexif()) == {}
    assert not {"exif", "comment", "icc_profile", "xmp"} & set(picture.info)
    assert b"Invented" not in content
    assert b"at home" not in content


@pytest.mark.parametrize(
    ("orientation", "size", "red_at"),
    [
        (1, (200, 100), (20, 50)),
        (3, (200, 100), (180, 50)),
        (6, (100, 200), (50, 20)),
        (8, (100, 200), (50, 180)),
    ],
)
def test_the_picture_stands_upright(
    orientation: int, size: tuple[int, int], red_at: tuple[int, int]
) -> None:
    """Exif: 3 is half a turn; for 6 the stored row 0 is the right side, for 8 the left side."""
    picture = opened(sized(camera_photo(orientation), size[0]))
    assert picture.size == size
    assert near(picture.getpixel(red_at), RED)
    assert near(picture.getpixel((size[0] - 1 - red_at[0], size[1] - 1 - red_at[1])), BLUE)


def test_a_picture_is_never_enlarged() -> None:
    assert opened(sized(camera_photo(), 4000)).size == (400, 200)


def test_see_through_stays_so_or_gets_a_ground() -> None:
    out = io.BytesIO()
    Image.new("RGBA", (40, 40), (0, 0, 0, 0)).save(out, "PNG")
    assert opened(sized(out.getvalue(), 40, "png")).getpixel((5, 5)) == (0, 0, 0, 0)
    assert near(opened(sized(out.getvalue(), 40, "jpeg")).getpixel((5, 5)), (251, 248, 242))


def test_a_photo_with_a_colour_profile_is_brought_to_srgb() -> None:
    profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    out = io.BytesIO()
    Image.new("RGB", (40, 40), RED).save(out, "PNG", icc_profile=profile)
    picture = opened(sized(out.getvalue(), 40, "png"))
    assert "icc_profile" not in picture.info
    assert near(picture.getpixel((5, 5)), RED)


@pytest.mark.parametrize("mode", ["L", "P", "CMYK", "1"])
def test_other_colour_modes_are_read(mode: str) -> None:
    out = io.BytesIO()
    Image.new("RGB", (40, 40), RED).convert(mode).save(out, "TIFF")
    assert opened(sized(out.getvalue(), 20)).size == (20, 20)


def test_the_same_photo_gives_the_same_bytes() -> None:
    photo = camera_photo(6)
    for kind in ("jpeg", "png", "webp"):
        assert sized(photo, 90, kind) == sized(photo, 90, kind)


@pytest.mark.parametrize("content", [b"", b"not a picture", camera_photo()[:300]])
def test_what_is_no_picture_is_refused(content: bytes) -> None:
    with pytest.raises(ValueError, match="not a readable picture"):
        sized(content, 100)
