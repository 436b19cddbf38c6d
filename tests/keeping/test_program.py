"""Whatever of the program may change a result changes the hash of the program."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest

from kerfolio.basis.shipped import SHIPPED
from kerfolio.keeping import program

ROOT = Path(__file__).resolve().parents[2]


def test_all_that_a_wheel_carries_is_counted() -> None:
    wheel = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["tool"]["hatch"]["build"]
    assert sorted(wheel["targets"]["wheel"]["force-include"]) == sorted(SHIPPED)


@pytest.mark.parametrize("folder", SHIPPED)
def test_a_change_of_what_is_shipped_changes_the_program(
    folder: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    for each in SHIPPED:
        (tmp_path / each).mkdir()
        (tmp_path / each / "a.txt").write_text("before")
    monkeypatch.setattr(program, "shipped", lambda name: tmp_path / name)
    before = program.program.__wrapped__()
    assert program.program.__wrapped__() == before
    (tmp_path / folder / "a.txt").write_text("after")
    assert program.program.__wrapped__() != before
