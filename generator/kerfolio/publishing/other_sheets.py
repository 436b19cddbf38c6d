"""Layouts of a plan for other sheets and beds: frozen beside the first, told alike."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator
from dataclasses import replace

from kerfolio.basis.finding import Finding, error, has_errors, note
from kerfolio.basis.names import did_you_mean
from kerfolio.basis.place import Place
from kerfolio.basis.said import said
from kerfolio.basis.words import listed
from kerfolio.layouts.effort import Effort
from kerfolio.layouts.engine import Engine
from kerfolio.layouts.frozen import layout_for
from kerfolio.layouts.other_layout import OtherLayout
from kerfolio.model.plan import Plan
from kerfolio.proving.prove import Proof
from kerfolio.publishing.laid_out import LaidOut
from kerfolio.settling.also_for import OtherSheet, on_sheet, other_sheets
from kerfolio.settling.scope import SettlingError


def other_layouts(
    proof: Proof, effort: Effort, engine: Engine | None, *, afresh: bool
) -> tuple[tuple[OtherLayout, ...], tuple[Finding, ...]]:
    """Return the layouts that a plan states ``also-for``, and what is wrong with them.

    Sheets are counted for one copy alone. Where pieces find no room, one finding names them.
    """
    kept = {} if afresh else dict(proof.plan.other_layouts)
    made: list[OtherLayout] = []
    try:
        asked = other_sheets(proof.plan)
    except SettlingError as trouble:
        return (), (trouble.about("also-for"),)
    findings = [*_unasked(proof.plan, {each.label for each in asked})]
    for other in asked:
        points = tuple(on_sheet(each, other) for each in proof.points)
        text = kept.get(other.label, "")
        layout, fresh, faults = layout_for(points, text, effort, engine, copies=1)
        findings += _told(faults, other)
        if layout is not None and not has_errors(faults):
            made.append(OtherLayout(sheet=other, layout=layout, fresh=fresh))
    return tuple(made), tuple(findings)


def _sound(plan: Plan) -> tuple[OtherSheet, ...]:
    try:
        return other_sheets(plan)
    except SettlingError:
        return ()  # proving tells why


def _unasked(plan: Plan, labels: Collection[str]) -> Iterator[Finding]:
    """Yield a note for each frozen layout of a sheet that the plan no longer states."""
    for label, _ in plan.other_layouts:
        if label not in labels:
            place = Place(f"plans/{plan.name}/layout-{label}.json")
            message = f"no `also-for` asks for `{label}`"
            advice = "State it there, or remove the file."
            yield note("layout-unused", message, place, advice, subject=label)


def _told(faults: Iterable[Finding], other: OtherSheet) -> Iterator[Finding]:
    """Yield the faults of a layout; pieces too large for its sheets are told together."""
    large = [each.subject for each in faults if each.rule == "piece-too-large"]
    yield from (each for each in faults if each.rule != "piece-too-large")
    if large:
        names = listed([f"`{name}`" for name in large])
        many = "find" if len(large) > 1 else "finds"
        message = f"{names} {many} no room on `{other.label}`"
        advice = "Leave it out of `also-for`, or state a larger one."
        yield error("also-for-too-small", message, other.place, advice, subject=other.label)


def typed(text: str) -> str:
    """Return the words for a sheet or a bed as a label has them: ``600x900-bed``."""
    return "-".join(text.lower().replace("×", "x").split()).replace("-x-", "x")


def asked_sheet(text: str, plan: Plan) -> OtherSheet | Finding:
    """Return the sheet or bed that files are to be laid out for, or what is wrong with it."""
    known = {each.label: each for each in _sound(plan)}
    words = typed(text)
    ending = "in" if plan.units == "in" else ""
    inch = words.replace("-bed", f"{ending}-bed") if "-bed" in words else f"{words}{ending}"
    for label in (words, inch):
        if label in known:
            return known[label]
    place, message = Place(f"--lay-for {text}"), f"it is not laid out for `{words}`"
    advice = (
        did_you_mean(words, known)
        if known
        else said("State `also-for: [{}]` in the plan, and lay it out.", text)
    )
    return error("unknown-lay-for", message, place, advice, subject=words)


def laid_for(one: LaidOut, other: OtherSheet) -> LaidOut | None:
    """Return a plan with the layout it has for another sheet; None where it has none."""
    found = next((each for each in one.others if each.sheet.label == other.label), None)
    if found is None or one.proof.drawn is None:
        return None
    proof = replace(
        one.proof,
        drawn=on_sheet(one.proof.drawn, other),
        points=tuple(on_sheet(each, other) for each in one.proof.points),
        corners=tuple(on_sheet(each, other) for each in one.proof.corners),
    )
    return LaidOut(proof=proof, layout=found.layout, fresh="", on=other)
