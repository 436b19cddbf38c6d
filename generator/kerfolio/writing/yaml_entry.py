"""An entry of a list in a YAML file, written as a person would write it."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Mapping

_PLAIN = re.compile(r"[^\W_](?:[\w ./%+()&;'-]*[\w.%)])?")
"""Texts that stand in YAML as they are, in a list too."""

_WORDS = re.compile(r"(?:true|false|yes|no|null|on|off|y|n|~)", re.IGNORECASE)
"""What other readers of YAML take for something else than a text."""


def yaml_lines(entry: Mapping[str, object], indent: int) -> tuple[str, ...]:
    """Return the lines of a list entry whose dash is set in by ``indent``.

    Values are texts, tuples and mappings. A text of several lines stands under ``|`` where YAML
    gives it back to the letter.
    """
    lines = [line for key, value in entry.items() for line in _lines(key, value)]
    gap = " " * indent
    return tuple(
        f"{gap}{'- ' if not number else '  '}{line}" if line else ""
        for number, line in enumerate(lines)
    )


def _lines(key: str, value: object) -> Iterator[str]:
    if isinstance(value, str) and _stands_as_block(value):
        yield f"{key}: {'|' if value.endswith(chr(10)) else '|-'}"
        yield from (f"  {line}" if line else "" for line in value.rstrip("\n").split("\n"))
    else:
        yield f"{key}: {_flow(value, listed=False)}"


def _stands_as_block(text: str) -> bool:
    """Tell whether a text of several lines can stand under ``|`` and comes back as it is."""
    lines = text.removesuffix("\n").split("\n")
    plain = all(each == each.strip() and each.isprintable() for each in lines)
    return len(lines) > 1 and plain and bool(lines[0]) and bool(lines[-1])


def _flow(value: object, *, listed: bool) -> str:
    if isinstance(value, str):
        return _scalar(value, listed=listed)
    if isinstance(value, Mapping):
        pairs = (f"{key}: {_flow(each, listed=True)}" for key, each in value.items())
        return f"{{{', '.join(pairs)}}}"
    assert isinstance(value, tuple)
    return f"[{', '.join(_flow(each, listed=True) for each in value)}]"


def _scalar(text: str, *, listed: bool) -> str:
    flag = text in ("true", "false") and not listed
    plain = flag or (_PLAIN.fullmatch(text) and not _WORDS.fullmatch(text))
    return text if plain else json.dumps(text, ensure_ascii=False)
