"""Rules that look at what a plan states, before anything is worked out."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping

from generator.basis.finding import Finding, error, note, warning
from generator.basis.names import did_you_mean
from generator.model.part import Part
from generator.model.statement import Named
from generator.proving.naming import (
    feature_names,
    is_unread,
    knows_feature,
    pieces_of,
    split_feature,
)
from generator.proving.rule import COMMON_PRACTICE, OUR_FORM, Before, Stated
from generator.shop.lists import hardware_counts


def _unknown_sheet(stated: Stated) -> Iterator[Finding]:
    known = [use.name for use in stated.plan.sheets]
    named = [part.sheet for part in stated.plan.parts] + [cut.sheet for cut in stated.plan.cuts]
    for each in named:
        if each.name not in known and not is_unread(each.name, stated.plan):
            advice = did_you_mean(each.name, known)
            yield error("unknown-sheet", f"no sheet `{each.name}`", each.place, advice)


def _unknown_cutter(stated: Stated) -> Iterator[Finding]:
    known = [cutter.name for cutter in stated.stock.cutters]
    for cut in stated.plan.cuts:
        if cut.cutter.name not in known:
            advice = did_you_mean(cut.cutter.name, known)
            message = f"no cutter `{cut.cutter.name}`"
            yield error("unknown-cutter", message, cut.cutter.place, advice)


def _unknown_hardware(stated: Stated) -> Iterator[Finding]:
    known = [item.name for item in stated.stock.hardware]
    uses = [use for step in stated.plan.steps for use in step.hardware]
    for use in (*stated.plan.hardware, *uses):
        if use.item.name not in known:
            advice = did_you_mean(use.item.name, known)
            message = f"no hardware `{use.item.name}`"
            yield error("unknown-hardware", message, use.item.place, advice)


def _unknown_piece(stated: Stated) -> Iterator[Finding]:
    pieces = pieces_of(stated.plan)
    for step in stated.plan.steps:
        for each in step.add:
            if each.name not in pieces and not is_unread(each.name, stated.plan):
                advice = did_you_mean(each.name, pieces)
                yield error("unknown-piece", f"no piece `{each.name}`", each.place, advice)


def _joint_ends(stated: Stated) -> Iterator[Finding]:
    pieces = pieces_of(stated.plan)
    for joint in stated.plan.joints:
        for end in (joint.a, joint.b):
            if not is_unread(end.name, stated.plan):
                yield from _joint_end(end, pieces)


def _joint_end(end: Named, pieces: Mapping[str, Part]) -> Iterator[Finding]:
    label, feature = split_feature(end.name, pieces)
    if not label:
        known = [f"{each}.{name}" for each, part in pieces.items() for name in feature_names(part)]
        advice = did_you_mean(end.name, known)
        yield error("unknown-joint-piece", f"no piece for `{end.name}`", end.place, advice)
        return
    part = pieces[label]
    if not knows_feature(part, feature):
        advice = did_you_mean(feature, feature_names(part))
        message = f"`{label}` has no feature `{feature}`"
        yield error("unknown-joint-feature", message, end.place, advice)


def _added_once(stated: Stated) -> Iterator[Finding]:
    if not stated.plan.steps:
        return
    seen: set[str] = set()
    for step in stated.plan.steps:
        for each in step.add:
            if each.name in seen:
                message = f"piece `{each.name}` is added twice"
                advice = "Each piece joins once; name the other piece that is meant."
                yield error("piece-added-twice", message, each.place, advice)
            seen.add(each.name)
    for label, part in pieces_of(stated.plan).items():
        if label not in seen:
            message = f"piece `{label}` joins in no step"
            advice = f"Put `{label}` under `add` of the step where it joins."
            yield error("piece-never-added", message, part.place, advice)


def _hardware_sum(stated: Stated) -> Iterator[Finding]:
    plan = stated.plan
    if not plan.steps or (not plan.hardware and not any(step.hardware for step in plan.steps)):
        return
    summed = hardware_counts(plan) if any(step.hardware for step in plan.steps) else {}
    listed = Counter[str]()
    for use in plan.hardware:
        listed[use.item.name] += use.count
    for use in plan.hardware:
        if listed[use.item.name] != summed.get(use.item.name, 0):
            counts = f"{listed[use.item.name]}, the steps use {summed.get(use.item.name, 0)}"
            message = f"`{use.item.name}`: the list says {counts}"
            advice = "Make the list and the steps' `hardware` agree."
            yield error("hardware-sum", message, use.place, advice)
    for step in plan.steps:
        for use in step.hardware:
            if plan.hardware and use.item.name not in listed:
                message = f"`{use.item.name}` is used but not listed"
                advice = f"Add `{{item: {use.item.name}, count: ...}}` to `hardware`."
                yield error("hardware-unlisted", message, use.place, advice)


def _newest_release(stated: Stated) -> Iterator[Finding]:
    plan = stated.plan
    if not plan.releases:
        advice = f"Add `releases: {{{plan.version}: {{date: ..., changed: ...}}}}`."
        yield error("no-release", "the plan states no release", plan.place, advice)
        return
    newest = max(plan.releases, key=lambda each: (each.date, _numbers(each.version)))
    if newest.version != plan.version:
        message = f"version is {plan.version}, the newest release {newest.version}"
        advice = f"Add a release {plan.version}, or correct `version`."
        yield error("version-not-released", message, newest.place, advice)


def _numbers(version: str) -> tuple[int, ...]:
    return tuple(int(each) for each in version.split(".") if each.isdigit())


def _untold_steps(stated: Stated) -> Iterator[Finding]:
    for step in stated.plan.steps:
        if not step.text and not step.photo:
            message = f"step `{step.title}` has neither text nor photo"
            advice = "Say what to do, in a sentence."
            yield warning("silent-step", message, step.place, advice)


def _no_steps(stated: Stated) -> Iterator[Finding]:
    if not stated.plan.steps:
        advice = "Add `steps`: readers have no order of assembly yet."
        yield note("no-steps", "the plan has no steps", stated.plan.place, advice)


def _cut_settings(stated: Stated) -> Iterator[Finding]:
    for cut in stated.plan.cuts:
        if "rest" in cut.passes[:-1]:
            advice = "`rest` stands for what is left: write it last."
            yield error("rest-not-last", f"`{cut.name}`: `rest` is not last", cut.place, advice)


RULES_BEFORE: tuple[Before, ...] = (
    Before(
        id="unknown-sheet",
        reason="A part needs a sheet the plan has.",
        source=OUR_FORM,
        check=_unknown_sheet,
    ),
    Before(
        id="unknown-cutter",
        reason="Settings name a cutter of the stock.",
        source=OUR_FORM,
        check=_unknown_cutter,
    ),
    Before(
        id="unknown-hardware",
        reason="Hardware must be known to be bought.",
        source=OUR_FORM,
        check=_unknown_hardware,
    ),
    Before(
        id="unknown-piece",
        reason="Steps add pieces the plan has.",
        source=OUR_FORM,
        check=_unknown_piece,
    ),
    Before(
        id="unknown-joint",
        reason="A joint names features that exist.",
        source=OUR_FORM,
        check=_joint_ends,
    ),
    Before(
        id="piece-added-once",
        reason="Each piece is used exactly once.",
        source=COMMON_PRACTICE,
        check=_added_once,
    ),
    Before(
        id="hardware-sum",
        reason="Totals are summed from the steps.",
        source=COMMON_PRACTICE,
        check=_hardware_sum,
    ),
    Before(
        id="newest-release",
        reason="Readers go by the version.",
        source=OUR_FORM,
        check=_newest_release,
    ),
    Before(
        id="silent-step",
        reason="A step must tell something.",
        source=COMMON_PRACTICE,
        check=_untold_steps,
    ),
    Before(
        id="no-steps",
        reason="Order of assembly is asked for.",
        source=COMMON_PRACTICE,
        check=_no_steps,
    ),
    Before(
        id="rest-not-last", reason="What is left comes last.", source=OUR_FORM, check=_cut_settings
    ),
)
"""The rules in the order they are looked at."""
