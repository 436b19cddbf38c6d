"""Charts of the private log: how edges and fits came out, how thick sheets were."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass

from markupsafe import Markup

from kerfolio.basis.cutting_lengths import chip_in, depth_in, fit_in
from kerfolio.basis.figures import figure
from kerfolio.basis.lengths import INCH
from kerfolio.basis.names import name_of
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import day_text, say
from kerfolio.basis.thickness import reading_in
from kerfolio.drawing.chart_view import Chart, Dot, Line, Ruler, Sign, chart_view
from kerfolio.model.outcome import Feel, Grade
from kerfolio.model.stock import Stock
from kerfolio.model.trial import Trial
from kerfolio.pages.document import ShownFigure, drawn_figure
from kerfolio.shop.settings import Settings
from kerfolio.trials.best import Answer
from kerfolio.trials.chances import tally
from kerfolio.trials.cut import Cut
from kerfolio.trials.log import newest_first
from kerfolio.trials.outcome_told import grade_told, marks_told
from kerfolio.trials.ranking import Best
from kerfolio.trials.told import subject_told, tally_told
from kerfolio.writing.svg import inline_svg

LEAST = 3
"""Cuts that are worth a chart."""
MOST = 120
"""Cuts that a chart shows, and the table behind it."""

_GRADES = tuple(reversed(Grade))
_SIGNS = dict(zip(_GRADES, Sign, strict=True))
_FEELS = tuple(reversed(Feel))
_FEEL_SIGNS = {
    Feel.STUCK: Sign.SQUARE,
    Feel.BY_MALLET: Sign.RING,
    Feel.BY_PALM: Sign.DISC,
    Feel.BY_HAND: Sign.RING,
    Feel.RATTLES: Sign.SQUARE,
}
"""The firm push of a palm is what most joints are meant to take."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TableRow:
    """A row of the table behind a chart; ``id`` is the entry that its first cell leads to."""

    id: str
    cells: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ChartView:
    """A chart ready to set, with the table that says the same."""

    title: str
    figure: ShownFigure
    heads: tuple[str, ...]
    rows: tuple[TableRow, ...]


def edge_charts(found: Answer, reader: Reader) -> tuple[ChartView, ...]:
    """Return the edge over the chip load and over the first pass, where there is enough to see."""
    cuts = found.cuts[:MOST]
    if len(cuts) < LEAST:
        return ()
    best = found.best if found.best and found.best.promising else None
    tip = found.subject.cutter.up_cut_length
    made = [_edges(found, "chip", cuts, lambda each: each.chip, best, (), reader)]
    deep = [each for each in cuts if each.settings.first]
    if len(deep) >= LEAST:
        lines = (Line(value=tip, words=say(reader, "logbest-line-tip")),) if tip else ()
        made.append(
            _edges(found, "first", deep, lambda each: each.first or 0.0, best, lines, reader)
        )
    return tuple(made)


def _edges(
    found: Answer,
    what: str,
    cuts: Sequence[Cut],
    value: Callable[[Settings], float],
    best: Best | None,
    lines: tuple[Line, ...],
    reader: Reader,
) -> ChartView:
    alike = [value(each.settings) for each in best.cuts if value(each.settings)] if best else []
    counts = tally_told(tally(each.grade for each in cuts), reader)
    chart = Chart(
        title=f"{say(reader, f'logbest-chart-{what}')}: {subject_told(found.subject, reader)}",
        description=say(reader, "logbest-described", count=len(cuts), counts=counts),
        rows=tuple(grade_told(each, reader) for each in _GRADES),
        scale=say(reader, f"logbest-scale-{what}", unit=reader.unit),
        dots=tuple(
            Dot(value=value(each.settings), row=_GRADES.index(each.grade), sign=_SIGNS[each.grade])
            for each in cuts
        ),
        zone=_zone(alike),
        lines=lines,
        ratios=what == "chip",
        ruler=_ruler(reader),
    )
    return ChartView(
        title=say(reader, f"logbest-chart-{what}"),
        figure=_drawn(chart, _edge_caption(found, len(cuts), alike, reader)),
        heads=_heads(
            reader, "logbest-col-day", "logbest-chip", "logbest-first", "logbest-col-grade"
        ),
        rows=tuple(_cut_row(each, reader) for each in cuts),
    )


def _zone(alike: Sequence[float]) -> tuple[float, float] | None:
    """Return the stretch that what is alike covers; a little more where that is one place."""
    if not alike:
        return None
    return min(alike) * 0.98, max(alike) * 1.02


def _edge_caption(
    found: Answer, shown: int, alike: Sequence[float], reader: Reader
) -> Iterator[str]:
    yield say(reader, "logbest-dots", dots="grades")
    if alike:
        yield say(reader, "logbest-zone")
    if shown < len(found.cuts):
        yield say(reader, "logbest-chart-drawn", shown=shown, count=len(found.cuts))


