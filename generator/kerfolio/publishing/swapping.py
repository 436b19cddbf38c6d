"""Plans tried with another material: asked for on a command line, or stated by the maker."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from kerfolio.basis.complaint import quoted
from kerfolio.basis.finding import Finding, error, has_errors, in_order, in_unit, note
from kerfolio.basis.names import did_you_mean
from kerfolio.basis.place import Place
from kerfolio.edition.swap import Cut, SwapTable, swap_table
from kerfolio.layouts.check import first_faults
from kerfolio.layouts.layout import Layout
from kerfolio.model.plan import Plan
from kerfolio.model.statement import Named
from kerfolio.model.swap import Swap
from kerfolio.model.workshop import Workshop
from kerfolio.proving.prove import Proof, prove_plan
from kerfolio.proving.swaps import swap_faults
from kerfolio.publishing.examine import Examined, examine_read
from kerfolio.publishing.laid_out import LaidOut
from kerfolio.publishing.say import Say, silent
from kerfolio.reading.plan_folders import unknown_plan
from kerfolio.reading.workshop import read_workshop
from kerfolio.settling.settled import SettledPlan
from kerfolio.settling.swapped import stocks_of, swapped


@dataclass(frozen=True, slots=True, kw_only=True)
class Tried:
    """What came of one swap: its table, and all findings about the plan so cut."""

    plan: Plan
    table: SwapTable
    findings: tuple[Finding, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Swapped:
    """What came of a swap that was asked for; ``tried`` is empty where it cannot be tried."""

    tried: tuple[Tried, ...]
    findings: tuple[Finding, ...]


def examine_swapped(folder: Path, only: str, asked: Sequence[str], say: Say = silent) -> Swapped:
    """Read a workshop and prove its plans, or the one named ``only``, with other stock.

    ``asked`` are texts such as ``ply=mdf-18``, all for one swap. Of several plans those are tried
    that have every sheet which is named.
    """
    say(f"reading {folder.name or folder}")
    workshop, read = read_workshop(folder, pictures=False)
    if workshop is None:
        return Swapped(tried=(), findings=in_order(read))
    plans = [each for each in workshop.plans if only in ("", each.name)]
    if only and not plans:
        missing = unknown_plan(only, (each.name for each in workshop.plans))
        return Swapped(tried=(), findings=(missing,))
    swap = _asked(asked)
    faults = {each.name: tuple(swap_faults(swap, each, workshop.stock)) for each in plans}
    fitting = [each for each in plans if not faults[each.name]]
    if not fitting:
        return Swapped(tried=(), findings=_refused(swap, plans, faults.values()))
    tried: list[Tried] = []
    findings: list[Finding] = []
    for plan in fitting:
        examined = examine_read(workshop, read, plan.name, say)
        if not examined.laid_out:
            findings += examined.findings
            continue
        tried.append(_tried(examined.laid_out[0], swap, workshop, say))
    found = (*findings, *(each for one in tried for each in one.findings))
    return Swapped(tried=tuple(tried), findings=in_order(found))


def _asked(texts: Iterable[str]) -> Swap:
    pairs, places = [], []
    for text in texts:
        place = Place(f"--with {text}")
        sheet, _, stock = text.rpartition("=")
        pairs.append((Named(sheet.strip(), place), Named(stock.strip(), place)))
        places.append(place)
    return Swap(stocks=tuple(pairs), place=places[0])


def _refused(
    swap: Swap, plans: Sequence[Plan], faults: Iterable[tuple[Finding, ...]]
) -> tuple[Finding, ...]:
    """Return what is wrong with a swap that fits no plan: each thing once, of all their sheets."""
    found = {(each.rule, each.subject): each for group in faults for each in group}
    known = {use.name for plan in plans for use in plan.sheets}
    if len(plans) > 1:
        for sheet, _ in swap.stocks:
            if sheet.name and sheet.name not in known:
                message, advice = f"no sheet {quoted(sheet.name)}", did_you_mean(sheet.name, known)
                made = error("unknown-swap", message, sheet.place, advice, subject=sheet.name)
                found[made.rule, made.subject] = made
    return in_order(found.values())


def with_swaps(examined: Examined, say: Say = silent) -> Examined:
    """Work out the swaps that plans state; a note tells of each that no longer holds."""
    workshop = examined.workshop
    if workshop is None or not any(each.proof.plan.swaps for each in examined.laid_out):
        return examined
    laid_out, notes = [], []
    for each in examined.laid_out:
        swaps = each.proof.plan.swaps
        tables = tuple(_tried(each, swap, workshop, say).table for swap in swaps)
        laid_out.append(replace(each, swaps=tables))
        notes += [
            _told(swap, table) for swap, table in zip(swaps, tables, strict=True) if table.refused
        ]
    findings = in_order((*examined.findings, *notes))
    return replace(examined, laid_out=tuple(laid_out), findings=findings)


def _told(swap: Swap, table: SwapTable) -> Finding:
    message = f"with {table.after} the plan does not hold: {table.reason}"
    advice = "Page and booklet say so; leave it out of `swaps` if you would rather not show it."
    return note("swap-refused", message, swap.place, advice)


def _tried(one: LaidOut, swap: Swap, workshop: Workshop, say: Say) -> Tried:
    plan, stock = one.proof.plan, workshop.stock
    coming = stocks_of(swap, plan, stock)
    titles = tuple((name, each.title) for name, each in coming.items())
    say(f"proving {plan.title} with {' and '.join(title for _, title in titles)}")
    proof = prove_plan(swapped(plan, swap, stock), stock, workshop.trials)
    layout, faults = _layout(one, proof)
    findings = (*proof.findings, *faults)
    before = {each.identity for each in one.proof.findings}
    fresh = [each for each in findings if each.identity not in before and not each.silenced]
    assert one.proof.drawn is not None, "only proved plans are laid out"
    identity = workshop.identity
    table = swap_table(
        Cut(settled=one.proof.drawn, layout=one.layout),
        None if proof.drawn is None else Cut(settled=proof.drawn, layout=layout),
        titles,
        fresh,
        (identity.reader_of(plan), identity.currency),
    )
    return Tried(plan=plan, table=table, findings=findings)


def _layout(one: LaidOut, proof: Proof) -> tuple[Layout | None, tuple[Finding, ...]]:
    """Return the plan's own layout where it serves, else one computed for what is drawn."""
    settled = proof.drawn
    if settled is None or has_errors(proof.findings):
        return None, ()
    if _same_sizes(one.proof.drawn, settled) and not first_faults(one.layout, (settled,)):
        return one.layout, ()
    from kerfolio.layouts.plan_layout import lay_out  # which takes long to load

    layout, faults = lay_out((settled,), copies=1)
    return layout, in_unit(faults, settled.plan.units)


def _same_sizes(one: SettledPlan | None, other: SettledPlan) -> bool:
    return one is not None and [each.size for each in one.sheets] == [
        each.size for each in other.sheets
    ]
