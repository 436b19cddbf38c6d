"""One remark of those that differ only in the thickness, and the words for a thickness."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from kerfolio.basis.finding import Finding, Mark
from kerfolio.basis.said import said
from kerfolio.settling.settled import FitVariant
from kerfolio.settling.variant_name import words_of


def folded(
    found: Iterable[tuple[FitVariant, Finding]], tried: Sequence[FitVariant]
) -> tuple[Finding, ...]:
    """Make one remark of those that differ only in the point, of all that were ``tried`` in order.

    Where only some of the points are concerned it is the one at an end of the range and names that,
    the thinnest or else the thickest, since it is worst there; else the first of them.
    """
    groups: dict[tuple[str, ...], list[tuple[FitVariant, Finding]]] = {}
    for point, finding in found:
        groups.setdefault(finding.identity, []).append((point, finding))
    return tuple(_told(group, tried) for group in groups.values())


def _told(group: Sequence[tuple[FitVariant, Finding]], tried: Sequence[FitVariant]) -> Finding:
    concerned = {each.label: each for each, _ in group}
    ends = (end for end in (tried[0], tried[-1]) if end.label in concerned)
    point = next(ends, group[0][0])
    own = [each for at, each in group if at.label == point.label]
    finding = replace(own[0], mark=_merged([each.mark for each in own]))
    return finding if len(concerned) == len(tried) else at(finding, point)


def _merged(marks: Sequence[Mark | None]) -> Mark | None:
    """Return one mark with the rings of all, those of one part."""
    known = [each for each in marks if each is not None]
    if not known:
        return None
    rings = (ring for each in known if each.part == known[0].part for ring in each.rings)
    return replace(known[0], rings=tuple(dict.fromkeys(rings)))


def at(finding: Finding, variant: FitVariant) -> Finding:
    """Return a finding that says at which thickness it was found."""
    return replace(finding, words=said("{} (at {})", finding.words, words_of(variant)))
