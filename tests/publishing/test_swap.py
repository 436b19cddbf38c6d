"""The swap: a whole site or the last one, never half of one."""

from __future__ import annotations

from pathlib import Path

import pytest

from kerfolio.bundles.manifest import manifest_text
from kerfolio.publishing import swap
from kerfolio.publishing.swap import other_plans, out_faults, put, swap_in

OLD = {"index.html": b"old", "gone.html": b"gone", "manifest.json": manifest_text([], {}).encode()}
NEW = {"index.html": b"new", "plans/a/index.html": b"a"}


def files_of(folder: Path) -> dict[str, bytes]:
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }


def test_a_swap_replaces_the_whole_folder(tmp_path: Path) -> None:
    out = tmp_path / "site"
    swap_in(out, OLD)
    swap_in(out, NEW)
    assert files_of(out) == NEW
    assert [path.name for path in tmp_path.iterdir()] == ["site"]


def test_a_disk_that_fills_leaves_the_last_site(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    out = tmp_path / "site"
    swap_in(out, OLD)
    written = Path.write_bytes

    def full(path: Path, content: bytes) -> int:
        if path.name == "index.html" and path.parent.name == "a":
            raise OSError(28, "No space left on device")
        return written(path, content)

    monkeypatch.setattr(Path, "write_bytes", full)
    with pytest.raises(OSError, match="No space"):
        swap_in(out, NEW)
    monkeypatch.undo()
    assert files_of(out) == OLD
    assert [path.name for path in tmp_path.iterdir()] == ["site"]


def test_a_rename_that_fails_puts_the_last_site_back(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    out = tmp_path / "site"
    swap_in(out, OLD)
    rename = Path.rename

    def stubborn(path: Path, target: Path) -> Path:
        if path.name == "fresh":
            raise OSError(13, "Permission denied")
        return rename(path, target)

    monkeypatch.setattr(Path, "rename", stubborn)
    with pytest.raises(OSError, match="Permission"):
        swap_in(out, NEW)
    monkeypatch.undo()
    assert files_of(out) == OLD


def test_a_folder_of_other_files_is_not_replaced(tmp_path: Path) -> None:
    (tmp_path / "thesis.txt").write_text("years of work")
    (finding,) = out_faults(tmp_path)
    assert finding.rule == "out-not-ours"
    assert finding.message == "the output folder holds other files"


def test_new_empty_and_own_folders_are_fine(tmp_path: Path) -> None:
    assert out_faults(tmp_path / "new") == ()
    assert out_faults(tmp_path) == ()
    swap_in(tmp_path / "site", OLD)
    assert out_faults(tmp_path / "site") == ()


def test_a_file_in_the_way_is_a_finding(tmp_path: Path) -> None:
    (tmp_path / "site").write_text("a file")
    assert [finding.rule for finding in out_faults(tmp_path / "site")] == ["out-not-folder"]


def test_plans_of_an_earlier_site_are_known(tmp_path: Path) -> None:
    (tmp_path / "manifest.json").write_text(
        '{"format": "kerfolio-manifest/1", "plans": [{"name": "a"}, {"name": "b"}]}'
    )
    assert other_plans(tmp_path, "a") == ("b",)
    assert other_plans(tmp_path / "nowhere", "a") == ()


def test_put_writes_whole_or_not_at_all(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    target = tmp_path / "bundles" / "a.zip"
    put(target, b"first")
    assert target.read_bytes() == b"first"

    def refuse(*_: object) -> None:
        raise OSError(5, "Input/output error")

    monkeypatch.setattr(swap.Path, "replace", refuse)
    with pytest.raises(OSError, match="Input/output"):
        put(target, b"second")
    assert files_of(tmp_path) == {"bundles/a.zip": b"first"}
