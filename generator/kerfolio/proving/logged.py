"""Checks of cut settings against the maker's own log, and of the log against what a plan is now."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from itertools import accumulate

from kerfolio.basis.finding import Finding, Severity, note, warning
from kerfolio.basis.measures import depth, feed, number, precise, readings
from kerfolio.basis.reader import METRIC
from kerfolio.basis.said import Words, enumerated, said, strung
from kerfolio.basis.saying import day_text
from kerfolio.model.outcome import Grade
from kerfolio.model.plan import CutSetting
from kerfolio.model.trial import Trial
from kerfolio.proving.judged import Judged
from kerfolio.proving.rule import Stated, before
from kerfolio.shop.alike import Dial, unlike
from kerfolio.shop.cut_setting import REST
from kerfolio.shop.logged import Tried
from kerfolio.shop.outdated import Outdated
from kerfolio.shop.settings import Settings

Make = Callable[..., Finding]

_LOG = "the maker's own log"
_SHOWN = 3


@before(
    "cut-logged-poor",
    reason="What came out badly once comes out badly again.",
    source=_LOG,
    severity=Severity.WARNING,
)
def cuts_not_poor(stated: Stated) -> Iterator[Finding]:
    """Look for settings that the log has as bad, or as worse than ones it is sure of.

    Only entries of the same sheet material and cutter count, and of the same operation where both
    tell it.
    """
    for each in stated.log.judged:
        if each.asis.agrees and each.poor:
            yield _told(warning, "cut-logged-poor", each)


@before(
    "cut-logged-better",
    reason="The log has settings that came out better.",
    source=_LOG,
    severity=Severity.NOTE,
)
def cuts_as_good_as_logged(stated: Stated) -> Iterator[Finding]:
    """Look for settings that leave work to do where the log has better ones, or none."""
    for each in stated.log.judged:
        sands = each.asis.typical <= Grade.TO_SAND
        if each.asis.agrees and not each.poor and (sands or each.better is not None):
            yield _told(note, "cut-logged-better", each)


@before(
    "log-disagrees",
    reason="One setting with two outcomes says that something else decides.",
    source=_LOG,
    severity=Severity.NOTE,
)
def log_agrees(stated: Stated) -> Iterator[Finding]:
    """Look for settings of which the log says one thing and another: nothing is advised then."""
    for each in stated.log.judged:
        if each.asis.agrees:
            continue
        name, entries = each.cut.name, each.asis.entries
        best, worst = (
            next(one for one in entries if one.grade is grade)
            for grade in (each.asis.grades[-1], each.asis.grades[0])
        )
        message = said("`{}`: cut like this {}, yet {}", name, _came_out(best), _came_out(worst))
        advice = said(
            "Nothing is taken from that. Compare {}: the sheet, how worn the cutter was, how it "
            "was held, the direction.",
            _places((best, worst)),
        )
        yield note("log-disagrees", message, each.cut.place, advice, subject=name)


@before(
    "log-outdated",
    reason="A plan goes on; what was logged of it before was another sheet or another release.",
    source=_LOG,
    severity=Severity.NOTE,
)
def log_matches(stated: Stated) -> Iterator[Finding]:
    """Look for entries of the plan whose sheet or release is no longer the plan's."""
    found = stated.log.outdated
    if not found:
        return
    words = strung([said("`{}`: {}", trial.id, _why(why)) for trial, why in found[:_SHOWN]], "; ")
    if len(found) > _SHOWN:
        words = said("{}; and {} more", words, number("more", len(found) - _SHOWN))
    many = said("{} entries of the log are", number("entries", len(found)))
    what = many if len(found) > 1 else said("an entry of the log is")
    message = said("{} of another sheet or release than the plan", what)
    advice = said("{}. Cut settings are not compared with those of another sheet.", words)
    yield note("log-outdated", message, stated.plan.place, advice)


