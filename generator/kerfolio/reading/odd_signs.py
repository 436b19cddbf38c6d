"""Signs that no text can hold: control characters, and escapes that stand for no character.

Pages, feeds and PDF files have no way to carry them.
"""

from __future__ import annotations

import re

from kerfolio.basis.finding import Finding, error
from kerfolio.basis.place import Place

_ODD = re.compile(r"[^\t\n\r\x20-\x7e\x85\xa0-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
"""All but the printable characters of YAML (YAML 1.2.2, section 5.1)."""

_ESCAPE = re.compile(r"\\(?:x([0-9A-Fa-f]{2})|u([0-9A-Fa-f]{4})|U([0-9A-Fa-f]{8})|(.))", re.DOTALL)
_SHORT = {"0": 0x00, "a": 0x07, "b": 0x08, "v": 0x0B, "f": 0x0C, "e": 0x1B}
"""Control characters with an escape of their own (YAML 1.2.2, section 5.7)."""

_PATHS = "Write file names with `/`, or use single quotes."
_SECOND = re.compile(r"\\u(d[c-f][0-9a-f]{2})", re.IGNORECASE)
_MOST = 0x10FFFF


def has_odd_sign(text: str) -> bool:
    """Tell whether a text holds a control character or half a character."""
    return _ODD.search(text) is not None


def odd_sign(text: str, file: str) -> Finding | None:
    """Return the finding for the first control character of a text, or None."""
    found = _ODD.search(text)
    if found is None:
        return None
    message = f"a control character U+{ord(found.group()):04X}"
    return error("control-character", message, _place(text, file, found.start()), "Remove it.")


def odd_escape(text: str, file: str, line: int = 0, column: int = 0) -> Finding | None:
    """Return the finding for the first escape that stands for no sign of a text, or None.

    It is looked for from a line and column on, both counted from 0.
    """
    start = 0
    for _ in range(line):
        start = text.find("\n", start) + 1
    for found in _ESCAPE.finditer(text, start + column):
        code, place = _code(found), _place(text, file, found.start())
        if 0xD800 <= code <= 0xDFFF:
            return _half(found, text, place)
        if code > _MOST:
            message, advice = f"`{found.group()}` is no character", "Write the character itself."
            return error("yaml-escape", message, place, advice)
        if code >= 0 and has_odd_sign(chr(code)):
            message = f"`{found.group()}` is the control character U+{code:04X}"
            advice = _PATHS if found[4] else "Remove it."
            return error("control-character", message, place, advice)
    return None


def _code(escape: re.Match[str]) -> int:
    """Return the code point of an escape, -1 for one that stands for a plain sign."""
    digits = escape[1] or escape[2] or escape[3]
    return int(digits, 16) if digits else _SHORT.get(escape[4], -1)


def _half(first: re.Match[str], text: str, place: Place) -> Finding:
    """Tell of half a surrogate pair, as JSON writes them, and of the character of a whole one."""
    second = _SECOND.match(text, first.end())
    high = _code(first) - 0xD800
    if second is None or high >= 0x400:
        message = f"`{first.group()}` is half a character"
        return error("yaml-escape", message, place, "Write the character itself, not its escape.")
    meant = chr(0x10000 + (high << 10) + int(second[1], 16) - 0xDC00)
    message = f"`{first.group()}{second.group()}` is one character in two halves"
    return error("yaml-escape", message, place, f"Write the character itself: `{meant}`.")


def _place(text: str, file: str, at: int) -> Place:
    line = text.count("\n", 0, at) + 1
    return Place(file, line, at - text.rfind("\n", 0, at))
