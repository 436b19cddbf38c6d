"""Real files spoiled in the ways files are spoiled: cut, doubled, spliced, with extreme values.

All positions are fractions, so that one list of edits fits any file.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Any, TypeVar

from hypothesis import strategies as st
from hypothesis.strategies import SearchStrategy

EXTREMES = (
    *("0", "-0", "1", "-1", "0.001", "1e7", "1e400", "-1e400", "1e-400", "NaN", "inf", "-inf"),
    *("999999999", "-999999999", "9" * 40, "9" * 5000, "0." + "0" * 300 + "1", "1e99999999"),
    *("2147483648", "-2147483649", "4294967296", "18446744073709551616", "1/0", "0x7f", "1_000"),
    *("1,200", "120,5", "18.000", "1 200", "½", "١٢", "１２", "²", "1e", ".", "-", "+-1", ""),
)
"""What may stand where a number stood."""

ODD = (
    *("\x00", "\x07", "\x1b[31m", "\x7f", "\x85", "\xa0", "\xad", "\u200b", "\u2028", "\u202e"),
    *("\ufeff", "\ufffd", "\uffff", "\ud800", "😀", "é", "e\u0301" * 40, "Ω", "漢", "\U0010ffff"),
    *("\t", "\r", "\r\n", "\n\n", "'", '"', "`", "\\", "&", "<", ">", "{", "}", "[", "]", "#"),
    *(
        '"\\ud800"',
        '"\\x00"',
        '"\\U0010ffff"',
        "*a",
        "&a ",
        "!!int ",
        "<<: ",
        "|\n",
        ">\n",
        "---\n",
    ),
    *(
        "---\n",
        "<<<<<<< a\n",
        "=======\n",
        ">>>>>>> b\n",
        "%s",
        "{{",
        "../",
        "\\\\",
        "//",
        "(",
        ")",
        ":",
    ),
)
"""Signs and words that files trip over; one is half a surrogate pair, which no file can hold."""

_NUMBER = re.compile(r"[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?")
_WORD = re.compile(r"[A-Za-z][\w-]*")
_FRACTION = st.integers(0, 9999).map(lambda value: value / 10_000)
_SHORT = st.sampled_from((0, 1, 2, 5, 20, 100, 1000))
_MANY = st.sampled_from((2, 2, 2, 3, 30, 1000))
_MOST = 3_000_000

Text = TypeVar("Text", str, bytes)


@st.composite
def mutated(draw: Any, seeds: Sequence[str], words: Sequence[str] = (), edits: int = 6) -> str:
    """Draw a file's text with up to ``edits`` edits; ``words`` are those of its language."""
    text = draw(st.sampled_from(seeds))
    for _ in range(draw(st.integers(1, edits))):
        text = _edited(draw, text, seeds, words)[:_MOST]
    return text


def _edited(draw: Any, text: str, seeds: Sequence[str], words: Sequence[str]) -> str:
    kind = draw(st.sampled_from(_TEXT_EDITS))
    at = draw(_FRACTION)
    if kind == "number":
        return _in_place_of(_NUMBER, text, at, draw(st.sampled_from(EXTREMES)))
    if kind == "word":
        return _in_place_of(_WORD, text, at, draw(_word(text, seeds, words)))
    if kind == "odd":
        return inserted(text, at, draw(st.sampled_from(ODD)))
    if kind == "any":
        return inserted(text, at, draw(st.text(max_size=4)))
    if kind == "lines":
        return _lines(draw, text, at)
    return _stretch(draw, text, at, draw(st.sampled_from(seeds)))


_TEXT_EDITS = (
    "number",
    "number",
    "number",
    "word",
    "word",
    "odd",
    "any",
    "lines",
    "lines",
    "chars",
)


def _word(text: str, seeds: Sequence[str], words: Sequence[str]) -> SearchStrategy[str]:
    own = _WORD.findall(text[:100_000]) or ["x"]
    return st.sampled_from((*words, *dict.fromkeys(own))) if words else st.sampled_from(own)


def _in_place_of(pattern: re.Pattern[str], text: str, at: float, new: str) -> str:
    spots = [each.span() for each in pattern.finditer(text)]
    if not spots:
        return inserted(text, at, new)
    start, end = spots[int(at * len(spots))]
    return text[:start] + new + text[end:]


def inserted(text: Text, at: float, new: Text) -> Text:
    """Return a text with something put in."""
    spot = int(at * (len(text) + 1))
    return text[:spot] + new + text[spot:]


def _lines(draw: Any, text: str, at: float) -> str:
    lines = text.splitlines(keepends=True) or [""]
    start = int(at * len(lines))
    end = start + draw(st.sampled_from((1, 1, 1, 2, 5, 30)))
    held = lines[start:end]
    how = draw(st.sampled_from(("lose", "double", "in", "out", "move")))
    if how == "double":
        held = held * draw(_MANY)
    elif how == "in":
        held = ["  " + line for line in held]
    elif how == "out":
        held = [line.removeprefix("  ") for line in held]
    elif how == "move":
        to = int(draw(_FRACTION) * len(lines))
        rest = lines[:start] + lines[end:]
        return "".join((*rest[:to], *held, *rest[to:]))
    else:
        held = []
    return "".join((*lines[:start], *held, *lines[end:]))


def _stretch(draw: Any, text: Text, at: float, other: Text) -> Text:
    """Lose, double or replace a stretch, or put a stretch of another file in its place."""
    start = int(at * len(text))
    end = start + draw(_SHORT)
    how = draw(st.sampled_from(("lose", "double", "splice", "cut")))
    if how == "cut":
        return text[:start]
    if how == "double":
        return text[:start] + text[start:end] * draw(_MANY) + text[end:]
    if how == "splice":
        there = int(draw(_FRACTION) * len(other))
        return text[:start] + other[there : there + draw(_SHORT)] + text[end:]
    return text[:start] + text[end:]


@st.composite
def mutated_bytes(draw: Any, seeds: Sequence[bytes], edits: int = 6) -> bytes:
    """Draw a file's bytes with up to ``edits`` edits."""
    content = draw(st.sampled_from(seeds))
    for _ in range(draw(st.integers(1, edits))):
        content = _edited_bytes(draw, content, draw(st.sampled_from(seeds)))[:_MOST]
    return content


def _edited_bytes(draw: Any, content: bytes, other: bytes) -> bytes:
    at = draw(_FRACTION)
    if draw(st.booleans()):  # where formats keep what the rest hangs on
        at *= min(1.0, 200 / max(len(content), 1))
    kind = draw(st.sampled_from(("bytes", "bytes", "bytes", "odd", "stretch", "stretch")))
    if kind == "bytes":
        start = int(at * len(content))
        new = draw(st.sampled_from(_BYTES) | st.binary(min_size=1, max_size=4))
        return content[:start] + new + content[start + len(new) :]
    if kind == "odd":
        return inserted(content, at, draw(st.binary(max_size=8)))
    return _stretch(draw, content, at, other)


_BYTES = (
    *(b"\0", b"\xff", b"\x7f", b"\x80", b"\0\0", b"\xff\xff", b"\x7f\xff", b"\0\0\0\0"),
    *(b"\xff\xff\xff\xff", b"\x7f\xff\xff\xff", b"\x80\0\0\0", b"\0\0\0\1", b"\1\0\0\0"),
)
