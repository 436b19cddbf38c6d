"""From places of kinds in rooms to places of labelled pieces on sheets."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kerfolio.layouts.engine import Bed, Spot
from kerfolio.layouts.filling import Found
from kerfolio.layouts.pose import Kind
from kerfolio.layouts.room import corner


def spots(bed: Bed, kinds: Sequence[Kind], sheets: Sequence[Sequence[Found]]) -> Iterator[Spot]:
    """Give the places to the labels of each kind in turn: by sheet, from left to right.

    So the first labels of all kinds share the first sheets: pieces of one copy keep together.
    """
    edge = corner(bed)
    labels = [iter(kind.labels) for kind in kinds]
    for sheet, places in enumerate(sheets):
        for found in sorted(places, key=_across):
            pose = found.pose
            yield Spot(
                label=next(labels[found.kind]),
                sheet=sheet,
                x=found.x - pose.corner[0] + edge,
                y=found.y - pose.corner[1] + edge,
                turn=pose.turn,
            )


def _across(found: Found) -> tuple[float, float]:
    return found.x, found.y
