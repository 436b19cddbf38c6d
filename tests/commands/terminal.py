"""A pseudo-terminal that a command runs at, as a maker has it before them."""

from __future__ import annotations

import fcntl
import os
import pty
import select
import signal
import subprocess
import sys
import termios
import time
from pathlib import Path

_PATIENCE = 30.0
"""Seconds after which a terminal that shows nothing more counts as stuck."""


class Terminal:
    """A command at work at a terminal of its own."""

    def __init__(self, *words: str, cwd: Path) -> None:
        """Start ``kerfolio WORDS`` in a folder."""
        self._screen, inner = pty.openpty()
        self._child = subprocess.Popen(
            [sys.executable, "-m", "kerfolio", *words],
            stdin=inner,
            stdout=inner,
            stderr=inner,
            cwd=cwd,
            start_new_session=True,
            preexec_fn=lambda: _own(inner),
        )
        os.close(inner)
        self._shown = ""

    def until(self, words: str) -> str:
        """Wait until these words are shown; return all that was shown since the last time."""
        end = time.monotonic() + _PATIENCE
        while words not in self._shown:
            ready, _, _ = select.select([self._screen], [], [], max(0.0, end - time.monotonic()))
            try:
                more = os.read(self._screen, 65536) if ready else b""
            except OSError:  # the other end was closed
                more = b""
            if not more:
                self.kill()
                raise AssertionError(f"no {words!r} in {self._shown!r}")
            self._shown += more.decode()
        head, _, self._shown = self._shown.partition(words)
        return head + words

    def type(self, line: str) -> None:
        """Type a line."""
        os.write(self._screen, f"{line}\n".encode())

    def interrupt(self, words: str) -> int:
        """Press Ctrl-C until these words are shown; return the exit code.

        A signal that comes just before a line is read waits for the next key (CPython's input), as
        it does for a person, who presses once more.
        """
        end = time.monotonic() + _PATIENCE
        while words not in self._shown:
            assert time.monotonic() < end, f"no {words!r} in {self._shown!r}"
            os.write(self._screen, b"\x03")
            ready, _, _ = select.select([self._screen], [], [], 1.0)
            while ready:
                self._shown += os.read(self._screen, 65536).decode()
                ready, _, _ = select.select([self._screen], [], [], 0.2)
                if words in self._shown:
                    break
        return self.end()

    def kill(self) -> None:
        """End the command without a word to it."""
        self._child.kill()
        self._child.wait()
        os.close(self._screen)

    def close(self) -> None:
        """Close the window: the terminal is gone, and the command is told so."""
        os.close(self._screen)
        self._child.wait(_PATIENCE)

    def end(self) -> int:
        """Wait for the command's end and return its exit code."""
        code = self._child.wait(_PATIENCE)
        os.close(self._screen)
        return code


def _own(inner: int) -> None:
    """Let a terminal be the one that its program is run from."""
    fcntl.ioctl(inner, termios.TIOCSCTTY, 0)
    for each in (signal.SIGHUP, signal.SIGINT):  # whatever the tests themselves were told
        signal.signal(each, signal.SIG_DFL)
