"""An entry added to a file of the log, whose own text, comments and order stay as they are."""

from __future__ import annotations

from codecs import BOM_UTF8
from collections.abc import Iterator, Sequence
from datetime import date
from pathlib import Path

from kerfolio.disk.put import change
from kerfolio.model.stated import Stated
from kerfolio.reading import nodes
from kerfolio.reading.entry import value_of
from kerfolio.reading.nodes import Mapping, Node
from kerfolio.reading.yaml_text import decode, read_yaml
from kerfolio.writing.yaml_entry import yaml_lines

_SET_IN = 2
"""Blanks before the dash of a list that begins here."""


def log_entry(
    workshop: Path, day: date, section: str, entry: Stated, remarks: Sequence[str] = ()
) -> Path:
    """Write an entry to the day's file of the log and return that; a new one where it must be.

    ``remarks`` are comments that stand below it. The day's file gets it unless nothing can be added
    to its text: it cannot be read, or its list stands in brackets. Raises OSError when the disk
    refuses.
    """

    def added(content: bytes | None) -> bytes | None:
        return with_entry(content, section, entry, remarks)

    return next(file for file in _files(workshop, day) if change(file, added))


def _files(workshop: Path, day: date) -> Iterator[Path]:
    plain = day.isoformat()
    yield workshop / "log" / f"{plain}.yaml"
    for number in range(2, 10_000):
        yield workshop / "log" / f"{plain}-{number}.yaml"


def with_entry(
    content: bytes | None, section: str, entry: Stated, remarks: Sequence[str] = ()
) -> bytes | None:
    """Return a file of the log with one entry more, the last of its section.

    None where that cannot be: what is returned says all that the file said, and the entry.
    """
    if content is None or not content.strip():
        return _new(section, entry, remarks).encode()
    text, faults = decode(content, "")
    node, more = read_yaml(content, "")
    if faults or more or not isinstance(node, Mapping) or node.flow:
        return None
    made = _as_before(content, _placed(text, node, section, entry, remarks))
    return made if _is_added(node, made, section, entry) else None


def _as_before(content: bytes, text: str) -> bytes:
    """Return a text with the mark at its head and the ends of lines that a file had."""
    ended = text.replace("\n", "\r\n") if b"\r\n" in content else text
    return (BOM_UTF8 if content.startswith(BOM_UTF8) else b"") + ended.encode()


def _new(section: str, entry: Stated, remarks: Sequence[str]) -> str:
    return "\n".join((f"{section}:", *_lines(entry, remarks, _SET_IN), ""))


def _lines(entry: Stated, remarks: Sequence[str], set_in: int) -> tuple[str, ...]:
    gap = " " * (set_in + 2)
    return (*yaml_lines(entry, set_in), *(f"{gap}# {each}" for each in remarks))


def _placed(text: str, node: Mapping, section: str, entry: Stated, remarks: Sequence[str]) -> str:
    lines = text.split("\n")
    if not lines[-1]:
        lines.pop()
    items = node.get(section)
    if not isinstance(items, nodes.Sequence) or items.flow or not items.items:
        return "\n".join((*lines, *_new(section, entry, remarks).split("\n")))
    at, set_in = _end(lines, node, section), _dash(lines, items)
    return "\n".join((*lines[:at], *_lines(entry, remarks, set_in), *lines[at:], ""))


def _end(lines: list[str], node: Mapping, section: str) -> int:
    """Return before which line a section ends; what is remarked above the next key is its own."""
    below = [each.key.text for each in node.entries]
    place = below.index(section) + 1
    if place == len(below):
        return len(lines)
    at = node.entries[place].key.place.line - 1
    while not lines[at - 1].strip() or lines[at - 1].startswith("#"):
        at -= 1
    return at


def _dash(lines: list[str], items: nodes.Sequence) -> int:
    first = lines[items.items[0].place.line - 1]
    return len(first) - len(first.lstrip())


def _is_added(before: Mapping, made: bytes, section: str, entry: Stated) -> bool:
    """Tell whether a file says what it said, and the entry as the last of its section."""
    node, faults = read_yaml(made, "")
    if faults or not isinstance(node, Mapping):
        return False
    old = {each.key.text: value_of(each.value) for each in before.entries}
    listed = _items(before.get(section))
    return value_of(node) == {**old, section: (*listed, entry)}


def _items(node: Node | None) -> tuple[object, ...]:
    return tuple(map(value_of, node.items)) if isinstance(node, nodes.Sequence) else ()
