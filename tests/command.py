"""Runs the command line in the process of the tests, as a maker would run it in one of its own."""

from __future__ import annotations

import contextlib
import io
import os
import signal
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from unittest.mock import patch

from kerfolio.cli import main


@dataclass(frozen=True, slots=True, kw_only=True)
class Done:
    """How a command ended, and what it printed."""

    returncode: int
    stdout: str
    stderr: str


def run(*words: str, cwd: Path | None = None) -> Done:
    """Run ``kerfolio WORDS`` in a folder, to a pipe; AssertionError when it shows a traceback."""
    out, err = io.StringIO(), io.StringIO()
    with (
        _in_folder(cwd),
        _signals_kept(),
        patch.object(sys, "argv", ["kerfolio", *words]),
        contextlib.redirect_stdout(out),
        contextlib.redirect_stderr(err),
    ):
        code = _ended()
    done = Done(returncode=code, stdout=out.getvalue(), stderr=err.getvalue())
    assert "Traceback" not in done.stdout + done.stderr
    return done


def _ended() -> int:
    try:
        main()
    except SystemExit as end:
        return int(end.code or 0)
    raise AssertionError("a command ends with a code")


@contextlib.contextmanager
def _in_folder(folder: Path | None) -> Iterator[None]:
    before = Path.cwd()
    os.chdir(folder or before)
    try:
        yield
    finally:
        os.chdir(before)


@contextlib.contextmanager
def _signals_kept() -> Iterator[None]:
    """A command has its own way of being ended, which is not that of the tests."""
    before = signal.getsignal(signal.SIGTERM)
    try:
        yield
    finally:
        signal.signal(signal.SIGTERM, before)
