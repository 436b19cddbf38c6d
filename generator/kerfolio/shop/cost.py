"""What one or several copies cost: material, hardware, what is used up, the machine's time."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from decimal import ROUND_HALF_UP, Decimal

from kerfolio.basis.digits import digits
from kerfolio.basis.reader import Reader
from kerfolio.model.consumable import Consumable
from kerfolio.model.workshop import Identity
from kerfolio.settling.settled import SettledPlan, SheetSize
from kerfolio.shop.lists import cost_list, hardware_list, known_total, sheet_list
from kerfolio.shop.rows import BoardRow, CostRow

MOST_COPIES = 6
_CENT = Decimal("0.01")
_EXACT = 9
"""Decimals of the hours that are priced; fewer are shown."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CopiesCost:
    """What so many copies cost, line by line; ``unpriced`` names lines without a price.

    ``sheets`` is how many sheets they take, of all materials.
    """

    copies: int
    sheets: int
    lines: tuple[CostRow, ...]

    @property
    def total(self) -> Decimal:
        """The sum of the lines whose price is known."""
        return known_total(self.lines)

    @property
    def each(self) -> Decimal:
        """The known total over the copies, to the cent."""
        return (self.total / self.copies).quantize(_CENT, ROUND_HALF_UP)

    @property
    def unpriced(self) -> tuple[str, ...]:
        """What has no price, once each."""
        return tuple(dict.fromkeys(row.what for row in self.lines if row.total is None))


def copies_costs(
    settled: SettledPlan,
    identity: Identity,
    sheets_for: Callable[[int], Mapping[tuple[str, SheetSize], int]],
    boards_for: Callable[[int], Sequence[BoardRow]],
    machine_minutes: float | None,
    most: int = MOST_COPIES,
) -> tuple[CopiesCost, ...]:
    """Return what 1 to ``most`` copies cost.

    ``sheets_for`` gives the sheets that a number of copies takes, by name and size, as laid out
    together; ``boards_for`` the boards to buy for them. ``machine_minutes`` are those of one copy,
    None where no time is known.
    """
    return tuple(
        _cost(settled, identity, copies, sheets_for(copies), boards_for(copies), machine_minutes)
        for copies in range(1, most + 1)
    )


def _cost(
    settled: SettledPlan,
    identity: Identity,
    copies: int,
    counts: Mapping[tuple[str, SheetSize], int],
    boards: Sequence[BoardRow],
    minutes: float | None,
) -> CopiesCost:
    sheets = sheet_list(settled, counts)
    hardware = [replace(row, count=row.count * copies) for row in hardware_list(settled)]
    materials = cost_list(sheets, boards, hardware, identity.reader_of(settled.plan))
    number = sum(row.count for row in sheets)
    others = _others(settled, identity, copies, number, minutes)
    return CopiesCost(copies=copies, sheets=number, lines=(*materials, *others))


def _others(
    settled: SettledPlan, identity: Identity, copies: int, sheets: int, minutes: float | None
) -> Iterator[CostRow]:
    hours = None if minutes is None else Decimal(digits(minutes * copies / 60, _EXACT))
    used = (*identity.consumables, *settled.plan.consumables)
    reader = identity.reader_of(settled.plan)
    yield from _used_up(used, copies, sheets, hours, reader)
    if identity.machine_hour is not None:
        yield _timed(reader.says("costs-machine-time"), identity.machine_hour, hours, reader)


def _used_up(
    used: Sequence[Consumable], copies: int, sheets: int, hours: Decimal | None, reader: Reader
) -> Iterator[CostRow]:
    for each in used:
        if each.each == "hour":
            yield _timed(each.what, each.price, hours, reader)
        else:
            count = copies if each.each == "copy" else sheets
            total = (each.price * count).quantize(_CENT, ROUND_HALF_UP)
            yield CostRow(what=each.what, count=count, price=each.price, total=total)


def _timed(what: str, price: Decimal, hours: Decimal | None, reader: Reader) -> CostRow:
    """Return a line priced by the hour; it counts once, its price is that of all its hours."""
    if hours is None:
        return CostRow(what=what, count=1, price=None, total=None)
    total = (price * hours).quantize(_CENT, ROUND_HALF_UP)
    shown = reader.number(digits(float(hours), 2))
    return CostRow(what=f"{what}, {shown} h", count=1, price=total, total=total)
