"""From a folder to proved plans: reading, settling and proving, with every finding kept."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from pathlib import Path

from kerfolio.basis.finding import Finding, has_errors, in_order, in_unit
from kerfolio.basis.shortened import shortened
from kerfolio.layouts.effort import EFFORT, Effort
from kerfolio.layouts.engine import Engine
from kerfolio.layouts.frozen import layout_for
from kerfolio.model.workshop import Workshop
from kerfolio.proving.prove import Proof, prove_plan
from kerfolio.publishing.laid_out import LaidOut
from kerfolio.publishing.other_sheets import other_layouts
from kerfolio.publishing.say import Say, silent
from kerfolio.reading.plan_folders import concerns, lies_in, unknown_plan
from kerfolio.reading.workshop import read_workshop


@dataclass(frozen=True, slots=True, kw_only=True)
class Examined:
    """A workshop read and proved; ``laid_out`` holds the plans without errors.

    ``quiet`` tells that nothing was remarked on while layouts were computed or kept.
    """

    workshop: Workshop | None
    laid_out: tuple[LaidOut, ...]
    findings: tuple[Finding, ...]
    proofs: tuple[Proof, ...] = ()
    quiet: bool = True


def examine(
    folder: Path,
    only: str = "",
    say: Say = silent,
    *,
    pictures: bool = True,
    afresh: bool = False,
    effort: Effort = EFFORT,
    engine: Engine | None = None,
) -> Examined:
    """Read a workshop and prove its plans, or the one named ``only``.

    Without ``pictures`` none is decoded; with ``afresh`` no frozen layout is kept; ``effort`` goes
    into computing layouts, by ``engine`` or else the own placer. All findings of all files come in
    one run.
    """
    say(f"reading {folder.name or folder}")
    workshop, read = read_workshop(folder, pictures=pictures)
    if workshop is None:
        return Examined(workshop=None, laid_out=(), findings=in_order(read))
    return examine_read(workshop, read, only, say, afresh=afresh, effort=effort, engine=engine)


def examine_read(
    workshop: Workshop,
    read: Iterable[Finding],
    only: str = "",
    say: Say = silent,
    *,
    afresh: bool = False,
    effort: Effort = EFFORT,
    engine: Engine | None = None,
) -> Examined:
    """Prove the plans of a workshop that was read, with the findings ``read``; see ``examine``."""
    read = tuple(read)
    findings = list(read)
    names = [plan.name for plan in workshop.plans]
    if only and only not in names:
        findings.append(unknown_plan(only, names))
    made: list[Examined] = []
    for plan in workshop.plans:
        if only and plan.name != only:
            continue
        say(f"proving {plan.title}")
        proof = prove_plan(plan, workshop.stock, workshop.trials)
        slips = (each for each in read if lies_in(each, plan.name))
        found = (*slips, *proof.findings)
        made.append(
            examine_proved(workshop, found, proof, afresh=afresh, effort=effort, engine=engine)
        )
    findings += [found for each in made for found in each.findings]
    if only:
        findings = [each for each in findings if concerns(each, only)]
    return Examined(
        workshop=workshop,
        laid_out=tuple(laid_out for each in made for laid_out in each.laid_out),
        findings=in_order(findings),
        proofs=tuple(proof for each in made for proof in each.proofs),
        quiet=all(each.quiet for each in made),
    )


def examine_proved(
    workshop: Workshop,
    found: Iterable[Finding],
    proof: Proof,
    *,
    afresh: bool = False,
    effort: Effort = EFFORT,
    engine: Engine | None = None,
) -> Examined:
    """Lay out a plan that was proved, with the findings ``found`` about it; see ``examine``."""
    plan, findings = proof.plan, tuple(found)
    alone = Examined(workshop=workshop, laid_out=(), findings=findings, proofs=(proof,))
    if proof.drawn is None or plan.unread or has_errors(findings):
        return alone  # its layout is not judged by half a plan
    frozen = "" if afresh else plan.layout_text
    layout, fresh, faults = layout_for(proof.points, frozen, effort, engine)
    others, more = other_layouts(proof, effort, engine, afresh=afresh)
    told = *shortened(in_unit(faults, plan.units)), *shortened(in_unit(more, plan.units))
    laid_out: tuple[LaidOut, ...] = ()
    if layout is not None and not has_errors((*faults, *more)):
        laid_out = (LaidOut(proof=proof, layout=layout, fresh=fresh, others=others),)
    return replace(
        alone,
        laid_out=laid_out,
        findings=(*findings, *told),
        quiet=not faults and not more,
    )
