"""What `adopt` tells at the terminal: what was recognised, taken for granted and lost."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from kerfolio.adopting.again import told as moves_told
from kerfolio.basis.digits import digits
from kerfolio.basis.words import counted
from kerfolio.publishing.adopted_words import lost_lines, recognised_lines

if TYPE_CHECKING:
    from kerfolio.publishing.adopting import AdoptedPlan


def told_of(made: AdoptedPlan) -> Iterator[str]:
    """Yield lines about an adopted plan."""
    found = made.found
    if found is None:
        return
    yield from recognised_lines(found)
    for each in made.questions:
        taken = (made.answers or {}).get(each.key, each.default)
        others = [answer for answer in each.answers if answer != taken]
        more = f" (or {'; or '.join(others[:3])})" if others else ""
        yield f"to confirm: {each.words} {taken}{more}"
    yield from lost_lines(found)
    if made.moved or made.kept:
        yield from (f"moved: {line}" for line in moves_told(made.moved))
        yield from (f"yours, and left: {line}" for line in moves_told(made.kept))
    by_part: dict[tuple[str, str], list[float]] = {}
    for stray in made.deviations:
        by_part.setdefault((stray.part, stray.what), []).append(stray.off)
    for (part, what), off in by_part.items():
        most = digits(max(off), 2)
        yield f"not as drawn: {counted(len(off), what)} of `{part}`, by up to {most} mm"
