"""What may be published over, and what is somebody else's."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from kerfolio.bundles.manifest import manifest_text, rows_of
from kerfolio.disk import out_folder
from kerfolio.disk.carry import in_the_way
from kerfolio.disk.out_folder import foreign_in, is_site, out_faults
from kerfolio.publishing.standing import Standing, standing_in


def site_in(folder: Path) -> Path:
    folder.mkdir(parents=True)
    (folder / "index.html").write_bytes(b"home")
    (folder / "manifest.json").write_text(
        manifest_text([], rows_of({"index.html": b"home"})), "utf-8"
    )
    return folder


def rules(out: Path) -> list[str]:
    return [finding.rule for finding in out_faults(out)]


def test_a_folder_of_other_files_is_not_replaced(tmp_path: Path) -> None:
    (tmp_path / "thesis.txt").write_text("years of work")
    (finding,) = out_faults(tmp_path)
    assert finding.rule == "out-not-ours"
    assert finding.message == "the output folder holds other files: `thesis.txt`"


def test_new_empty_own_and_waiting_folders_are_fine(tmp_path: Path) -> None:
    assert rules(tmp_path / "new") == []
    assert rules(tmp_path) == []
    assert rules(site_in(tmp_path / "site")) == []
    (tmp_path / "host" / ".git").mkdir(parents=True)
    (tmp_path / "host" / "CNAME").write_text("bench.example")
    assert rules(tmp_path / "host") == []


def test_a_file_or_link_in_the_way_is_a_finding(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("a file")
    (tmp_path / "link").symlink_to(tmp_path)
    assert rules(tmp_path / "file") == ["out-not-folder"]
    assert rules(tmp_path / "link") == ["out-not-folder"]


def test_a_mount_point_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    out = site_in(tmp_path / "site")
    monkeypatch.setattr(os.path, "ismount", lambda path: path == out)
    (finding,) = out_faults(out)
    assert (finding.rule, finding.advice) == (
        "out-mounted",
        f"Name a folder inside it: `--out {out}/site`.",
    )
    (out / "deep" / "disk").mkdir(parents=True)
    monkeypatch.setattr(os.path, "ismount", lambda path: path == out / "deep" / "disk")
    assert [f.message for f in out_faults(out)] == [
        "a disk is mounted inside the output, at `deep/disk`"
    ]


def test_a_place_that_cannot_be_written_to_is_told(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(out_folder.os, "access", lambda *_: False)
    (finding,) = out_faults(tmp_path / "a" / "b" / "site")
    assert finding.message == f"nothing can be written in `{tmp_path}`"


@pytest.mark.parametrize(
    "text",
    [
        "",
        "[]",
        "7",
        '"x"',
        "{",
        '{"format": []}',
        "[" * 100_000,
        '{"format": "other/9"}',
    ],
)
def test_a_manifest_of_another_shape_is_none_of_ours(tmp_path: Path, text: str) -> None:
    (tmp_path / "manifest.json").write_text(text, "utf-8")
    assert not is_site(tmp_path)
    assert rules(tmp_path) == ["out-not-ours"]


@pytest.mark.parametrize(
    "rows", ["7", "null", '["a"]', '[{"nom": 1}]', '[{"name": 7}]', '{"a": 1}']
)
def test_rows_of_another_shape_are_passed_over(tmp_path: Path, rows: str) -> None:
    text = f'{{"format": "kerfolio-manifest/1", "plans": {rows}, "files": {rows}}}'
    (tmp_path / "manifest.json").write_text(text, "utf-8")
    (tmp_path / "mine.txt").write_text("mine")
    assert standing_in(tmp_path, "a") == Standing()
    assert foreign_in(tmp_path) == ("mine.txt",)


def test_what_a_publish_did_not_write_is_foreign(tmp_path: Path) -> None:
    out = site_in(tmp_path / "site")
    (out / "empty" / "inner").mkdir(parents=True)
    (out / "away").symlink_to("/nowhere")
    (out / "plans").mkdir()
    (out / "plans" / "note.txt").write_text("mine")
    assert foreign_in(out) == ("away", "empty/inner", "plans/note.txt")


def test_what_stands_where_ours_is_to_stand_is_in_the_way() -> None:
    ours = ("index.html", "plans/a/index.html")
    laid = ("index.html", "plans/a", "index.html/x", "plans/a/notes.txt", "CNAME")
    assert in_the_way(laid, ours) == ("index.html", "index.html/x", "plans/a")
