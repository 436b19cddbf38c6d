"""Pictures of findings, and of a plan of which nothing is to be remarked, as inline SVG."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kerfolio.basis.finding import Finding
from kerfolio.drawing.album import Album
from kerfolio.drawing.named_part import named_part
from kerfolio.drawing.named_whole import named_whole
from kerfolio.drawing.vocabulary import Drawing
from kerfolio.model.stock import Stock
from kerfolio.proving.about import JOINTS, PICTURED
from kerfolio.proving.prove import Proof
from kerfolio.publishing.sight import sight_of
from kerfolio.settling.settled import SettledPlan
from kerfolio.writing.svg import inline_svg


def finding_pictures(
    findings: Sequence[Finding], proof: Proof | None, stock: Stock
) -> tuple[str, ...]:
    """Return a picture for each finding of a plan, empty for those that have no place to show."""
    if proof is None:
        return ("",) * len(findings)
    whole = proof.together.assembled if proof.together else None
    album = Album(points_of(proof, stock), whole)
    drawn = (
        album.picture(each, JOINTS.get(each.rule)) if _is_shown(each) else None for each in findings
    )
    return tuple(
        inline_svg(each, id_prefix=f"{proof.plan.name}-{number}-") if each else ""
        for number, each in enumerate(drawn, start=1)
    )


def _is_shown(finding: Finding) -> bool:
    """Tell whether a finding is about what can be drawn, or says itself what to show."""
    stated = finding.mark or finding.sketch or finding.meeting or finding.axial
    return bool(stated) or finding.rule in PICTURED


def points_of(proof: Proof, stock: Stock) -> tuple[SettledPlan, ...]:
    """Return the plan as drawn and at its other points; where not all settles, what of it does."""
    if proof.drawn is not None:
        return (proof.drawn, *proof.points)
    settled = sight_of(proof.plan, stock).settled
    return () if settled is None else (settled,)


def plan_pictures(proof: Proof, stock: Stock) -> tuple[tuple[str, str], ...]:
    """Return the whole and every part of a plan, each under its name."""
    sight = sight_of(proof.plan, stock)
    if sight.settled is None:
        return ()
    return tuple(_all(sight.settled, named_whole(sight.settled, sight.wholes), proof.plan.name))


def _all(settled: SettledPlan, whole: Drawing | None, plan: str) -> Iterator[tuple[str, str]]:
    if whole is not None:
        yield "The whole", inline_svg(whole, id_prefix=f"{plan}-whole-")
    for part in settled.parts:
        drawing = named_part(settled, part, headed=False)
        yield part.name, inline_svg(drawing, id_prefix=f"{plan}-part-{part.name}-")
