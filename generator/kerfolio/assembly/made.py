"""The things a plan makes, each put together by itself."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from kerfolio.assembly.building import Build, build_of
from kerfolio.model.plan import Assembly
from kerfolio.settling.making import one_of
from kerfolio.settling.settled import SettledPlan


@dataclass(frozen=True, slots=True, kw_only=True)
class Made:
    """One of the things a plan makes; ``settled`` is one of it, at the thickness it is drawn for.

    ``build`` is None where nothing tells how its pieces go. Steps count from 1 over the whole plan:
    its own begin with ``first_step``.
    """

    stated: Assembly
    settled: SettledPlan
    build: Build | None
    first_step: int = 1

    @property
    def is_single(self) -> bool:
        """Whether it is a single piece, which neither stands nor is put together."""
        return sum(len(part.pieces) for part in self.settled.parts) == 1

    @property
    def lies_alone(self) -> bool:
        """Whether it is a single piece that is laid on what bears it."""
        return self.stated.lies_on is not None and self.is_single

    @property
    def step_count(self) -> int:
        """How many steps it has, stated or found."""
        found = self.build.order.steps if self.build and self.build.order.found else ()
        return len(found) or len(self.stated.steps)

    def named(self, drawing: str) -> str:
        """Return the name of one of its drawings among those of the whole plan."""
        return f"{self.stated.name}-{drawing}" if self.stated.name else drawing


def made_of(drawn: SettledPlan, variants: Sequence[SettledPlan]) -> tuple[Made, ...]:
    """Put together each of the things that a plan makes."""
    made: list[Made] = []
    for each in drawn.plan.made:
        before = made[-1] if made else None
        first = before.first_step + before.step_count if before else 1
        made.append(_made(each, drawn, variants, first))
    return tuple(made)


def _made(
    stated: Assembly, drawn: SettledPlan, variants: Sequence[SettledPlan], first_step: int
) -> Made:
    # The same object stands for the thickness drawn for in both: it is put together once.
    ones = {id(each): one_of(each, stated) for each in (drawn, *variants)}
    settled = ones[id(drawn)]
    return Made(
        stated=stated,
        settled=settled,
        build=build_of(settled, [ones[id(each)] for each in variants]),
        first_step=first_step,
    )
