"""Small results are kept together: as one entry, of what is asked for."""

from __future__ import annotations

from pathlib import Path

import pytest

from kerfolio.basis.keeper import kept, kept_by
from kerfolio.keeping import batch
from kerfolio.keeping.batch import batch_in
from kerfolio.keeping.kept import Kept
from kerfolio.keeping.store import Store

CALLED: list[int] = []


def doubled(number: int) -> tuple[int, ...]:
    CALLED.append(number)
    return (2 * number,)


def large(number: int) -> bytes:
    CALLED.append(number)
    return bytes(number)


def listed(number: int) -> list[int]:
    CALLED.append(number)
    return [number]


def asked(folder: Path, *numbers: int) -> list[int]:
    """Ask for some numbers in one piece of work; return which had to be worked out."""
    CALLED.clear()
    with batch_in(Store(folder), "work") as found, kept_by(Kept(found)):
        assert [kept(doubled, each) for each in numbers] == [(2 * each,) for each in numbers]
    return list(CALLED)


def entries(folder: Path) -> list[Path]:
    return sorted(folder.glob("[!.]*"))


def test_small_results_are_one_entry(tmp_path: Path) -> None:
    assert asked(tmp_path, 1, 2, 2) == [1, 2]
    assert len(entries(tmp_path)) == 1
    assert asked(tmp_path, 2, 1) == []
    assert asked(tmp_path, 3) == [3]
    assert asked(tmp_path, 1, 2, 3) == []
    assert len(entries(tmp_path)) == 1


def test_beyond_bounds_only_what_was_asked_for_last_stays(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked(tmp_path, 1, 2)
    monkeypatch.setattr(batch, "MOST", 8)
    assert asked(tmp_path, 2, 3) == [3]
    assert asked(tmp_path, 2, 3) == []
    assert asked(tmp_path, 1) == [1]


def test_a_large_result_is_an_entry_of_its_own(tmp_path: Path) -> None:
    CALLED.clear()
    for _ in range(2):
        with batch_in(Store(tmp_path), "work") as found, kept_by(Kept(found)):
            assert kept(large, batch.SMALL + 1) == bytes(batch.SMALL + 1)
    assert CALLED == [batch.SMALL + 1]
    (entry,) = entries(tmp_path)
    assert entry.stat().st_size > batch.SMALL


def test_a_damaged_entry_is_worked_out_again(tmp_path: Path) -> None:
    asked(tmp_path, 1)
    (entry,) = entries(tmp_path)
    entry.write_bytes(entry.read_bytes()[:-1] + b"?")
    assert asked(tmp_path, 1) == [1]
    assert asked(tmp_path, 1) == []


def test_what_has_no_content_is_worked_out_each_time(tmp_path: Path) -> None:
    CALLED.clear()
    for _ in range(2):
        with batch_in(Store(tmp_path), "work") as found, kept_by(Kept(found)):
            assert kept(listed, 1) == [1]
            assert kept(len, [1, 2]) == 2
    assert CALLED == [1, 1]
    assert entries(tmp_path) == []


def test_nobody_keeps_where_there_is_no_keeper() -> None:
    CALLED.clear()
    with kept_by(Kept()):
        kept(doubled, 1)
    assert [kept(doubled, 1) for _ in range(2)] == [(2,), (2,)]
    assert CALLED == [1, 1, 1]
