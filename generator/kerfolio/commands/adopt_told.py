"""What `adopt` tells at the terminal: what was recognised, taken for granted and lost."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from typing import TYPE_CHECKING

from kerfolio.basis.digits import digits
from kerfolio.basis.words import counted
from kerfolio.publishing.adopted_lost import lost_lines

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
    yield from lost_lines(found)
    by_part: dict[tuple[str, str], list[float]] = {}
    for stray in made.deviations:
        by_part.setdefault((stray.part, stray.what), []).append(stray.off)
    for (part, what), off in by_part.items():
        most = digits(max(off), 2)
        yield f"not as drawn: {counted(len(off), what)} of `{part}`, by up to {most} mm"


def _recognised(found: Adopted) -> Iterator[str]:
    pieces = sum(len(part.numbers) for part in found.parts)
    yield f"{counted(pieces, 'piece')} of {counted(len(found.parts), 'part')}"
    for sheet in found.sheets:
        play = (
            f", drawn with {digits(sheet.drawn.fit, 2)} mm of play a side"
            if sheet.drawn.fit
            else ""
        )
        yield f"sheet `{sheet.name}`: {digits(sheet.drawn.mm, 2)} mm{play}"
    counts = Counter(each.kind for each in found.arranged.meets)
    words = {"tab": "tab in a slot", "notch": "pair of notches", "fingers": "corner of fingers"}
    plural = {"tab": "tabs in slots", "notch": "pairs of notches", "fingers": "corners of fingers"}
    met = [counted(counts[kind], words[kind], plural[kind]) for kind in words if counts[kind]]
    if met:
        yield f"joined: {', '.join(met)}"
