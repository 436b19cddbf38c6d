"""A plan with another material in place of its own, as if its maker had stated that."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from kerfolio.basis.digits import digits
from kerfolio.basis.place import Place
from kerfolio.basis.thickness import read_off
from kerfolio.model.plan import Ladder, Plan, SheetUse
from kerfolio.model.statement import Amount, Named
from kerfolio.model.stock import SheetStock, Stock
from kerfolio.model.swap import Swap
from kerfolio.settling.scope import Scope

_SAME = 0.5  # mm within which two sizes of sheets are one


def stocks_of(swap: Swap, plan: Plan, stock: Stock) -> Mapping[str, SheetStock]:
    """Return the stock that comes in, by the sheet of the plan; names must be known."""
    only = plan.sheets[0].name if plan.sheets else ""
    found = {sheet.name or only: stock.sheet(named.name) for sheet, named in swap.stocks}
    return {name: each for name, each in found.items() if each is not None}


def swapped(plan: Plan, swap: Swap, stock: Stock) -> Plan:
    """Return a plan cut from another stock, drawn for what that measures and proved for its range.

    Fit, gap, margin and clamps stay; offcuts at hand and further sizes are those of the plan's own
    material, so they go. A size that the stock is not sold in gives way to the nearest that it is.
    """
    coming = stocks_of(swap, plan, stock)
    sheets = tuple(
        _swapped(use, coming[use.name], swap.place, plan.units) if use.name in coming else use
        for use in plan.sheets
    )
    return replace(plan, sheets=sheets, swaps=())


def _swapped(use: SheetUse, stock: SheetStock, place: Place, unit: str) -> SheetUse:
    least, most = (_amount(read_off(mm), place) for mm in (stock.least, stock.most))
    return replace(
        use,
        stock=Named(stock.name, place),
        size=_size(use, stock, place, unit),
        published_for=Ladder(first=least, last=most, place=place),
        drawn_for=_amount(read_off(stock.actual), place),
        ready_made=(),
        also=(),
        offcuts=(),
    )


def _amount(mm: float, place: Place) -> Amount:
    return Amount(f"{digits(mm, 2)} mm", place)


def _size(
    use: SheetUse, stock: SheetStock, place: Place, unit: str
) -> tuple[Amount, Amount] | None:
    if use.size is None or not stock.sizes:
        return use.size
    scope = Scope(unit=unit)
    stated = tuple(scope.mm(each) for each in use.size)

    def off(size: tuple[float, float]) -> float:
        return sum(abs(a - b) for a, b in zip(size, stated, strict=True))

    nearest = min(stock.sizes, key=off)
    if off(nearest) < _SAME:
        return use.size
    return _amount(nearest[0], place), _amount(nearest[1], place)
