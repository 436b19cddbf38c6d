"""Refuses what children sleep or are strapped in: no plan may stand in for its standard."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from kerfolio.basis.catalogue import SOURCE
from kerfolio.basis.finding import Finding, error
from kerfolio.model.plan import Plan
from kerfolio.proving.rule import Stated, before
from kerfolio.proving.told_words import Sought, first_told


@dataclass(frozen=True, slots=True, kw_only=True)
class _Kind:
    """What is refused: its words by the languages of the catalogue, and the standards it has."""

    noun: str
    words: Sought
    standards: str


_KINDS = (
    _Kind(
        noun="a cot",
        words={
            SOURCE: r"\b(cots?|cribs?|cradles?|bassinets?)\b",
            "de": r"\b(\w*gitterbett\w*|babybett\w*|\w*wiegen?)\b",
        },
        standards="EN 716 and EN 1130, 16 CFR 1218 to 1220",
    ),
    _Kind(
        noun="a bunk bed",
        words={
            SOURCE: r"\b(bunk|loft|high)[- ]?beds?\b",
            "de": r"\b(etagen|stock|hoch)bett\w*\b",
        },
        standards="EN 747, 16 CFR 1213 and 1513",
    ),
    _Kind(
        noun="a high chair",
        words={
            SOURCE: r"\bhigh[- ]?chairs?\b",
            "de": r"\b(kinder)?hochst[uü]hl\w*\b",
        },
        standards="EN 14988, 16 CFR 1231",
    ),
)
"""Their standards are from memory: what they ask is looked up in them."""


@before(
    "child-bed-refused",
    reason="Children have died in beds and chairs that failed: each make of them is to be tested.",
    source="EN 716, EN 747, EN 1130, EN 14988; 16 CFR 1213, 1218 to 1220, 1231, 1513, from memory",
)
def none_for_sleep(stated: Stated) -> Iterator[Finding]:
    """Look for plans whose title, kind or tags say that they are a cot, a bunk or a high chair."""
    words = _called(stated.plan)
    for kind in _KINDS:
        found = first_told(kind.words, words)
        if found:
            message = f"“{found}”: no plan for {kind.noun} is published from here"
            advice = (
                f"Such furniture is tested as made ({kind.standards}, from memory): gaps, strength "
                "and stability are no matter of a drawing. If it is none, call it otherwise."
            )
            yield error("child-bed-refused", message, stated.plan.place, advice)


def _called(plan: Plan) -> str:
    return " / ".join((plan.title, plan.category, *plan.tags))
