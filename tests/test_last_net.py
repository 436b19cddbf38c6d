"""A fault of the program itself ends in a sentence, and leaves what was whole."""

from __future__ import annotations

import signal
import sys
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from kerfolio.cli import main
from kerfolio.publishing import build
from tests.conftest import files_of
from tests.publishing.test_refusals import lay_down

Run = Callable[..., tuple[int, list[str]]]


@pytest.fixture
def run(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Iterator[Run]:
    """Run the command line in this process; what it told on the error stream comes in lines."""

    def running(*words: str) -> tuple[int, list[str]]:
        monkeypatch.setattr(sys, "argv", ["kerfolio", *words])
        with pytest.raises(SystemExit) as end:
            main()
        return int(end.value.code or 0), capsys.readouterr().err.splitlines()

    before = signal.getsignal(signal.SIGTERM)
    yield running
    signal.signal(signal.SIGTERM, before)


def break_down(*_: object) -> None:
    raise ZeroDivisionError("between the lines\nof a trace")


def test_a_fault_says_what_was_being_made_and_what_is_whole(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, run: Run
) -> None:
    shop = str(lay_down(tmp_path / "shop"))
    assert run("publish", shop)[0] == 0
    before = files_of(tmp_path)
    with monkeypatch.context() as patched:
        patched.setattr(build, "shared_files", break_down)
        code, told = run("publish", shop)
    assert code == 1
    assert told[-2:] == [
        "error: a fault of the program itself while writing the site (ZeroDivisionError)",
        f"    The last site is untouched. `kerfolio --trace publish {shop}` shows where; "
        "please report it.",
    ]
    assert files_of(tmp_path) == before
    monkeypatch.setattr(build, "freeze_layouts", break_down)
    code, told = run("publish", shop)
    assert told[-1].startswith("    The site is published; a layout or the private log may be ")


def test_its_trace_is_shown_when_asked_for(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, run: Run
) -> None:
    shop = str(lay_down(tmp_path / "shop"))
    monkeypatch.setattr(build, "sources_of", break_down)
    code, told = run("--trace", "publish", shop)
    assert code == 1
    assert "in break_down" in "\n".join(told)
    assert told[-1] == "error: a fault of the program itself while reading shop (ZeroDivisionError)"
