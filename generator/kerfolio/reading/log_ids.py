"""Ids of the log's entries: the stated ones, each once, and one for every entry without."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from datetime import date

from kerfolio.basis.complaint import quoted
from kerfolio.basis.finding import Finding, error
from kerfolio.basis.names import name_of
from kerfolio.model.trial import Log, Sent, Trial


def with_ids(log: Log) -> Log:
    """Return the log with an id for every entry: its day and title where none is stated.

    Those of one day and title are numbered as they were logged.
    """
    taken = {each.id for each in log.entries if each.id}
    return Log(
        trials=tuple(_each(log.trials, taken)),
        sent=tuple(_each_sent(log.sent, taken)),
    )


def fresh_id(day: date, words: str, taken: Iterable[str]) -> str:
    """Return an id for a new entry of a day that is called by some words; none of ``taken``."""
    return _free(f"{day.isoformat()}-{name_of(words)[:40]}".rstrip("-"), set(taken))


def _each(entries: Iterable[Trial], taken: set[str]) -> Iterator[Trial]:
    for each in entries:
        yield each if each.id else replace(each, id=_free(_plain(each), taken))


def _each_sent(entries: Iterable[Sent], taken: set[str]) -> Iterator[Sent]:
    for each in entries:
        plain = f"{each.date.isoformat()}-{each.plan.name}"
        yield each if each.id else replace(each, id=_free(plain, taken))


def _plain(trial: Trial) -> str:
    names = (str(trial.stock or ""), str(trial.cutter or ""))
    said = trial.title or " ".join(filter(None, names))
    return f"{trial.date.isoformat()}-{name_of(said)}".rstrip("-")


def _free(plain: str, taken: set[str]) -> str:
    found, number = plain, 1
    while found in taken:
        number += 1
        found = f"{plain}--{number}"
    taken.add(found)
    return found


def doubled_ids(log: Log) -> Iterator[Finding]:
    """Refuse an id that an entry above has already."""
    seen: dict[str, str] = {}
    for each in log.entries:
        if each.id and each.id in seen:
            message = f"the id {quoted(each.id)} stands at {seen[each.id]} already"
            yield error("doubled-id", message, each.place, "Give this entry another, or none.")
        elif each.id:
            seen[each.id] = f"{each.place.file}:{each.place.line}"
