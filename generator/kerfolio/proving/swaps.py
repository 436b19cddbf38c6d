"""Rules about materials that a maker wants compared with the plan's own."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.finding import Finding, error
from kerfolio.basis.names import choice, did_you_mean
from kerfolio.model.plan import Plan
from kerfolio.model.stock import Stock
from kerfolio.model.swap import Swap
from kerfolio.proving.naming import is_unread
from kerfolio.proving.rule import OUR_FORM, Stated, before


@before(
    "unknown-swap",
    reason="What is swapped is a sheet of the plan for a sheet of the stock.",
    source=OUR_FORM,
)
def unknown_swaps(stated: Stated) -> Iterator[Finding]:
    """Look for swaps of sheets that the plan has not, or for stock that nobody knows."""
    for each in stated.plan.swaps:
        yield from swap_faults(each, stated.plan, stated.stock)


def swap_faults(swap: Swap, plan: Plan, stock: Stock) -> Iterator[Finding]:
    """Yield what is wrong with the names of one swap, with the nearest of the right kind."""
    sheets, known = [use.name for use in plan.sheets], [each.name for each in stock.sheets]
    if not known:
        return
    for sheet, named in swap.stocks:
        if not sheet.name and len(sheets) > 1:
            message = f"in place of which sheet is `{named.name}`?"
            advice = f"Name it: {choice(sheets)}."
            yield error("unknown-swap", message, named.place, advice, subject=named.name)
        elif sheet.name and sheet.name not in sheets and not is_unread(sheet.name, plan):
            message, advice = f"no sheet `{sheet.name}`", did_you_mean(sheet.name, sheets)
            yield error("unknown-swap", message, sheet.place, advice, subject=sheet.name)
        if named.name not in known:
            message, advice = f"no sheet stock `{named.name}`", did_you_mean(named.name, known)
            yield error("unknown-swap", message, named.place, advice, subject=named.name)
