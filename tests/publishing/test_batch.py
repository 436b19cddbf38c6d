"""What a batch refuses before it works: folders that hold something else, and odd manifests."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

import pytest

from kerfolio.publishing import batch
from kerfolio.publishing.batch import BatchRequest, make_batch

CHOOSE = "Choose a new or empty folder, or one that an earlier batch wrote."
WRITTEN = ("cut/17.6mm/sheet-1-17.6mm.dxf", "lists/parts.csv", "setup/setup-17.6mm-a4.pdf")


def earlier(out: Path) -> Path:
    """Lay down what an earlier batch wrote."""
    for name in WRITTEN:
        (out / name).parent.mkdir(parents=True, exist_ok=True)
        (out / name).write_text("earlier", "utf-8")
    return out


def refused(shop: Path, out: Path, monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Return what a batch refuses before it reads the workshop; nothing where it would begin."""

    class _BegunError(Exception):
        pass

    def begin(*_: object, **__: object) -> None:
        raise _BegunError

    monkeypatch.setattr(batch, "examine_at", begin)
    try:
        made = make_batch(BatchRequest(folder=shop, plan="rack", copies=2, out=out))
    except _BegunError:
        return []
    assert made.written == ()
    return [f"{each.message} / {each.advice}" for each in made.findings]


def test_what_an_earlier_batch_and_a_viewer_left_is_replaced(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    out = earlier(tmp_path / "batches" / "rack-2")
    (out / ".DS_Store").write_bytes(b"x")
    (out / "cut" / "Thumbs.db").write_bytes(b"x")
    assert refused(tmp_path, out, monkeypatch) == []


LAID: dict[str, Callable[[Path], object]] = {
    "notes.txt": lambda out: (out / "notes.txt").write_text("mine"),
    "\\udcff.svg": lambda out: (out / os.fsdecode(b"\xff.svg")).write_text("mine"),
    "mine": lambda out: (out / "mine").symlink_to(out.parent),
    "lists/sheets.csv": lambda out: (out / "lists/sheets.csv").symlink_to("parts.csv"),
    "gone": lambda out: (out / "gone").symlink_to("/nowhere"),
    "lists/pipe.csv": lambda out: os.mkfifo(out / "lists" / "pipe.csv"),
    "lists/sheets.csv/deep/mine": lambda out: (
        (out / "lists/sheets.csv/deep").mkdir(parents=True)
        or (out / "lists/sheets.csv/deep/mine").write_text("x")
    ),
    "manifest.json": lambda out: (out / "manifest.json").write_text("{}"),
}

"""What others laid into an earlier batch, by the name that is told of it."""


@pytest.mark.parametrize("laid", LAID)
def test_what_others_laid_in_is_never_lost(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, laid: str
) -> None:
    out = earlier(tmp_path / "batches" / "rack-2")
    LAID[laid](out)
    told = f"the output folder holds other files: `{laid}` / {CHOOSE}"
    assert refused(tmp_path, out, monkeypatch) == [told]


@pytest.mark.parametrize(
    ("text", "site"),
    [
        ("", False),
        ("[]", False),
        ("{", False),
        ('{"format": 1e999}', False),
        ('{"format": "kerfolio-manifest/1"}', True),
        ('{"format": "kerfolio-manifest/1", "files": 5, "plans": {}}', True),
    ],
)
def test_a_manifest_above_it_is_that_of_a_site_or_of_anything_else(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, text: str, site: bool
) -> None:
    (tmp_path / "manifest.json").write_text(text, "utf-8")
    told = ["the batch would lie inside a site / Name another --out."] if site else []
    assert refused(tmp_path, tmp_path / "batches" / "rack-2", monkeypatch) == told


def test_a_pipe_in_place_of_a_manifest_is_never_waited_for(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    out = earlier(tmp_path / "batches" / "rack-2")
    os.mkfifo(tmp_path / "manifest.json")
    assert refused(tmp_path, out, monkeypatch) == []


def test_places_where_it_cannot_be_built_are_told_before_any_work(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "batches").symlink_to("/nowhere/at/all")
    out = tmp_path / "batches" / "rack-2"
    beside = "It is built beside its place. See that you may write there, or name another one."
    assert refused(tmp_path, out, monkeypatch) == [
        f"nothing can be written in `{tmp_path / 'batches'}` / {beside}"
    ]
    (tmp_path / "batches").unlink()
    (tmp_path / "batches").mkdir()
    (tmp_path / "batches" / ".rack-2.kerfolio").write_text("mine")
    assert refused(tmp_path, out, monkeypatch) == [
        "`.rack-2.kerfolio` stands where the output is built / Remove it, or name another folder."
    ]


def test_a_batch_among_the_sources_is_refused(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "plans").mkdir()
    assert refused(tmp_path, tmp_path / "plans" / "rack-2", monkeypatch) == [
        "it would lie among what the workshop is made of, in `plans/` / Name another --out."
    ]
