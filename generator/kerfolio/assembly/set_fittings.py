"""The hardware and boards of a set, in the place of every thing that it makes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from kerfolio.assembly.fitting import Fitting, fittings_in
from kerfolio.assembly.made import Made
from kerfolio.assembly.set_together import SetTogether
from kerfolio.geometry.rigid import Rigid, between
from kerfolio.settling.making import labels_made


def set_fittings(made: Sequence[Made], together: SetTogether) -> tuple[Fitting, ...]:
    """Return the fittings of all things of a set, those of twins each; steps count over the plan.

    A thing is moved into the set without being turned.
    """
    return tuple(each for thing in made for each in _of_thing(thing, together))


def _of_thing(thing: Made, together: SetTogether) -> Iterator[Fitting]:
    build = thing.build
    if build is None:
        return
    assembled = build.drawn.assembled
    own = fittings_in(thing.settled, assembled, build.order)
    for number in range(thing.stated.count) if own else ():

        def named(label: str, number: int = number) -> str:
            return labels_made(label, thing.stated)[number]

        first = assembled.pieces[0]
        there = together.assembled.piece(named(first.label))
        moved = Rigid(between(first.pose.origin, there.pose.origin))
        for each in own:
            yield replace(
                each.turned(moved),
                follows=named(each.follows),
                pieces=tuple(map(named, each.pieces)),
                step=thing.first_step + each.step - 1 if each.step else 0,
                number=each.number * thing.stated.count + number,
            )
