"""What the log answers at the terminal, as lines to read or as JSON."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import Any

from kerfolio.basis.json_text import json_text, number
from kerfolio.basis.names import did_you_mean
from kerfolio.basis.reader import Reader
from kerfolio.basis.words import counted
from kerfolio.model.outcome import Operation
from kerfolio.model.stock import Stock
from kerfolio.model.trial import Trial
from kerfolio.model.workshop import Workshop
from kerfolio.shop.operation import operation_by_cutter, operation_counted
from kerfolio.shop.settings import Settings
from kerfolio.trials.asking import Asked, answering
from kerfolio.trials.best import Answer, answer
from kerfolio.trials.chances import Tally
from kerfolio.trials.log import settings_text
from kerfolio.trials.ranking import Best
from kerfolio.trials.subject import Subject, sorted_log
from kerfolio.trials.told import (
    elsewhere_told,
    failure_told,
    first_pass_told,
    head_told,
    in_one_line,
    left_out_told,
    newest_told,
    next_told,
    operation_told,
    settings_told,
    standing_told,
    subject_told,
    tally_told,
)

_VERDICT = 14
"""Signs of the longest verdict."""


def english(workshop: Workshop) -> Reader:
    """Return whom commands speak to: a maker, in English, in the workshop's unit."""
    return Reader(unit=workshop.identity.units_first)


def trials_text(workshop: Workshop, asked: Asked) -> Iterator[str]:
    """Yield two lines for each trial that answers, the newest first, and how many there are."""
    found = answering(workshop.trials, asked, workshop.stock)
    for trial in found:
        word = trial.grade.word if trial.grade else "no verdict"
        marks = ", ".join(trial.outcome.marks)
        head = f"{trial.date}  {word:<{_VERDICT}}  {trial.title}{f' ({marks})' if marks else ''}"
        yield f"{head.rstrip()}  #{trial.id}" if trial.id else head
        settings = settings_text(trial, english(workshop))
        if settings:
            yield f"            {settings}"
    yield f"{len(found)} of {counted(len(workshop.trials), 'trial')}"


def trials_json(workshop: Workshop, asked: Asked) -> str:
    """Return the same as JSON, lengths in mm."""
    found = answering(workshop.trials, asked, workshop.stock)
    return json_text([_entry(each, workshop.stock) for each in found], indent=1)


def _entry(trial: Trial, stock: Stock) -> dict[str, Any]:
    outcome = trial.outcome
    edges = {"top": outcome.top, "bottom": outcome.bottom, "face": outcome.face}
    return {
        "id": trial.id,
        "date": trial.date.isoformat(),
        "title": trial.title,
        "job": trial.job,
        "plan": trial.plan.name if trial.plan else "",
        "sheet": trial.stock.name if trial.stock else "",
        "thickness": _mm(trial.thick),
        "cutter": trial.cutter.name if trial.cutter else "",
        "operation": operation_counted(trial, stock).value,
        "speed": _mm(trial.speed_rpm),
        "feed": _mm(trial.feed_mm_per_min),
        "plunge": _mm(trial.plunge_mm_per_min),
        "passes": [number(each) for each in trial.passes],
        "climb": trial.climb,
        "fit": _mm(trial.fit),
        "verdict": trial.grade.word if trial.grade else "",
        **{name: grade.word if grade else "" for name, grade in edges.items()},
        "marks": [each.value for each in outcome.marks],
        "file": trial.place.file,
        "line": trial.place.line,
    }


def answers(workshop: Workshop, asked: Asked) -> tuple[Answer, ...]:
    """Return what the log says of a sheet, with each cutter tried on it or the one asked for."""
    log = sorted_log(workshop.trials, workshop.stock)
    found = [each for each in log if _is_asked(each, asked)]
    if not found and asked.cutter:
        sheet, cutter = workshop.stock.sheet(asked.sheet), workshop.stock.cutter(asked.cutter)
        if sheet and cutter:
            cuts = operation_by_cutter(cutter) or Operation.THROUGH
            found = [Subject(sheet=sheet, cutter=cutter, operation=cuts)]
    identity = workshop.identity
    return tuple(
        answer(each, log, workshop.stock, identity.machine, identity.units_first) for each in found
    )


