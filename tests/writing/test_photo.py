"""Photographs at the widths that are shown, without what the camera noted."""

from __future__ import annotations

import io

import pytest
from PIL import Image

from kerfolio.basis.pixels import Pixels
from kerfolio.writing.photo import Kind, sized
from tests.reading.photographs import camera_photo, decoded, near


def opened(content: bytes) -> Image.Image:
    return Image.open(io.BytesIO(content))


@pytest.mark.parametrize("kind", ["jpeg", "png", "webp"])
def test_nothing_of_place_camera_or_comment_is_left(kind: Kind) -> None:
    content = sized(decoded(camera_photo()), 200, kind)
    picture = opened(content)
    assert dict(picture.getexif()) == {}
    assert not {"exif", "comment", "icc_profile", "xmp"} & set(picture.info)
    assert b"Invented" not in content
    assert b"at home" not in content


def test_a_picture_has_the_width_asked_for_and_is_never_enlarged() -> None:
    assert opened(sized(decoded(camera_photo()), 100)).size == (100, 50)
    assert opened(sized(decoded(camera_photo()), 4000)).size == (400, 200)


def test_see_through_stays_so_or_gets_a_ground() -> None:
    glass = Pixels(width=40, height=40, content=bytes(40 * 40 * 4), see_through=True)
    assert opened(sized(glass, 40, "png")).getpixel((5, 5)) == (0, 0, 0, 0)
    assert near(opened(sized(glass, 40, "jpeg")).getpixel((5, 5)), (251, 248, 242))


def test_the_same_photo_gives_the_same_bytes() -> None:
    for kind in ("jpeg", "png", "webp"):
        first, second = (sized(decoded(camera_photo(6)), 90, kind) for _ in range(2))
        assert first == second
