"""Boards settled: how long each is cut, how it is held on a part, and where it lies."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.finding import Finding
from kerfolio.basis.masses import KG_PER_MM3
from kerfolio.model.plan import GLUE, SLOTTED, BoardUse, FixedTo, Plan
from kerfolio.model.stock import Stock
from kerfolio.settling.scope import Scope, SettlingError, unknown
from kerfolio.settling.settled import SettledBoard, SettledPlace


def boards_of(
    plan: Plan, stock: Stock, scope: Scope
) -> tuple[tuple[SettledBoard, ...], tuple[Finding, ...]]:
    """Return the boards of a plan, and what keeps others from being settled."""
    made: list[SettledBoard] = []
    findings: list[Finding] = []
    for use in plan.boards:
        try:
            _knows_part(use, plan)
            made.append(_board(use, stock, scope))
        except SettlingError as trouble:
            findings.append(trouble.about(use.name))
    return tuple(made), tuple(findings)


def _knows_part(use: BoardUse, plan: Plan) -> None:
    """Raise SettlingError for a board that is fixed to a part the plan has not."""
    known = [part.name for part in plan.parts]
    if use.fixed and use.fixed.part.name not in (*known, *plan.unread):
        raise unknown("part", use.fixed.part, known)


def _board(use: BoardUse, stock: Stock, scope: Scope) -> SettledBoard:
    found = stock.board(use.stock.name)
    if found is None:
        raise unknown("stock", use.stock, (each.name for each in stock.boards), "board stock")
    length = scope.positive(use.length, "length")
    mass = length * found.thickness * found.width * found.density * KG_PER_MM3
    held = _held_over(use.fixed, found.width, scope) if use.fixed else 0.0
    return SettledBoard(
        use=use,
        stock=found,
        length=length,
        mass=mass,
        held_over=held,
        places=tuple(_places(use, scope)),
    )


def _held_over(fixed: FixedTo, width: float, scope: Scope) -> float:
    """Return over how much of a board's width glue or screws hold it, mm. Raises SettlingError."""
    if fixed.by == SLOTTED:
        return 0.0
    if fixed.by == GLUE or fixed.apart is None:
        return width
    return min(width, scope.not_negative(fixed.apart, "apart"))


def _places(use: BoardUse, scope: Scope) -> Iterator[SettledPlace]:
    for each in use.lies[: use.count]:
        piece, _, face = each.on.name.rpartition(".")
        at = None if each.at is None else scope.point(each.at)
        yield SettledPlace(stated=each, piece=piece, face=face, at=at)
