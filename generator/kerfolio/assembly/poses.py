"""From joints to places: every piece of a settled plan put where its joints want it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from kerfolio.assembly.assembled import Assembled
from kerfolio.assembly.closure import bridges, closed
from kerfolio.assembly.ends import pieces_of
from kerfolio.assembly.hearing import hearing_of
from kerfolio.assembly.links import Link, links_of, root_of
from kerfolio.assembly.pairing import Gap, pairings_of
from kerfolio.assembly.placing import walk
from kerfolio.assembly.posing import assembled_of, panels_of
from kerfolio.assembly.remarks import gap_findings, unchecked, unreached
from kerfolio.assembly.standing import stood
from kerfolio.assembly.undecided import undecided
from kerfolio.basis.finding import Finding
from kerfolio.geometry.rigid import HERE
from kerfolio.model.joint import Joint, Standing
from kerfolio.model.statement import Named
from kerfolio.settling.settled import SettledPlan


@dataclass(frozen=True, slots=True, kw_only=True)
class Together:
    """A plan put together; ``gaps`` are the pairs of features that do not meet.

    ``ways`` is the number of the way that each joint goes: it is the same at every thickness.
    """

    assembled: Assembled
    gaps: tuple[Gap, ...]
    ways: Mapping[Joint, int]
    findings: tuple[Finding, ...]


def put_together(settled: SettledPlan, like: Together | None = None) -> Together | None:
    """Put a plan's pieces where its joints want them; None where no two pieces are joined.

    A thing of a set that is a single piece lies flat, its show face up, unless its ``standing``
    says otherwise. ``like`` is the same plan put together at another thickness: its ways are taken
    over, and nothing is asked again, nor what is wrong there already explained again.
    """
    links, faults = links_of(settled)
    if not links:
        return _alone(settled, faults)
    if like is not None:
        links = tuple(_narrowed(link, like.ways) for link in links)
    parts = pieces_of(settled)
    panels = panels_of(settled)
    root = root_of(links)
    walks = walk(links, root)
    explained = like is not None and bool(like.gaps)
    hearing = hearing_of(settled, links, root, explained=explained)
    closure = closed(walks, links, root, hearing)
    poses = stood(closure.poses, parts, panels, settled.plan.standing)
    findings = list(faults)
    if like is None:
        # A joint that is off, or cannot be made, would have decided some of the ways.
        findings += () if closure.gaps or faults else undecided(walks, links, parts, panels)
        findings += unchecked(bridges(links), links) if len(poses) > 2 else ()
        findings += unreached(parts, poses, links)
    findings += () if explained else gap_findings(closure, links)
    return Together(
        assembled=assembled_of(
            settled, poses, panels, pairings_of(links, closure.ways, poses), links
        ),
        gaps=closure.gaps,
        ways={links[i].joint.stated: links[i].ways[w].number for i, w in closure.ways.items()},
        findings=tuple(findings),
    )


def _alone(settled: SettledPlan, faults: Sequence[Finding]) -> Together | None:
    """Return a single piece in its place; what is wrong with every joint is told beside one."""
    parts = pieces_of(settled)
    lies = settled.plan.is_set and len(parts) == 1
    if not (lies or faults):
        return None
    label = next(iter(parts))
    panels = panels_of(settled)
    lying = settled.plan.standing or Standing(piece=Named(label), looks="up")
    poses = stood({label: HERE}, parts, panels, lying)
    assembled = assembled_of(settled, poses, panels)
    return Together(assembled=assembled, gaps=(), ways={}, findings=tuple(faults))


def _narrowed(link: Link, ways: Mapping[Joint, int]) -> Link:
    """Return a link with only the way that was taken before."""
    taken = tuple(way for way in link.ways if way.number == ways.get(link.joint.stated))
    return replace(link, ways=taken) if taken else link