def _why(why: Outdated) -> Words:
    reasons = []
    if why.sheet:
        reasons.append(said("no sheet of the plan is `{}`", why.sheet))
    if why.thick is not None and why.now is not None:
        now = readings(("least", why.now[0]), ("most", why.now[1]))
        reasons.append(said("cut from {}, the plan is for {}", precise("cut", why.thick), now))
    if why.gone:
        reasons.append(said("of release {}, which the plan does not list", why.gone))
    if why.otherwise:
        reasons.append(said("release {} cuts it otherwise", why.otherwise))
    if why.since:
        words = "{} came since, and no record tells whether it is cut otherwise"
        reasons.append(said(words, enumerated(why.since)))
    return enumerated(reasons)


def _told(make: Make, rule: str, each: Judged) -> Finding:
    """Return what the log says of a setting, with the lines to write where it knows better."""
    name, asis, better = each.cut.name, each.asis, each.better
    newest = next(one for one in asis.entries if one.grade is asis.typical)
    came = said("`{}`: cut like this {}", name, _came_out(newest))
    if len(asis.entries) > 1:
        came = said("{} ({} cuts like it are logged)", came, number("cuts", len(asis.entries)))
    if better is None:
        advice = said(
            "Nothing better is logged with this sheet and cutter. Try another feed or first pass "
            "and log how it comes out. Logged in {}.",
            _places(asis.entries),
        )
        return make(rule, came, each.cut.place, advice, subject=name)
    changes = unlike(each.stated, better.settings, each.cutter)
    differs = enumerated([_in_words(dial, better.settings) for dial in changes])
    grade = f"`{better.typical.word}`"
    message = said("{}; with {} it came out {}, {}", came, differs, grade, _times(better))
    lines = enumerated([_line(dial, better.settings, each.cut) for dial in changes])
    advice = said("Write {}. Logged in {}.", lines, _places((*better.entries, newest)))
    return make(rule, message, each.cut.place, advice, subject=name)


def _came_out(trial: Trial) -> Words:
    """Return how an entry came out and when: ``came out `to sand` on 3 May 2026``."""
    grade = trial.grade.word if trial.grade else ""
    return said("came out `{}` on {}", grade, day_text(METRIC, trial.date))


def _times(tried: Tried) -> Words:
    """Return how often it was cut: ``twice``, ``3 times``."""
    count = len(tried.entries)
    if count <= len(_COUNTS):
        return said(_COUNTS[count - 1])
    return said("{} times", number("times", count))


_COUNTS = ("once", "twice")


def _in_words(dial: Dial, settings: Settings) -> Words:
    """Return a setting as a sentence tells it."""
    match dial:
        case Dial.FEED:
            return said("a feed of {}", feed("feed-then", settings.feed or 0.0))
        case Dial.SPEED:
            return said("{} rpm", number("speed-then", settings.speed or 0.0))
        case Dial.PASSES:
            return said("passes of {}", enumerated([*_depths(settings.passes)]))


def _line(dial: Dial, settings: Settings, cut: CutSetting) -> Words:
    """Return what to write into the cut setting: passes as depths from the face, as plans do."""
    match dial:
        case Dial.FEED:
            return said("`feed: {}`", feed("feed-then", settings.feed or 0.0))
        case Dial.SPEED:
            return said("`speed: {} rpm`", number("speed-then", settings.speed or 0.0))
        case Dial.PASSES:
            depths: list[Words] = [*_depths(accumulate(settings.passes))]
            if REST in cut.passes:
                depths[-1] = said(REST)
            return said("`passes: [{}]`", strung(depths, ", "))


def _depths(mm: Iterable[float]) -> Iterator[Words]:
    return (said("{}", depth("pass-then", each)) for each in mm)


def _places(entries: Sequence[Trial]) -> Words:
    """Return where entries stand, the first few."""
    places = [str(each.place) for each in entries[:_SHOWN]]
    return (
        said("{} and more", strung(places, ", ")) if len(entries) > _SHOWN else enumerated(places)
    )
