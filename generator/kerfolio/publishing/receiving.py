"""Entries made elsewhere taken into the log: from the phone at the machine, and from readers."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from kerfolio.basis.complaint import quoted
from kerfolio.basis.finding import Finding, error
from kerfolio.basis.place import Place
from kerfolio.model.stated import Stated
from kerfolio.publishing.adding import open_log
from kerfolio.publishing.log_append import log_entry
from kerfolio.publishing.log_photo import put_photo
from kerfolio.reading.entries_file import MOST_BYTES, Came, read_entries


@dataclass(frozen=True, slots=True, kw_only=True)
class Received:
    """What became of a file: entries taken, each with where it stands now, and those that the log
    had already; ``findings`` say why others were not.
    """

    taken: tuple[tuple[str, Path], ...] = ()
    known: tuple[str, ...] = ()
    findings: tuple[Finding, ...] = ()


def receive(workshop: Path, file: Path, day: date) -> Received:
    """Take the entries of a file into a workshop's log, each once. Raises OSError.

    What is wrong with one keeps no other out: the file can be taken again once it is right. A photo
    is written first, so that no entry names one that is not there.
    """
    content = _content(file)
    if isinstance(content, Finding):
        return Received(findings=(content,))
    log, findings = open_log(workshop)
    if log is None:
        return Received(findings=findings)
    came, faults = read_entries(content, file.name, log.names, day)
    seen = set(log.taken)
    taken: list[tuple[str, Path]] = []
    known: list[str] = []
    for each in came:
        if each.id in seen:
            known.append(each.id)
            continue
        seen.add(each.id)
        taken.append((each.id, _written(workshop, each)))
    return Received(taken=tuple(taken), known=tuple(known), findings=faults)


def _content(file: Path) -> bytes | Finding:
    place = Place(file.name)
    if not file.is_file():
        advice = "Name the file that the page saved."
        return error("no-file", f"no file {quoted(str(file), 60)}", place, advice)
    if file.stat().st_size > MOST_BYTES:
        return error("too-large", f"the file has more than {MOST_BYTES // 1_000_000} MB", place)
    return file.read_bytes()


def _written(workshop: Path, came: Came) -> Path:
    stated: Stated = came.stated
    told = stated.get("photo")
    if came.photo is not None and isinstance(told, dict):
        stated = {**stated, "photo": {**told, "file": put_photo(workshop, came.id, came.photo)}}
    return log_entry(workshop, came.day, came.section, _in_order(stated))


def _in_order(stated: Stated) -> Stated:
    """Return an entry with its day and its id in front, its notes last."""

    def rank(key: str) -> int:
        return {"id": -2, "date": -1, "photo": 1, "text": 2}.get(key, 0)

    return {key: stated[key] for key in sorted(stated, key=rank)}


def told(received: Received) -> Iterable[str]:
    """Yield what to say of it, a line each."""
    for id_, file in received.taken:
        yield f"wrote {file}: {id_}"
    for id_ in received.known:
        yield f"{id_} is in the log already: taken once"
