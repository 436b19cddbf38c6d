"""Files are taken from inside their folder only."""

from __future__ import annotations

from pathlib import Path

import pytest

from kerfolio.basis.complaint import Complaint
from kerfolio.reading.shelf import Shelf, path_fault


@pytest.fixture
def shelf(tmp_path: Path) -> Shelf:
    folder = tmp_path / "plans" / "rack"
    (folder / "photos").mkdir(parents=True)
    (folder / "photos" / "rack.png").write_bytes(b"12345")
    (tmp_path / "secret.png").write_bytes(b"secret")
    return Shelf(folder=folder, prefix="plans/rack")


def refusal(shelf: Shelf, file: str, most: int = 100) -> tuple[str, str]:
    content = shelf.content(file, most)
    assert isinstance(content, Complaint)
    return str(content), content.advice


def test_takes_a_file(shelf: Shelf) -> None:
    assert shelf.content("photos/rack.png", 100) == b"12345"
    assert shelf.shown("photos/rack.png") == "plans/rack/photos/rack.png"


PLAIN = "Write it from this folder with forward slashes: `photos/rail.jpg`."


@pytest.mark.parametrize(
    ("file", "message"),
    [
        ("../../secret.png", "`../../secret.png` is not a plain path"),
        ("photos/../../../secret.png", "`photos/../../../secret.png` is not a plain path"),
        ("/etc/passwd", "`/etc/passwd` is not inside the folder"),
        ("C:/rack.png", "`C:/rack.png` is not inside the folder"),
        ("~/rack.png", "`~/rack.png` is not inside the folder"),
        ("photos\\rack.png", "`photos\\rack.png` has a backslash"),
        ("./rack.png", "`./rack.png` is not a plain path"),
        ("photos//rack.png", "`photos//rack.png` is not a plain path"),
        ("a\x00b", "`a\x00b` is no file name"),
        ("a" * 300, f"`{'a' * 27}...` is no file name"),
    ],
)
def test_refuses_paths(shelf: Shelf, file: str, message: str) -> None:
    assert refusal(shelf, file) == (message, PLAIN)
    assert path_fault(file) is not None


def test_refuses_links_that_lead_out(shelf: Shelf) -> None:
    (shelf.folder / "photos" / "out.png").symlink_to(shelf.folder.parents[1] / "secret.png")
    (shelf.folder / "in.png").symlink_to(shelf.folder / "photos" / "rack.png")
    words = ("`photos/out.png` leads out of the folder", "Copy the file into it.")
    assert refusal(shelf, "photos/out.png") == words
    assert shelf.content("in.png", 100) == b"12345"


def test_refuses_a_link_to_itself(shelf: Shelf) -> None:
    (shelf.folder / "loop.png").symlink_to(shelf.folder / "loop.png")
    assert refusal(shelf, "loop.png")[0] in (
        "`loop.png` cannot be read",
        "no file `loop.png`",
    )


def test_a_missing_file_is_told_with_the_nearest(shelf: Shelf) -> None:
    assert refusal(shelf, "photos/rak.png") == (
        "no file `photos/rak.png`",
        "Did you mean `rack.png`?",
    )
    assert refusal(shelf, "photos/RACK.PNG")[1] == "Did you mean `rack.png`?"
    assert refusal(shelf, "other/x.png") == ("no file `other/x.png`", "Put it under plans/rack.")
    assert refusal(shelf, "photos")[0] == "no file `photos`"


def test_size_is_bounded(shelf: Shelf) -> None:
    message, advice = refusal(shelf, "photos/rack.png", most=4)
    assert (message, advice) == ("`photos/rack.png` has more than 0 MB", "Make it smaller.")
