"""The form of the circles of supporters: by their names, or a list of such as need none."""

from __future__ import annotations

from collections.abc import Callable

from kerfolio.basis.complaint import Complaint, quoted
from kerfolio.basis.names import NAME, did_you_mean
from kerfolio.model.circle import Circle
from kerfolio.model.plan import Plan
from kerfolio.reading.desk import Desk
from kerfolio.reading.forms import Book, Form, ListOf, Schema
from kerfolio.reading.nodes import Node, Sequence
from kerfolio.reading.record import Entries, Key, Record
from kerfolio.reading.values import ADDRESS, SUMMARY_TEXT, TITLE_TEXT, name_fault

_ADVICE = "Write `friends: {who: Friends of the bench, gives: 4 EUR a month}`, a line each."
_KEYS = (
    Key(name="who", form=TITLE_TEXT, says="What its people are called.", required=True),
    Key(name="gives", form=TITLE_TEXT, says="What each gives, and how often."),
    Key(name="gets", form=SUMMARY_TEXT, says="What each gets."),
    Key(name="join", form=SUMMARY_TEXT, says="How one becomes one of them."),
    Key(name="link", form=ADDRESS, says="The page where one does."),
)


def _circle(make: Callable[..., Circle], *, named: bool) -> Record[Circle]:
    return Record(
        name="circle",
        noun="a circle of supporters",
        keys=_KEYS,
        make=make,
        advice=_ADVICE,
        named=named,
    )


_LISTED: ListOf[Circle] = ListOf(
    item=_circle(Circle, named=False), noun="a list of circles", advice=_ADVICE, lenient=True
)
_NAMED: Entries[Circle] = Entries(
    record=_circle(Circle, named=True),
    noun="circles by their names",
    fault=name_fault,
    advice=_ADVICE,
    pattern=NAME.pattern,
)


class CirclesForm(Form[tuple[Circle, ...]]):
    """``{friends: {who: ...}}``, or a list of circles that no plan and no key names."""

    noun = "circles by their names"
    advice = _ADVICE

    def read(self, node: Node, desk: Desk) -> tuple[Circle, ...] | None:
        """Return the circles that can be read, in order."""
        return (_LISTED if isinstance(node, Sequence) else _NAMED).read(node, desk)

    def schema(self, book: Book) -> Schema:
        """Return both schemas as alternatives."""
        return {"anyOf": [_NAMED.schema(book), _LISTED.schema(book)]}


CIRCLES = CirclesForm()


def circle_fault(plan: Plan, circles: tuple[Circle, ...]) -> Complaint | None:
    """Return what is wrong with the circle that a plan names, or None."""
    if plan.circle is None or any(each.name == plan.circle.name for each in circles):
        return None
    known = [each.name for each in circles if each.name]
    message = f"unknown circle {quoted(plan.circle.name)}"
    if not known:
        advice = f"Name it in `workshop.yaml`: `circles: {{{plan.circle.name}: {{who: ...}}}}`."
        return Complaint(message, advice)
    return Complaint(message, did_you_mean(plan.circle.name, known))
