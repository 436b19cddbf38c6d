"""The fastenings in ``plan.json``: what each is of, what it joins, and where it stands."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from kerfolio.assembly.fastened import PosedFastening, posed_fastenings
from kerfolio.assembly.made import Made
from kerfolio.basis.digits import RATIO_DECIMALS
from kerfolio.basis.json_text import number
from kerfolio.settling.fastened import fastenings_of


def fastenings(made: Made) -> Iterator[dict[str, Any]]:
    """Yield each fastening of a thing where it stands in it, mm; without a place where it has none.

    ``at`` is where its head bears, ``direction`` the way it goes in, ``reach`` how far from there.
    """
    build = made.build
    posed = posed_fastenings(made.settled, build.drawn.assembled) if build else ()
    placed = {(each.settled.stated.place, each.settled.number): each for each in posed}
    for each in fastenings_of(made.settled):
        where = placed.get((each.stated.place, each.number))
        yield {
            "kind": each.kind.name,
            "of": made.stated.name,
            "items": [item.name for item in each.items],
            "joins": [seat.name for seat in each.seats],
            "nut-in": each.cross.name if each.cross else None,
            **(_placed(where, made.first_step) if where else {}),
        }


def _placed(each: PosedFastening, first: int) -> dict[str, Any]:
    return {
        "at": [number(value) for value in each.frame.origin],
        "direction": [number(value, RATIO_DECIMALS) for value in each.direction],
        "reach": number(each.tip),
        "step": each.step + first - 1 if each.step else None,
    }
