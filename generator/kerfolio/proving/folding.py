"""One remark of those that differ only in the thickness, and the words for a thickness."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from kerfolio.basis.finding import Finding, Mark
from kerfolio.basis.said import said
from kerfolio.settling.settled import FitVariant
from kerfolio.settling.variant_name import words_of


def folded(found: Iterable[tuple[FitVariant, Finding]], count: int) -> tuple[Finding, ...]:
    """Make one remark of those that differ only in the variant, of ``count`` that were tried.

    It is the first one; where only some of the variants are concerned, it names the first of them.
    """
    groups: dict[tuple[str, ...], list[tuple[FitVariant, Finding]]] = {}
    for variant, finding in found:
        groups.setdefault(finding.identity, []).append((variant, finding))
    return tuple(_told(group, count) for group in groups.values())


def _told(group: Sequence[tuple[FitVariant, Finding]], count: int) -> Finding:
    variant, finding = group[0]
    finding = replace(finding, mark=_merged([each.mark for at, each in group if at == variant]))
    concerned = len({each.label for each, _ in group})
    return finding if concerned == count else at(finding, variant)


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
