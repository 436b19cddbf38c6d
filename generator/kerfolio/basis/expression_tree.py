"""The tree of an expression: numbers, names, and functions applied to what lies under them."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from kerfolio.basis.functions import ExpressionError, divide


@dataclass(frozen=True, slots=True)
class Number:
    """A number as written, in the expression's unit."""

    amount: float

    def value(self, names: Mapping[str, float]) -> float:  # noqa: ARG002 - it uses none
        """Return the number."""
        return self.amount


@dataclass(frozen=True, slots=True)
class Name:
    """A name that stands for a number."""

    name: str

    def value(self, names: Mapping[str, float]) -> float:
        """Return what the name stands for. Raises KeyError where it stands for nothing."""
        return names[self.name]


@dataclass(frozen=True, slots=True)
class Applied:
    """A function or an operator with its operands, which are worked out from left to right."""

    call: Callable[..., float]
    operands: tuple[Tree, ...]

    def value(self, names: Mapping[str, float]) -> float:
        """Return the function's value. Raises ExpressionError where it has none."""
        return self.call(*(each.value(names) for each in self.operands))


@dataclass(frozen=True, slots=True)
class Quotient:
    """A division; ``written`` is the divisor as it stands in the text, for a maker to find."""

    dividend: Tree
    divisor: Tree
    written: str

    def value(self, names: Mapping[str, float]) -> float:
        """Return the quotient. Raises ExpressionError, too, where the divisor comes to zero."""
        dividend, divisor = self.dividend.value(names), self.divisor.value(names)
        if divisor == 0:
            comes = f"`{self.written}` comes to 0: divide" if self.written.strip("0.") else "Divide"
            raise ExpressionError("division by zero", f"{comes} by another number.")
        return divide(dividend, divisor)


Tree = Number | Name | Applied | Quotient
