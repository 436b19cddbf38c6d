"""One list of tools: to measure, to cut, to bore and to put together; and what they use up.

Makers name the tools of a step in words of their own; what of that is used up is told apart by the
words for it (common practice, no single source).
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import TypeVar

from kerfolio.basis.catalogue import SOURCE
from kerfolio.basis.cutting_lengths import drill_pair, drill_text, tool_text
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import listed, say
from kerfolio.edition.cutting import cutter_title
from kerfolio.edition.edition import Edition
from kerfolio.edition.hardware_words import hardware_title
from kerfolio.edition.making import numbered_steps
from kerfolio.model.consumable import Consumable
from kerfolio.model.finish import BEFORE
from kerfolio.model.purpose import GLUED
from kerfolio.settling.titles import part_title, within
from kerfolio.shop.drills import Drill, drills_of

Of = TypeVar("Of")

_USED_UP = {
    "en": re.compile(
        r"\b(glue|oil|wax|varnish|paint|stain|filler|tape(?! measure)|cloth|rags?|(sand)?paper)\b",
        re.IGNORECASE,
    ),
    "de": re.compile(
        r"(leim|kleber|öl|wachs|lack|lasur|farbe|beize|spachtelmasse|klebeband|kreppband|tuch|lappen|papier)\b",
        re.IGNORECASE,
    ),
}
"""Words for what is used up, by the language a maker writes in; German ones end longer words."""
_GLUE = {"en": "glue", "de": "leim"}


_BIT = {
    "en": re.compile(r"\b(drill|bit)s?\b", re.IGNORECASE),
    "de": re.compile(r"bohrer\b", re.IGNORECASE),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Tool:
    """A tool, and what it is for: an operation, or the steps in which it is wanted.

    ``more`` is what it is for besides.
    """

    what: str
    purpose: str
    more: tuple[str, ...] = ()


def tools_of(edition: Edition) -> tuple[Tool, ...]:
    """Return the tools of every way: the caliper, the router's cutters, drills, those of the steps.

    Which machine cuts the parts is for its reader to choose, and in none of them.
    """
    return (
        *_measuring(edition),
        *_cutters(edition),
        *_bits(edition),
    )


def step_tools(edition: Edition) -> tuple[str, ...]:
    """Return every tool that steps name, once, in their order; what is used up is left out."""
    return tuple(each.what for each in _of_steps(edition))


def _measuring(edition: Edition) -> Iterator[Tool]:
    if edition.settled.sheets:
        reader = edition.reader
        purpose = say(reader, "tools-thickness", unit=reader.unit)
        yield Tool(what=say(reader, "tools-caliper"), purpose=purpose)


def _cutters(edition: Edition) -> Iterator[Tool]:
    """Yield the router bits of the plan's settings, else those that its files are drawn for."""
    reader = edition.reader
    plan = edition.plan
    stated = [each.cutter.name for each in plan.cuts] if plan.shows("settings") else []
    drawn = [sheet.cutter.name for sheet in edition.settled.sheets]
    for name in dict.fromkeys(stated or drawn):
        cutter = edition.settled.stock.cutter(name)
        purpose = say(reader, "tools-router")
        if cutter:
            purpose = say(reader, "tools-router-wide", wide=tool_text(cutter.diameter, reader))
        yield Tool(what=cutter_title(edition, name), purpose=purpose)


def _drill(edition: Edition, drill: Drill) -> Tool:
    reader = edition.reader
    parts = [within(part_title(edition.plan, each, reader), reader) for each in drill.parts]
    into = "tools-edges" if drill.edge else "tools-holes"
    purpose = say(reader, into, count=drill.count, parts=listed(reader, parts))
    if drill.depth is not None:
        deep = drill_text(drill.depth, reader)
        purpose = say(reader, "tools-holes-deep", holes=purpose, deep=deep)
    if bored := _bored_for(edition, drill):
        purpose = say(reader, "tools-holes-for", holes=purpose, bored=bored)
    wide = drill_text(drill.diameter, reader)
    return Tool(what=say(reader, "tools-drill", wide=wide), purpose=purpose)


