"""What a plan's named numbers measure: lengths, areas or nothing but a number.

Bare numbers do not say it. A size follows from those it is worked out from. One that is only stated
is a length, unless it stands for counts and angles alone; one made of such plain numbers is a
length only where a length uses it.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import fields, is_dataclass

from kerfolio.basis.expression import Expression, parse
from kerfolio.basis.expression_tree import Applied, Name, Number, Quotient, Tree
from kerfolio.basis.functions import CONSTANTS, FUNCTIONS, OPERATORS
from kerfolio.model.plan import Plan
from kerfolio.model.statement import Amount

_PLAIN_FIELDS = ("count", "angle", "turn")
"""What is stated in plain numbers wherever it stands."""
_RATIOS = tuple(
    FUNCTIONS[each].call for each in ("sin", "cos", "tan", "asin", "acos", "atan", "atan2")
)


def dimensions(plan: Plan, in_order: Iterable[str]) -> Mapping[str, float]:
    """Return the power of length of each size: 1 a length, 2 an area, 0 a plain number.

    ``in_order`` are the names of the sizes, each after those it needs.
    """
    stated = {size.name: size.amount.text for size in plan.sizes}
    uses = _uses(plan)
    found: dict[str, float] = {}
    for name in in_order:
        expression = parse(stated[name], plan.units)
        if isinstance(expression, Expression):
            follows = _power(expression.tree, found)
            found[name] = _by_use(name, expression, uses) if follows is None else follows
    return found


def _by_use(name: str, expression: Expression, uses: Mapping[bool, set[str]]) -> float:
    if expression.has_unit or name in uses[False]:
        return 1.0
    return 0.0 if name in uses[True] or expression.names else 1.0


def _uses(plan: Plan) -> Mapping[bool, set[str]]:
    """Return the names that counts and angles use, and those that lengths use."""
    uses: dict[bool, set[str]] = {True: set(), False: set()}
    for field in fields(plan):
        if field.name != "sizes":
            for where, amount in _amounts(getattr(plan, field.name), field.name):
                expression = parse(amount.text, plan.units)
                if isinstance(expression, Expression):
                    uses[where in _PLAIN_FIELDS].update(expression.names)
    return uses


def _amounts(value: object, where: str) -> Iterator[tuple[str, Amount]]:
    if isinstance(value, Amount):
        yield where, value
    elif isinstance(value, tuple):
        for each in value:
            yield from _amounts(each, where)
    elif is_dataclass(value):
        for field in fields(value):
            yield from _amounts(getattr(value, field.name), field.name)


def _power(tree: Tree, known: Mapping[str, float]) -> float | None:
    """Return the power of length of a result, None where bare numbers leave it open."""
    match tree:
        case Number():
            return None
        case Name(name):
            return None if name in CONSTANTS else known.get(name, 1.0)
        case Quotient():
            return _product(_power(tree.dividend, known), _power(tree.divisor, known), -1.0)
        case Applied():
            return _applied(tree, known)


def _product(one: float | None, other: float | None, sign: float = 1.0) -> float | None:
    """Return the power of a product, of a quotient with a ``sign`` of -1.

    A bare number beside a plain one may be either.
    """
    if one is None or other is None:
        alone = one if other is None else sign * other
        return alone or None
    return one + sign * other


def _applied(tree: Applied, known: Mapping[str, float]) -> float | None:
    powers = [_power(each, known) for each in tree.operands]
    if tree.call is OPERATORS["*"]:
        return _product(powers[0], powers[1])
    if tree.call is OPERATORS["**"]:
        exponent = tree.operands[1]
        base = powers[0]
        return base * exponent.amount if base and isinstance(exponent, Number) else base
    if tree.call is FUNCTIONS["sqrt"].call:
        return powers[0] and powers[0] / 2
    if tree.call in _RATIOS:
        return 0.0
    return next((each for each in powers if each is not None), None)
