"""Forms: each reads a node into a model value and writes the JSON Schema of what it reads.

A form never stops at the first fault: it keeps every finding at the desk and returns None for
what cannot be read.
"""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Callable, Sized
from dataclasses import dataclass, field, replace
from typing import Any, Generic, TypeVar

from kerfolio.basis.budgets import LINE, LIST, WORD, Budget, longest_word
from kerfolio.basis.complaint import Complaint
from kerfolio.basis.said import Text
from kerfolio.reading.decimal_comma import refused_commas, warn_of_commas
from kerfolio.reading.desk import Desk
from kerfolio.reading.nodes import Broken, Entry, Node, Scalar, Sequence, found
from kerfolio.reading.odd_blank import blank_finding, plain_blanks

T = TypeVar("T")
Schema = dict[str, Any]
Book = dict[str, Schema]
"""Named schemas, gathered under ``$defs``."""


class Form(ABC, Generic[T]):
    """One kind of value: ``noun`` names it in messages, ``advice`` says what to write."""

    noun: str
    advice: Text

    @abstractmethod
    def read(self, node: Node, desk: Desk) -> T | None:
        """Return the value, or None with findings at the desk."""

    @abstractmethod
    def schema(self, book: Book) -> Schema:
        """Return the JSON Schema; named parts are put in ``book``."""

    def home(self, entry: Entry, name: str, node: Node) -> str:  # noqa: ARG002 - most have none
        """Return where in ``node``, stated as ``name``, an entry below it belongs, or nothing.

        An entry that is indented too little stands beside the mapping it was meant for: only the
        last entry at each level can be its home.
        """
        return ""

    @property
    def what_to_write(self) -> Text:
        """What to write where another kind of value stands."""
        return self.advice

    def refuse(self, node: Node, desk: Desk) -> None:
        """Say that another kind of value stands here."""
        if not isinstance(node, Broken):
            message = f"expected {self.noun}, found {found(node)}"
            desk.refuse("wrong-kind", message, node.place, self.what_to_write)


@dataclass(frozen=True, slots=True, kw_only=True)
class ScalarForm(Form[T]):
    """A single text; ``convert`` returns the value or a Complaint.

    ``budget`` bounds its letters before it is converted. ``prose`` is a text set for readers, in
    which no word may be too long for a line.
    """

    noun: str
    advice: Text
    convert: Callable[[Scalar], T | Complaint]
    json: Schema = field(default_factory=lambda: {"type": "string"})
    rule: str = "wrong-value"
    budget: Budget = LINE
    prose: bool = False

    def read(self, node: Node, desk: Desk) -> T | None:
        """Return the converted text."""
        if not isinstance(node, Scalar) or not node.text.strip():
            self.refuse(node, desk)
            return None
        fault = self.budget.fault(len(node.text))
        if fault is None and self.prose:
            fault = WORD.fault(longest_word(node.text))
        if fault is not None:
            desk.complain("too-long", fault, node.place)
            return None
        value = self.convert(node)
        if isinstance(value, Complaint):
            self._refuse_text(node, value, desk)
            return None
        return value

    def _refuse_text(self, node: Scalar, fault: Complaint, desk: Desk) -> None:
        again = self.convert(replace(node, text=plain_blanks(node.text)))
        odd = blank_finding(node, again if isinstance(again, Complaint) else None)
        if odd is not None:
            desk.findings.append(odd)
        else:
            desk.refuse(self.rule, str(fault), node.place, fault.advice or self.advice)

    def schema(self, book: Book) -> Schema:  # noqa: ARG002 - nothing of it is named
        """Return the stated schema, for a text of readers with its greatest length."""
        return {**self.json, "maxLength": self.budget.most} if self.prose else dict(self.json)


