"""Which way round pieces meet, as they were put together, where a plan's joints leave it open."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from kerfolio.adopting.adopted import Adopted
from kerfolio.adopting.stated import PlanWriter
from kerfolio.basis.finding import Finding
from kerfolio.geometry.rigid import Vector, dot

_LOOKS: dict[str, Vector] = {
    "right": (1.0, 0.0, 0.0),
    "up": (0.0, 1.0, 0.0),
    "left": (-1.0, 0.0, 0.0),
    "down": (0.0, -1.0, 0.0),
}
_ALIKE = 0.3


def ways_round(
    found: Adopted, findings: Iterable[Finding], known: Mapping[str, str]
) -> dict[str, str]:
    """Return joints that answer the findings which ask for it, by the first end's name.

    What is ``known`` already is not answered again.
    """
    asked = {each.subject for each in findings if each.rule == "which-way-round"}
    return {
        first: joint for first, joint in _joints(found) if first in asked and first not in known
    }


def _joints(found: Adopted) -> Iterator[tuple[str, str]]:
    writer = PlanWriter(found, "mm", {})  # names alone are asked
    for one, other, first, second, out in writer.tab_joints():
        a, b = found.arranged.poses[one], found.arranged.poses[other]
        inner = b.inverse
        show = "out" if inner.vector(a.vector((*out, 0.0)))[2] > 0 else "in"
        look = inner.vector(a.z)
        word = max(_LOOKS, key=lambda each: round(dot(look, _LOOKS[each]), 6))
        looking = f", looking: {word}" if dot(look, _LOOKS[word]) > _ALIKE else ""
        yield first, f"{{tab: {first}, into: {second}, show: {show}{looking}}}"
