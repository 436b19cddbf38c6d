"""The lists of a plan, worked out from its settled plan."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from decimal import ROUND_HALF_UP, Decimal

from generator.model.plan import Plan
from generator.model.stock import SheetStock
from generator.settling.settled import SettledPlan
from generator.shop.rows import BoardRow, CostRow, HardwareRow, PartRow, SheetRow

_CENT = Decimal("0.01")
_SAME = 0.5  # mm within which two sheet sizes are the same


def parts_list(settled: SettledPlan) -> tuple[PartRow, ...]:
    """Return a row for each part in the plan's order; sizes are those of the shape as cut."""
    return tuple(
        PartRow(
            part=part.name,
            mark=part.mark,
            marks=tuple(piece.mark for piece in part.pieces),
            labels=tuple(piece.label for piece in part.pieces),
            count=len(part.pieces),
            sheet=part.sheet,
            thickness=part.thickness,
            width=part.size[0],
            height=part.size[1],
            area=part.area,
            mass=part.mass,
            grain=part.grain,
            note=part.note,
        )
        for part in settled.parts
    )


def hardware_counts(plan: Plan) -> Mapping[str, int]:
    """Return the count of each item summed over the steps, else of the plan's own list."""
    uses = [use for step in plan.steps for use in step.hardware] or plan.hardware
    counts: Counter[str] = Counter()
    for use in uses:
        counts[use.item.name] += use.count
    return counts


def hardware_list(settled: SettledPlan) -> tuple[HardwareRow, ...]:
    """Return a row for each item in the order of its first use."""
    plan, stock = settled.plan, settled.stock
    purposes = {use.item.name: use.purpose for use in plan.hardware}
    rows = []
    for name, count in hardware_counts(plan).items():
        item = stock.item(name)
        rows.append(
            HardwareRow(
                item=name,
                title=item.title if item else name,
                count=count,
                purpose=purposes.get(name, ""),
                inch_twin=_title(settled, item.inch_twin) if item else "",
                price=item.price if item else None,
            )
        )
    return tuple(rows)


def _title(settled: SettledPlan, name: str) -> str:
    item = settled.stock.item(name) if name else None
    return item.title if item else name


def sheet_list(settled: SettledPlan, counts: Mapping[str, int]) -> tuple[SheetRow, ...]:
    """Return a row for each sheet material; ``counts`` is how many sheets the layout uses."""
    return tuple(
        SheetRow(
            sheet=sheet.name,
            title=sheet.stock.title,
            thickness=sheet.thickness,
            width=sheet.size[0],
            height=sheet.size[1],
            count=counts[sheet.name],
            price=_price(sheet.stock, sheet.size),
        )
        for sheet in settled.sheets
        if counts.get(sheet.name)
    )


def _price(stock: SheetStock, size: tuple[float, float]) -> Decimal | None:
    for (along, across), price in stock.prices:
        if abs(along - size[0]) < _SAME and abs(across - size[1]) < _SAME:
            return price
    return None


def board_list(settled: SettledPlan) -> tuple[BoardRow, ...]:
    """Return a row for each length of board to cut."""
    return tuple(
        BoardRow(
            name=board.use.name,
            title=board.stock.title,
            thickness=board.stock.thickness,
            width=board.stock.width,
            length=board.length,
            count=board.use.count,
            price=_board_price(board.stock.price_per_metre, board.length),
        )
        for board in settled.boards
    )


def _board_price(per_metre: Decimal | None, length: float) -> Decimal | None:
    if per_metre is None:
        return None
    metres = Decimal(str(round(length, 3))) / 1000
    return (per_metre * metres).quantize(_CENT, ROUND_HALF_UP)


def cost_list(
    sheets: Sequence[SheetRow], boards: Sequence[BoardRow], hardware: Sequence[HardwareRow]
) -> tuple[CostRow, ...]:
    """Return what a copy costs line by line; a line without a price is there without a total."""
    lines = [
        *((row.title, row.count, row.price) for row in sheets),
        *((row.title, row.count, row.price) for row in boards),
        *((row.title, row.count, row.price) for row in hardware),
    ]
    return tuple(
        CostRow(
            what=what,
            count=count,
            price=price,
            total=None if price is None else (price * count).quantize(_CENT, ROUND_HALF_UP),
        )
        for what, count, price in lines
    )


def known_total(costs: Iterable[CostRow]) -> Decimal:
    """Return the sum of the lines whose price is known."""
    return sum((row.total for row in costs if row.total is not None), Decimal(0))
