"""The usual cautions, one place for page, booklet and bundle: no training and no advice."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from kerfolio.assembly.stability_words import belongs_on_the_wall
from kerfolio.assembly.wall import board_on_wall
from kerfolio.assembly.wall_holes import (
    INCH_STUDS,
    METRIC_STUDS,
    STUDS,
    fixing_holes,
    studs_met,
)
from kerfolio.basis.figures import figure
from kerfolio.basis.lengths import inch_number, mm_number
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import listed, say
from kerfolio.edition.edition import Edition
from kerfolio.model.use import TABLE, WALL, is_seat, is_storage
from kerfolio.settling.titles import board_title
from kerfolio.shop.noise import NIOSH, bearable_minutes


@dataclass(frozen=True, slots=True, kw_only=True)
class Caution:
    """A caution: what it is about, and its sentences."""

    head: str
    text: str


_ALWAYS = ("eyes", "dust", "holding", "fire")
"""What is said of every plan, in this order, by the names of its messages."""

_EDGE = 25.0
"""A hole for the wall stays so far from an edge, mm (common practice, no single source)."""


def opening_words(reader: Reader) -> str:
    """Return what stands before them: that they are no training, and what comes first."""
    return say(reader, "cautions-opening")


def cautions_of(edition: Edition) -> tuple[Caution, ...]:
    """Return the usual cautions, with those on standing and tipping that fit the plan."""
    reader = edition.reader
    usual = (_caution(reader, each, _noise(reader, each)) for each in _ALWAYS)
    return (*usual, *_standing(edition), _caution(reader, "loads"))


def _caution(reader: Reader, name: str, text: str = "") -> Caution:
    return Caution(
        head=say(reader, f"cautions-{name}"), text=text or say(reader, f"cautions-{name}-text")
    )


def _noise(reader: Reader, name: str) -> str:
    """Return the caution that tells figures: those of noise."""
    if name != "eyes":
        return ""
    return say(
        reader,
        "cautions-eyes-text",
        body=NIOSH.body,
        level=figure(NIOSH.level, reader=reader),
        more=figure(NIOSH.exchange, reader=reader),
        minutes=figure(bearable_minutes(100, NIOSH), reader=reader),
    )


def _standing(edition: Edition) -> Iterator[Caution]:
    plan, stability, reader = edition.plan, edition.stability, edition.reader
    tall = stability is not None and belongs_on_the_wall(stability, plan)
    if plan.placed == WALL or tall:
        yield _caution(reader, "wall", _fixing(edition, hung=plan.placed == WALL))
    if plan.placed == TABLE:
        yield _caution(reader, "table")
    if is_seat(plan):
        yield _caution(reader, "sitting")
    elif plan.uses and not is_storage(plan) and plan.placed != TABLE:
        yield _caution(reader, "standing")
    elif not tall and plan.placed not in (WALL, TABLE):
        yield _caution(reader, "tipping")


def _fixing(edition: Edition, *, hung: bool) -> str:
    """Return how it is fixed to the wall, with holes that meet studs where it is wide enough."""
    reader, meeting = edition.reader, _meeting(edition)
    return say(reader, "cautions-hung" if hung else "cautions-tall", meeting=meeting)


def _meeting(edition: Edition) -> str:
    """Return which studs its holes meet, or where to bore holes that do."""
    reader, width = edition.reader, _width(edition)
    board = _board(edition)
    if board:
        apart = _spaced(STUDS, reader)
        return say(reader, "cautions-on-board", board=board_title(board), apart=apart)
    met = _met(edition)
    if met:
        return say(reader, "cautions-met", apart=_spaced(met, reader))
    reached = [each for each in STUDS if width is not None and each + 2 * _EDGE <= width]
    if reached:
        return say(reader, "cautions-reached", apart=_spaced(reached, reader))
    return say(reader, "cautions-batten", apart=_spaced(STUDS, reader))


def _met(edition: Edition) -> tuple[float, ...]:
    """Return the spacings of studs that its own holes meet, if it is to hang on the wall."""
    if edition.plan.placed != WALL:
        return ()
    builds = [each.build for each in edition.made if each.build is not None]
    found = (studs_met(fixing_holes(each.settled, each.drawn.assembled)) for each in builds)
    return next(filter(None, found), ())


def _board(edition: Edition) -> str:
    """Return the board that it is fixed to the wall by, empty where there is none."""
    for each in edition.made:
        if each.build is not None:
            name = board_on_wall(each.settled, each.build.drawn.assembled)
            if name:
                return name
    return ""


def _spaced(spacings: Sequence[float], reader: Reader) -> str:
    """Return spacings of studs, each in the unit it is common in: ``400 or 600 mm, or 16 in``."""
    metric = [mm_number(each) for each in spacings if each in METRIC_STUDS]
    inch = [inch_number(each) for each in spacings if each in INCH_STUDS]
    told = [(metric, "mm"), (inch, "in")] if reader.unit == "mm" else [(inch, "in"), (metric, "mm")]
    known = [f"{listed(reader, numbers, 'or')} {unit}" for numbers, unit in told if numbers]
    if len(known) < 2:
        return known[0]
    return say(reader, "cautions-spacings", one=known[0], other=known[1])


def _width(edition: Edition) -> float | None:
    return None if edition.stability is None else edition.stability.size[0]
