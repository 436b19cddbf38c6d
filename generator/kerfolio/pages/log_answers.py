"""What the log answers, as its private page shows it."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.reader import Reader
from kerfolio.model.workshop import Workshop
from kerfolio.pages.log_charts import ChartView, edge_charts, fit_chart, thickness_charts
from kerfolio.trials.best import Answer, answer
from kerfolio.trials.subject import sorted_log
from kerfolio.trials.told import (
    Pairs,
    elsewhere_told,
    failure_told,
    first_pass_told,
    head_told,
    left_out_told,
    newest_told,
    next_told,
    operation_told,
    settings_told,
    standing_told,
    tally_told,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class AnswerView:
    """What is known of a sheet and a cutter, ready to set."""

    id: str
    title: str
    operation: str
    known: bool
    head: str
    settings: Pairs
    standing: str
    counts: str
    newest: str
    left_out: str
    failures: tuple[str, ...]
    first_pass: tuple[str, ...]
    elsewhere: tuple[str, ...]
    next: str
    next_settings: Pairs
    charts: tuple[ChartView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetAnswers:
    """What is known of a sheet, a cutter after the other."""

    title: str
    answers: tuple[AnswerView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class LogAnswers:
    """All that the log answers."""

    sheets: tuple[SheetAnswers, ...]
    fits: tuple[ChartView, ...]
    batches: tuple[ChartView, ...]


def log_answers(workshop: Workshop) -> LogAnswers:
    """Return what a workshop's log answers, what was cut most often first."""
    identity, stock = workshop.identity, workshop.stock
    log, reader = sorted_log(workshop.trials, stock), identity.reader
    views: dict[str, list[AnswerView]] = {}
    made = [answer(each, log, stock, identity.machine, identity.units_first) for each in log]
    for found in sorted(made, key=lambda each: -len(each.cuts)):
        if found.cuts:
            views.setdefault(found.subject.sheet.title, []).append(_view(found, reader))
    fits = fit_chart(workshop.trials, reader)
    return LogAnswers(
        sheets=tuple(SheetAnswers(title=title, answers=(*each,)) for title, each in views.items()),
        fits=(fits,) if fits else (),
        batches=thickness_charts(workshop.trials, stock, reader),
    )


def _view(found: Answer, reader: Reader) -> AnswerView:
    subject, best, after = found.subject, found.best, found.next
    changed = None if best and after.settings == best.settings else after.settings
    return AnswerView(
        id=f"best-{subject.sheet.name}-{subject.cutter.name}-{subject.operation.name.lower()}",
        title=subject.cutter.title,
        operation=operation_told(subject, reader),
        known=best is not None and best.known,
        head=head_told(best, reader),
        settings=settings_told(best.settings, reader, twice=True) if best else (),
        standing=standing_told(best, reader),
        counts=tally_told(best.tally, reader) if best else "",
        newest=newest_told(best, reader) if best else "",
        left_out=left_out_told(found, reader),
        failures=tuple(failure_told(each, reader) for each in found.failures),
        first_pass=first_pass_told(found, reader),
        elsewhere=tuple(elsewhere_told(each, reader) for each in found.elsewhere),
        next=next_told(after, reader),
        next_settings=settings_told(changed, reader, twice=True) if changed else (),
        charts=edge_charts(found, reader),
    )
