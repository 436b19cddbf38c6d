"""What only the maker sees of the log: whole entries, metres of cutters, what came home."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from kerfolio.basis.cutting_lengths import tool_text
from kerfolio.basis.figures import figure
from kerfolio.basis.names import name_of
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import day_text, listed, say
from kerfolio.basis.thickness import thickness_text
from kerfolio.model.trial import Batch, Sent, Trial
from kerfolio.model.workshop import Workshop
from kerfolio.trials.metres import metres_at, metres_words, trend_words, trends, way_text
from kerfolio.trials.outcome_told import grade_told


@dataclass(frozen=True, slots=True, kw_only=True)
class CutterView:
    """A cutter that has cut: how far, and whether outcomes fall with that."""

    title: str
    metres: str
    trends: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SentView:
    """What a reader measured; ``id`` is its address on the page, ``facts`` are (what, value)."""

    id: str
    day: str
    plan: str
    facts: tuple[tuple[str, str], ...]


def cutter_views(workshop: Workshop) -> tuple[CutterView, ...]:
    """Return the cutters that the log, or the stock, has metres of."""
    reader = workshop.identity.reader
    titles = {each.name: each.title for each in workshop.stock.sheets}
    found = []
    for cutter in workshop.stock.cutters:
        cut = metres_at(cutter, workshop.trials)
        if cut.new:
            went = trends(cutter, workshop.trials)
            words = tuple(trend_words(e, titles.get(e.sheet, e.sheet), reader) for e in went)
            found.append(
                CutterView(title=cutter.title, metres=metres_words(cut, reader), trends=words)
            )
    return tuple(found)


def sent_views(workshop: Workshop) -> tuple[SentView, ...]:
    """Return what readers measured, the newest first."""
    reader = workshop.identity.reader
    newest_first = sorted(workshop.sent, key=lambda each: each.date, reverse=True)
    return tuple(
        SentView(
            id=each.id,
            day=day_text(reader, each.date),
            plan=each.plan.name,
            facts=tuple(_named(_of_sent(each, reader), reader)),
        )
        for each in newest_first
    )


def private_facts(trial: Trial, reader: Reader, currency: str) -> tuple[tuple[str, str], ...]:
    """Return what the site shows of no entry, each with its name, in the order of the form."""
    return tuple(_named(_of_trial(trial, reader, currency), reader))


def _named(found: Iterator[tuple[str, str]], reader: Reader) -> Iterator[tuple[str, str]]:
    for name, value in found:
        if value:
            yield say(reader, f"privatelog-{name}"), value


def _of_sent(sent: Sent, reader: Reader) -> Iterator[tuple[str, str]]:
    yield "release", sent.release
    yield "sheet", sent.sheet
    yield "thickness", _length(sent.thickness, reader)
    yield "true-cut", "" if sent.true_cut is None else tool_text(sent.true_cut, reader)
    yield "fit", _length(sent.fit, reader)
    yield "went", _word(sent.went.word if sent.went else "", reader)
    yield "outcome", grade_told(sent.grade, reader) if sent.grade else ""


def _of_trial(trial: Trial, reader: Reader, currency: str) -> Iterator[tuple[str, str]]:
    spent, outcome, batch = trial.spent, trial.outcome, trial.batch or Batch()
    yield "release", trial.release
    yield "part", str(trial.part or "")
    yield "batch", batch.name
    yield "readings", listed(reader, [thickness_text(mm, reader) for mm in batch.readings])
    yield "moisture", "" if batch.moisture is None else f"{_figure(batch.moisture, reader)} %"
    yield "operation", _word(trial.operation.value if trial.operation else "", reader)
    climbs = "" if trial.climb is None else "climb" if trial.climb else "conventional"
    yield "direction", _word(climbs, reader)
    yield "workholding", trial.workholding
    yield "extraction", trial.extraction
    yield "went", _word(trial.went.word if trial.went else "", reader)
    yield "true-cut", "" if trial.true_cut is None else tool_text(trial.true_cut, reader)
    grades = (("top", outcome.top), ("bottom", outcome.bottom), ("show-side", outcome.face))
    for name, grade in grades:
        yield name, grade_told(grade, reader) if grade else ""
    yield "metres", "" if spent.metres is None else way_text(spent.metres, reader)
    yield "reckoned-minutes", _figure(spent.reckoned_minutes, reader)
    yield "minutes", _figure(spent.minutes, reader)
    yield "hours", _figure(spent.hours, reader)
    yield "money", "" if spent.money is None else f"{spent.money} {currency}"
    yield "finishes", listed(reader, trial.finishes)
    yield "glues", listed(reader, trial.glues)
    yield "mistakes", listed(reader, trial.mistakes)
    yield "repairs", listed(reader, trial.repairs)


def _length(mm: float | None, reader: Reader) -> str:
    return "" if mm is None else thickness_text(mm, reader)


def _figure(value: float | None, reader: Reader) -> str:
    return "" if value is None else figure(value, reader=reader)


def _word(word: str, reader: Reader) -> str:
    return say(reader, "privatelog-word", word=name_of(word)) if word else ""
