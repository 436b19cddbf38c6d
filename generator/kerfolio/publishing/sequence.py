"""Finds an order of assembly on request, to be written out as steps."""

from __future__ import annotations

from kerfolio.assembly.building import Build
from kerfolio.assembly.found import Deadlock, find
from kerfolio.assembly.told import as_yaml, told_steps
from kerfolio.publishing.examine import Examined
from kerfolio.settling.titles import pieces_called


def found_orders(examined: Examined) -> tuple[tuple[str, str], ...]:
    """Return (plan, steps as YAML or why there are none) of everything that a proved plan makes."""
    return tuple(
        (_called(each.proof.plan.name, made.stated.name), _told(made.build))
        for each in examined.laid_out
        for made in each.proof.made
    )


def _called(plan: str, assembly: str) -> str:
    return f"{plan}, {assembly}" if assembly else plan


def _told(build: Build | None) -> str:
    if build is None:
        return "# no joints: nothing tells how the pieces go"
    found = find(build.drawn.assembled)
    if isinstance(found, Deadlock):
        return f"# no order of straight moves: {', '.join(found.pieces)} hold each other"
    return as_yaml(told_steps(found, pieces_called(build.settled.plan)))
