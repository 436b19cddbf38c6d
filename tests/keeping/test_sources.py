"""A hash of source files says whether anything in them changed."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from kerfolio.keeping import program
from kerfolio.keeping.sources import digest_of, state_of


@pytest.fixture
def plan(tmp_path: Path) -> Path:
    folder = tmp_path / "shop" / "plan"
    (folder / "photos").mkdir(parents=True)
    (folder / "plan.yaml").write_text("plan: x")
    (folder / "photos" / "a.jpg").write_bytes(b"a")
    (tmp_path / "outside.txt").write_text("secret")
    return folder


def digest(plan: Path, without: str = "") -> str:
    return digest_of(plan, plan.parent, without=without)


def test_it_hangs_on_names_and_contents_alone(plan: Path) -> None:
    before = digest(plan)
    os.utime(plan / "plan.yaml", (1, 1))
    (plan / ".layout.json.kerfolio").write_text("being written")
    assert digest(plan) == before
    seen = {before}
    for change in (
        lambda: (plan / "plan.yaml").write_text("plan: y"),
        lambda: (plan / "photos" / "a.jpg").rename(plan / "photos" / "b.jpg"),
        lambda: (plan / "new").write_text(""),
        lambda: (plan / "empty").mkdir(),
        lambda: (plan / "link.txt").symlink_to(plan / "plan.yaml"),
        lambda: (plan / "plan.yaml").write_text("plan: z"),
    ):
        change()
        assert digest(plan) not in seen
        seen.add(digest(plan))


def test_what_the_disk_says_of_files_changes_with_whatever_they_hold(plan: Path) -> None:
    file, state = plan / "plan.yaml", state_of(plan, plan.parent)
    assert state_of(plan, plan.parent) == state
    before = file.stat()
    file.write_text("plan: y")  # as long as before, and with its old time
    os.utime(file, ns=(before.st_atime_ns, before.st_mtime_ns))
    assert state_of(plan, plan.parent) != state


def test_what_is_not_asked_for_does_not_count(plan: Path) -> None:
    before = digest(plan, "layout*.json")
    (plan / "layout-2.json").write_text("{}")
    assert digest(plan, "layout*.json") == before
    assert digest(plan) != before
    (plan / "layout.svg").write_text("<svg/>")
    assert digest(plan, "layout*.json") != before


def test_nothing_outside_is_read(plan: Path) -> None:
    secret = plan.parent.parent / "outside.txt"
    (plan / "out.txt").symlink_to(secret)
    before = digest(plan)
    secret.write_text("other")
    assert digest(plan) == before


def test_links_in_a_circle_end(plan: Path) -> None:
    (plan / "round").symlink_to(plan)
    (plan / "self").symlink_to(plan / "self")
    assert digest(plan) == digest(plan)


def test_what_is_missing_is_told_from_what_is_empty(plan: Path) -> None:
    missing = digest_of(plan / "drawings", plan)
    (plan / "drawings").mkdir()
    assert digest_of(plan / "drawings", plan) != missing


def test_the_program_is_its_own_files_and_what_is_installed(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def hashed() -> str:
        return program.program.__wrapped__()

    own = tmp_path / "own"
    own.mkdir()
    (own / "a.py").write_text("x = 1")
    monkeypatch.setattr(program, "_PACKAGE", own)
    seen = {hashed()}
    for change in (
        lambda: (own / "a.py").write_text("x = 2"),
        lambda: (tmp_path / "numpy-9.9.dist-info").mkdir(),
        lambda: monkeypatch.setattr(program, "_cairo", lambda: "9.9"),
        lambda: monkeypatch.setattr(program.platform, "python_version", lambda: "9.9"),
    ):
        monkeypatch.syspath_prepend(str(tmp_path))
        change()
        assert hashed() not in seen
        seen.add(hashed())
    assert program.key_of("a", "b", "c") != program.key_of("a", "bc")
