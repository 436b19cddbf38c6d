"""Checks of a plan's releases and its cut settings' form."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.finding import Finding, error
from kerfolio.proving.rule import OUR_FORM, Stated, before


@before(
    "version-not-released",
    reason="Readers go by the version.",
    source=OUR_FORM,
    also=("no-release",),
)
def newest_release(stated: Stated) -> Iterator[Finding]:
    """Look whether the plan's version is its newest release."""
    plan = stated.plan
    if not plan.releases:
        advice = f"Add `releases: {{{plan.version}: {{date: ..., changed: ...}}}}`."
        yield error("no-release", "the plan states no release", plan.place, advice)
        return
    newest = max(plan.releases, key=lambda each: each.order)
    if newest.version != plan.version:
        message = f"version is {plan.version}, the newest release {newest.version}"
        advice = f"Add a release {plan.version}, or correct `version`."
        yield error("version-not-released", message, newest.place, advice)


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
