"""What is kept comes back as it was, or not at all."""

from __future__ import annotations

import os
import shutil
from pathlib import Path

import pytest

from kerfolio.keeping.pack import packed, unpacked
from kerfolio.keeping.store import Store
from tests.disk.killing import killed_at


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return tmp_path / "kept"


def entries(folder: Path) -> list[Path]:
    return [each for each in folder.iterdir() if each.name != ".gitignore"]


def aged(folder: Path, **ages: int) -> None:
    for name, age in ages.items():
        os.utime(folder / name, (1_700_000_000 - age, 1_700_000_000 - age))


def test_what_is_kept_comes_back(folder: Path) -> None:
    assert Store(folder).get("a") is None
    Store(folder).put("a", b"content")
    Store(folder).put("nothing", b"")
    assert Store(folder).get("a") == b"content"
    assert Store(folder).get("nothing") == b""


@pytest.mark.parametrize("place", [0, 31, 32, -1])
def test_a_damaged_entry_is_none_and_goes(folder: Path, place: int) -> None:
    Store(folder).put("a", b"content")
    content = bytearray((folder / "a").read_bytes())
    content[place] ^= 1
    (folder / "a").write_bytes(content)
    assert Store(folder).get("a") is None
    assert not (folder / "a").exists()


def test_an_entry_cut_short_is_none(folder: Path) -> None:
    Store(folder).put("a", b"content")
    for size in (0, 5, 32, 36):
        content = (folder / "a").read_bytes() if (folder / "a").exists() else b""
        Store(folder).put("a", b"content")
        os.truncate(folder / "a", size)
        assert Store(folder).get("a") is None, content


def test_an_entry_under_another_name_is_none(folder: Path) -> None:
    Store(folder).put("a", b"content")
    (folder / "a").rename(folder / "b")
    assert Store(folder).get("b") is None


def test_an_entry_that_came_with_a_copied_folder_is_none(folder: Path) -> None:
    Store(folder).put("a", b"content")
    shutil.copytree(folder, folder.with_name("copy"))
    assert Store(folder.with_name("copy")).get("a") is None
    assert Store(folder).get("a") == b"content"


def test_a_link_is_no_entry(folder: Path) -> None:
    Store(folder).put("a", b"content")
    (folder / "b").symlink_to(folder / "a")
    assert Store(folder).get("b") is None
    assert Store(folder).get("a") == b"content"


def test_what_was_used_longest_ago_goes_first(folder: Path) -> None:
    for name in "abcd":
        Store(folder).put(name, b"x" * 68)  # 100 bytes with its sum
    aged(folder, a=1, b=4, c=3, d=2)
    store = Store(folder, most=200)
    store.trim()
    assert sorted(each.name for each in entries(folder)) == ["a", "d"]


def test_what_this_run_used_never_goes(folder: Path) -> None:
    for name in "abc":
        Store(folder).put(name, b"x" * 68)
    aged(folder, a=3, b=2, c=1)
    store = Store(folder, most=0)
    assert store.get("a") is not None
    assert store.holds("b")
    store.trim()
    assert sorted(each.name for each in entries(folder)) == ["a", "b"]


def test_reading_an_entry_makes_it_the_youngest(folder: Path) -> None:
    for name in "ab":
        Store(folder).put(name, b"x" * 68)
    aged(folder, a=9, b=1)
    assert Store(folder).get("a") is not None
    Store(folder, most=100).trim()
    assert [each.name for each in entries(folder)] == ["a"]


def test_what_a_killed_run_left_goes_after_a_day(folder: Path) -> None:
    Store(folder).put("a", b"content")
    for name in (".a.old", ".a.new"):
        (folder / name).write_bytes(b"half")
    aged(folder, **{".a.old": 0})
    Store(folder).trim()
    assert sorted(each.name for each in entries(folder)) == [".a.new", "a"]


def test_a_kill_leaves_the_old_entry_or_the_new_one(folder: Path) -> None:
    moment = 0
    Store(folder).put("a", b"old")
    while killed_at(moment, lambda: Store(folder).put("a", b"new")):
        assert Store(folder).get("a") == b"old"
        moment += 1
    assert moment >= 2
    assert Store(folder).get("a") == b"new"


def test_what_the_disk_refuses_is_not_kept(folder: Path) -> None:
    folder.write_text("a file")
    Store(folder).put("a", b"content")
    assert Store(folder).get("a") is None
    Store(folder).trim()


def test_files_are_packed_in_their_order() -> None:
    files = {"b/ü.txt": b"\n\x00", "a": b"", "c": b"[1]"}
    assert list(unpacked(packed(files))) == list(files.items())
    assert list(unpacked(packed({}))) == []
