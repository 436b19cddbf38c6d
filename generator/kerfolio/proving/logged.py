"""Checks of cut settings against the maker's own log, and of the log against what a plan is now."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import partial

from kerfolio.basis.finding import Finding, Severity, note, warning
from kerfolio.basis.measures import depth, feed, number, precise, readings
from kerfolio.basis.reader import METRIC
from kerfolio.basis.said import Words, enumerated, said, strung
from kerfolio.basis.saying import day_text
from kerfolio.basis.tolerance import NOISE
from kerfolio.model.outcome import Grade
from kerfolio.model.plan import CutSetting
from kerfolio.model.router import Router
from kerfolio.model.trial import Trial
from kerfolio.proving.machine_reach import turns
from kerfolio.proving.rule import Stated, before
from kerfolio.shop.logged import (
    MANY,
    Fed,
    Tried,
    comparable,
    fed_by,
    verdict_on,
)
from kerfolio.shop.outdated import Outdated, now_of, outdated_of

Make = Callable[..., Finding]

_LOG = "the maker's own log"
_SHOWN = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class _Judged:
    """A cut setting with what the log says of it as it is, and what came out better."""

    cut: CutSetting
    asis: Tried
    better: Tried | None
    unit: str

    @property
    def poor(self) -> bool:
        """Whether it wants a warning: what it cuts must be mended, or a better one is sure."""
        sure = self.better is not None and len(self.better.entries) >= MANY
        return self.asis.typical <= Grade.TO_MEND or (self.asis.typical <= Grade.TO_SAND and sure)


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
    for each in _judged(stated):
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
    for each in _judged(stated):
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
    for each in _judged(stated):
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
            "was held.",
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
    found = outdated_of(stated.trials, now_of(stated.plan, stated.stock))
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
    if why.since:
        reasons.append(said("{} came since", enumerated(why.since)))
    return enumerated(reasons)


def _judged(stated: Stated) -> Iterator[_Judged]:
    """Yield the cut settings that the log speaks of; entries of another sheet are no word on it."""
    plan = stated.plan
    if not stated.trials or not plan.cuts:
        return
    gone = {
        id(trial)
        for trial, why in outdated_of(stated.trials, now_of(plan, stated.stock))
        if why.of_another_sheet
    }
    trials = tuple(each for each in stated.trials if id(each) not in gone)
    sheets = {use.name: use.stock.name for use in plan.sheets}
    for cut in plan.cuts:
        material = sheets.get(cut.sheet.name, "")
        entries = comparable(cut, material, trials, stated.stock, plan.units)
        found = verdict_on(fed_by(cut, plan.units), entries, partial(_reached, stated.plan.machine))
        if found.asis is not None:
            yield _Judged(cut=cut, asis=found.asis, better=found.better, unit=plan.units)


def _reached(machine: Router, fed: Fed) -> bool:
    """Tell whether the workshop's machine can run so."""
    follows = machine.feed is None or fed.feed is None or fed.feed <= machine.feed + NOISE
    plunges = machine.feed is None or fed.plunge is None or fed.plunge <= machine.feed + NOISE
    steps = machine.deepest is None or fed.first_pass is None or fed.first_pass <= machine.deepest
    return follows and plunges and steps and (fed.speed is None or turns(machine, fed.speed))


def _told(make: Make, rule: str, each: _Judged) -> Finding:
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
    now, then = fed_by(each.cut, each.unit), better.fed
    changes = now.unlike(then)
    differs = enumerated([_in_words(key, then) for key in changes])
    grade = f"`{better.typical.word}`"
    times = _times(len(better.entries))
    message = said("{}; with {} it came out {}, {}", came, differs, grade, times)
    lines = enumerated([_line(key, then) for key in changes])
    advice = said("Write {}. Logged in {}.", lines, _places((*better.entries, newest)))
    return make(rule, message, each.cut.place, advice, subject=name)


def _came_out(trial: Trial) -> Words:
    """Return how an entry came out and when: ``came out `to sand` on 3 May 2026``."""
    grade = trial.grade.word if trial.grade else ""
    return said("came out `{}` on {}", grade, day_text(METRIC, trial.date))


def _times(count: int) -> Words:
    if count <= len(_COUNTS):
        return said(_COUNTS[count - 1])
    return said("{} times", number("times", count))


_COUNTS = ("once", "twice")


def _in_words(key: str, fed: Fed) -> Words:
    """Return a setting as a sentence tells it."""
    if key == "speed" and fed.speed is not None:
        return said("{} rpm", number("speed-then", fed.speed))
    if key == "first_pass" and fed.first_pass is not None:
        return said("a first pass of {}", depth("first-pass-then", fed.first_pass))
    what = "a plunge" if key == "plunge" else "a feed"
    return said("{} of {}", what, feed(f"{key}-then", getattr(fed, key)))


def _line(key: str, fed: Fed) -> Words:
    """Return what to write into the cut setting."""
    if key == "speed" and fed.speed is not None:
        return said("`speed: {} rpm`", number("speed-then", fed.speed))
    if key == "first_pass" and fed.first_pass is not None:
        return said("{} as the first of `passes`", depth("first-pass-then", fed.first_pass))
    return said("`{}: {}`", key, feed(f"{key}-then", getattr(fed, key)))


def _places(entries: Sequence[Trial]) -> Words:
    """Return where entries stand, the first few."""
    places = [str(each.place) for each in entries[:_SHOWN]]
    return (
        said("{} and more", strung(places, ", ")) if len(entries) > _SHOWN else enumerated(places)
    )
