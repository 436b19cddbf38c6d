"""What is kept of a function is what it makes, under a key of all that it is made from."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from kerfolio.keeping import program
from kerfolio.keeping.content import ContentError
from kerfolio.keeping.kept import Kept
from kerfolio.keeping.store import Store

CALLED: list[tuple[object, ...]] = []


def written(*inputs: object) -> bytes:
    CALLED.append(inputs)
    return repr(inputs[:2]).encode()


def other(*inputs: object) -> bytes:
    return written(*inputs)


@pytest.fixture
def kept(tmp_path: Path) -> Callable[[], Kept]:
    CALLED.clear()
    return lambda: Kept(Store(tmp_path / "kept"))


def test_a_function_is_called_once_for_the_same_inputs(kept: Callable[[], Kept]) -> None:
    for _ in range(2):
        assert kept().of(written, 1, ("a", 2.0)) == b"(1, ('a', 2.0))"
    assert len(CALLED) == 1
    assert kept().of(written, 1, ("a", 2)) == b"(1, ('a', 2))"
    assert kept().of(other, 1, ("a", 2.0)) == b"(1, ('a', 2.0))"
    assert len(CALLED) == 3


def test_what_helps_is_no_part_of_the_key(kept: Callable[[], Kept]) -> None:
    kept().of(written, 1, 2, helped_by=([3],))
    kept().of(written, 1, 2, helped_by=([4],))
    assert CALLED == [(1, 2, [3])]


def test_without_a_store_everything_is_made() -> None:
    CALLED.clear()
    assert [Kept().of(written, 1, [2]) for _ in range(2)] == [b"(1, [2])"] * 2
    assert len(CALLED) == 2


def test_another_program_keeps_for_itself(
    kept: Callable[[], Kept], monkeypatch: pytest.MonkeyPatch
) -> None:
    kept().of(written, 1)
    with monkeypatch.context() as patched:
        patched.setattr(program, "program", lambda: "another")
        kept().of(written, 1)
    kept().of(written, 1)
    assert len(CALLED) == 2


def test_a_damaged_entry_is_made_anew(kept: Callable[[], Kept], tmp_path: Path) -> None:
    kept().of(written, 1)
    (entry,) = (tmp_path / "kept").glob("[!.]*")
    entry.write_bytes(entry.read_bytes()[:-1] + b"?")
    assert kept().of(written, 1) == b"(1,)"
    assert kept().of(written, 1) == b"(1,)"
    assert len(CALLED) == 2


def test_what_cannot_be_told_apart_is_refused(kept: Callable[[], Kept]) -> None:
    with pytest.raises(ContentError):
        kept().of(written, [1])
    with pytest.raises(ContentError):
        kept().of(lambda: b"", 1)
