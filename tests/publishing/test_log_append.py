"""Entries are added to files of the log; what stood there stays to the letter."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kerfolio.publishing.log_append import log_entry, with_entry
from kerfolio.reading.entry import value_of
from kerfolio.reading.yaml_text import read_yaml

ENTRY = {"id": "a", "date": "2026-11-30", "title": "New: one", "outcome": "clean"}
LINES = "  - id: a\n    date: 2026-11-30\n" + '    title: "New: one"\n    outcome: clean\n'
FILE = """\
# mine
jobs:
- date: 2026-01-01   # a job
  text: |
    Hi

    # there

# about trials
trials:
  # the first
  - date: 2026-01-01
# the end
"""


def test_a_new_file_begins_with_its_section() -> None:
    assert with_entry(None, "trials", ENTRY) == f"trials:\n{LINES}".encode()


def test_text_comments_and_order_stay() -> None:
    last = with_entry(FILE.encode(), "trials", ENTRY)
    assert last == f"{FILE}{LINES}".encode()
    above = with_entry(FILE.encode(), "jobs", ENTRY)
    assert above is not None
    made = above.decode()
    added = "".join(line[2:] + "\n" for line in LINES.splitlines())
    assert made == FILE.replace("    # there\n", f"    # there\n{added}")
    third = with_entry(FILE.encode(), "sent", ENTRY)
    assert third == f"{FILE}sent:\n{LINES}".encode()


def test_ends_of_lines_and_the_mark_at_the_head_stay() -> None:
    windows = b"\xef\xbb\xbf" + FILE.replace("\n", "\r\n").encode()
    made = with_entry(windows, "trials", ENTRY)
    assert made is not None
    assert made.startswith(windows)
    assert b"\n" not in made.replace(b"\r\n", b"")


@pytest.mark.parametrize(
    "text",
    [
        "trials: [{date: 2026-01-01}]\n",
        "trials:\n",
        "trials: {a: b}\n",
        "trials:\n  - date: 2026-01-01\n...\n",
        "trials:\n - [\n",
        "- 1\n",
    ],
)
def test_what_cannot_be_added_to_is_left_alone(text: str, tmp_path: Path) -> None:
    day = date(2026, 11, 30)
    file = tmp_path / "log" / "2026-11-30.yaml"
    file.parent.mkdir()
    file.write_text(text)
    assert with_entry(text.encode(), "trials", ENTRY) is None
    assert log_entry(tmp_path, day, "trials", ENTRY).name == "2026-11-30-2.yaml"
    assert log_entry(tmp_path, day, "trials", ENTRY).name == "2026-11-30-2.yaml"
    assert file.read_text() == text


SCALARS = st.text("ab:#-|> \n'\"[{", min_size=1, max_size=12)


@given(st.lists(SCALARS, max_size=6))
def test_whatever_stands_there_is_read_as_before(pieces: list[str]) -> None:
    text = "trials:\n  - date: 2026-01-01\n" + "".join(f"    {each}\n" for each in pieces)
    before, faults = read_yaml(text.encode(), "f")
    made = with_entry(text.encode(), "trials", ENTRY)
    if made is not None:
        assert before is not None
        assert not faults
        assert text.rstrip("\n") in made.decode()
        after, _ = read_yaml(made, "f")
        assert after is not None
        old, new = value_of(before), value_of(after)
        assert isinstance(old, dict)
        assert new == {**old, "trials": (*old["trials"], ENTRY)}
