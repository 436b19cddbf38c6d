"""Checks that what a plan names is there."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kerfolio.basis.finding import Finding, Severity, error, note
from kerfolio.basis.names import did_you_mean
from kerfolio.model.outline import Drawing, Drawn, DrawnElement
from kerfolio.model.part import Part
from kerfolio.model.plan import Plan
from kerfolio.proving.naming import is_unread, pieces_of, taken_by
from kerfolio.proving.rule import COMMON_PRACTICE, OUR_FORM, Stated, before
from kerfolio.settling.drawn_choice import Chosen, chosen, inside_of, nested_in
from kerfolio.settling.scope import SettlingError

_SHOWN = 3


@before(
    "unknown-sheet",
    reason="A part needs a sheet the plan has.",
    source=OUR_FORM,
)
def unknown_sheets(stated: Stated) -> Iterator[Finding]:
    """Look for parts and cut settings of sheets that the plan does not state."""
    known = [use.name for use in stated.plan.sheets]
    named = [part.sheet for part in stated.plan.parts] + [cut.sheet for cut in stated.plan.cuts]
    for each in named:
        if each.name not in known and not is_unread(each.name, stated.plan):
            advice = did_you_mean(each.name, known)
            message, name = f"no sheet `{each.name}`", each.name
            yield error("unknown-sheet", message, each.place, advice, subject=name)


@before(
    "unknown-cutter",
    reason="Settings name a cutter of the stock.",
    source=OUR_FORM,
)
def unknown_cutters(stated: Stated) -> Iterator[Finding]:
    """Look for cut settings with cutters that are not in the stock."""
    known = [cutter.name for cutter in stated.stock.cutters]
    for cut in stated.plan.cuts:
        if cut.cutter.name not in known:
            advice = did_you_mean(cut.cutter.name, known)
            message, name = f"no cutter `{cut.cutter.name}`", cut.cutter.name
            yield error("unknown-cutter", message, cut.cutter.place, advice, subject=name)


@before(
    "unknown-hardware",
    reason="Hardware must be known to be bought.",
    source=OUR_FORM,
)
def unknown_hardware(stated: Stated) -> Iterator[Finding]:
    """Look for hardware that is not in the stock, in the plan's list and in the steps."""
    known = [item.name for item in stated.stock.hardware]
    uses = [use for step in stated.plan.steps for use in step.hardware]
    for use in (*stated.plan.hardware, *uses):
        if use.item.name not in known:
            advice = did_you_mean(use.item.name, known)
            message, name = f"no hardware `{use.item.name}`", use.item.name
            yield error("unknown-hardware", message, use.item.place, advice, subject=name)


@before(
    "unknown-piece",
    reason="Steps add pieces the plan has.",
    source=OUR_FORM,
    unbuilt=True,
)
def unknown_pieces(stated: Stated) -> Iterator[Finding]:
    """Look for steps that add pieces the plan does not have."""
    pieces = pieces_of(stated.plan)
    for step in stated.plan.steps:
        for each in step.add:
            if each.name not in pieces and not is_unread(each.name, stated.plan):
                advice = did_you_mean(each.name, pieces)
                message, name = f"no piece `{each.name}`", each.name
                yield error("unknown-piece", message, each.place, advice, subject=name)


@before(
    "unused-sheet",
    reason="A sheet nobody cuts would be bought.",
    source=COMMON_PRACTICE,
    severity=Severity.NOTE,
)
def unused_sheets(stated: Stated) -> Iterator[Finding]:
    """Look for sheets that no part is cut from and nothing takes."""
    plan = stated.plan
    used = {part.sheet.name for part in plan.parts}
    used |= {takes for part in plan.parts for takes in taken_by(part)}
    for use in plan.sheets:
        if use.name not in used and not plan.unread:
            message = f"no part is cut from sheet `{use.name}`"
            advice = "Remove it, or name it as the sheet of a part."
            yield note("unused-sheet", message, use.place, advice, subject=use.name)


@before(
    "unused-element",
    reason="A forgotten layer is a missing hole.",
    source=COMMON_PRACTICE,
    severity=Severity.NOTE,
)
def unused_elements(stated: Stated) -> Iterator[Finding]:
    """Look for elements of drawings that neither an outline nor a feature takes.

    A drawing of several parts holds what the plan may not want: of it only closed shapes are told
    that lie inside the outline of a part.
    """
    for drawing in stated.plan.drawings:
        users = _users(stated.plan, drawing)
        taken = {each for _, _, own in users for each in own.every}
        left = [each for each in drawing.elements if each not in taken]
        for part, drawn, own in users:
            forgotten = left
            if len(users) > 1 or drawn.at is not None or own.outline.inserts:
                forgotten = _within(own.outline, [each.outline for _, _, each in users], left)
            if forgotten:
                yield _forgotten(part, drawn, forgotten)


def _within(
    outline: DrawnElement, outlines: Sequence[DrawnElement], left: Sequence[DrawnElement]
) -> list[DrawnElement]:
    """Return the closed elements inside an outline, but not inside another one within it."""
    inner = nested_in(outline, outlines)
    theirs = {each for other in inner for each in inside_of(other, left)}
    return [each for each in inside_of(outline, left) if each.closed and each not in theirs]


def _users(plan: Plan, drawing: Drawing) -> list[tuple[Part, Drawn, Chosen]]:
    """Return the parts taken from a drawing with their elements; none where one cannot be."""
    shapes = [(each, each.shape) for each in plan.parts if isinstance(each.shape, Drawn)]
    users = [(part, drawn) for part, drawn in shapes if drawn.file == drawing.file]
    try:
        return [(part, drawn, chosen(drawn, drawing, plan.units)) for part, drawn in users]
    except SettlingError:
        return []  # told where the part is settled


def _forgotten(part: Part, drawn: Drawn, left: Sequence[DrawnElement]) -> Finding:
    shown = ", ".join(f"`{each.name}`" for each in left[:_SHOWN])
    more = f" and {len(left) - _SHOWN} more" if len(left) > _SHOWN else ""
    message = f"`{drawn.file}`: not used in `{part.name}`: {shown}{more}"
    advice = "Name them under the part's drawn `features` to have them cut, else as `guides`."
    return note("unused-element", message, drawn.place, advice, subject=part.name)
