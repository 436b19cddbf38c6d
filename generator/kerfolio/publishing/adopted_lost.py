"""What of a drawing was left out, joined or not understood: each kind once, in words."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from kerfolio.adopting.adopted import Adopted
from kerfolio.basis.digits import digits
from kerfolio.basis.words import counted


def lost_lines(found: Adopted) -> Iterator[str]:
    """Yield a line for all that a plan does not hold as it was drawn."""
    if found.reliefs:
        corners = counted(found.reliefs, "corner")
        radius = digits(found.relief or 0.0, 2)
        yield f"made square: {corners} relieved with a radius of {radius} mm"
    if found.cleaned.joined:
        yield f"joined: {counted(found.cleaned.joined, 'end')} of loose lines"
    every = (*found.cleaned.dropped, *found.nested.dropped)
    for (what, why), count in sorted(Counter((e.what, e.why) for e in every).items()):
        times = f" ({count} times)" if count > 1 else ""
        yield f"left out: {what}{times}: {why}"
    lines = len(found.nested.lines) + sum(len(c.lines) for c in found.nested.cuttings)
    if lines:
        yield f"left out: {counted(lines, 'open line')}: only closed ones are cut"
    for each in found.unplaced:
        yield f"not understood: nothing tells where `{each}` goes"
