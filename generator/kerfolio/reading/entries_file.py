"""Entries of the log that come as a file of their own: from the phone, or from a reader.

The file is JSON, ``kerfolio-entries/1`` (docs/the-log.md): nothing in it is believed.
"""

from __future__ import annotations

import json
import re
from base64 import b64decode
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from typing import Any

from kerfolio.basis.complaint import Complaint, quoted
from kerfolio.basis.finding import Finding, error, has_errors
from kerfolio.basis.names import did_you_mean
from kerfolio.basis.pixels import Pixels
from kerfolio.basis.place import Place
from kerfolio.model.stated import ENTRIES_FORMAT, Stated, Value
from kerfolio.reading.entry import read_entry
from kerfolio.reading.log_names import LogNames
from kerfolio.reading.picture import read_picture
from kerfolio.reading.trial import ENTRIES

MOST_BYTES = 60_000_000
_MOST_ENTRIES = 500
_MOST_PICTURE = 8_000_000
"""Signs of a picture in base64: 6 MB, several times what a page saves."""

_DEEPEST = 8
_ID = re.compile(r"[0-9a-z]+(?:-[0-9a-z]+)*")
_HELD = ("format", "entries")
_OF_ENTRY = ("section", "id", "entry", "picture")
_OWN = ("id", "public")
"""Keys of an entry that only the log itself states."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Came:
    """An entry that is sound: what the log is to state of it, and its photo if it has one."""

    section: str
    id: str
    day: date
    stated: Stated
    photo: Pixels | None = None


def read_entries(
    content: bytes, file: str, names: LogNames, day: date
) -> tuple[tuple[Came, ...], tuple[Finding, ...]]:
    """Return the sound entries of a file, and what is wrong with the others.

    ``day`` is when what a reader measured came.
    """
    place = Place(file)
    held = _json(content, place)
    if isinstance(held, Finding):
        return (), (held,)
    faults = tuple(_outer_faults(held, place))
    if faults:
        return (), faults
    found: list[Came] = []
    findings: list[Finding] = []
    for number, each in enumerate(held["entries"], start=1):
        made = _entry(each, Place(f"{file}, entry {number}"), names, day)
        if isinstance(made, Came):
            found.append(made)
        else:
            findings += made
    return tuple(found), tuple(findings)


def _json(content: bytes, place: Place) -> Any:
    """Return what a file holds, every number as its digits; a Finding where it is no JSON."""
    again = "Take the file as it was saved, or save it once more."
    if len(content) > MOST_BYTES:
        return error("too-large", f"the file has more than {MOST_BYTES // 1_000_000} MB", place)
    try:
        text = content.decode("utf-8-sig")
        held = json.loads(text, parse_int=str, parse_float=str, parse_constant=str)
    except json.JSONDecodeError as trouble:
        where = Place(place.file, trouble.lineno, trouble.colno)
        return error("no-entries", "this is no file of entries, or a part of one", where, again)
    except (UnicodeDecodeError, RecursionError):
        return error("no-entries", "this is no file of entries", place, again)
    return held


def _outer_faults(held: Any, place: Place) -> Iterator[Finding]:
    again = "`kerfolio add trial --phone FILE.html` writes the page that saves them."
    if not isinstance(held, dict) or "format" not in held:
        yield error("no-entries", "this is no file of entries", place, again)
        return
    if held["format"] != ENTRIES_FORMAT:
        message = f"its format is {quoted(str(held['format']))}, not `{ENTRIES_FORMAT}`"
        yield error("unknown-format", message, place, "Update Kerfolio, or write the page anew.")
        return
    yield from _strays(held, _HELD, place)
    entries = held.get("entries")
    if not isinstance(entries, list) or not entries:
        yield error("no-entries", "it holds no entries", place, again)
    elif len(entries) > _MOST_ENTRIES:
        message = f"{len(entries)} entries are too many: {_MOST_ENTRIES} are taken at once"
        yield error("too-many", message, place, "Save fewer at a time.")


def _strays(held: dict[str, Any], known: tuple[str, ...], place: Place) -> Iterator[Finding]:
    for key in held:
        if key not in known:
            advice = did_you_mean(key, known)
            yield error("unknown-key", f"unknown key {quoted(key)}", place, advice)


def _entry(held: Any, place: Place, names: LogNames, day: date) -> Came | tuple[Finding, ...]:
    faults = tuple(_entry_faults(held, place))
    if faults:
        return faults
    section = held["section"]
    stated = _plain(held["entry"], _DEEPEST)
    if not isinstance(stated, dict):
        return (error("too-deep", "it has too many levels", place, "Save it once more."),)
    if section == "sent":
        stated = {**stated, "date": day.isoformat()}
    photo = _photo(held.get("picture"), stated, place)
    if isinstance(photo, Finding):
        return (photo,)
    whole = {"id": held["id"], **_pictured(stated, photo)}
    entry, findings = read_entry(section, whole, names, place)
    if entry is None or has_errors(findings):
        return findings or (error("no-entries", "it cannot be read", place),)
    return Came(section=section, id=held["id"], day=entry.date, stated=whole, photo=photo)


def _entry_faults(held: Any, place: Place) -> Iterator[Finding]:
    if not isinstance(held, dict):
        yield error("wrong-kind", "it is no entry", place, "Save it once more.")
        return
    yield from _strays(held, _OF_ENTRY, place)
    section, id_ = held.get("section"), held.get("id")
    if not isinstance(section, str) or section not in ENTRIES:
        yield error("unknown-key", f"no section {quoted(str(section))}", place, _sections(section))
    if not isinstance(id_, str) or len(id_) > 80 or not _ID.fullmatch(id_):
        advice = "Small letters, digits and hyphens make one."
        yield error("wrong-value", f"{quoted(str(id_))} is no id", place, advice)
    entry = held.get("entry")
    if not isinstance(entry, dict):
        yield error("missing-key", "`entry` is missing", place, "Save it once more.")
        return
    for key in _OWN:
        if key in entry:
            advice = "Write it into the log yourself, once you have seen the entry."
            yield error("not-yours", f"`{key}` is not taken from a file", place, advice)


def _sections(section: object) -> str:
    return did_you_mean(str(section), ENTRIES)


def _plain(held: Any, levels: int) -> Value | None:
    """Return JSON as the values of a log; None where it is too deep to be one."""
    if isinstance(held, dict | list) and not levels:
        return None
    if isinstance(held, dict):
        pairs = {key: _plain(each, levels - 1) for key, each in held.items()}
        return None if None in pairs.values() else {k: v for k, v in pairs.items() if v is not None}
    if isinstance(held, list):
        items = [_plain(each, levels - 1) for each in held]
        return None if None in items else tuple(each for each in items if each is not None)
    if isinstance(held, bool):
        return "true" if held else "false"
    return "" if held is None else str(held)


def _photo(picture: Any, stated: dict[str, Value], place: Place) -> Pixels | Finding | None:
    if picture is None:
        return (
            None if "photo" not in stated else _no_picture("there is no picture for `photo`", place)
        )
    if not isinstance(picture, str) or len(picture) > _MOST_PICTURE:
        return _no_picture("its picture has more than 6 MB", place)
    if not isinstance(stated.get("photo"), dict):
        return _no_picture("its picture has no `photo` with what it shows", place)
    try:
        content = b64decode(picture.encode(), validate=True)
    except ValueError:
        return _no_picture("its picture is no base64", place)
    shown = read_picture(content, "picture.jpg")
    if isinstance(shown, Complaint):
        return error("picture", str(shown), place, shown.advice)
    return shown


def _no_picture(message: str, place: Place) -> Finding:
    return error("picture", message, place, "Take the photo once more, or save without it.")


def _pictured(stated: dict[str, Value], photo: Pixels | None) -> dict[str, Value]:
    """Return what is stated, its photo under the name that it gets; the file's own is not taken."""
    told = stated.get("photo")
    if photo is None or not isinstance(told, dict):
        return stated
    return {**stated, "photo": {**told, "file": "photos/picture.jpg"}}
