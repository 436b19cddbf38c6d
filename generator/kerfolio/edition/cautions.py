"""The usual cautions, one place for page, booklet and bundle: no training and no advice."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from kerfolio.assembly.stability_words import belongs_on_the_wall
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
from kerfolio.basis.words import listed
from kerfolio.edition.edition import Edition
from kerfolio.model.use import TABLE, WALL, is_seat, is_storage
from kerfolio.shop.noise import NIOSH, bearable_minutes


@dataclass(frozen=True, slots=True, kw_only=True)
class Caution:
    """A caution: what it is about, and its sentences."""

    head: str
    text: str


OPENING = (
    "Machines that cut wood can hurt you and those near you. What follows are the usual cautions, "
    "not training. The law and the codes of the place you live in, the manuals of your machines "
    "and licensed practice come first, always."
)

_USUAL: tuple[Caution, ...] = (
    Caution(
        head="Eyes and ears",
        text="Wear eye and hearing protection whenever a machine runs. Hearing is harmed by loud "
        f"hours added up: {NIOSH.body} recommends no more than {figure(NIOSH.level)} dB(A) over "
        f"eight hours, and half the time for every {figure(NIOSH.exchange)} dB more, which leaves "
        f"{figure(bearable_minutes(100, NIOSH))} minutes a day at 100 dB(A).",
    ),
    Caution(
        head="Dust",
        text="Wood dust can cause asthma, and hardwood dust can cause cancer, of the nose above "
        "all (HSE). Plywood and fibreboard often hold hardwood. Draw dust off where it is made; a "
        "mask adds to that and does not replace it. Do not sweep settled dust or blow it away. "
        "Fine dust can burn and explode.",
    ),
    Caution(
        head="Workholding",
        text="Hold the sheet, and every piece that comes free of it, so that nothing can move: "
        "small pieces need bridges to the sheet or a layer that holds them. Guide a hand-held "
        "router so that the cutter pulls against you. Let the cutter stop before you reach in. No "
        "loose sleeves.",
    ),
    Caution(
        head="Fire",
        text="Never leave a running machine alone: packed chips and a stalled cutter can start a "
        "fire.",
    ),
)
_LOADS = Caution(
    head="Loads",
    text="Any load named in this plan is an estimate with its assumptions beside it, never a "
    "rating. Nothing here was tested to a furniture standard. Toys and children’s furniture "
    "have standards of their own; this plan claims none.",
)

_EDGE = 25.0
"""A hole for the wall stays so far from an edge, mm (common practice, no single source)."""

_CLIMBING = "Do not climb on it."


def cautions_of(edition: Edition) -> tuple[Caution, ...]:
    """Return the usual cautions, with those on standing and tipping that fit the plan."""
    return (*_USUAL, *_standing(edition), _LOADS)


def _standing(edition: Edition) -> Iterator[Caution]:
    plan, stability = edition.plan, edition.stability
    tall = stability is not None and belongs_on_the_wall(stability, plan)
    if plan.placed == WALL or tall:
        yield Caution(head="Fixing to the wall", text=_fixing(edition, hung=plan.placed == WALL))
    if plan.placed == TABLE:
        yield Caution(
            head="On a table",
            text="It stands on a table: keep it back from the edge, and what is heavy low and far "
            "in. It can slide, and it tips where it is loaded high or on one side. Do not lean on "
            "it.",
        )
    if is_seat(plan):
        yield Caution(
            head="Sitting",
            text="Sit in the middle, with all its feet on a level floor. Do not stand on it, do "
            "not tilt it on two feet, and do not sit on its edge: that is where it tips.",
        )
    elif plan.uses and not is_storage(plan) and plan.placed != TABLE:
        yield Caution(
            head="Standing things on it",
            text="Set things down between its feet, the heaviest in the middle: a load on an edge "
            f"beyond the feet can tip it. {_CLIMBING}",
        )
    elif not tall and plan.placed not in (WALL, TABLE):
        yield Caution(
            head="Tipping over",
            text="Whatever is tall or shallow can tip, above all on carpet. Keep what is heavy "
            f"low. {_CLIMBING}",
        )


def _fixing(edition: Edition, *, hung: bool) -> str:
    """Return how it is fixed to the wall, with holes that meet studs where it is wide enough."""
    why = (
        "It hangs on the wall, and falls with what is on it where the fixing fails."
        if hung
        else "It is tall or shallow and can tip, above all on carpet or when a child climbs it."
    )
    return (
        f"{why} Fix it to the wall with a fixing that suits the wall. {_meeting(edition)}; look "
        f"for the studs, and for pipes and cables, before you bore. {_CLIMBING}"
    )


def _meeting(edition: Edition) -> str:
    """Return which studs its holes meet, or where to bore holes that do."""
    reader, width = edition.reader, _width(edition)
    met = _met(edition)
    if met:
        return f"Its holes meet studs that stand {_spaced(met, reader)} apart"
    reached = [each for each in STUDS if width is not None and each + 2 * _EDGE <= width]
    if reached:
        apart = _spaced(reached, reader)
        return f"Where studs stand {apart} apart, as is common, bore holes so far apart to meet two"
    return (
        f"Studs commonly stand {_spaced(STUDS, reader)} apart, and it is narrower or its width is "
        "not known: fix a batten across two of them and the piece to the batten"
    )


def _met(edition: Edition) -> tuple[float, ...]:
    """Return the spacings of studs that its own holes meet, if it is to hang on the wall."""
    if edition.plan.placed != WALL:
        return ()
    builds = [each.build for each in edition.made if each.build is not None]
    found = (studs_met(fixing_holes(each.settled, each.drawn.assembled)) for each in builds)
    return next(filter(None, found), ())


def _spaced(spacings: Sequence[float], reader: Reader) -> str:
    """Return spacings of studs, each in the unit it is common in: ``400 or 600 mm, or 16 in``."""
    metric = [mm_number(each) for each in spacings if each in METRIC_STUDS]
    inch = [inch_number(each) for each in spacings if each in INCH_STUDS]
    told = [(metric, "mm"), (inch, "in")] if reader.unit == "mm" else [(inch, "in"), (metric, "mm")]
    last = "or"
    return ", or ".join(f"{listed(numbers, last)} {unit}" for numbers, unit in told if numbers)


def _width(edition: Edition) -> float | None:
    return None if edition.stability is None else edition.stability.size[0]
