"""Takes YAML apart into nodes with places, and refuses what a maker's file has no use for.

Works on the parser's events, so that depth is bounded before anything is built.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator
from itertools import takewhile
from typing import Any

import yaml

from kerfolio.basis.complaint import quoted
from kerfolio.basis.finding import Finding, error, warning
from kerfolio.basis.place import Place
from kerfolio.reading.folded import folded_mark
from kerfolio.reading.merge_marks import merge_marks
from kerfolio.reading.nodes import Broken, Entry, Folded, Mapping, Node, Scalar, Sequence
from kerfolio.reading.odd_signs import has_odd_sign, odd_escape, odd_sign
from kerfolio.reading.yaml_words import syntax_finding

MOST_BYTES = 2_000_000
MOST_DEPTH = 40
MOST_VALUES = 50_000
_LOADER = getattr(yaml, "CLoader", yaml.Loader)


class _TooMuch(Exception):  # noqa: N818 - ends the descent, never leaves this module
    def __init__(self, finding: Finding) -> None:
        super().__init__(finding.message)
        self.finding = finding


def decode(content: bytes, file: str) -> tuple[str, tuple[Finding, ...]]:
    """Return the text of a file: UTF-8, of a bounded size, merged, without control characters.

    It is empty with a finding.
    """
    place = Place(file)
    if len(content) > MOST_BYTES:
        message = f"the file has more than {MOST_BYTES // 1_000_000} MB"
        return "", (error("too-large", message, place, "Split it, or move long texts out of it."),)
    try:
        text = content.decode("utf-8-sig").replace("\r\n", "\n").replace("\r", "\n")
    except UnicodeDecodeError as trouble:
        line = content.count(b"\n", 0, trouble.start) + 1
        column = trouble.start - (content.rfind(b"\n", 0, trouble.start) + 1) + 1
        message = f"a byte that is no UTF-8: 0x{content[trouble.start]:02X}"
        advice = "Save the file with the encoding UTF-8."
        return "", (error("not-utf-8", message, Place(file, line, column), advice),)
    odd = odd_sign(text, file)
    faults = merge_marks(text, file) or (() if odd is None else (odd,))
    return ("", faults) if faults else (text, ())


def read_yaml(content: bytes, file: str) -> tuple[Node | None, tuple[Finding, ...]]:
    """Return the only document of a file as nodes, or None, with all findings on its form."""
    text, faults = decode(content, file)
    if faults:
        return None, faults
    composer = _Composer(text, file)
    node = composer.document()
    return node, tuple(composer.findings)


class _Composer:
    """Builds nodes from the parser's events; ``findings`` fill on the way."""

    def __init__(self, text: str, file: str) -> None:
        self.findings: list[Finding] = []
        self._text = text
        self._lines = text.split("\n")
        self._file = file
        self._events: Iterator[Any] = iter(())
        self._count = 0
        self._long_quote: Place | None = None

    def document(self) -> Node | None:
        try:
            self._events = yaml.parse(self._text, Loader=_LOADER)
            return self._only_document()
        except yaml.YAMLError as trouble:
            opened = self._long_quote
            self.findings.append(syntax_finding(trouble, self._text, self._file, opened))
        except _TooMuch as trouble:
            self.findings.append(trouble.finding)
        except ValueError:  # the parser in Python makes a character of any escape
            self.findings.append(self._odd_escape(Place(self._file, 1, 1)))
        return None

    def _only_document(self) -> Node | None:
        root: Node | None = None
        for event in self._events:
            if isinstance(event, yaml.DocumentStartEvent):
                if root is not None:
                    advice = "Remove the line `---`; a file holds one document."
                    self._refuse("second-document", "a second document", self._place(event), advice)
                    return None
                root = self._node(next(self._events), 1)
        if root is None or (isinstance(root, Scalar) and root.empty):
            advice = "Write its keys, or remove the file."
            self._refuse("empty-file", "the file says nothing", Place(self._file), advice)
            return None
        return root

    def _node(self, event: Any, depth: int) -> Node:
        place = self._place(event)
        self._count += 1
        self._check_bounds(depth, place)
        if isinstance(event, yaml.AliasEvent):
            advice = "To multiply write `2*t`; put a text that begins with `*` in quotes."
            self._refuse("yaml-alias", f"`*{event.anchor}` is a YAML alias", place, advice)
            return Broken(place=place)
        self._check_properties(event, place)
        if isinstance(event, yaml.SequenceStartEvent):
            return self._sequence(event, place, depth)
        if isinstance(event, yaml.MappingStartEvent):
            return self._mapping(event, place, depth)
        style = event.style if event.style in ('"', "'", "|", ">") else ""
        self._long_quote = self._spanning_lines(event, style, place)
        if not style:
            self._warn_of_hash(event)
        elif has_odd_sign(event.value):
            self.findings.append(self._odd_escape(place))
            return Broken(place=place)
        indent = self._indent(event) if style == "|" else 0
        folded = self._folded(event, style)
        return Scalar(text=event.value, style=style, indent=indent, folded=folded, place=place)

    def _folded(self, event: Any, style: str) -> Folded | None:
        """Return the first line that was to begin a list or the like and is no line any more."""
        first, last = event.start_mark, event.end_mark
        if style == "|" or last.line == first.line:
            return None
        if style == ">":
            below, start = self._lines[first.line + 1 :], Place(self._file, first.line + 2, 1)
            lines = [*takewhile(_is_in(_first_indent(below)), below)]
            return folded_mark(lines, start, deeper_stay=True)
        lines = self._lines[first.line : last.line + 1]
        lines[0] = lines[0][first.column :]
        return folded_mark(lines, Place(self._file, first.line + 1, 1), deeper_stay=False)

    def _odd_escape(self, start: Place) -> Finding:
        """Return the finding for an escape that is known to stand somewhere from a place on."""
        found = odd_escape(self._text, self._file, start.line - 1, start.column - 1)
        assert found is not None, "nothing but an escape makes a sign that the file cannot hold"
        return found

    def _indent(self, event: Any) -> int:
        """Return how far the lines of a text under ``|`` are set in, as YAML takes off again."""
        words = ((n, each) for n, each in enumerate(event.value.split("\n")) if each.strip())
        row, line = next(words, (0, ""))
        return self._lines[event.start_mark.line + 1 + row].find(line) if line else 0

    @staticmethod
    def _spanning_lines(event: Any, style: str, place: Place) -> Place | None:
        """Return where a quoted text over several lines begins: perhaps it was never meant so."""
        long = event.end_mark.line > event.start_mark.line
        return place if style in ('"', "'") and style and long else None

    def _warn_of_hash(self, event: Any) -> None:
        """Warn where a text is cut off by a `#` that looks like no comment (``#10 screws``)."""
        mark = event.end_mark
        rest = self._lines[mark.line][mark.column :] if mark.line < len(self._lines) else ""
        word = re.match(r"[ \t]+(#[^\s#][^\s]*)", rest)
        if word and event.value:
            place = Place(self._file, mark.line + 1, mark.column + word.start(1) + 1)
            message = f"{quoted(word[1])} is taken for a comment"
            advice = "Put the text in quotes; begin a comment with `# `."
            self.findings.append(warning("comment", message, place, advice))

    def _check_bounds(self, depth: int, place: Place) -> None:
        if depth > MOST_DEPTH:
            message, advice = f"more than {MOST_DEPTH} levels deep", "Write it with fewer levels."
            raise _TooMuch(error("too-deep", message, place, advice))
        if self._count > MOST_VALUES:
            message = f"more than {MOST_VALUES} values in one file"
            raise _TooMuch(error("too-large", message, place, "Split the file."))

    def _check_properties(self, event: Any, place: Place) -> None:
        if event.anchor:
            advice = "Write the value out where it is needed, or name it under `sizes`."
            self._refuse("yaml-anchor", f"`&{event.anchor}` is a YAML anchor", place, advice)
        if event.tag:
            tag = event.tag.replace("tag:yaml.org,2002:", "!!")
            advice = "Remove it; put a text that begins with `!` in quotes."
            self._refuse("yaml-tag", f"{quoted(tag)} is a YAML tag", place, advice)

    def _sequence(self, start: Any, place: Place, depth: int) -> Sequence:
        items: list[Node] = []
        while not isinstance(event := next(self._events), yaml.SequenceEndEvent):
            items.append(self._node(event, depth + 1))
        return Sequence(items=tuple(items), flow=bool(start.flow_style), place=place)

    def _mapping(self, start: Any, place: Place, depth: int) -> Mapping:
        entries: dict[str, Entry] = {}
        while not isinstance(event := next(self._events), yaml.MappingEndEvent):
            key = self._node(event, depth + 1)
            value = self._node(next(self._events), depth + 1)
            if self._is_key(key, entries) and isinstance(key, Scalar):
                entries[key.text] = Entry(key=key, value=value)
        return Mapping(entries=tuple(entries.values()), flow=bool(start.flow_style), place=place)

    def _is_key(self, key: Node, known: dict[str, Entry]) -> bool:
        """Tell whether a key may be kept; refuse doubled keys, merge keys and keys of no text."""
        if not isinstance(key, Scalar):
            if not isinstance(key, Broken):
                advice = "A value that holds braces or brackets needs quotes."
                self._refuse("wrong-kind", "a key must be a plain word", key.place, advice)
            return False
        if key.text == "<<" and not key.style:
            advice = "Write the values out where they are needed."
            self._refuse("yaml-merge-key", "`<<` is a YAML merge key", key.place, advice)
            return False
        if key.text in known:
            line = known[key.text].key.place.line
            message = f"{quoted(key.text)} is stated twice"
            advice = f"It stands in line {line} already; keep one of the two."
            self._refuse("doubled-key", message, key.place, advice)
            return False
        return True

    def _place(self, event: Any) -> Place:
        mark = event.start_mark
        return Place(self._file, mark.line + 1, mark.column + 1)

    def _refuse(self, rule: str, message: str, place: Place, advice: str) -> None:
        self.findings.append(error(rule, message, place, advice))


def _first_indent(lines: Iterable[str]) -> int:
    """Return how far the first line of words is set in."""
    return next((len(each) - len(each.lstrip()) for each in lines if each.strip()), 0)


def _is_in(indent: int) -> Callable[[str], bool]:
    """Return what tells whether a line belongs to a text that is set in so far."""
    return lambda line: not line.strip() or len(line) - len(line.lstrip()) >= max(indent, 1)
