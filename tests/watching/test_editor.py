"""The maker's own editor is started, never a shell."""

from __future__ import annotations

import sys
from pathlib import Path
from time import monotonic, sleep

import pytest

from kerfolio.watching.editor import EditorError, editor_words, open_in_editor

TELLS = "import sys; open(sys.argv[1], 'w').write('|'.join(sys.argv[2:]))"


def test_the_place_is_filled_in_once_whatever_the_file_is_called(tmp_path: Path) -> None:
    told = tmp_path / "told"
    odd = Path("plans/{line} $(touch x); a.yaml")
    words = (sys.executable, "-c", TELLS, str(told), "+{line}:{column}", "{file}")
    open_in_editor(words, odd, 14, 3)
    end = monotonic() + 20
    while not told.exists() or not told.read_text():
        assert monotonic() < end
        sleep(0.02)
    assert told.read_text() == f"+14:3|{odd}"


def test_words_that_are_no_command_are_refused() -> None:
    assert editor_words('edit "{file}:{line}"') == ("edit", "{file}:{line}")
    for wrong in ("", "edit", 'edit "{file}'):
        with pytest.raises(EditorError):
            editor_words(wrong)
    with pytest.raises(EditorError):
        open_in_editor(("no-such-command-here", "{file}"), Path("a"), 1, 1)
