"""What a save changed of a plan, as it can be seen: parts, features of theirs, findings."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from kerfolio.basis.finding import Finding
from kerfolio.settling.settled import SettledFeature, SettledPart, SettledPlan

NEW, SHAPED, AS_BEFORE = "new", "changed", ""


@dataclass(frozen=True, slots=True, kw_only=True)
class PartChange:
    """How a part differs from what it was: ``new``, ``changed`` or empty, and which features do."""

    state: str = AS_BEFORE
    features: tuple[str, ...] = ()


def part_changes(before: SettledPlan | None, after: SettledPlan | None) -> dict[str, PartChange]:
    """Return the parts that changed, by name; none where there is nothing to compare with.

    A part changes by its shape, its features, its sheet and its thickness: by what is cut, not by
    how it is written.
    """
    if before is None or after is None:
        return {}
    known = {each.name: each for each in before.parts}
    found = {each.name: _part(known.get(each.name), each) for each in after.parts}
    return {name: change for name, change in found.items() if change.state}


def new_findings(before: Iterable[Finding], after: Iterable[Finding]) -> frozenset[Finding]:
    """Return the findings that were not there before, whatever line they stood in."""
    known = {_said(each) for each in before}
    return frozenset(each for each in after if _said(each) not in known)


def _said(finding: Finding) -> tuple[str, str, str, str]:
    return finding.rule, finding.place.file, finding.subject, finding.message


def _part(before: SettledPart | None, after: SettledPart) -> PartChange:
    if before is None:
        return PartChange(state=NEW)
    known = {each.name: _cut(each) for each in before.features}
    features = tuple(each.name for each in after.features if known.get(each.name) != _cut(each))
    same = _whole(before) == _whole(after) and not features
    return PartChange() if same else PartChange(state=SHAPED, features=features)


def _whole(part: SettledPart) -> tuple[object, ...]:
    return part.routed, part.cuts, part.sheet, part.thickness, part.grain, part.pieces


def _cut(feature: SettledFeature) -> tuple[object, ...]:
    level = feature.level and feature.level.value
    depth = feature.depth and feature.depth.value
    return feature.kind, feature.shape, depth, level, feature.takes
