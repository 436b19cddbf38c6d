"""All rules, collected from the modules that declare them, each module's in the order written.

To add one: a declared function (see ``rule.py``) in the module of its subject. A new module gets
its name here.
"""

from __future__ import annotations

from collections.abc import Iterator
from types import ModuleType
from typing import Any

from kerfolio.proving import (
    assemblies,
    boards,
    bolts,
    brackets,
    children,
    children_beds,
    children_gaps,
    children_whole,
    chips,
    compression,
    corners,
    cutting,
    damp,
    drawn_edges,
    edges,
    engravings,
    fastened_bolts,
    fastened_dowels,
    fastened_screws,
    fastened_seats,
    fastened_tools,
    fastenings,
    floors,
    flush,
    forgotten,
    friction,
    going_together,
    halvings,
    hand_bores,
    handling,
    handwork,
    hanging,
    holes,
    joints,
    ladder,
    letters,
    logged,
    lying,
    machine_reach,
    machining,
    mating,
    named,
    parts,
    play,
    readers,
    references,
    release,
    sawing,
    screws,
    shapes,
    short_grain,
    spans,
    step_turns,
    steps,
    swaps,
    toppling,
    upside_down,
    wall,
    webs,
    wedges,
)
from kerfolio.proving.rule import After, AsSet, Before, Rule, Together

_MODULES = (
    *(references, assemblies, joints, fastenings, steps, lying, step_turns, handwork, release),
    *(ladder, machine_reach, chips, logged, readers, holes, letters, children_beds),
    *(machining, floors, shapes, drawn_edges, edges, corners, webs, parts, short_grain),
    *(mating, flush, halvings, play, damp, bolts),
    *(screws, engravings, cutting, compression, children, children_gaps, children_whole),
    *(sawing, spans, going_together, wall, named, upside_down),
    *(handling, toppling, friction, forgotten),
    *(fastened_bolts, hand_bores, fastened_screws, fastened_dowels, fastened_tools, boards),
    *(brackets, hanging, wedges, swaps, fastened_seats),
)


def rules_of(module: ModuleType) -> Iterator[Rule[Any]]:
    """Yield the rules that a module declares, without those it imports."""
    for each in vars(module).values():
        if isinstance(each, Rule) and each.check.__module__ == module.__name__:
            yield each


RULES: tuple[Rule[Any], ...] = tuple(rule for each in _MODULES for rule in rules_of(each))
"""The rules in the order they are looked at."""

BEFORE = tuple(rule for rule in RULES if isinstance(rule, Before))
AFTER = tuple(rule for rule in RULES if isinstance(rule, After))
TOGETHER = tuple(rule for rule in RULES if isinstance(rule, Together))
AS_SET = tuple(rule for rule in RULES if isinstance(rule, AsSet))

SEVERITIES = {id: rule.severity for rule in RULES for id in rule.ids}
"""How much the findings of each id weigh."""

UNBUILT = frozenset(id for rule in RULES if rule.unbuilt for id in rule.ids)
"""The ids of errors that leave in doubt how the whole goes together."""

ASIDE = frozenset(id for rule in RULES if rule.aside for id in rule.ids)
"""The ids of errors that are about what no joint goes by."""
