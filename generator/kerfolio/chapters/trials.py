"""Test cuts: what the maker tried on the way, with settings and outcome."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.cutting_lengths import depth_text
from kerfolio.basis.figures import whole_figure
from kerfolio.basis.lengths import MM_PER_UNIT
from kerfolio.basis.reader import Reader
from kerfolio.basis.thickness import thickness_text
from kerfolio.basis.words import day_text, listed
from kerfolio.chapters.quantities import told
from kerfolio.chapters.shots import shot
from kerfolio.document.blocks import Block, Dated, Fact, Facts, Manner, Paragraph, Size, Told
from kerfolio.document.chapter import Chapter, Soon
from kerfolio.edition.edition import Edition
from kerfolio.model.stock import Stock
from kerfolio.model.trial import Trial

_MIND = (
    "What the maker tried on the way. Settings of one machine and one sheet: start lower on yours."
)


def trials(edition: Edition) -> Chapter | None:
    """Return the trials that the maker made public, newest first; None where there are none."""
    if not edition.trials:
        return None
    blocks: list[Block] = [Paragraph(words=_MIND, manner=Manner.SMALL)]
    for number, each in enumerate(edition.trials, start=1):
        blocks += _trial(each, number, edition)
    return Chapter(id="trials", title="Test cuts", blocks=tuple(blocks), soon=Soon.BACKGROUND)


def _trial(each: Trial, number: int, edition: Edition) -> Iterator[Block]:
    yield Dated(
        day=day_text(each.date),
        iso=each.date.isoformat(),
        head=each.title,
        words=f"{each.outcome[:1].upper()}{each.outcome[1:]}." if each.outcome else "",
        id=f"trial-{number}",
    )
    known = settings(each, edition.settled.stock, edition.reader)
    if known:
        yield Facts(facts=tuple(Fact(head=name, lines=((told(value),),)) for name, value in known))
    if each.text:
        yield Told(prose=each.text)
    if each.photo is not None:
        yield shot(each.photo, Size.HALF)


def settings(trial: Trial, stock: Stock, reader: Reader) -> tuple[tuple[str, str], ...]:
    """Return what is known of a trial's settings, each with its name; the reader's unit first."""
    sheet = stock.sheet(trial.stock.name) if trial.stock else None
    cutter = stock.cutter(trial.cutter.name) if trial.cutter else None
    found = (
        ("Sheet", sheet.title if sheet else str(trial.stock or "")),
        ("Measured", _thick(trial.thickness, reader)),
        ("Cutter", cutter.title if cutter else str(trial.cutter or "")),
        ("Speed", "" if trial.speed_rpm is None else f"{whole_figure(trial.speed_rpm)} rpm"),
        ("Feed", _feed(trial.feed_mm_per_min, reader)),
        ("Plunge", _feed(trial.plunge_mm_per_min, reader)),
        ("Passes", _passes(trial.passes, reader)),
        ("Fit a side", _thick(trial.fit, reader)),
    )
    return tuple((name, value) for name, value in found if value)


def _thick(mm: float | None, reader: Reader) -> str:
    return "" if mm is None else thickness_text(mm, reader)


def _feed(mm_per_min: float | None, reader: Reader) -> str:
    if mm_per_min is None:
        return ""
    metric = f"{whole_figure(mm_per_min)} mm/min"
    inch = f"{whole_figure(mm_per_min / float(MM_PER_UNIT['in']))} in/min"
    return f"{metric} ({inch})" if reader.unit == "mm" else f"{inch} ({metric})"


def _passes(depths: tuple[float, ...], reader: Reader) -> str:
    return listed([depth_text(depth, reader) for depth in depths])
