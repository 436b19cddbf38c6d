"""Reads the text of an expression into a tree of plain arithmetic, by recursive descent."""

from __future__ import annotations

import operator
import re

from kerfolio.basis.complaint import Complaint, quoted
from kerfolio.basis.expression_tree import Applied, Name, Number, Quotient, Tree
from kerfolio.basis.functions import CONSTANTS, FUNCTIONS, OPERATORS, SHEET_FUNCTIONS
from kerfolio.basis.lengths import MM_PER_UNIT
from kerfolio.basis.names import nearest
from kerfolio.basis.quantity import Literal, literal_at

MOST_LETTERS, MOST_DEPTH = 300, 20
_NAME = re.compile(r"[A-Za-z_][A-Za-z0-9_]*")
_TOKENS = re.compile(r"\*\*|[-+*/(),]")
_SIGNS = {"×": "*", "·": "*", "÷": "/", "−": "-", "–": "-", "^": "**", ":": "/"}
_HELP = "Write numbers, sizes, + - * / and parentheses, such as `(seat - 2*t)/2`."


class Refused(Exception):  # noqa: N818 - carries a complaint out of the descent, never further
    """Leaves the descent at the first thing that cannot be read."""

    def __init__(self, complaint: Complaint) -> None:
        super().__init__(complaint)
        self.complaint = complaint


