"""A hand-over: a whole site with what goes beside it, or the last one, whatever happens."""

from __future__ import annotations

import os
import shutil
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from kerfolio.bundles.manifest import manifest_text, rows_of
from kerfolio.disk import hand_over as handing
from kerfolio.disk.hand_over import hand_over, take_up
from kerfolio.disk.journal import Journal, Move, State, journal_in, note_down
from kerfolio.disk.trouble import DiskError, Stopped
from tests.conftest import files_of
from tests.disk.killing import killed_at

Files = dict[str, bytes]


def site(**pages: str) -> Files:
    files = {f"{name}/index.html": text.encode() for name, text in pages.items()}
    return files | {"manifest.json": manifest_text([], rows_of(files)).encode()}


OLD = site(home="old", gone="gone")
NEW = site(home="new", fresh="fresh")


def lay(out: Path, **foreign: str) -> Files:
    """Lay things in OUT that no publish wrote."""
    for name, text in foreign.items():
        target = out / name.replace("__", "/")
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(text)
    return {name.replace("__", "/"): text.encode() for name, text in foreign.items()}


def test_it_replaces_what_was_written_and_keeps_what_was_laid_in(tmp_path: Path) -> None:
    out = tmp_path / "site"
    hand_over(out, OLD)
    laid = lay(out, CNAME="bench.example", home__notes="mine", gone__map="kept")
    (out / ".git" / "refs").mkdir(parents=True)
    laid |= lay(out, **{".git__HEAD": "ref: refs/heads/main"})
    (out / "latest").symlink_to("home/index.html")
    (out / "CNAME").chmod(0o600)
    hand_over(out, NEW)
    assert files_of(out) == NEW | laid | {"latest": b"new"}
    assert (out / "latest").readlink() == Path("home/index.html")
    assert (out / ".git" / "refs").is_dir()
    assert (out / "CNAME").stat().st_mode & 0o777 == 0o600
    assert [each.name for each in tmp_path.iterdir()] == ["site"]


def test_a_batch_carries_nothing_over(tmp_path: Path) -> None:
    out = tmp_path / "batch"
    hand_over(out, {"cut/a.svg": b"a"}, carries=False)
    hand_over(out, {"cut/b.svg": b"b"}, carries=False)
    assert files_of(out) == {"cut/b.svg": b"b"}


