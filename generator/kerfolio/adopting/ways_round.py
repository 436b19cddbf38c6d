"""Which way round pieces meet, as they were put together, where a plan's joints leave it open."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from kerfolio.adopting.adopted import Adopted
from kerfolio.adopting.stated import PlanWriter, looking
from kerfolio.basis.finding import Finding

_ALIKE = 0.3


def ways_round(
    found: Adopted, findings: Iterable[Finding], known: Mapping[str, str]
) -> dict[str, str]:
    """Return joints that answer the findings which ask for it, by the first end's name.

    Pieces that clash may lie the other way round: as they are drawn both ways fit, but only one
    does at every thickness. What is ``known`` already is not answered again.
    """
    told = tuple(findings)
    asked = {each.subject for each in told if each.rule == "which-way-round"}
    clashing = [each.meeting for each in told if each.rule == "pieces-clash" and each.meeting]
    pieces = {name for each in clashing for name in (*each.pieces, *each.others)}
    return {
        first: joint
        for first, joint, ends in _joints(found)
        if (first in asked or pieces.intersection(ends)) and first not in known
    }


def _joints(found: Adopted) -> Iterator[tuple[str, str, tuple[str, str]]]:
    """Yield for each set of tabs its name, its joint with its way round, and both pieces."""
    writer = PlanWriter(found, "mm", {})  # names alone are asked
    for one, other, first, second, out in writer.tab_joints():
        a, b = found.arranged.poses[one], found.arranged.poses[other]
        inner = b.inverse
        show = "out" if inner.vector(a.vector((*out, 0.0)))[2] > 0 else "in"
        look = inner.vector(a.z)
        told = f", looking: {looking(look[:2])}" if max(map(abs, look[:2])) > _ALIKE else ""
        ends = first.rpartition(".")[0], second.rpartition(".")[0]
        yield first, f"{{tab: {first}, into: {second}, show: {show}{told}}}", ends
