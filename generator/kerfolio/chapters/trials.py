"""Test cuts: what the maker tried on the way, with settings and outcome."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping

from kerfolio.basis.cutting_lengths import depth_text
from kerfolio.basis.figures import whole_figure
from kerfolio.basis.lengths import MM_PER_UNIT
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import day_text, listed, say
from kerfolio.basis.thickness import thickness_text
from kerfolio.chapters.quantities import told
from kerfolio.chapters.shots import shot
from kerfolio.document.blocks import (
    Block,
    Cell,
    Column,
    Dated,
    Fact,
    Facts,
    Heading,
    Manner,
    Paragraph,
    Row,
    Size,
    Table,
    Told,
)
from kerfolio.document.chapter import Chapter, Soon
from kerfolio.edition.edition import Edition
from kerfolio.model.outcome import Grade
from kerfolio.model.stock import Stock
from kerfolio.model.trial import Trial
from kerfolio.releasing.recut import cut_since
from kerfolio.shop.logged import Tried, cut_alike
from kerfolio.shop.outdated import Outdated, now_settled, outdated_of
from kerfolio.trials.outcome_told import grade_told, outcome_told
from kerfolio.trials.told import speed_told, way_told


def trials(edition: Edition) -> Chapter | None:
    """Return the trials that the maker made public, newest first; None where there are none."""
    if not edition.trials:
        return None
    mind = say(edition.reader, "trials-mind")
    blocks: list[Block] = [Paragraph(words=mind, manner=Manner.SMALL)]
    now = now_settled(edition.settled, cut_since(edition.settled.plan.records))
    gone = {each.id: why for each, why in outdated_of(edition.trials, now)}
    blocks += as_cut(edition, gone)
    for each in edition.trials:
        blocks += _trial(each, edition, gone.get(each.id, Outdated()))
    title = say(edition.reader, "trials-title")
    return Chapter(id="trials", title=title, blocks=tuple(blocks), soon=Soon.BACKGROUND)


def as_cut(edition: Edition, gone: Mapping[str, Outdated]) -> Iterator[Block]:
    """Yield the settings that were cut, how often and how it came out, the best first.

    Of entries on another sheet than the plan is cut from now nothing is told here.
    """
    reader, stock = edition.reader, edition.settled.stock
    pairs: dict[tuple[str, str], list[Trial]] = {}
    for each in edition.trials:
        known = each.stock and each.cutter and each.grade and each.feed_mm_per_min is not None
        if known and not gone.get(each.id, Outdated()).of_another_sheet:
            pairs.setdefault((str(each.stock), str(each.cutter)), []).append(each)
    found = [
        (_of_stock(each[0], stock), tried)
        for (_, name), each in pairs.items()
        if (cutter := stock.cutter(name)) is not None
        for tried in cut_alike(each, cutter)
    ]
    if not found:
        return
    found.sort(key=lambda each: (-each[1].typical, -len(each[1].entries)))
    yield Heading(words=say(reader, "trials-as-cut"), id="as-cut")
    yield Table(
        title=say(reader, "trials-as-cut"),
        columns=(
            Column(head=say(reader, "trials-as-cut-with")),
            Column(head=say(reader, "trials-as-cut-set")),
            Column(head=say(reader, "trials-as-cut-out")),
        ),
        rows=tuple(_tried(pair, tried, edition) for pair, tried in found),
    )


def _tried(pair: tuple[str, ...], tried: Tried, edition: Edition) -> Row:
    reader, settings = edition.reader, tried.settings
    told_of = (
        ("feed", _feed(settings.feed, reader)),
        ("plunge", _feed(settings.plunge, reader)),
        ("passes", _passes(settings.passes, reader)),
        ("direction", way_told(settings.climb, reader)),
    )
    below = tuple(
        told(say(reader, f"trials-as-cut-{name}", value=value)) for name, value in told_of if value
    )
    sheet, *cutter = pair
    chief = speed_told(settings.speed, reader)
    how = Cell(words=chief, below=below) if chief else Cell(words=below[0], below=below[1:])
    return Row(cells=(Cell(words=sheet, below=tuple(cutter)), how, counted_grades(tried, reader)))


def counted_grades(tried: Tried, reader: Reader) -> str:
    """Return how often entries came out how, the best first: ``2 × Clean, 1 × To sand``."""
    counts = Counter(tried.grades)
    each = [
        say(reader, "trials-counted", count=counts[grade], grade=grade_told(grade, reader))
        for grade in reversed(Grade)
        if counts[grade]
    ]
    return listed(reader, each)


def outdated_words(why: Outdated, stock: Stock, reader: Reader) -> str:
    """Return why an entry no longer matches its plan, in sentences; empty where it does."""
    found = []
    if why.sheet:
        sheet = stock.sheet(why.sheet)
        found.append(say(reader, "trials-gone-sheet", sheet=sheet.title if sheet else why.sheet))
    if why.thick is not None and why.now is not None:
        least, most = (thickness_text(mm, reader) for mm in why.now)
        thick, same = thickness_text(why.thick, reader), "one" if least == most else "range"
        words = say(reader, "trials-gone-thick", now=same, thick=thick, least=least, most=most)
        found.append(words)
    if why.gone:
        found.append(say(reader, "trials-gone-release", release=why.gone))
    if why.otherwise:
        found.append(say(reader, "trials-gone-otherwise", release=why.otherwise))
    if why.since:
        found.append(say(reader, "trials-gone-since", releases=listed(reader, why.since)))
    return " ".join(found)


def _trial(each: Trial, edition: Edition, why: Outdated) -> Iterator[Block]:
    words = outcome_told(each.outcome, edition.reader)
    yield Dated(
        day=day_text(edition.reader, each.date),
        iso=each.date.isoformat(),
        head=title_of(each, edition.settled.stock, edition.reader),
        words=f"{words}." if words else "",
        id=f"trial-{each.id}",
    )
    if why:
        past = outdated_words(why, edition.settled.stock, edition.reader)
        yield Paragraph(words=told(past), manner=Manner.SMALL)
    known = settings(each, edition.settled.stock, edition.reader)
    if known:
        yield Facts(facts=tuple(Fact(head=name, lines=((told(value),),)) for name, value in known))
    if each.text:
        yield Told(prose=each.text)
    if each.photo is not None:
        yield shot(each.photo, edition.reader, Size.HALF)


def title_of(trial: Trial, stock: Stock, reader: Reader) -> str:
    """Return what an entry is called: as stated, else its sheet and cutter."""
    return trial.title or " · ".join(_of_stock(trial, stock)) or day_text(reader, trial.date)


def _of_stock(trial: Trial, stock: Stock) -> tuple[str, ...]:
    """Return the titles of a trial's sheet and cutter, those that are known."""
    sheet = stock.sheet(trial.stock.name) if trial.stock else None
    cutter = stock.cutter(trial.cutter.name) if trial.cutter else None
    found = (
        sheet.title if sheet else str(trial.stock or ""),
        cutter.title if cutter else str(trial.cutter or ""),
    )
    return tuple(filter(None, found))


