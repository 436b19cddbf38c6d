"""Photos of a site: each at the widths it is large enough for, none in another's place."""

from __future__ import annotations

from kerfolio.basis.pixels import Pixels
from kerfolio.publishing.pictures import photo_files


def grey(width: int, shade: int) -> Pixels:
    return Pixels(width=width, height=10, content=bytes([shade]) * (3 * width * 10))


def test_a_photo_has_every_width_that_it_is_large_enough_for() -> None:
    found = [path for _, path, _ in photo_files("log", {"cut.png": grey(1000, 9)})]
    assert found == ["log/cut-480.jpg", "log/cut-960.jpg", "log/cut-1000.jpg"]


def test_photos_that_differ_in_their_endings_alone_stay_apart() -> None:
    pictures = {"a/rail.jpg": grey(50, 0), "a/rail.png": grey(50, 200), "b/rail.png": grey(50, 90)}
    found = {name: path for name, path, _ in photo_files("plans/x", pictures)}
    assert found == {
        "a/rail.jpg": "plans/x/a/rail.jpg-50.jpg",
        "a/rail.png": "plans/x/a/rail.png-50.jpg",
        "b/rail.png": "plans/x/b/rail-50.jpg",
    }
