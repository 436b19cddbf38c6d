"""Checks of the letters of texts that are printed: whether the fonts have them."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.finding import Finding, Severity, warning
from kerfolio.basis.place import Place
from kerfolio.geometry.letters import letter_fault
from kerfolio.model.plan import Plan, Step
from kerfolio.model.stock import Stock
from kerfolio.proving.rule import Stated, before

Printed = tuple[str, Place, str]
"""What a text is, where it stands, and the text."""


@before(
    "unprintable-letter",
    reason="A question mark in the place of a letter tells the reader nothing.",
    source="the character tables of the fonts",
    severity=Severity.WARNING,
)
def letters_printable(stated: Stated) -> Iterator[Finding]:
    """Look for letters that booklet, templates and setup sheets cannot print."""
    for what, place, text in _printed(stated.plan, stated.stock):
        fault = letter_fault(what, text)
        if fault is not None:
            yield warning("unprintable-letter", fault, place, fault.advice)


def _printed(plan: Plan, stock: Stock) -> Iterator[Printed]:
    yield "the title", plan.place, plan.title
    yield "the summary", plan.place, plan.summary
    yield "the story", plan.story.place, plan.story.plain()
    yield from (("a caution", plan.place, each) for each in plan.cautions)
    for thing in plan.made:
        of = f" of `{thing.name}`" if thing.name else ""
        yield from [(f"the title{of}", thing.place, thing.title)] if of else ()
        for number, step in enumerate(thing.steps, start=1):
            yield from _of_step(f"step {number}{of}", step)
    yield from (("the note of a part", each.place, each.note) for each in plan.parts)
    yield from ((f"the words for `{each.file}`", each.place, each.alt) for each in plan.pictured)
    yield from (("a use of hardware", each.place, each.purpose) for each in plan.hardware)
    yield from (("a use of a fastening", each.place, each.purpose) for each in plan.fastenings)
    yield from (("what is used up", each.place, each.what) for each in plan.consumables)
    for each in plan.questions:
        yield "a question", each.answer.place, each.question
        yield "an answer", each.answer.place, each.answer.plain()
    yield from ((f"release {each.version}", each.place, each.changed) for each in plan.releases)
    yield from _of_stock(plan, stock)


def _of_step(name: str, step: Step) -> Iterator[Printed]:
    yield f"the title of {name}", step.place, step.title
    yield f"the text of {name}", step.text.place, step.text.plain()
    yield f"what {name} says by hand", step.place, step.by_hand
    yield f"the caution of {name}", step.place, step.caution
    yield from ((f"a tool of {name}", step.place, tool) for tool in step.tools)


def _of_stock(plan: Plan, stock: Stock) -> Iterator[Printed]:
    """Yield the titles of what the plan takes from the stock."""
    taken = (
        *(stock.sheet(each.stock.name) for each in plan.sheets),
        *(stock.board(each.stock.name) for each in plan.boards),
        *(stock.item(each.item.name) for each in plan.hardware),
        *(stock.item(item.name) for each in plan.fastenings for item, _ in each.parts),
        *(stock.cutter(each.cutter.name) for each in plan.cuts),
    )
    for item in dict.fromkeys(each for each in taken if each is not None):
        yield f"the title of `{item.name}`", item.came_from("title"), item.title
