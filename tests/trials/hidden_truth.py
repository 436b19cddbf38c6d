"""A log invented from a truth that only the tests know.

The truth is common practice, no single source: each edge wants a chip of a certain thickness,
thinner ones burn, thicker ones chatter and tear. A compression cutter lifts the face with its
up-cut tip, so that a first pass no deeper than the tip fuzzes the top edge; a quarter-inch one in
three-quarter-inch plywood cuts crispest with a first pass of 0.31 in. A pass much deeper than the
cutter is wide chatters. An up-cut cutter fuzzes the top of plywood whatever it is told.
"""

from __future__ import annotations

import math
from dataclasses import replace
from datetime import date, timedelta
from functools import cache
from pathlib import Path
from random import Random
from tempfile import TemporaryDirectory

from kerfolio.model.outcome import Grade, Mark, Operation, Outcome
from kerfolio.model.router import Router
from kerfolio.model.statement import Named
from kerfolio.model.stock import Stock
from kerfolio.model.trial import Trial
from kerfolio.reading.workshop import read_workshop
from kerfolio.shop.settings import Settings
from kerfolio.trials.subject import Subject

PLYWOOD, COMPRESSION = "plywood-3-4", "compression-1-4in"
CRISPEST = 0.31 * 25.4
SHEETS = {PLYWOOD: 0.018, "birch-plywood-18": 0.018, "birch-plywood-12": 0.017, "mdf-18": 0.022}
"""Each sheet with the chip that suits it, as a share of the cutter's diameter."""
CUTTERS = (COMPRESSION, "compression-6", "down-cut-6", "up-cut-6", "down-cut-3")
MACHINE = Router(kind="light hobby", speed=(8_000.0, 24_000.0), feed=6_000.0, deepest=13.0)
BEGAN = date(2025, 1, 6)

_TRIALS = {(PLYWOOD, COMPRESSION): 26, ("birch-plywood-12", "compression-6"): 16}
"""How often the maker tried what is cut most; everything else is tried once or twice."""
_WORSE = (
    (0.30, Grade.CLEAN),
    (0.45, Grade.NEARLY_CLEAN),
    (0.75, Grade.TO_SAND),
    (1.1, Grade.TO_MEND),
)
"""How far a chip may be off, as the logarithm of its ratio, for each grade."""


@cache
def stock() -> Stock:
    """Return the shipped stock."""
    with TemporaryDirectory() as folder:
        (Path(folder) / "workshop.yaml").write_text("workshop: A\nmaker: B\n", "utf-8")
        workshop, _ = read_workshop(Path(folder), pictures=False)
    assert workshop is not None
    return workshop.stock


def subject(sheet: str = PLYWOOD, cutter: str = COMPRESSION) -> Subject:
    """Return a sheet and a cutter of the stock."""
    found = stock().sheet(sheet), stock().cutter(cutter)
    assert found[0]
    assert found[1]
    return Subject(sheet=found[0], cutter=found[1], operation=Operation.THROUGH)


def truth(of: Subject, chip: float, first: float) -> Outcome:
    """Return how a cut comes out in truth, by its chip load and its first pass, mm."""
    seen: list[tuple[Grade, Mark]] = []
    off = math.log(chip / (SHEETS[of.sheet.name] * of.cutter.diameter))
    grade = next((grade for most, grade in _WORSE if abs(off) <= most), Grade.SPOILED)
    seen.append((grade, Mark.BURN if off < 0 else Mark.CHATTER if off < 0.75 else Mark.TEAR_OUT))
    tip = of.cutter.up_cut_length
    if tip is not None and of.sheet.grain:
        seen.append((Grade.TO_SAND if first <= tip else Grade.CLEAN, Mark.FUZZ))
        if tip < first < tip + 0.6:
            seen.append((Grade.NEARLY_CLEAN, Mark.FUZZ))
    if of.cutter.kind == "up-cut" and of.sheet.grain:
        seen.append((Grade.TO_SAND, Mark.FUZZ))
    if first > 1.7 * of.cutter.diameter:
        seen.append((Grade.TO_SAND, Mark.CHATTER))
    worst = min(grade for grade, _ in seen)
    marks = tuple(mark for grade, mark in seen if grade is worst is not Grade.CLEAN)
    return Outcome(whole=worst, marks=tuple(dict.fromkeys(marks)))


