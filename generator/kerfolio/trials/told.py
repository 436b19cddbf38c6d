"""What the log answers, in words: once for the command, the private page and the settings card."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import groupby

from kerfolio.basis.cutting_lengths import chip_in, chip_pair, depth_in, depth_text, feed_in
from kerfolio.basis.figures import whole_figure
from kerfolio.basis.lengths import both
from kerfolio.basis.names import name_of
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import day_text, say
from kerfolio.shop.settings import Settings
from kerfolio.trials.best import Answer, Elsewhere
from kerfolio.trials.chances import Tally
from kerfolio.trials.next_trial import Next
from kerfolio.trials.outcome_told import grade_told, marks_told
from kerfolio.trials.ranking import GOOD, Best, Failure
from kerfolio.trials.subject import Subject

Pairs = tuple[tuple[str, str], ...]
"""What is set, and to what."""


def subject_told(subject: Subject, reader: Reader) -> str:
    """Return ``Compression cutter 6 mm on Birch plywood 18 mm``."""
    return say(reader, "logbest-on", cutter=subject.cutter.title, sheet=subject.sheet.title)


def operation_told(subject: Subject, reader: Reader) -> str:
    """Return what is cut, as a heading."""
    return say(reader, "logbest-operation", operation=name_of(subject.operation.value))


def tally_told(counted: Tally, reader: Reader) -> str:
    """Return how many came out as what, the best first: ``4 × Clean, 1 × To sand``."""
    return ", ".join(
        say(reader, "logbest-count", count=count, grade=grade_told(grade, reader))
        for grade, count in counted.seen
    )


def settings_told(settings: Settings, reader: Reader, *, twice: bool = False) -> Pairs:
    """Return what a machine is told, in the reader's unit, or ``twice``: in the other one, too."""
    feed, depth = (_feed_twice, depth_text) if twice else (feed_in, depth_in)
    chip = both(chip_pair(settings.chip, reader)) if twice else chip_in(settings.chip, reader)
    rest = [
        f"{count} × {text}" if count > 1 else text
        for text, count in _alike([depth(each, reader) for each in settings.passes[1:]])
    ]
    found = (
        ("trials-set-feed", feed(settings.feed, reader) if settings.feed else ""),
        ("trials-set-speed", speed_told(settings.speed, reader)),
        ("logbest-chip", chip),
        ("trials-set-plunge", feed(settings.plunge, reader) if settings.plunge else ""),
        ("logbest-first", depth(settings.first, reader) if settings.first else ""),
        ("logbest-rest", ", ".join(rest)),
        ("logbest-direction", way_told(settings.climb, reader)),
    )
    return tuple((say(reader, name), value) for name, value in found if value)


def speed_told(rpm: float | None, reader: Reader) -> str:
    """Return a speed, empty where nobody says it."""
    return say(reader, "trials-rpm", speed=whole_figure(rpm)) if rpm else ""


def way_told(climb: bool | None, reader: Reader) -> str:
    """Return a direction of cut, empty where nobody says it."""
    return "" if climb is None else say(reader, "logbest-way", climb="yes" if climb else "no")


def in_one_line(settings: Settings, reader: Reader) -> str:
    """Return the same in a line."""
    return " · ".join(f"{name} {value}" for name, value in settings_told(settings, reader))


def _feed_twice(mm_per_min: float, reader: Reader) -> str:
    return both((feed_in(mm_per_min, reader.both[0]), feed_in(mm_per_min, reader.both[1])))


def _alike(texts: Sequence[str]) -> list[tuple[str, int]]:
    return [(text, len([*same])) for text, same in groupby(texts)]


def standing_told(best: Best | None, reader: Reader) -> str:
    """Return how sure the best settings are, or that nothing is known."""
    if best is None:
        return say(reader, "logbest-nothing")
    counts = {"well": best.well, "total": best.tally.total}
    if best.known:
        low, high = best.within
        return say(
            reader,
            "logbest-known",
            **counts,
            low=_hundredths(low, down=True),
            high=_hundredths(high),
        )
    if best.promising:
        return say(reader, "logbest-promising", **counts, needed=best.needed)
    return say(reader, "logbest-poor", **counts)


def _hundredths(share: float, *, down: bool = False) -> int:
    return math.floor(100 * share) if down else math.ceil(100 * share)


def head_told(best: Best | None, reader: Reader) -> str:
    """Return the heading above the best settings."""
    known = best is not None and best.known
    return say(reader, "logbest-head-best" if known else "logbest-head-so-far")


def left_out_told(found: Answer, reader: Reader) -> str:
    """Return how many entries were not compared; empty for none."""
    count = len(found.left_out)
    return say(reader, "logbest-left-out", count=count) if count else ""


def towards_told(failure: Failure, reader: Reader) -> str:
    """Return which way a failure lies, and how far: ``A thicker chip, 0.3 mm``."""
    settings, axis = failure.settings, failure.axis
    first = depth_in(settings.first, reader) if settings.first else ""
    then = depth_in(settings.later, reader) if settings.later else ""
    speed = speed_told(settings.speed, reader)
    told = {"chip": chip_in(settings.chip, reader), "first": first, "then": then, "speed": speed}
    return say(reader, "logbest-towards", axis=axis.value, **told)


def seen_told(failure: Failure, reader: Reader) -> str:
    """Return how a failure came out, and what was seen: ``2 × To mend, chatter``."""
    parts = (tally_told(failure.tally, reader), marks_told(failure.marks, reader))
    return ", ".join(filter(None, parts))


def failure_told(failure: Failure, reader: Reader) -> str:
    """Return a failure in a line."""
    settings, seen = towards_told(failure, reader), seen_told(failure, reader)
    return say(reader, "logbest-failure", settings=settings, seen=seen)


def first_pass_told(found: Answer, reader: Reader) -> tuple[str, ...]:
    """Return the trade's rule for the first pass, and what the log has seen of it."""
    cutter, seen = found.subject.cutter, found.tip
    if cutter.up_cut_length is None:
        diameter = depth_in(cutter.diameter, reader)
        return (say(reader, "logbest-diameter-rule", diameter=diameter),)
    rule = say(reader, "logbest-tip-rule", tip=depth_in(cutter.up_cut_length, reader))
    if seen is None:
        return (rule,)
    counts = {
        "deeper": seen.deeper.at_least(GOOD),
        "deeper-all": seen.deeper.total,
        "within": seen.within.at_least(GOOD),
        "within-all": seen.within.total,
    }
    return rule, say(reader, "logbest-tip-seen", **counts)


def next_told(wanted: Next, reader: Reader) -> str:
    """Return what to try next, and why; its settings apart."""
    mark = marks_told((wanted.mark,), reader) if wanted.mark else ""
    cure = say(reader, "logbest-cure", axis=wanted.axis.value) if wanted.axis else ""
    why = name_of(wanted.why.value)
    return say(reader, "logbest-next", why=why, times=wanted.times, mark=mark, cure=cure)


def elsewhere_told(found: Elsewhere, reader: Reader) -> str:
    """Return what came out well on a sheet alike."""
    return say(
        reader,
        "logbest-elsewhere",
        sheet=found.subject.sheet.title,
        well=found.best.well,
        total=found.best.tally.total,
        settings=in_one_line(found.best.settings, reader),
    )


def newest_told(best: Best, reader: Reader) -> str:
    """Return the day of the newest cut behind the best settings."""
    return day_text(reader, max(each.trial.date for each in best.cuts))
