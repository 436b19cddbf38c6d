"""Fastenings and wedges in ``plan.json``: what each is of, what it joins, where it stands."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from kerfolio.assembly.fastened import PosedFastening
from kerfolio.assembly.made import Made
from kerfolio.assembly.wedged import wedges_of
from kerfolio.basis.digits import RATIO_DECIMALS
from kerfolio.basis.json_text import number
from kerfolio.model.fastening import SCREWED
from kerfolio.model.joint_kind import WEDGE_JOINT
from kerfolio.settling.fastened import fastenings_of
from kerfolio.settling.settled import SettledPlan
from kerfolio.shop.pilots import pull_of


def fastenings(made: Made) -> Iterator[dict[str, Any]]:
    """Yield each fastening of a thing where it stands in it, mm; without a place where it has none.

    ``at`` is where its head bears, ``direction`` the way it goes in, ``reach`` how far from there.
    """
    build = made.build
    posed = build.placed.fastenings if build else ()
    placed = {(each.settled.stated.place, each.settled.number): each for each in posed}
    for each in fastenings_of(made.settled):
        where = placed.get((each.stated.place, each.number))
        yield {
            "kind": each.kind.name,
            "of": made.stated.name,
            "items": [item.name for item in each.items],
            "joins": [seat.name for seat in each.seats],
            "nut-in": each.cross.name if each.cross else None,
            **(_placed(where, made) if where else {}),
        }


def _placed(each: PosedFastening, made: Made) -> dict[str, Any]:
    first, settled = made.first_step, made.settled
    return {
        "at": [number(value) for value in each.frame.origin],
        "direction": [number(value, RATIO_DECIMALS) for value in each.direction],
        "reach": number(each.tip),
        "step": each.step + first - 1 if each.step else None,
        **_pull(each, settled),
    }


def _pull(each: PosedFastening, settled: SettledPlan) -> dict[str, Any]:
    """Return what pull in N a screw is allowed, with the source; None where none is published."""
    thread, entries = each.settled.item.thread, each.entries[-1:]
    if each.settled.kind is not SCREWED or thread is None or not entries:
        return {}
    (entry,) = entries
    part, bite = entry.seat.part, max(0.0, each.tip - entry.along)
    if part is None:
        return {}
    stock = settled.sheet(part.sheet).stock
    pull = pull_of(stock, thread, bite, edge=entry.seat.into_edge)
    allowed = None if pull.allowed is None else number(pull.allowed, 0)
    return {"bite": number(bite), "pull-n": allowed, "pull-source": pull.source}


def wedges(made: Made) -> Iterator[dict[str, Any]]:
    """Yield what each wedge of a thing does, mm and mm2; nothing of those without a place.

    ``to-drive`` is from where it is drawn to where it bears at both sides, ``left`` what of it
    stands out at its head then; ``inside`` how far its slot begins inside the face it draws on.
    """
    if made.build is None:
        return
    for each in wedges_of(made.settled, made.build.drawn.assembled):
        yield {
            WEDGE_JOINT.name: each.wedge,
            "through": f"{each.through}.{each.slot.name}",
            "holds": each.holds or None,
            "taper": number(each.taper),
            "inside": None if each.inside is None else number(each.inside),
            "to-drive": number(each.to_drive),
            "left": number(each.left),
            "play": number(each.play),
            "behind": None if each.behind is None else number(each.behind),
            "bearing": number(each.bearing),
        }