def settings(trial: Trial, stock: Stock, reader: Reader) -> tuple[tuple[str, str], ...]:
    """Return what is known of a trial's settings, each with its name; the reader's unit first."""
    sheet = stock.sheet(trial.stock.name) if trial.stock else None
    cutter = stock.cutter(trial.cutter.name) if trial.cutter else None
    found = (
        ("sheet", sheet.title if sheet else str(trial.stock or "")),
        ("measured", _thick(trial.thickness, reader)),
        ("cutter", cutter.title if cutter else str(trial.cutter or "")),
        ("speed", speed_told(trial.speed_rpm, reader)),
        ("feed", _feed(trial.feed_mm_per_min, reader)),
        ("plunge", _feed(trial.plunge_mm_per_min, reader)),
        ("passes", _passes(trial.passes, reader)),
        ("fit", _thick(trial.fit, reader)),
    )
    return tuple((say(reader, f"trials-set-{name}"), value) for name, value in found if value)


def _thick(mm: float | None, reader: Reader) -> str:
    return "" if mm is None else thickness_text(mm, reader)


def _feed(mm_per_min: float | None, reader: Reader) -> str:
    if mm_per_min is None:
        return ""
    metric = f"{whole_figure(mm_per_min)} mm/min"
    inch = f"{whole_figure(mm_per_min / float(MM_PER_UNIT['in']))} in/min"
    return f"{metric} ({inch})" if reader.unit == "mm" else f"{inch} ({metric})"


def _passes(depths: tuple[float, ...], reader: Reader) -> str:
    return listed(reader, [depth_text(depth, reader) for depth in depths])
