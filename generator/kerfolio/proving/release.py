"""Checks of a plan's releases and its cut settings' form."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from kerfolio.basis.finding import Finding, Severity, error, warning
from kerfolio.basis.keeper import kept
from kerfolio.model.plan import Release
from kerfolio.proving.rule import OUR_FORM, OWN_FIGURES, Stated, before
from kerfolio.releasing.change import change_between
from kerfolio.releasing.weighing import doubts


@before(
    "version-not-released",
    reason="Readers go by the version.",
    source=OUR_FORM,
    also=("no-release", "release-order"),
)
def newest_release(stated: Stated) -> Iterator[Finding]:
    """Look whether the plan's version is its newest release."""
    plan = stated.plan
    if not plan.releases:
        advice = f"Add `releases: {{{plan.version}: {{date: ..., changed: ...}}}}`."
        yield error("no-release", "the plan states no release", plan.place, advice)
        return
    disordered = tuple(_out_of_order(plan.releases))
    yield from disordered
    newest = max(plan.releases, key=lambda each: each.order)
    highest = max(plan.releases, key=lambda each: each.numbers)
    meant = highest if disordered else newest  # by the versions, where the days are wrong
    if plan.version not in (newest.version, meant.version):
        message = f"version is {plan.version}, the newest release {newest.version}"
        advice = f"Add a release {plan.version}, or correct `version`."
        yield error("version-not-released", message, newest.place, advice)


def _out_of_order(releases: Sequence[Release]) -> Iterator[Finding]:
    """Yield an error for each release dated after the one of the next higher version."""
    for lower, higher in pairwise(sorted(releases, key=lambda each: each.numbers)):
        if lower.date > higher.date:
            message = f"{lower.version} is dated after {higher.version}"
            advice = f"{lower.date} or {higher.date} is wrong: dates rise with versions."
            yield error("release-order", message, lower.place, advice)


@before(
    "release-class",
    reason="Readers decide by it whether to cut anew.",
    source=OWN_FIGURES,
    severity=Severity.WARNING,
)
def class_of_release(stated: Stated) -> Iterator[Finding]:
    """Question what a release is called, where the records of it and the one before disagree."""
    plan = stated.plan
    releases = {each.version: each for each in plan.releases}
    for old, new in pairwise(plan.records):
        before, after = releases[old.version], releases[new.version]
        for doubt in doubts(kept(change_between, old, new), before, after):
            message = f"{new.version}: {doubt}"
            advice = "Set `errata:` or its number by what changed since " + f"{old.version}."
            yield warning("release-class", message, after.place, advice, subject=new.version)


@before(
    "rest-not-last",
    reason="What is left comes last.",
    source=OUR_FORM,
)
def rest_last(stated: Stated) -> Iterator[Finding]:
    """Look for passes after the one that goes through."""
    for cut in stated.plan.cuts:
        if "rest" in cut.passes[:-1]:
            advice = "`rest` stands for what is left: write it last."
            message, name = f"`{cut.name}`: `rest` is not last", cut.name
            yield error("rest-not-last", message, cut.place, advice, subject=name)
