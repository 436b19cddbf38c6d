"""Draws the sample plans all over their ranges, and tells where a drawing is not drawn alike."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import product
from random import Random

from kerfolio.drawing.vocabulary import Dimension, Drawing, Label, Stroke
from kerfolio.settling.point import point
from kerfolio.settling.settle import settle
from kerfolio.settling.settled import SettledPlan
from tests.settling.test_point import PLANS, drawn_plan

__all__ = ["PLANS", "Range", "range_of", "unlike"]

_FIGURE = re.compile(r"[0-9]+([ ./]?[0-9]+)*")

EXACT = 1e-6
"""mm by which a coordinate may stray from a linear function of the thicknesses."""


@dataclass(frozen=True)
class Range:
    """A plan as drawn, at the ends of its range, and at points within it."""

    drawn: SettledPlan
    corners: tuple[SettledPlan, ...]
    within: tuple[SettledPlan, ...]


@cache
def range_of(name: str) -> Range:
    """Return a sample plan with every sheet at both ends, and at two points between."""
    drawn = drawn_plan(name)
    sheets = [each.name for each in drawn.sheets]
    ends = [each.published for each in drawn.sheets]
    by_chance = Random(name)
    spots = [tuple(by_chance.uniform(*each) for each in ends) for _ in range(2)]

    def there(spot: Sequence[float]) -> SettledPlan:
        at = point(drawn, dict(zip(sheets, spot, strict=True)))
        made, findings = settle(drawn.plan, drawn.stock, at)
        assert made is not None, findings
        return made

    return Range(drawn, tuple(map(there, product(*ends))), tuple(map(there, spots)))


def unlike(found: Range, draw: Callable[[SettledPlan], Mapping[str, Drawing]]) -> list[str]:
    """Return what is not the same at all points but for figures, and what is not linear."""
    first, *others = (*found.corners, *found.within, found.drawn)
    base = dict(_flat(draw(first)))
    steps = [_thicknesses(each) for each in found.corners]
    drawn = {each.variant.thickness: dict(_flat(draw(each))) for each in (first, *others)}
    told = []
    for each in others:
        here = drawn[each.variant.thickness]
        if here.keys() != base.keys():
            told.append(f"{each.variant.label}: {sorted(here.keys() ^ base.keys())[:3]}")
            continue
        for key, value in here.items():
            if not isinstance(value, float):
                told += [] if value == base[key] else [f"{each.variant.label}: {key} {value}"]
                continue
            meant = base[key]
            for axis, mm in enumerate(_thicknesses(each)):
                far = next((n for n, at in enumerate(steps) if _only(steps[0], at, axis)), None)
                if far is None:
                    continue
                end = drawn[found.corners[far].variant.thickness][key]
                run = steps[far][axis] - steps[0][axis]
                meant += (end - base[key]) / run * (mm - steps[0][axis])
            if abs(value - meant) > EXACT:
                told.append(f"{each.variant.label}: {key} is {value}, not {meant}")
    return told


def _thicknesses(settled: SettledPlan) -> tuple[float, ...]:
    return tuple(mm for _, mm in settled.variant.thickness)


def _only(one: tuple[float, ...], other: tuple[float, ...], axis: int) -> bool:
    return [n for n, (a, b) in enumerate(zip(one, other, strict=True)) if a != b] == [axis]


def _flat(drawings: Mapping[str, Drawing]) -> Iterator[tuple[str, float | str]]:
    """Yield every number and every word that is no figure, by where it stands."""
    for name, drawing in drawings.items():
        for axis, value in enumerate(drawing.box):
            yield f"{name} box {axis}", float(value)
        for number, item in enumerate(drawing.items):
            for key, value in _item(item):
                yield f"{name} {number} {key}", value


def _item(item: Stroke | Label | Dimension) -> Iterator[tuple[str, float | str]]:
    if isinstance(item, Stroke):
        yield "pen", f"{item.ink} {item.fill} {item.width} {item.dash} {item.layer}"
        for at, contour in enumerate((item.contour, *item.holes)):
            for corner, vertex in enumerate(contour.vertices):
                yield from ((f"{at} {corner} {n}", float(v)) for n, v in enumerate(vertex))
    elif isinstance(item, Label):
        yield "look", f"{item.height} {item.anchor} {item.angle:.6f} {item.strong} {item.ink}"
        yield "words", _FIGURE.sub("#", item.text)
        yield from (("x", float(item.at[0])), ("y", float(item.at[1])))
    else:
        spots = (*item.a, *item.b, item.offset)
        yield from ((f"dimension {n}", float(value)) for n, value in enumerate(spots))
        yield "words", item.text