def _cut_row(each: Cut, reader: Reader) -> TableRow:
    first, marks = each.settings.first, marks_told(each.trial.outcome.marks, reader)
    grade = grade_told(each.grade, reader)
    return TableRow(
        id=each.trial.id,
        cells=(
            day_text(reader, each.trial.date),
            chip_in(each.settings.chip, reader),
            depth_in(first, reader) if first else "",
            f"{grade}: {marks}" if marks else grade,
        ),
    )


def fit_chart(trials: Iterable[Trial], reader: Reader) -> ChartView | None:
    """Return how joints went together over their clearance; None where too few were tried."""
    tried = [
        (each, each.fit, each.went)
        for each in newest_first(trials)
        if each.fit is not None and each.went is not None
    ][:MOST]
    if len(tried) < LEAST:
        return None
    title = say(reader, "logbest-chart-fit")
    dots = tuple(
        Dot(value=fit, row=_FEELS.index(went), sign=_FEEL_SIGNS[went]) for _, fit, went in tried
    )
    words = [_feel(each, reader) for each in _FEELS]
    chart = Chart(
        title=title,
        description=say(reader, "logbest-described", count=len(tried), counts=", ".join(words)),
        rows=tuple(words),
        scale=say(reader, "logbest-scale-fit", unit=reader.unit),
        dots=dots,
        ruler=_ruler(reader),
    )
    return ChartView(
        title=title,
        figure=_drawn(chart, ()),
        heads=_heads(reader, "logbest-col-day", "logbest-col-fit", "logbest-col-went"),
        rows=tuple(
            TableRow(
                id=each.id,
                cells=(day_text(reader, each.date), fit_in(fit, reader), _feel(went, reader)),
            )
            for each, fit, went in tried
        ),
    )


def _feel(feel: Feel, reader: Reader) -> str:
    return say(reader, "logbest-went", feel=name_of(feel.word))


def thickness_charts(
    trials: Iterable[Trial], stock: Stock, reader: Reader
) -> tuple[ChartView, ...]:
    """Return what sheets measured, a chart for each material, a row for each batch."""
    batches: dict[str, list[Trial]] = {}
    for each in newest_first(trials):
        if each.batch is not None and each.batch.readings and each.stock is not None:
            batches.setdefault(each.stock.name, []).append(each)
    return tuple(
        _thickness(sheet, batches[sheet][:_BATCHES], stock, reader) for sheet in sorted(batches)
    )


_BATCHES = 12


def _thickness(sheet: str, found: Sequence[Trial], stock: Stock, reader: Reader) -> ChartView:
    stocked = stock.sheet(sheet)
    name = stocked.title if stocked else sheet
    title = f"{say(reader, 'logbest-chart-thick')}: {name}"
    rows = [(each.batch.name if each.batch else "") or each.date.isoformat() for each in found]
    dots = tuple(
        Dot(value=reading, row=row, sign=Sign.RING)
        for row, each in enumerate(found)
        for reading in (each.batch.readings if each.batch else ())
    )
    sold = reading_in(stocked.nominal, reader) if stocked else ""
    lines = (Line(value=stocked.nominal, words=sold),) if stocked else ()
    chart = Chart(
        title=title,
        description=", ".join(rows),
        rows=tuple(each[:_SHORT] for each in rows),
        scale=say(reader, "logbest-scale-thick", unit=reader.unit),
        dots=dots,
        lines=lines,
        ruler=_ruler(reader),
    )
    return ChartView(
        title=title,
        figure=_drawn(chart, (say(reader, "logbest-dots", dots="readings"),)),
        heads=_heads(
            reader,
            *("logbest-col-day", "logbest-col-batch", "logbest-col-readings"),
            "logbest-col-moisture",
        ),
        rows=tuple(_batch_row(each, row, reader) for each, row in zip(found, rows, strict=True)),
    )


_SHORT = 16
"""Letters of a batch's name beside its row."""


def _batch_row(each: Trial, name: str, reader: Reader) -> TableRow:
    batch = each.batch
    readings = ", ".join(reading_in(mm, reader) for mm in batch.readings) if batch else ""
    damp = batch.moisture if batch else None
    moisture = "" if damp is None else f"{figure(damp, 1, reader)} %"
    return TableRow(id=each.id, cells=(day_text(reader, each.date), name, readings, moisture))


def _heads(reader: Reader, *names: str) -> tuple[str, ...]:
    return tuple(say(reader, each) for each in names)


def _ruler(reader: Reader) -> Ruler:
    return Ruler(per=INCH if reader.unit == "in" else 1.0, mark=reader.mark)


def _drawn(chart: Chart, captions: Iterable[str]) -> ShownFigure:
    # The markup comes from our own SVG writer, which escapes every word of the maker's.
    svg = Markup(inline_svg(chart_view(chart)))
    return drawn_figure(svg, caption=Markup(" ").join(captions))