def nothing_on(workshop: Workshop, asked: Asked) -> str:
    """Return what is said where a sheet was never cut: the sheets that were."""
    tried = {each.stock.name for each in workshop.trials if each.stock}
    return f"No trial on `{asked.sheet}` is logged. {did_you_mean(asked.sheet, tried)}"


def _is_asked(subject: Subject, asked: Asked) -> bool:
    return (
        subject.sheet.name == asked.sheet
        and asked.cutter in {"", subject.cutter.name}
        and asked.operation in {"", subject.operation.value}
    )


def best_text(found: Answer, reader: Reader) -> Iterator[str]:
    """Yield what the log says, line by line."""
    head = subject_told(found.subject, reader)
    yield head
    yield "=" * len(head)
    yield operation_told(found.subject, reader)
    yield ""
    if found.best:
        yield head_told(found.best, reader)
        yield from _columns(settings_told(found.best.settings, reader))
        newest = newest_told(found.best, reader)
        yield f"  {tally_told(found.best.tally, reader)}; newest {newest}"
    yield standing_told(found.best, reader)
    yield from filter(None, (left_out_told(found, reader),))
    for title, lines in _parts(found, reader):
        if lines:
            yield ""
            yield title
            yield from (f"  {each}" for each in lines)


def _parts(found: Answer, reader: Reader) -> Iterator[tuple[str, Sequence[str]]]:
    yield (
        reader.says("logbest-head-failed"),
        [failure_told(each, reader) for each in found.failures],
    )
    yield reader.says("logbest-head-tip"), first_pass_told(found, reader)
    yield (
        reader.says("logbest-head-elsewhere"),
        [elsewhere_told(each, reader) for each in found.elsewhere],
    )
    best, settings = found.best, found.next.settings
    settings = None if best and settings == best.settings else settings
    lines = [next_told(found.next, reader), *([in_one_line(settings, reader)] if settings else [])]
    yield reader.says("logbest-head-next"), lines


def _columns(pairs: Sequence[tuple[str, str]]) -> Iterator[str]:
    wide = max(len(name) for name, _ in pairs)
    return (f"  {name:<{wide}}  {value}" for name, value in pairs)


def best_json(found: Iterable[Answer]) -> str:
    """Return the same as JSON: feeds in mm/min, lengths in mm, shares of one."""
    return json_text([_answer(each) for each in found], indent=1)


def _answer(found: Answer) -> dict[str, Any]:
    subject, best, after = found.subject, found.best, found.next
    return {
        "sheet": subject.sheet.name,
        "cutter": subject.cutter.name,
        "operation": subject.operation.value,
        "compared": len(found.cuts),
        "left-out": [each.id for each in found.left_out],
        "known": best is not None and best.known,
        "best": _best(best) if best else None,
        "failures": [
            {
                "way": each.axis.value,
                "settings": _settings(each.settings),
                "grades": _grades(each.tally),
                "marks": [mark.value for mark in each.marks],
                "trials": [cut.trial.id for cut in each.cuts],
            }
            for each in found.failures
        ],
        "on-sheets-alike": [
            {"sheet": each.subject.sheet.name, **_best(each.best)} for each in found.elsewhere
        ],
        "next": {
            "why": after.why.value,
            "times": after.times,
            "changes": after.axis.value if after.axis else "",
            "settings": _settings(after.settings) if after.settings else None,
        },
    }


def _best(best: Best) -> dict[str, Any]:
    low, high = best.within
    return {
        "settings": _settings(best.settings),
        "grades": _grades(best.tally),
        "well": best.well,
        "of": best.tally.total,
        "share": [number(low), number(high)],
        "needed": best.needed,
        "trials": [each.trial.id for each in best.cuts],
    }


def _grades(counted: Tally) -> dict[str, int]:
    return {grade.word: count for grade, count in counted.seen}


def _settings(settings: Settings) -> dict[str, Any]:
    return {
        "chip": number(settings.chip),
        "speed": _mm(settings.speed),
        "feed": _mm(settings.feed),
        "plunge": _mm(settings.plunge),
        "passes": [number(each) for each in settings.passes],
        "climb": settings.climb,
    }


def _mm(value: float | None) -> Any:
    return None if value is None else number(value)
