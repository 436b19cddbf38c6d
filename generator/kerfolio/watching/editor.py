"""Opens a place of a maker's file in the editor that the maker named."""

from __future__ import annotations

import shlex
import subprocess
from collections.abc import Sequence
from pathlib import Path
from threading import Thread


class EditorError(Exception):
    """The words of ``--editor`` are no command, or it does not start."""


def editor_words(command: str) -> tuple[str, ...]:
    """Return the words of a command such as ``CMD {file}:{line}``. Raises EditorError.

    It must say where the file goes; no shell ever sees it.
    """
    try:
        words = tuple(shlex.split(command))
    except ValueError as fault:
        raise EditorError(f"--editor cannot be read: {fault}") from fault
    if not words or "{file}" not in command:
        raise EditorError('Write --editor as "COMMAND {file}:{line}".')
    return words


def open_in_editor(words: Sequence[str], file: Path, line: int, column: int) -> None:
    """Start the editor at a place of a file and leave it alone. Raises EditorError."""
    places = {"{file}": str(file), "{line}": str(line), "{column}": str(column)}
    filled = [_filled(word, places) for word in words]
    try:
        running = subprocess.Popen(
            filled,
            stdin=subprocess.DEVNULL,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
            start_new_session=True,
        )
    except OSError as trouble:
        raise EditorError(f"{words[0]}: {trouble.strerror}") from trouble
    Thread(target=running.wait, daemon=True).start()  # so that nothing of it stays once it ends


def _filled(word: str, places: dict[str, str]) -> str:
    """Return a word with its marks filled in, each once: what is filled in is not read again."""
    made, rest = "", word
    while rest:
        mark = next((each for each in places if rest.startswith(each)), "")
        made, rest = made + (places[mark] if mark else rest[0]), rest[len(mark) or 1 :]
    return made
