"""The small language of sizes: arithmetic over named numbers and quantities with a unit.

A text is read by this grammar alone; the tree it makes holds plain numbers, names, and the
operators and functions of ``functions.py``, and nothing else.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import lru_cache

from kerfolio.basis.complaint import Complaint
from kerfolio.basis.expression_parser import Parser, Refused
from kerfolio.basis.expression_tree import Tree
from kerfolio.basis.functions import (
    CONSTANTS,
    FUNCTIONS,
    SHEET_FUNCTIONS,
    ExpressionError,
)
from kerfolio.basis.lengths import MM_PER_UNIT

__all__ = ["RESERVED", "Expression", "ExpressionError", "parse"]

RESERVED = frozenset((*FUNCTIONS, *SHEET_FUNCTIONS, *CONSTANTS, *MM_PER_UNIT))
"""Names that no size and no sheet may have."""


@dataclass(frozen=True, slots=True)
class Expression:
    """A well-written expression; bare numbers and results are in ``unit`` (``mm`` or ``in``).

    ``names`` are the sizes it uses, ``sheet_calls`` its calls such as ``("thickness", "ply")``,
    each once, in order of appearance. ``has_unit`` is True where a quantity carries a unit, so
    that counts and angles can refuse it.
    """

    text: str
    unit: str
    names: tuple[str, ...]
    sheet_calls: tuple[tuple[str, str], ...]
    has_unit: bool
    tree: Tree = field(repr=False, compare=False)

    @property
    def sheets(self) -> tuple[str, ...]:
        """The sheets named inside ``thickness()`` and ``fit()``, in order of appearance."""
        return tuple(dict.fromkeys(sheet for _, sheet in self.sheet_calls))

    def evaluate(
        self,
        names: Mapping[str, float],
        thickness: Mapping[str, float],
        fit: Mapping[str, float],
    ) -> float:
        """Return the value, all lengths in the expression's unit.

        Raises ExpressionError where there is no value (division by zero, a root of a negative
        number, a result too large) or a name is not given.
        """
        known = dict(CONSTANTS)
        for name in self.names:
            known[name] = _given(name, name, names)
        for function, sheet in self.sheet_calls:
            shown = f"{function}({sheet})"
            known[shown] = _given(sheet, shown, thickness if function == "thickness" else fit)
        return self.tree.value(known)


def _given(name: str, shown: str, values: Mapping[str, float]) -> float:
    if name not in values:
        raise ExpressionError(f"`{shown}` has no value")
    return float(values[name])


@lru_cache(maxsize=8192)
def parse(text: str, unit: str) -> Expression | Complaint:
    """Read an expression whose bare numbers are in ``unit``; a Complaint (a str) if it is wrong.

    Raises KeyError for a unit that is not in the table of units.
    """
    parser = Parser(text, unit)
    try:
        tree = parser.whole()
    except Refused as refused:
        return refused.complaint
    return Expression(
        text=text,
        unit=unit,
        names=tuple(parser.names),
        sheet_calls=tuple(parser.sheet_calls),
        has_unit=parser.has_unit,
        tree=tree,
    )