class Parser:
    """One pass over a text; ``names``, ``sheet_calls`` and ``has_unit`` fill while it reads."""

    def __init__(self, text: str, unit: str) -> None:
        self.names: dict[str, None] = {}
        self.sheet_calls: dict[tuple[str, str], None] = {}
        self.has_unit = False
        self._text = text
        self._mm_per_unit = MM_PER_UNIT[unit]
        self._inches = unit == "in"
        self._at = 0
        self._depth = 0
        self._calls = 0

    def whole(self) -> Tree:
        """Return the tree of the whole text; raises Refused."""
        if not self._text.strip():
            raise _refused("nothing is written", "Write a number, a quantity or an expression.")
        if len(self._text) > MOST_LETTERS:
            shown = quoted(self._text, 20)
            raise _refused(f"{shown} is too long", "Give parts of it names under `sizes`.")
        tree = self._sum()
        if self._peek():
            raise self._unexpected()
        return tree

    def _peek(self) -> str:
        """Return the sign ahead, or a single character that begins something else."""
        while self._text[self._at : self._at + 1] in (" ", "\n"):
            self._at += 1
        found = _TOKENS.match(self._text, self._at)
        return found.group() if found else self._text[self._at : self._at + 1]

    def _take(self, sign: str) -> bool:
        if self._peek() != sign:
            return False
        self._at += len(sign)
        return True

    def _sum(self) -> Tree:
        left = self._product()
        while (sign := self._peek()) in ("+", "-"):
            self._at += 1
            left = Applied(OPERATORS[sign], (left, self._product()))
        return left

    def _product(self) -> Tree:
        left = self._signed()
        while (sign := self._peek()) in ("*", "/"):
            self._at += 1
            if sign == "/":
                self._refuse_division_by_quantity(sign)
            start = self._at
            right = self._signed()
            if sign == "/":
                left = Quotient(left, right, self._text[start : self._at].strip())
            else:
                left = Applied(OPERATORS[sign], (left, right))
        return left

    def _signed(self) -> Tree:
        """Read an operand with its signs; every way to nest passes here, so depth is kept here."""
        self._depth += 1
        if self._depth > MOST_DEPTH:
            raise _refused("too many parentheses or signs", "Give parts names under `sizes`.")
        if self._take("-"):
            made: Tree = Applied(operator.neg, (self._signed(),))
        elif self._take("+"):
            made = self._signed()
        else:
            made = self._powered()
        self._depth -= 1
        return made

    def _powered(self) -> Tree:
        base = self._atom()
        if not self._take("**"):
            return base
        self._refuse_division_by_quantity("**")
        return Applied(OPERATORS["**"], (base, self._signed()))

    def _atom(self) -> Tree:
        ahead = self._peek()
        if ahead.isascii() and (ahead.isdigit() or ahead == "."):
            return self._number()
        name = _NAME.match(self._text, self._at)
        if name:
            self._at = name.end()
            return self._named(name.group())
        if self._take("("):
            calls, self._calls = self._calls, 0
            inner = self._sum()
            self._calls = calls
            self._close()
            return inner
        raise self._unexpected()

    def _literal(self, start: int) -> Literal | Complaint:
        return literal_at(self._text, start, commas=self._calls > 0, inches=self._inches)

    def _number(self) -> Tree:
        start = self._at
        literal = self._literal(start)
        if isinstance(literal, Complaint):
            raise Refused(literal)
        self._at = literal.end
        value = literal.value
        if literal.unit:
            self.has_unit = True
            value /= self._mm_per_unit
        return Number(float(value))

    def _refuse_division_by_quantity(self, sign: str) -> None:
        """Refuse ``seat/2 mm``: it reads as half of seat, but would divide by a length."""
        ahead = self._peek()
        if not (ahead.isascii() and ahead.isdigit()):
            return
        literal = self._literal(self._at)
        if isinstance(literal, Complaint) or not literal.unit:
            return
        shown = self._text[self._at : literal.end]
        advice = f"Leave the unit out, or write `{sign} ({shown})` if you mean that."
        raise _refused(f"a unit after `{sign}`: {quoted(sign + shown)}", advice)

    def _named(self, name: str) -> Tree:
        if name in SHEET_FUNCTIONS or name in FUNCTIONS:
            return self._call(name)
        if self._peek() == "(":
            close = nearest(name, (*FUNCTIONS, *SHEET_FUNCTIONS))
            advice = f"Did you mean `{close}`?" if close else f"To multiply write `{name}*(...)`."
            raise _refused(f"unknown function {quoted(name)}", advice)
        if name in MM_PER_UNIT:
            advice = f"A unit stands right after a number: `18 {name}`."
            raise _refused(f"the unit `{name}` has no number", advice)
        if name not in CONSTANTS:
            self.names[name] = None
        return Name(name)

    def _call(self, name: str) -> Tree:
        if not self._take("("):
            example = f"{name}(ply)" if name in SHEET_FUNCTIONS else f"{name}(...)"
            raise _refused(f"`{name}` lacks its parentheses", f"Write `{example}`.")
        if name in SHEET_FUNCTIONS:
            return self._sheet(name)
        self._calls += 1
        arguments = [self._sum()]
        while self._take(","):
            arguments.append(self._sum())
        self._calls -= 1
        self._close()
        function = FUNCTIONS[name]
        if not function.least <= len(arguments) <= function.most:
            wanted = {(1, 1): "one number", (2, 2): "two numbers"}
            needs = wanted.get((function.least, function.most), "two numbers or more")
            raise _refused(f"`{name}` takes {needs}, not {len(arguments)}", _HELP)
        return Applied(function.call, tuple(arguments))

    def _sheet(self, function: str) -> Tree:
        self._peek()
        name = _NAME.match(self._text, self._at)
        if name is None:
            raise _refused(f"`{function}` needs a sheet", f"Write `{function}(ply)`.")
        self._at = name.end()
        self._close()
        self.sheet_calls[(function, name.group())] = None
        return Name(f"{function}({name.group()})")

    def _close(self) -> None:
        if self._take(")"):
            return
        if not self._peek():
            raise _refused("a `)` is missing", "Close every parenthesis you open.")
        raise self._unexpected()

    def _unexpected(self) -> Refused:
        ahead = self._peek()
        if not ahead:
            return _refused(f"{quoted(self._text)} stops too soon", _HELP)
        if ahead in _SIGNS:
            return _refused(f"`{ahead}` is no operator here", f"Write `{_SIGNS[ahead]}`.")
        if ahead == "°":
            return _refused("`°` is not needed", "Angles are degrees: write the number alone.")
        rest = self._text[self._at :]
        name = _NAME.match(rest)
        if name and name.group() in MM_PER_UNIT:
            advice = f"A unit stands right after a number: `18 {name.group()}`."
            return _refused(f"the unit `{name.group()}` has no number", advice)
        if name or ahead.isdigit() or ahead == "(":
            return _refused(f"no operator before {quoted(rest, 20)}", _HELP)
        return _refused(f"{quoted(rest, 20)} cannot be read", _HELP)


def _refused(message: str, advice: str) -> Refused:
    return Refused(Complaint(message, advice))
