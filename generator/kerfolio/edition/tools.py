"""One list of tools: to measure, to cut, to bore and to put together; and what they use up.

Makers name the tools of a step in words of their own; what of that is used up is told apart by the
words for it (common practice, no single source).
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from kerfolio.basis.cutting_lengths import drill_text, tool_text
from kerfolio.basis.words import counted, listed
from kerfolio.edition.cutting import cutter_title
from kerfolio.edition.edition import Edition
from kerfolio.edition.hardware_words import hardware_title
from kerfolio.edition.making import numbered_steps
from kerfolio.model.consumable import Consumable
from kerfolio.model.finish import BEFORE
from kerfolio.model.purpose import GLUED
from kerfolio.settling.titles import part_title, within
from kerfolio.shop.drills import Drill, drills_of

_USED_UP = re.compile(
    r"\b(glue|oil|wax|varnish|paint|stain|filler|tape(?! measure)|cloth|rags?|sandpaper|paper)\b",
    re.IGNORECASE,
)
_CALIPER = "Caliper"
_MEASURES = {
    "mm": "the sheet’s thickness, to 0.05 mm (0.002 in)",
    "in": "the sheet’s thickness, to 0.001 in (0.03 mm)",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Tool:
    """A tool, and what it is for: an operation, or the steps in which it is wanted."""

    what: str
    purpose: str


def tools_of(edition: Edition) -> tuple[Tool, ...]:
    """Return the tools of every way: the caliper, the router's cutters, drills, those of the steps.

    Which machine cuts the parts is for its reader to choose, and in none of them.
    """
    return (
        *_measuring(edition),
        *_cutters(edition),
        *(_drill(edition, each) for each in drills_of(edition.settled)),
        *_of_steps(edition),
    )


def step_tools(edition: Edition) -> tuple[str, ...]:
    """Return every tool that steps name, once, in their order; what is used up is left out."""
    return tuple(each.what for each in _of_steps(edition))


def _measuring(edition: Edition) -> Iterator[Tool]:
    if edition.settled.sheets:
        yield Tool(what=_CALIPER, purpose=_MEASURES[edition.reader.unit])


def _cutters(edition: Edition) -> Iterator[Tool]:
    """Yield the router bits of the plan's settings, else those that its files are drawn for."""
    reader = edition.reader
    plan = edition.plan
    stated = [each.cutter.name for each in plan.cuts] if plan.shows("settings") else []
    drawn = [sheet.cutter.name for sheet in edition.settled.sheets]
    for name in dict.fromkeys(stated or drawn):
        cutter = edition.settled.stock.cutter(name)
        wide = f", {tool_text(cutter.diameter, reader)} wide" if cutter else ""
        yield Tool(what=cutter_title(edition, name), purpose=f"with a CNC router{wide}")


def _drill(edition: Edition, drill: Drill) -> Tool:
    parts = listed([within(part_title(edition.plan, each)) for each in drill.parts])
    holes = f"{counted(drill.count, 'hole')} in {parts}"
    wide = drill_text(drill.diameter, edition.reader)
    if drill.depth is not None:
        holes += f", {drill_text(drill.depth, edition.reader)} deep"
    return Tool(what=f"Drill bit, {wide}", purpose=f"{holes}{_bored_for(edition, drill)}")


def _bored_for(edition: Edition, drill: Drill) -> str:
    if drill.bore:
        return ": what a head sinks into"
    if not drill.items:
        return ""
    items = listed([hardware_title(edition, each) for each in drill.items])
    return f": {'pilot holes for' if drill.pilot else 'for'} {items}"


def _of_steps(edition: Edition) -> Iterator[Tool]:
    """Yield the tools that steps name, with their numbers; one named twice stands once."""
    steps: dict[str, tuple[str, list[str]]] = {}
    for number, _, step in numbered_steps(edition.plan, edition.reader):
        for tool in step.tools:
            if not _USED_UP.search(tool):
                _, numbers = steps.setdefault(tool.lower(), (tool, []))
                numbers.append(str(number))
    for tool, numbers in steps.values():
        word = "step" if len(numbers) == 1 else "steps"
        yield Tool(what=f"{tool[:1].upper()}{tool[1:]}", purpose=f"{word} {listed(numbers)}")


def used_up(edition: Edition) -> tuple[str, ...]:
    """Return what is used up besides: glue, finish, what the maker lists, what steps name."""
    found = [*_glue(edition), *_finish(edition)]
    found += [each.what for each in _consumables(edition)]
    for _, _, step in numbered_steps(edition.plan, edition.reader):
        found += [tool for tool in step.tools if _USED_UP.search(tool)]
    once: dict[str, str] = {}
    for each in found:
        once.setdefault(each.lower(), f"{each[:1].upper()}{each[1:]}")
    glued = any("glue" in key for key in once if key != "glue")
    return tuple(text for key, text in once.items() if not (glued and key == "glue"))


def _consumables(edition: Edition) -> Iterator[Consumable]:
    """Yield what maker and plan list for every copy or sheet; an hour's is the machine's own."""
    listed_all = (*edition.identity.consumables, *edition.plan.consumables)
    yield from (each for each in listed_all if each.each != "hour")


def _glue(edition: Edition) -> Iterator[str]:
    if any(fit is not None and fit.purpose is GLUED for _, fit in edition.plan.fits):
        yield "Wood glue, for the joints"


def _finish(edition: Edition) -> Iterator[str]:
    finish = edition.plan.finish
    if finish is None:
        return
    stock = edition.settled.stock.finish(finish.of.name)
    title = stock.title if stock else finish.of.name
    when = "before it is put together" if finish.when == BEFORE else "once it stands"
    yield f"{title}, for {counted(finish.coats, 'coat')} {when}"