def at(of: Subject, settings: Settings) -> Grade:
    """Return the true grade of settings."""
    found = truth(of, settings.chip, settings.first or of.cutter.diameter).grade
    assert found is not None
    return found


def wrongly(outcome: Outcome, chance: Random) -> Outcome:
    """Return some other verdict, and nothing seen."""
    others = [each for each in Grade if each is not outcome.whole]
    return Outcome(whole=chance.choice(others))


def trial(of: Subject, settings: Settings, day: int, outcome: Outcome) -> Trial:
    """Return an entry of the log."""
    return Trial(
        id=f"t{day}",
        date=BEGAN + timedelta(days=day),
        stock=Named(of.sheet.name),
        cutter=Named(of.cutter.name),
        speed_rpm=settings.speed,
        feed_mm_per_min=settings.feed,
        plunge_mm_per_min=settings.plunge,
        passes=settings.passes,
        outcome=outcome,
    )


def cut(of: Subject, settings: Settings, day: int, wrong: float, chance: Random) -> Trial:
    """Return what the maker logs after a cut; of all verdicts, a share is ``wrong``."""
    outcome = truth(of, settings.chip, settings.first or of.cutter.diameter)
    if chance.random() < wrong:
        outcome = wrongly(outcome, chance)
    return trial(of, settings, day, outcome)


def invented_log(seed: int, wrong: float = 0.0, times: int = 1) -> tuple[Trial, ...]:
    """Return a log as makers come by theirs: half of the trials vary the best so far a little.

    It has sixty trials at least, ``times`` as many where asked.
    """
    chance, trials = Random(seed), list[Trial]()
    for sheet in SHEETS:
        for cutter in CUTTERS:
            count = _TRIALS.get((sheet, cutter), chance.choice((1, 2))) * times
            trials += _tried(subject(sheet, cutter), count, len(trials), wrong, chance)
    return tuple(trials)


def _tried(of: Subject, count: int, day: int, wrong: float, chance: Random) -> list[Trial]:
    made: list[Trial] = []
    for number in range(count):
        best = max(made, key=lambda each: (each.grade or 0, each.date), default=None)
        settings = _anywhere(of, chance)
        if best is not None and chance.random() < 0.5:
            feed, speed = best.feed_mm_per_min or 1.0, best.speed_rpm or 1.0
            chip = feed / (speed * of.cutter.flutes) * math.exp(chance.uniform(-0.12, 0.12))
            first = (best.first_pass or 1.0) + chance.uniform(-0.6, 0.6)
            settings = replace(settings, speed=speed, passes=_down_to(of, first)).with_chip(chip)
        made.append(cut(of, settings, day + number, wrong, chance))
    return made


def _anywhere(of: Subject, chance: Random) -> Settings:
    wanted = SHEETS[of.sheet.name] * of.cutter.diameter
    chip = wanted * math.exp(chance.uniform(-1.2, 1.2))
    first = of.cutter.diameter * chance.choice((0.5, 0.75, 1.0, 1.24, 1.5, 2.0))
    speed = chance.choice((14_000.0, 16_000.0, 18_000.0))
    passes, flutes = _down_to(of, first), of.cutter.flutes
    return Settings(speed=speed, plunge=900.0, passes=passes, flutes=flutes).with_chip(chip)


def _down_to(of: Subject, first: float) -> tuple[float, ...]:
    return (min(first, of.sheet.actual), max(0.5, of.sheet.actual - first))


def written(log: tuple[Trial, ...]) -> str:
    """Return the log as its maker would have written it."""
    return "trials:\n" + "".join(f"  - {{{_written(each)}}}\n" for each in log)


def _written(each: Trial) -> str:
    grade, marks = each.outcome.whole, ", ".join(each.outcome.marks)
    assert grade is not None
    passes = ", ".join(f"{depth:.2f} mm" for depth in each.passes)
    return (
        f"id: {each.id}, date: {each.date}, stock: {each.stock}, cutter: {each.cutter},"
        f" speed: {each.speed_rpm:.0f} rpm, feed: {each.feed_mm_per_min:.0f} mm/min,"
        f" plunge: 900 mm/min, passes: [{passes}], outcome: {grade.word}, marks: [{marks}]"
    )
