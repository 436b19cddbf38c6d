"""What of a drawing was recognised, left out, joined or not understood, in words."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from kerfolio.adopting.adopted import Adopted
from kerfolio.adopting.depths import is_to_a_depth
from kerfolio.basis.digits import digits
from kerfolio.basis.words import counted
from kerfolio.model.feature_kind import FINGERS, NOTCH, TAB
from kerfolio.model.joint_kind import WEDGE_JOINT


def recognised_lines(found: Adopted) -> Iterator[str]:
    """Yield lines about what was recognised."""
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
    words = ("tab in a slot", "pair of notches", "corner of fingers")
    plural = ("tabs in slots", "pairs of notches", "corners of fingers")
    kinds = (TAB, NOTCH, FINGERS)
    told = zip(kinds, words, plural, strict=True)
    met = [counted(counts[kind], one, many) for kind, one, many in told if counts[kind]]
    met += [counted(len(found.wedges), WEDGE_JOINT.name)] if found.wedges else []
    if met:
        yield f"joined: {', '.join(met)}"


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
    for part in found.parts:
        through = (slot.opening for slot in part.made.slots if slot.depth is None)
        for index in (*part.made.windows, *through):
            if is_to_a_depth(part.made.draft.openings[index].names):
                name = part.made.draft.openings[index].names[0]
                yield f"to confirm: `{name}` in `{part.name}` does not say how deep: cut through"
    asked = {each.about for each in found.questions}
    for each in found.unplaced:
        if each.partition(".")[0] in asked:
            continue
        yield f"not understood: nothing tells where `{each}` goes"
