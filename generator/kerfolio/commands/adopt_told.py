"""What `adopt` tells at the terminal: what was recognised, what was taken for granted, what is lost."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from typing import TYPE_CHECKING

from kerfolio.basis.words import counted

if TYPE_CHECKING:
    from kerfolio.adopting.adopted import Adopted
    from kerfolio.publishing.adopting import AdoptedPlan


def told_of(made: AdoptedPlan) -> Iterator[str]:
    """Yield lines about an adopted plan."""
    found = made.found
    if found is None:
        return
    yield from _recognised(found)
    for each in made.questions:
        taken = (made.answers or {}).get(each.key, each.default)
        others = [answer for answer in each.answers if answer != taken]
        more = f" (or {'; or '.join(others[:3])})" if others else ""
        yield f"to confirm: {each.words} {taken}{more}"
    dropped = Counter((each.what, each.why) for each in (*found.cleaned.dropped, *found.nested.dropped))
    for (what, why), count in sorted(dropped.items()):
        yield f"left out: {what}{f' ({count} times)' if count > 1 else ''}: {why}"
    open_lines = len(found.nested.lines) + sum(len(c.lines) for c in found.nested.cuttings)
    if open_lines:
        yield f"left out: {counted(open_lines, 'open line')}: only closed ones are cut"
    for each in found.unplaced:
        yield f"not understood: nothing tells where `{each}` goes"
    for off in made.deviations:
        x, y = off.at
        yield f"not as drawn: {off.what} of `{off.part}` at {x:.1f}, {y:.1f} is {off.off:.2f} mm off"


def _recognised(found: Adopted) -> Iterator[str]:
    pieces = sum(len(part.numbers) for part in found.parts)
    yield f"{counted(pieces, 'piece')} of {counted(len(found.parts), 'part')}"
    for sheet in found.sheets:
        play = f", drawn with {sheet.drawn.fit:.2f} mm of play a side" if sheet.drawn.fit else ""
        yield f"sheet `{sheet.name}`: {sheet.drawn.mm:.2f} mm{play}"
    counts = Counter(each.kind for each in found.arranged.meets)
    words = {"tab": "tab in a slot", "notch": "pair of notches", "fingers": "corner of fingers"}
    plural = {"tab": "tabs in slots", "notch": "pairs of notches", "fingers": "corners of fingers"}
    met = [counted(counts[kind], words[kind], plural[kind]) for kind in words if counts[kind]]
    if met:
        yield f"joined: {', '.join(met)}"
    if found.reliefs:
        yield f"{counted(found.reliefs, 'corner')} relieved, radius {found.relief:.2f} mm: made square"
    if found.cleaned.joined:
        yield f"{counted(found.cleaned.joined, 'end')} of loose lines joined"
