"""One plan of a workshop proved at the point that is asked of it, with the layout it has there."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from pathlib import Path

from kerfolio.basis.finding import Finding, has_errors, in_order, in_unit
from kerfolio.layouts.check import first_faults
from kerfolio.layouts.plan_layout import lay_out
from kerfolio.model.workshop import Workshop
from kerfolio.proving.at_point import prove_at
from kerfolio.publishing.asked import Asked, point_asked
from kerfolio.publishing.examine import examine_read
from kerfolio.publishing.from_log import FromLog, from_log
from kerfolio.publishing.laid_out import LaidOut
from kerfolio.publishing.other_sheets import asked_sheet, laid_for
from kerfolio.publishing.say import Say
from kerfolio.reading.plan_folders import unknown_plan
from kerfolio.reading.workshop import read_workshop
from kerfolio.settling.also_for import OtherSheet, on_sheet
from kerfolio.settling.settled import FitVariant, SettledPlan

Refused = Callable[[Workshop, FitVariant | None], Iterable[Finding]]


@dataclass(frozen=True, slots=True, kw_only=True)
class ExaminedAt:
    """A workshop read, and one of its plans proved; ``laid_out`` None where findings are errors.

    ``published`` is the plan as it is published, ``laid_out`` as it is at the point. ``told`` says
    what was taken from the log.
    """

    workshop: Workshop | None
    laid_out: LaidOut | None
    findings: tuple[Finding, ...]
    published: LaidOut | None = None
    told: tuple[str, ...] = ()


def examine_at(
    folder: Path,
    plan: str,
    asked: Asked | None,
    say: Say,
    refused: Refused,
    on: str = "",
) -> ExaminedAt:
    """Read a workshop and prove a plan at the point ``asked``; None: as it is published.

    What cannot be had, and what ``refused`` yields of a workshop for a point, is told before
    anything is proved. With ``on`` it is laid out for that other sheet or bed that it states.
    """
    say(f"reading {folder.name or folder}")
    workshop, read = read_workshop(folder, pictures=False)
    if workshop is None:
        return ExaminedAt(workshop=None, laid_out=None, findings=in_order(read))
    filled = FromLog(asked=asked) if asked is None else _with_log(asked, plan, workshop)
    if filled.findings:
        return ExaminedAt(workshop=workshop, laid_out=None, findings=filled.findings)
    asked = filled.asked
    there, faults = (None, ()) if asked is None else _point(asked, plan, workshop)
    other, more = _other(on, plan, workshop)
    faults = faults or more or tuple(refused(workshop, there))
    if faults:
        return ExaminedAt(workshop=workshop, laid_out=None, findings=faults)
    examined = examine_read(workshop, read, plan, say)
    one, findings = next(iter(examined.laid_out), None), examined.findings
    if one is not None and other is not None:
        one = laid_for(one, other)
    published = one
    if one is not None and there is not None and not has_errors(findings):
        say(f"proving it at {there.label}")
        one, more = laid_out_at(one, workshop, there)
        findings = in_order((*findings, *more))
    return ExaminedAt(
        workshop=workshop,
        laid_out=one,
        findings=findings,
        published=published,
        told=filled.told,
    )


def _with_log(asked: Asked, name: str, workshop: Workshop) -> FromLog:
    """Return what is asked, with what the log says where that is to be asked."""
    plan = next((each for each in workshop.plans if each.name == name), None)
    if not asked.from_log or plan is None:
        return FromLog(asked=asked)
    return from_log(asked, plan, workshop)


def _other(on: str, name: str, workshop: Workshop) -> tuple[OtherSheet | None, tuple[Finding, ...]]:
    """Return the sheet or bed that a plan is to be laid out for, or what is wrong with it."""
    plan = next((each for each in workshop.plans if each.name == name), None)
    if not on or plan is None:
        return None, ()
    found = asked_sheet(on, plan)
    return (None, (found,)) if isinstance(found, Finding) else (found, ())


def _point(
    asked: Asked, name: str, workshop: Workshop
) -> tuple[FitVariant | None, tuple[Finding, ...]]:
    """Return the point that is asked of a plan of a workshop, or what is wrong with it."""
    plans = {each.name: each for each in workshop.plans}
    if name in plans:
        return point_asked(asked, plans[name], workshop.stock)
    return None, (unknown_plan(name, plans),)


def laid_out_at(
    one: LaidOut, workshop: Workshop, there: FitVariant
) -> tuple[LaidOut | None, tuple[Finding, ...]]:
    """Return a proved plan with its layout at one more point, or what is wrong there.

    The plan's own layout serves as long as its pieces, as large as they are there, keep their gap;
    beyond that they are laid out anew, for this point and all that the plan is published for.
    """
    settled, faults = prove_at(one.proof, workshop.stock, there)
    if settled is None or has_errors(faults):
        return None, faults
    if one.on is not None:
        settled = on_sheet(settled, one.on)
    layout = one.layout
    if first_faults(layout, (settled,)):
        anew, more = lay_out((settled, *one.proof.points), copies=1)
        faults = (*faults, *in_unit(more, settled.plan.units))
        if anew is None:
            return None, faults
        layout = anew
    proof = replace(
        one.proof,
        drawn=settled,
        points=(settled,),
        sets=(there,),
        corners=_with_beyond(one.proof.corners, settled),
        made=(),
    )
    return LaidOut(proof=proof, layout=layout, fresh="", on=one.on), faults


def _with_beyond(corners: tuple[SettledPlan, ...], settled: SettledPlan) -> tuple[SettledPlan, ...]:
    """Return the corners of the range, and what lies beyond it."""
    ranges = {each.name: each.published for each in settled.sheets}
    thick = settled.variant.thickness
    inside = all(ranges[name][0] <= mm <= ranges[name][1] for name, mm in thick)
    return corners if inside else (*corners, settled)
