"""How many people a plan takes: for the sheets as they are bought, and for its heaviest step.

By the NIOSH lifting equation, as ``assembly/storing.py`` has it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from kerfolio.assembly.lifted import lifted_in
from kerfolio.assembly.made import Made
from kerfolio.assembly.storing import carried_by
from kerfolio.basis.masses import KG_PER_MM3
from kerfolio.edition.edition import Edition


@dataclass(frozen=True, slots=True, kw_only=True)
class Lift:
    """What is moved at once: so many kg, by so many ``people`` (3: more than two).

    ``step`` is the step in which it is, 0 for a sheet as it is bought.
    """

    people: int
    mass: float
    step: int = 0


def heaviest_sheet(edition: Edition) -> Lift | None:
    """Return how the heaviest sheet is carried, on edge; None for a plan without sheets."""
    found = []
    for row in edition.sheets:
        stock = edition.settled.sheet(row.sheet).stock
        mass = row.width * row.height * row.thickness * stock.density * KG_PER_MM3
        people = carried_by(mass, (row.thickness, row.width, row.height))
        found.append(Lift(people=people, mass=mass))
    return max(found, key=lambda each: (each.people, each.mass), default=None)


def heaviest_step(edition: Edition) -> Lift | None:
    """Return the heaviest that moves at once in a step; None where no order is known."""
    found = [lift for made in edition.made for lift in _lifts(made)]
    return max(found, key=lambda each: (each.people, each.mass), default=None)


def _lifts(made: Made) -> Iterator[Lift]:
    if made.build is None:
        return
    for each in lifted_in(made.build.drawn.assembled, made.build.order):
        yield Lift(people=each.people, mass=each.mass, step=made.first_step + each.step - 1)
