"""A newer drawing of the same thing: what it changes goes into a plan, what its maker wrote stays.

A plan's text is taken line by line, each line known by the keys that lead to it. A line that the
program wrote and nobody changed since is written anew; one that the maker changed stays, and is
told. Words, steps, releases and all else that is no part and no joint are the maker's.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

_BLOCKS = ("sizes", "sheets", "relief", "parts", "joints")
_LINE = re.compile(r"(?P<indent> *)(?P<item>- )?(?P<key>[^\s:#{\[][^:#]*?)?(?P<colon>:)?(?: .*)?")

Path = tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Moved:
    """A line that differs: its keys, what stood there and what the drawing says; empty for none."""

    path: Path
    before: str
    after: str

    @property
    def name(self) -> str:
        """What it is about, as remarks name it: ``side.rail-slots``."""
        return ".".join(each for each in self.path[1:] if each != "features") or self.path[0]


@dataclass(frozen=True, slots=True, kw_only=True)
class Again:
    """A plan's text as it is now, what the newer drawing moved, and what the maker's lines keep."""

    text: str
    moved: tuple[Moved, ...] = ()
    kept: tuple[Moved, ...] = ()


def again(was: str, now: str, mine: str) -> Again:
    """Return the maker's text with what differs between two texts that the program wrote."""
    before, after = keyed(was), keyed(now)
    lines = mine.split("\n")
    moved, kept = [], []
    for path, line in after.items():
        old = before.get(path)
        if old == line:
            continue
        places = _places(lines)
        there = places.get(path)
        if there is None:
            if old is None:
                lines.insert(_room(path, after, places, lines), line)
                moved.append(Moved(path, "", line.strip()))
            else:
                kept.append(Moved(path, "", line.strip()))
        elif old is not None and _same(lines[there], old):
            lines[there] = line
            moved.append(Moved(path, old.strip(), line.strip()))
        elif not _same(lines[there], line):
            kept.append(Moved(path, lines[there].strip(), line.strip()))
    for path, line in before.items():
        if path in after:
            continue
        there = _places(lines).get(path)
        if there is not None and _same(lines[there], line):
            del lines[there]
            moved.append(Moved(path, line.strip(), ""))
        elif there is not None:
            kept.append(Moved(path, lines[there].strip(), ""))
    return Again(text="\n".join(lines), moved=tuple(moved), kept=tuple(kept))


def keyed(text: str) -> dict[Path, str]:
    """Return the lines of a plan's parts and joints by the keys that lead to them."""
    lines = text.split("\n")
    return {path: lines[index] for path, index in _places(lines).items()}


def _places(lines: Sequence[str]) -> dict[Path, int]:
    """Return where the lines stand that belong to parts and joints."""
    found: dict[Path, int] = {}
    above: list[tuple[int, str]] = []
    for index, line in enumerate(lines):
        if not line.strip() or line.lstrip().startswith("#"):
            continue
        made = _LINE.fullmatch(line)
        if made is None:
            continue
        indent = len(made["indent"])
        above = [each for each in above if each[0] < indent]
        key = line.strip() if made["item"] or not made["colon"] else (made["key"] or "").strip()
        above.append((indent, key))
        path = tuple(name for _, name in above)
        if path[0] in _BLOCKS:
            found.setdefault(path, index)
    return found


def _same(one: str, other: str) -> bool:
    """Tell whether two lines say the same, comments apart."""
    return _bare(one) == _bare(other)


def _bare(line: str) -> str:
    return re.sub(r"\s+#.*$", "", line).strip()


def _room(
    path: Path, after: Mapping[Path, str], places: Mapping[Path, int], lines: Sequence[str]
) -> int:
    """Return where a new line goes: behind the line before it, with all that belongs to that."""
    order = list(after)
    for before in reversed(order[: order.index(path)]):
        if before in places and before[: len(path) - 1] == path[:-1]:
            return _end(places[before], lines, len(before) >= len(path))
        if before in places and before == path[:-1]:
            return places[before] + 1
    return len(lines)


def _end(index: int, lines: Sequence[str], whole: bool) -> int:
    """Return the line after one, and after what is indented under it where that is ``whole``."""
    indent = len(lines[index]) - len(lines[index].lstrip())
    at = index + 1
    while whole and at < len(lines) and _is_under(lines[at], indent):
        at += 1
    return at


def _is_under(line: str, indent: int) -> bool:
    return bool(line.strip()) and len(line) - len(line.lstrip()) > indent


def told(moves: Sequence[Moved]) -> Iterator[str]:
    """Yield what moved in words: what stood there, and what stands there now."""
    for each in moves:
        if each.before and each.after:
            yield f"`{each.name}`: {each.before} -> {each.after}"
        elif each.after:
            yield f"`{each.name}` is new: {each.after}"
        else:
            yield f"`{each.name}` is gone: {each.before}"
