"""A release written into the text of a plan: all else of it stays, comments and order too."""

from __future__ import annotations

import json
import re
import textwrap
from collections.abc import Sequence
from datetime import date

from kerfolio.model.plan import Release

FIX, CHANGE, REDESIGN = ("fix", "change", "redesign")
"""How far a release goes from the one before it: something put right, changed, or made anew."""

_WIDE = 98
_VERSION = re.compile(r"^(version:[ \t]*)([\"']?)[^\s#\"']+\2", re.MULTILINE)
_RELEASES = re.compile(r"^releases:[ \t]*(?P<rest>[^\n]*)(?:\n|\Z)", re.MULTILINE)
_ENTRY = re.compile(r"^(?P<indent>[ ]+)(?P<key>[0-9]+\.[0-9]+\.[0-9]+)[\"']?[ \t]*:", re.MULTILINE)


def next_version(releases: Sequence[Release], step: str) -> str:
    """Return the version after the highest one; ``1.0.0`` where there is none."""
    highest = max((each.numbers for each in releases), default=None)
    if highest is None:
        return "1.0.0"
    major, minor, patch = (*highest, 0, 0, 0)[:3]
    if step == REDESIGN:
        return f"{major + 1}.0.0"
    return f"{major}.{minor + 1}.0" if step == CHANGE else f"{major}.{minor}.{patch + 1}"


def with_release(text: str, version: str, day: date, changed: str, *, errata: bool) -> str:
    """Return the text of a plan with a further release, which is its version.

    Where releases stand newest first it comes first, else last. The text may be one that this
    cannot be done to: whoever asks reads the result again.
    """
    text = _VERSION.sub(rf"\g<1>{version}", text, count=1)
    found = _RELEASES.search(text)
    words = " ".join(changed.split())
    if found is None:
        entry = "".join(_lines("  ", version, day, words, errata=errata))
        return f"{text.rstrip()}\n\nreleases:\n{entry}"
    rest = found["rest"]
    if rest.lstrip().startswith("{"):
        at = found.start("rest") + rest.index("{") + 1
        body = _flow(day, words, errata=errata)
        return f"{text[:at]}{version}: {body}, {text[at:].lstrip(' ')}"
    return _in_block(text, found.end(), version, day, words, errata=errata)


def _in_block(text: str, start: int, version: str, day: date, words: str, *, errata: bool) -> str:
    """Put a release among those that stand a line or more each below their key."""
    end = _end_of(text, start)
    keys = list(_ENTRY.finditer(text, start, end))
    if not keys:
        entry = "".join(_lines("  ", version, day, words, errata=errata))
        return text[:start] + entry + text[start:]
    indent = keys[0]["indent"]
    keys = [each for each in keys if each["indent"] == indent]
    entry = "".join(_lines(indent, version, day, words, errata=errata))
    newest_first = _numbers(keys[0]["key"]) >= _numbers(keys[-1]["key"])
    at = keys[0].start() if newest_first else end
    gap = "" if newest_first or text[:at].endswith("\n") else "\n"
    return f"{text[:at]}{gap}{entry}{text[at:]}"


def _end_of(text: str, start: int) -> int:
    """Return where a block ends: behind its last line that is indented."""
    end = at = start
    for line in text[start:].splitlines(keepends=True):
        at += len(line)
        if line.startswith(" ") and line.strip():
            end = at
        elif line.strip() and not line.startswith("#"):
            break
    return end


def _numbers(version: str) -> tuple[int, ...]:
    return tuple(map(int, version.split(".")))


def _flow(day: date, words: str, *, errata: bool) -> str:
    told = json.dumps(words, ensure_ascii=False)
    return f"{{date: {day.isoformat()}, changed: {told}{', errata: true' if errata else ''}}}"


def _lines(indent: str, version: str, day: date, words: str, *, errata: bool) -> list[str]:
    short = f"{indent}{version}: {_flow(day, words, errata=errata)}\n"
    if len(short) <= _WIDE:
        return [short]
    inner = f"{indent}  "
    wrapped = textwrap.wrap(words, _WIDE - len(inner) - 2, break_on_hyphens=False)
    return [
        f"{indent}{version}:\n",
        f"{inner}date: {day.isoformat()}\n",
        f"{inner}changed: >-\n",
        *(f"{inner}  {line}\n" for line in wrapped),
        *([f"{inner}errata: true\n"] if errata else []),
    ]
