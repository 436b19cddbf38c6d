"""The lists of a plan, worked out from its settled plan."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from decimal import ROUND_HALF_UP, Decimal

from kerfolio.basis.digits import digits
from kerfolio.basis.lengths import both_text
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.model.plan import Plan
from kerfolio.model.stock import SheetStock
from kerfolio.settling.settled import SettledPlan, SettledSheet, SheetSize
from kerfolio.shop.rows import BoardRow, CostRow, HardwareRow, PartRow, SheetRow

_CENT = Decimal("0.01")
_SAME = 0.5  # mm within which a size has the price of another
_ROUNDED = 0.02  # mm: sizes of frozen layouts are rounded


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
    """Return the count of each item for all that a plan makes.

    Summed over the steps as often as they are done, else of the plan's own list.
    """
    done = [(each.count, step) for each in plan.made for step in each.steps]
    uses = [(times, use) for times, step in done for use in step.uses]
    counts: Counter[str] = Counter()
    for times, use in uses or ((1, use) for use in plan.listed):
        counts[use.item.name] += times * use.count
    return counts


def hardware_list(settled: SettledPlan) -> tuple[HardwareRow, ...]:
    """Return a row for each item in the order of its first use."""
    plan, stock = settled.plan, settled.stock
    purposes = {each.item.name: each.purpose for each in plan.fastenings if each.purpose}
    purposes |= {use.item.name: use.purpose for use in plan.hardware}
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


def sheet_list(
    settled: SettledPlan, counts: Mapping[tuple[str, SheetSize], int]
) -> tuple[SheetRow, ...]:
    """Return a row for each sheet material and size, and one for offcuts at hand, which are free.

    ``counts`` is how many sheets of each material and size are used.
    """
    return tuple(
        row
        for sheet in settled.sheets
        for size in _sizes(sheet)
        for row in _sheet_rows(
            sheet,
            size,
            sum(n for (name, of), n in counts.items() if name == sheet.name and _one(of, size)),
        )
    )


def _sizes(sheet: SettledSheet) -> list[SheetSize]:
    """Return the sizes a sheet may have: those to buy as stated, then those of offcuts."""
    sizes: list[SheetSize] = []
    for size in (sheet.size, *sheet.also, *(each.size for each in sheet.offcuts)):
        if not any(_one(size, other) for other in sizes):
            sizes.append(size)
    return sizes


def _sheet_rows(sheet: SettledSheet, size: SheetSize, count: int) -> Iterator[SheetRow]:
    stock = sheet.stock
    at_hand = sum(each.count for each in sheet.offcuts if _one(each.size, size))
    free = min(count, at_hand)
    found = (
        (count - free, stock.title, _price(stock, size)),
        (free, f"{stock.title}, offcut at hand", Decimal("0.00")),
    )
    for number, title, price in found:
        if number:
            yield SheetRow(
                sheet=sheet.name,
                title=title,
                thickness=sheet.thickness,
                width=size[0],
                height=size[1],
                count=number,
                price=price,
            )


def _price(stock: SheetStock, size: SheetSize) -> Decimal | None:
    return next((price for each, price in stock.prices if _same(each, size)), None)


def _same(one: SheetSize, other: SheetSize, within: float = _SAME) -> bool:
    return all(abs(a - b) < within for a, b in zip(one, other, strict=True))


def _one(one: SheetSize, other: SheetSize) -> bool:
    """Tell whether two sizes are one and the same, apart from rounding."""
    return _same(one, other, _ROUNDED)


def board_list(settled: SettledPlan) -> tuple[BoardRow, ...]:
    """Return a row for each length of board to cut; what is bought for them has the prices."""
    return tuple(
        BoardRow(
            name=board.use.name,
            title=board.stock.title,
            thickness=board.stock.thickness,
            width=board.stock.width,
            length=board.length,
            count=board.use.count,
        )
        for board in settled.boards
    )


def boards_to_buy(
    settled: SettledPlan, lengths: Mapping[str, Sequence[tuple[float, int]]]
) -> tuple[BoardRow, ...]:
    """Return a row for each length of board to buy; ``lengths`` holds (mm, how many) by stock."""
    stocks = {board.stock.name: board.stock for board in settled.boards}
    return tuple(
        BoardRow(
            name=name,
            title=stocks[name].title,
            thickness=stocks[name].thickness,
            width=stocks[name].width,
            length=length,
            count=count,
            price=_board_price(stocks[name].price_per_metre, length),
        )
        for name, bought in lengths.items()
        for length, count in bought
    )


def _board_price(per_metre: Decimal | None, length: float) -> Decimal | None:
    if per_metre is None:
        return None
    metres = Decimal(digits(length, 3)) / 1000
    return (per_metre * metres).quantize(_CENT, ROUND_HALF_UP)


def cost_list(
    sheets: Sequence[SheetRow],
    boards: Sequence[BoardRow],
    hardware: Sequence[HardwareRow],
    reader: Reader = METRIC,
) -> tuple[CostRow, ...]:
    """Return what is paid for line by line; a line without a price is there without a total.

    ``boards`` are those to buy; their lengths are told in the reader's unit, then in the other.
    """
    lines = [
        *((row.title, row.count, row.price) for row in sheets),
        *(
            (f"{row.title}, {both_text(row.length, reader)}", row.count, row.price)
            for row in boards
        ),
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
