"""Figures in words, and what they rest on."""

from __future__ import annotations

from collections.abc import Sequence

from kerfolio.chapters.quantities import told
from kerfolio.document.blocks import Block, Fact, Facts, Folded
from kerfolio.document.words import Words
from kerfolio.edition.loads import Figure
from kerfolio.shop.assumption import Assumption

_NO_SOURCE = "-"


def figures(found: Sequence[Figure]) -> Facts:
    """Return figures, each with what is to be known beside it."""
    facts = (
        Fact(head=each.head, lines=((told(each.value), *map(told, each.notes)),)) for each in found
    )
    return Facts(facts=tuple(facts), rows=True)


def grounds(assumptions: Sequence[Assumption], summary: str) -> tuple[Block, ...]:
    """Return what figures rest on, folded away; nothing where nothing is taken for granted."""
    facts = tuple(Fact(head=str(each.label), lines=(_lines(each),)) for each in assumptions)
    return (Folded(summary=summary, blocks=(Facts(facts=facts, rows=True),)),) if facts else ()


def _lines(each: Assumption) -> tuple[Words, ...]:
    value = told(str(each.value))
    return (value,) if each.source == _NO_SOURCE else (value, str(each.source))
