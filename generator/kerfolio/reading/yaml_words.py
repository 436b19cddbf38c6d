"""What the YAML parser trips over, in words for people."""

from __future__ import annotations

import re

import yaml

from kerfolio.basis.finding import Finding, error
from kerfolio.basis.place import Place
from kerfolio.reading.merge_marks import is_merge_mark, merge_mark
from kerfolio.reading.odd_blank import blank_in_line
from kerfolio.reading.odd_signs import odd_escape

_QUOTES = "Put a text that holds `: ` or ` #` or begins with a sign in quotes."
_INDENT = "Give all keys of one level the same indentation, in blanks."
_WORDS: tuple[tuple[str, str, str], ...] = (
    ("unexpected end of stream", "a quotation mark is not closed", "Close the quotes."),
    ("' or ']'", "a list in [ ] is not closed", "Put commas between its entries and close it."),
    ("' or '}'", "a { is not closed", "Put commas between its entries and close it."),
    (
        "unknown escape",
        "a backslash in double quotes",
        "Write file names with `/`, or use single quotes.",
    ),
    ("could not find expected ':'", "a key without `: `", "Write `key: value`, with a blank."),
    ("entries are not allowed", "a `-` where no list can begin", "Begin the list on a new line."),
    ("'-' indicator", "a list that is broken off", _INDENT),
    ("<document start>", "the indentation goes back too far", _INDENT),
    ("node content", "a value is missing before this sign", "Remove it, or put it in quotes."),
    ("node content", "a value is missing", "Remove the extra comma, or write the value."),
    ("comment or line break", "text right after `|` or `>`", "Begin the text on the next line."),
    ("indentation indicators", "text right after `|` or `>`", "Begin the text on the next line."),
    ("incompatible YAML", "a `%YAML` line", "Remove the line."),
    ("directive", "a line that begins with `%`", "Remove the line, or put the text in quotes."),
)
_LOOK_BACK = 3
_AT_ITS_START = (
    "unexpected end of stream",
    "could not find expected ':'",
    "' or ']'",
    "' or '}'",
)
"""Problems that are shown where the thing began, not where the parser gave up on it."""


def syntax_finding(
    trouble: yaml.YAMLError, text: str, file: str, opened: Place | None = None
) -> Finding:
    """Return the finding for a file that is no YAML, with the place the mistake was made at.

    ``opened`` is where a quoted text over several lines began, when one ended just before.
    """
    mark = getattr(trouble, "problem_mark", None)
    assert mark is not None, "only characters that are refused before have no mark"
    place = Place(file, mark.line + 1, mark.column + 1)
    line = _line(text, mark.line)
    problem = str(getattr(trouble, "problem", ""))
    if _tabbed(line):
        place = Place(file, mark.line + 1, 1)
        return error("yaml-tab", "a tab in the indentation", place, "Indent with blanks.")
    if "nesting depth" in problem:
        return error("too-deep", "far too many levels deep", place, "Write it with fewer levels.")
    start = getattr(trouble, "context_mark", None)
    if "character escape" in problem and start:
        escape = odd_escape(text, file, start.line, start.column)
        if escape is not None:
            return escape
    if start and any(sign in problem for sign in _AT_ITS_START):
        place = Place(file, start.line + 1, start.column + 1)
    for number in (place.line, mark.line + 1):
        if is_merge_mark(_line(text, number - 1)):
            return merge_mark(_line(text, number - 1), Place(file, number, 1))
    odd = _odd_blank(text, file, (place.line - 1, mark.line))
    if odd is not None:
        return odd
    message, advice = _words(problem, line, mark.column)
    if opened is not None and "key" in message + problem:
        place, message, advice = opened, "a quotation mark is not closed", "Close the quotes."
    return error("yaml-syntax", message, place, advice)


def _odd_blank(text: str, file: str, blamed: tuple[int, int]) -> Finding | None:
    """Return the finding for an odd blank in the lines blamed, or in an indentation just above.

    A key that such a blank indents ends the mapping it was meant for: the line after is blamed.
    """
    above = range(blamed[1] - 1, max(blamed[1] - 1 - _LOOK_BACK, -1), -1)
    lines = [(number, _line(text, number)) for number in (*blamed, *above)]
    for number, line in lines:
        indent = line[: len(line) - len(line.lstrip())]
        looked = line if number in blamed else indent
        found = blank_in_line(looked, Place(file, number + 1, 1))
        if found is not None:
            return found
    return None


def _words(problem: str, line: str, column: int) -> tuple[str, str]:
    """Return message and advice for a problem as either of the two parsers words it."""
    if "mapping values are not allowed" in problem:
        return _stray_colon(line[:column])
    if "cannot start any token" in problem:
        return f"a text begins with `{line[column : column + 1]}`", _QUOTES
    for sign, message, advice in _WORDS:
        if sign in problem:
            return message, advice
    after = line[column : column + 1]
    if line[:column].rstrip().endswith(('"', "'")):
        return "text goes on after the closing quote", "Put the whole text in one pair of quotes."
    if after == "-":
        return "a list where a key was expected", _INDENT
    return "a key was expected here", _INDENT


def _stray_colon(before: str) -> tuple[str, str]:
    if re.search(r":\s", before):
        return "a second `: ` in one line", "Put the text in quotes, or write it under `|`."
    advice = f"Write `key: value` with a blank in the line before. {_INDENT}"
    return "a key that cannot stand here", advice


def _tabbed(line: str) -> bool:
    return "\t" in line[: len(line) - len(line.lstrip())]


def _line(text: str, number: int) -> str:
    lines = text.split("\n")
    return lines[number] if number < len(lines) else ""