def too_many(entries: Sized, node: Node, desk: Desk, budget: Budget = LIST) -> bool:
    """Tell whether a list or mapping has more entries than are taken; refuse it then."""
    fault = budget.fault(len(entries))
    if fault is not None:
        desk.complain("too-many", fault, node.place)
    return fault is not None


@dataclass(frozen=True, slots=True, kw_only=True)
class ListOf(Form[tuple[T, ...]]):
    """A list of one form.

    ``lenient`` leaves out what cannot be read; else one bad entry spoils the list. ``single``
    lets one entry stand alone without brackets. ``budget`` bounds the entries before one is read.
    """

    item: Form[T]
    noun: str
    advice: Text
    budget: Budget = LIST
    least: int = 0
    lenient: bool = False
    single: bool = False

    def read(self, node: Node, desk: Desk) -> tuple[T, ...] | None:
        """Return the entries that can be read, in order."""
        if isinstance(node, Sequence):
            items: tuple[Node, ...] = node.items
        elif self.single and not (isinstance(node, Scalar) and node.empty):
            items = (node,)
        else:
            self.refuse(node, desk)
            return None
        if too_many(items, node, desk, self.budget):
            return None
        if isinstance(node, Sequence):
            warn_of_commas(node, desk)
        if len(items) < self.least:
            message = f"{self.noun} needs {self.least} or more, found {len(items)}"
            desk.refuse("too-few", message, node.place, self.advice)
            return None
        values = tuple(self.item.read(each, desk) for each in items)
        readable = tuple(each for each in values if each is not None)
        return readable if self.lenient or len(readable) == len(values) else None

    def home(self, entry: Entry, name: str, node: Node) -> str:
        """Return where in the last item of the list an entry belongs."""
        if not isinstance(node, Sequence) or node.flow or not node.items:
            return ""
        return self.item.home(entry, f"the last of {name}", node.items[-1])

    def schema(self, book: Book) -> Schema:
        """Return an array's schema."""
        item = self.item.schema(book)
        array: Schema = {"type": "array", "items": item}
        if self.least:
            array["minItems"] = self.least
        return {"anyOf": [item, array]} if self.single else array


@dataclass(frozen=True, slots=True, kw_only=True)
class FixedList(Form[T]):
    """A list of a fixed length, such as ``[x, y]``; ``make`` is given its values in order."""

    items: tuple[Form[Any], ...]
    make: Callable[..., T]
    noun: str
    advice: Text

    def read(self, node: Node, desk: Desk) -> T | None:
        """Return what ``make`` makes of the entries."""
        if not isinstance(node, Sequence) or len(node.items) != len(self.items):
            self._refuse(node, desk)
            return None
        pairs = zip(self.items, node.items, strict=True)
        values = [form.read(each, desk) for form, each in pairs]
        if any(value is None for value in values):
            return None
        return self.make(*values, node.place)

    def _refuse(self, node: Node, desk: Desk) -> None:
        if not isinstance(node, Sequence):
            self.refuse(node, desk)
        elif not refused_commas(node, len(self.items), desk):
            message = f"expected {self.noun}, found {len(node.items)} entries"
            desk.refuse("wrong-kind", message, node.place, self.advice)

    def schema(self, book: Book) -> Schema:
        """Return a tuple's schema."""
        items = [form.schema(book) for form in self.items]
        return {"type": "array", "prefixItems": items, "items": False, "minItems": len(items)}


@dataclass(frozen=True, slots=True, kw_only=True)
class Either(Form[Any]):
    """The first form for texts, the second for lists and mappings."""

    scalar: Form[Any]
    other: Form[Any]
    noun: str
    advice: Text

    def read(self, node: Node, desk: Desk) -> Any:
        """Return what the fitting form reads."""
        if isinstance(node, Scalar):
            return self.scalar.read(node, desk)
        return self.other.read(node, desk)

    def schema(self, book: Book) -> Schema:
        """Return both schemas as alternatives."""
        return {"anyOf": [self.scalar.schema(book), self.other.schema(book)]}