def test_what_is_laid_in_while_the_new_site_is_built_is_kept(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    out = tmp_path / "site"
    hand_over(out, OLD)
    exchange = handing.exchange

    def late(one: Path, other: Path) -> bool:
        lay(out, note="written late")
        return exchange(one, other)

    monkeypatch.setattr(handing, "exchange", late)
    hand_over(out, NEW)
    assert files_of(out) == NEW | {"note": b"written late"}


def test_the_folder_keeps_its_mode_and_private_files_the_mask(tmp_path: Path) -> None:
    out, bundle = tmp_path / "site", tmp_path / "supporters" / "a.zip"
    hand_over(out, OLD)
    out.chmod(0o750)
    mask = os.umask(0o077)
    try:
        hand_over(out, NEW, {bundle: b"zip"})
    finally:
        os.umask(mask)
    assert out.stat().st_mode & 0o777 == 0o750
    assert bundle.stat().st_mode & 0o777 == 0o600


def test_a_system_that_cannot_exchange_renames_twice(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(handing, "exchange", lambda *_: False)
    out, bundle = tmp_path / "site", tmp_path / "supporters" / "a.zip"
    hand_over(out, OLD, {bundle: b"old"})
    laid = lay(out, CNAME="bench.example")
    hand_over(out, NEW, {bundle: b"new"})
    assert files_of(out) == NEW | laid
    assert bundle.read_bytes() == b"new"
    assert sorted(each.name for each in tmp_path.iterdir()) == ["site", "supporters"]


def test_a_full_disk_leaves_everything_as_it_was(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    out, bundle = tmp_path / "site", tmp_path / "supporters" / "a.zip"
    hand_over(out, OLD, {bundle: b"old"})
    written = Path.write_bytes

    def full(path: Path, content: bytes) -> int:
        if path.parent.name == "home":
            raise OSError(28, "No space left on device")
        return written(path, content)

    monkeypatch.setattr(Path, "write_bytes", full)
    with pytest.raises(DiskError, match="No space") as caught:
        hand_over(out, NEW, {bundle: b"new"})
    monkeypatch.undo()
    assert Path(caught.value.filename).parts[-2:] == ("home", "index.html")
    assert caught.value.whole == "The last site is untouched."
    assert caught.value.advice == "Free some space there and run it again."
    assert (files_of(out), bundle.read_bytes()) == (OLD, b"old")
    assert sorted(each.name for each in tmp_path.iterdir()) == ["site", "supporters"]


@pytest.mark.parametrize("atomic", [True, False])
def test_a_disk_that_refuses_the_second_exchange_gets_the_first_one_back(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, atomic: bool
) -> None:
    if not atomic:
        monkeypatch.setattr(handing, "exchange", lambda *_: False)
    out, bundle = tmp_path / "site", tmp_path / "supporters" / "a.zip"
    hand_over(out, OLD, {bundle: b"old"})
    bring = handing._bring

    def refuses(move: object) -> None:
        if getattr(move, "target", None) == bundle:
            raise OSError(13, "Permission denied", str(bundle))
        bring(move)  # type: ignore[arg-type]

    monkeypatch.setattr(handing, "_bring", refuses)
    with pytest.raises(DiskError) as caught:
        hand_over(out, NEW, {bundle: b"new"})
    assert caught.value.filename == str(bundle)
    assert "See that you may write there" in caught.value.advice
    assert (files_of(out), bundle.read_bytes()) == (OLD, b"old")
    assert sorted(each.name for each in tmp_path.iterdir()) == ["site", "supporters"]


def test_who_stops_it_hears_what_is_whole(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    out = tmp_path / "site"
    hand_over(out, OLD)
    bring = handing._bring
    calls: list[int] = []

    def stopped(move: object) -> None:
        calls.append(1)
        if len(calls) == 1:
            raise KeyboardInterrupt
        bring(move)  # type: ignore[arg-type]

    monkeypatch.setattr(handing, "_bring", stopped)
    with pytest.raises(Stopped) as caught:
        hand_over(out, NEW)
    assert caught.value.whole == "The new files are in place."
    assert files_of(out) == NEW
    assert [each.name for each in tmp_path.iterdir()] == ["site"]


def handed(out: Path, bundle: Path) -> Callable[[], None]:
    return lambda: hand_over(out, NEW, {bundle: b"new"})


def _moments(tmp_path: Path) -> Iterator[tuple[int, Path]]:
    yield from ((number, tmp_path / str(number)) for number in range(400))


@pytest.mark.parametrize("atomic", [True, False])
def test_killed_at_any_moment_the_next_run_finds_old_or_new(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, atomic: bool
) -> None:
    """Old site with old bundle, or new site with new bundle; what was laid in; nothing else."""
    if not atomic:
        monkeypatch.setattr(handing, "exchange", lambda *_: False)
    outcomes: list[str] = []
    for number, root in _moments(tmp_path):
        out, bundle = root / "site", root / "supporters" / "a.zip"
        hand_over(out, OLD, {bundle: b"old"})
        laid = lay(out, CNAME="bench.example", home__notes="mine")
        killed = killed_at(number, handed(out, bundle))
        told = [finding.message for finding in take_up(out)]
        found = files_of(out), bundle.read_bytes()
        old, new = (OLD | laid, b"old"), (NEW | laid, b"new")
        assert found in (old, new), number
        assert sorted(each.name for each in root.iterdir()) == ["site", "supporters"], number
        assert [each.name for each in bundle.parent.iterdir()] == ["a.zip"], number
        if told and "finished" in told[0]:
            assert found == new
        if told and "undone" in told[0]:
            assert found == old
        outcomes.append("old" if found == old else "new")
        if not killed:
            break
    assert outcomes[0] == "old"
    assert outcomes[-1] == "new"
    assert outcomes == sorted(outcomes, reverse=True), "once it is new it stays new"
    assert len(outcomes) > 20


def test_a_spoilt_take_up_would_be_seen(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The moments above include some at which only the journal can put things right."""
    monkeypatch.setattr(handing, "exchange", lambda *_: False)
    monkeypatch.setattr(handing, "_taken_up", lambda out: "")
    torn = 0
    for number, root in _moments(tmp_path):
        out, bundle = root / "site", root / "supporters" / "a.zip"
        hand_over(out, OLD, {bundle: b"old"})
        killed = killed_at(number, handed(out, bundle))
        take_up(out)
        whole = (files_of(out), bundle.read_bytes()) if out.exists() and bundle.exists() else None
        torn += whole not in ((OLD, b"old"), (NEW, b"new"))
        if not killed:
            break
    assert torn >= 2


def test_a_journal_counts_only_where_it_was_written(tmp_path: Path) -> None:
    """A workshop that was copied, or comes from somebody else, moves nothing outside itself."""
    shop, copy, home = tmp_path / "shop", tmp_path / "copy", tmp_path / "home"
    stage = shop / ".site.kerfolio"
    lay(home, letter="years of work")
    lay(stage / "fresh", page="new")
    whole = Journal(
        state=State.EXCHANGING,
        moves=(Move(fresh=stage / "fresh", target=shop / "site"),),
        stages=(stage, home),
        carries=False,
    )
    note_down(stage, whole)
    shutil.copytree(shop, copy)
    (said,) = take_up(copy / "site")
    assert said.message == "what an interrupted run had left was cleared away"
    assert [*copy.iterdir()] == []
    assert files_of(home) == {"letter": b"years of work"}
    assert not (shop / "site").exists()
    assert journal_in(stage) == whole


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ('"inode": 0', '"inode": 0.5'),
        ('"inode": 0', '"inode": null'),
        ('"moves": [', '"moves": [], "others": ['),
        ('"exchanging"', '"dancing"'),
        ('"carries"', '"carries": ' + "[" * 100_000),
    ],
)
def test_a_broken_journal_is_none(tmp_path: Path, old: str, new: str) -> None:
    move = Move(fresh=tmp_path / "fresh", target=tmp_path / "site")
    whole = Journal(state=State.EXCHANGING, moves=(move,), stages=(tmp_path,), carries=True)
    note_down(tmp_path, whole)
    assert journal_in(tmp_path) == whole
    journal = tmp_path / "journal.json"
    text = journal.read_text("utf-8")
    assert old in text
    journal.write_text(text.replace(old, new), "utf-8")
    assert journal_in(tmp_path) is None


def test_a_pipe_in_place_of_a_journal_is_never_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "journal.json")
    assert journal_in(tmp_path) is None
