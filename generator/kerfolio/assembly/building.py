"""A plan put together: in its places over its range, and in its order."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

from kerfolio.assembly.assembled import BuildOrder
from kerfolio.assembly.blocking import Blocking, blocking
from kerfolio.assembly.boards import PosedBoard
from kerfolio.assembly.fastened import PosedFastening
from kerfolio.assembly.found import Deadlock, find
from kerfolio.assembly.go_together import Clash, clashes
from kerfolio.assembly.lying import Shown, shown_at, shown_steps
from kerfolio.assembly.order import BlockedStep, TakenApart, take_apart, verify
from kerfolio.assembly.placed import Placed, placed_in
from kerfolio.assembly.poses import Together, put_together
from kerfolio.assembly.stability import Stability, stability_of
from kerfolio.settling.settled import SettledPlan


@dataclass(frozen=True, kw_only=True)  # no slots: many rules ask for what is worked out once
class Fitted:
    """The plan put together at one thickness, and the pieces that need the same space in it."""

    settled: SettledPlan
    together: Together
    clashes: tuple[Clash, ...]

    @cached_property
    def placed(self) -> Placed:
        """The fastenings and the boards in their places."""
        return placed_in(self.settled, self.together.assembled)

    @property
    def fastenings(self) -> tuple[PosedFastening, ...]:
        """The fastenings in their places."""
        return self.placed.fastenings

    @property
    def boards(self) -> tuple[PosedBoard, ...]:
        """The boards in their places."""
        return self.placed.boards


@dataclass(frozen=True, kw_only=True)  # no slots, as above
class Build:
    """A plan put together.

    ``drawn`` is how it stands at the thickness it is drawn for; ``fitted`` there and at the other
    points it was put together at. ``order`` is the maker's own where the plan has steps that add
    pieces, with the steps that are ``blocked``; else one that was found, or a ``deadlock`` where
    none was.
    ``stability`` is how large, heavy and steady it is as drawn.
    """

    settled: SettledPlan
    drawn: Together
    fitted: tuple[Fitted, ...]
    order: BuildOrder
    stability: Stability
    blocked: tuple[BlockedStep, ...] = ()
    deadlock: Deadlock | None = None
    apart: TakenApart | None = None

    @cached_property
    def placed(self) -> Placed:
        """The fastenings and the boards in their places, as drawn."""
        here = (each for each in self.fitted if each.together is self.drawn)
        there = next(here, None)
        return there.placed if there else placed_in(self.settled, self.drawn.assembled)

    @cached_property
    def shown(self) -> tuple[Shown, ...]:
        """The maker's steps as their pictures show them, hardware aside; none of a found order."""
        stated = self.settled.plan.steps
        found = self.order.found
        return () if found else shown_steps(self.drawn.assembled, self.order, stated)

    @cached_property
    def at_work(self) -> tuple[Shown, ...]:
        """Each of the maker's steps with what is there in it; none of a found order."""
        stated, whole = self.settled.plan.steps, self.drawn.assembled
        if self.order.found:
            return ()
        return tuple(
            shown_at(whole, self.order, stated, number) for number in range(1, len(stated) + 1)
        )


def build_of(drawn: SettledPlan, variants: Sequence[SettledPlan]) -> Build | None:
    """Put a plan together; None where its joints put no piece anywhere."""
    together = put_together(drawn)
    if together is None:
        return None
    ends = {id(each): each for each in (*variants, drawn)}
    fitted = tuple(fitted_at(each, drawn, together) for each in ends.values())
    graphs = blocking(together.assembled)
    order, blocked, locked = _order(drawn, together, graphs)
    return Build(
        settled=drawn,
        drawn=together,
        fitted=tuple(each for each in fitted if each is not None),
        order=order,
        stability=stability_of(together.assembled),
        blocked=blocked,
        deadlock=locked,
        apart=None if locked else take_apart(together.assembled, order, graphs),
    )


def fitted_at(settled: SettledPlan, drawn: SettledPlan, together: Together) -> Fitted | None:
    """Return a plan put together as it is where drawn, and what clashes; None where it cannot."""
    made = together if settled is drawn else put_together(settled, together)
    return (
        None
        if made is None
        else Fitted(settled=settled, together=made, clashes=clashes(made.assembled))
    )


def _order(
    drawn: SettledPlan, together: Together, graphs: Blocking
) -> tuple[BuildOrder, tuple[BlockedStep, ...], Deadlock | None]:
    steps = [[each.name for each in step.add] for step in drawn.plan.steps]
    if any(steps):
        order, blocked = verify(together.assembled, steps, graphs)
        return order, blocked, None
    found = find(together.assembled, graphs)
    if isinstance(found, Deadlock):
        return BuildOrder(steps=(), found=True), (), found
    return found, (), None