def _bored_for(edition: Edition, drill: Drill) -> str:
    reader = edition.reader
    if drill.bore:
        return say(reader, "tools-sunk")
    if not drill.items:
        return ""
    items = listed(reader, [hardware_title(edition, each) for each in drill.items])
    return say(reader, "tools-pilot" if drill.pilot else "tools-bored", items=items)


def _bits(edition: Edition) -> Iterator[Tool]:
    """Yield drills and the tools of the steps; one size of drill stands once, with all it is for.

    A maker names it in words of their own (``7 mm wood bit``): a bit by its word, of a size by
    that.
    """
    rest = list(_of_steps(edition))
    bits: dict[str, list[str]] = {}
    sizes: dict[str, tuple[str, str]] = {}
    for drill in drills_of(edition.settled):
        tool = _drill(edition, drill)
        bits.setdefault(tool.what, []).append(tool.purpose)
        sizes[tool.what] = drill_pair(drill.diameter, edition.reader)
    for what, purposes in bits.items():
        same = [each for each in rest if _is_bit(each.what, sizes[what], edition.reader)]
        rest = [each for each in rest if each not in same]
        first, *more = (*purposes, *(each.purpose for each in same))
        yield Tool(what=what, purpose=first, more=tuple(more))
    yield from rest


def _is_bit(tool: str, sizes: Sequence[str], reader: Reader) -> bool:
    """Tell whether a maker's tool is a bit of a size told in either unit."""
    if not _in(_BIT, reader).search(tool):
        return False
    return any(re.search(rf"(?<![\w./,]){re.escape(each)}\b", tool) for each in sizes)


def _of_steps(edition: Edition) -> Iterator[Tool]:
    """Yield the tools that steps name, with their numbers; one named twice stands once."""
    steps: dict[str, tuple[str, list[str]]] = {}
    for number, _, step in numbered_steps(edition.plan, edition.reader):
        for tool in step.tools:
            if not _is_used_up(tool, edition.reader):
                _, numbers = steps.setdefault(tool.lower(), (tool, []))
                numbers.append(str(number))
    reader = edition.reader
    for tool, numbers in steps.values():
        told = listed(reader, numbers)
        purpose = say(reader, "tools-steps", count=len(numbers), steps=told)
        yield Tool(what=f"{tool[:1].upper()}{tool[1:]}", purpose=purpose)


def used_up(edition: Edition) -> tuple[str, ...]:
    """Return what is used up besides: glue, finish, what the maker lists, what steps name."""
    found = [*_glue(edition), *_finish(edition)]
    found += [each.what for each in _consumables(edition)]
    for _, _, step in numbered_steps(edition.plan, edition.reader):
        found += [tool for tool in step.tools if _is_used_up(tool, edition.reader)]
    once: dict[str, str] = {}
    for each in found:
        once.setdefault(each.lower(), f"{each[:1].upper()}{each[1:]}")
    glue = _in(_GLUE, edition.reader)
    glued = any(glue in key for key in once if key != glue)
    return tuple(text for key, text in once.items() if not (glued and key == glue))


def _in(words: Mapping[str, Of], reader: Reader) -> Of:
    return words.get(reader.locale.language, words[SOURCE])


def _is_used_up(tool: str, reader: Reader) -> bool:
    return bool(_in(_USED_UP, reader).search(tool))


def is_glue(tool: str, reader: Reader) -> bool:
    """Tell whether what a step names is glue, by the word for it."""
    return _in(_GLUE, reader) in tool.lower()


def _consumables(edition: Edition) -> Iterator[Consumable]:
    """Yield what maker and plan list for every copy or sheet; an hour's is the machine's own."""
    listed_all = (*edition.identity.consumables, *edition.plan.consumables)
    yield from (each for each in listed_all if each.each != "hour")


def _glue(edition: Edition) -> Iterator[str]:
    if any(fit is not None and fit.purpose is GLUED for _, fit in edition.plan.fits):
        yield say(edition.reader, "tools-glue")


def _finish(edition: Edition) -> Iterator[str]:
    finish = edition.plan.finish
    if finish is None:
        return
    stock = edition.settled.stock.finish(finish.of.name)
    title = stock.title if stock else finish.of.name
    when = "before" if finish.when == BEFORE else "after"
    yield say(edition.reader, f"tools-finish-{when}", finish=title, coats=finish.coats)
