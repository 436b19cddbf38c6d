"""Checks of engravings against the cutter that makes them: do they read, and stay in the face?"""

from __future__ import annotations

import math
from collections.abc import Iterator

from kerfolio.basis.finding import Finding, Severity, note, warning
from kerfolio.basis.measures import length, precise
from kerfolio.basis.place import Place
from kerfolio.basis.said import Words, named, said, strung
from kerfolio.basis.words import counted
from kerfolio.proving.marks import narrow_mark
from kerfolio.proving.rule import COMMON_PRACTICE, OWN_FIGURES, after
from kerfolio.settling.settled import SettledPlan
from kerfolio.shop.art import Art, arts_of
from kerfolio.shop.engraving import UNEVEN, Engraved, engraved

_HEIGHT_STEP, _STEP = {"mm": 0.5, "in": 25.4 / 32}, {"mm": 0.1, "in": 25.4 / 1000}
"""Heights, and widths and depths, are offered in such steps, mm, by the plan's unit."""
_SLACK = 1e-6

PLYWOOD = "plywood"
"""How the families of material end that are glued of plies."""

_RING = 0.8
"""Around a place where strokes meet, mm."""


def _made(settled: SettledPlan) -> Iterator[tuple[Art, Engraved]]:
    for art in arts_of(settled):
        made = engraved(settled, art.part, art.lines, art.depth)
        if made is not None and art.depth > 0:
            yield art, made


@after(
    "engraving-unreadable",
    reason="What a cutter leaves of letters must still be letters.",
    source="the cutter's path, simulated; wood left between strokes: common practice, no single "
    "source",
    severity=Severity.WARNING,
)
def engravings_read(settled: SettledPlan) -> Iterator[Finding]:
    """Look for strokes that run together, or close a space, as wide as the cutter makes them."""
    for art, made in _made(settled):
        lost = made.lost
        if lost:
            places = counted(len(lost), "place")
            template = "strokes {} wide run together at {} of {}"
            message = said(template, precise("stroke", made.wide), places, named(_name(art)))
            mark = narrow_mark(settled, art.part, lost, _RING)
            place, subject = _place(art), _name(art)
            advice = _cure(settled, art, made)
            yield warning(
                "engraving-unreadable", message, place, advice, mark=mark, subject=subject
            )


def _cure(settled: SettledPlan, art: Art, made: Engraved) -> Words:
    """Return the least height that works with this cutter, and what works at this height.

    Of cutters that widen their strokes it says first how the sheet's lie changes them.
    """
    step, least = _STEP[settled.plan.units], _HEIGHT_STEP[settled.plan.units]
    height = math.ceil(_height(art) * made.larger / least - _SLACK) * least
    cures = [said("make it {} high or more", length("height", height))]
    deep = math.floor(made.deepest / step + _SLACK) * step
    if made.follows_depth and deep > UNEVEN:
        cures.append(said("engrave it {} deep or less", precise("deepest", deep)))
    widest = math.floor(made.widest / step + _SLACK) * step
    if widest > 0:
        cures.append(said("cut strokes of {} or less", precise("widest", widest)))
    works = said("`{}` makes it: {}.", made.cutter.name, strung(cures, ", or "))
    if not made.follows_depth:
        return works
    return said(
        "They are {} wide, {} to {} where the sheet lies {} off. {}",
        precise("drawn", made.width),
        precise("narrow", made.narrow),
        precise("stroke", made.wide),
        precise("uneven", UNEVEN),
        works,
    )


def _height(art: Art) -> float:
    """Return the height that the plan states, or that of what was drawn, mm."""
    sides = [each.width.value for each in art.features]
    return sides[0] if len(sides) == 1 else art.size[1]


@after(
    "engraving-fades",
    reason="No sheet lies quite level: a shallow stroke is not there where it lies low.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def engravings_deep_enough(settled: SettledPlan) -> Iterator[Finding]:
    """Look for engravings so shallow that an uneven sheet is not touched."""
    for art, made in _made(settled):
        if made.narrow <= 0:
            subject = _name(art)
            message = said("{} is {} deep", named(subject), precise("depth", art.depth))
            low = precise("uneven", UNEVEN)
            advice = said("Where the sheet lies {} low nothing is cut: go deeper.", low)
            yield warning("engraving-fades", message, _place(art), advice, subject=subject)


@after(
    "engraving-through-face",
    reason="Below the face ply the grain crosses: edges fray and the colour changes.",
    source=OWN_FIGURES,
    severity=Severity.WARNING,
)
def engravings_in_face(settled: SettledPlan) -> Iterator[Finding]:
    """Look for engravings that go through the outer ply of a sheet, where that is known."""
    for art, _ in _made(settled):
        face = settled.sheet(art.part.sheet).stock.face_ply
        if face is not None and face - UNEVEN < art.depth < art.part.thickness:
            subject = _name(art)
            sizes = precise("depth", art.depth), precise("ply", face)
            message = said("{} is {} deep in a face ply of {}", named(subject), *sizes)
            template = "With {} for a sheet that lies uneven, {} is as deep as it may be."
            most = precise("most", max(0.0, face - UNEVEN))
            advice = said(template, precise("uneven", UNEVEN), most)
            yield warning("engraving-through-face", message, _place(art), advice, subject=subject)


@after(
    "face-ply-unknown",
    reason="An engraving stays within the outer ply only where its thickness is known.",
    source=OWN_FIGURES,
    severity=Severity.NOTE,
)
def face_plies_known(settled: SettledPlan) -> Iterator[Finding]:
    """Look for engraved plywood of whose outer ply the stock says nothing."""
    deepest: dict[str, Art] = {}
    for art, _ in _made(settled):
        known = deepest.get(art.part.sheet)
        if known is None or art.depth > known.depth:
            deepest[art.part.sheet] = art
    for name, art in deepest.items():
        stock = settled.sheet(name).stock
        if stock.face_ply is None and stock.family.endswith(PLYWOOD):
            message = said(
                "`{}` says nothing of its face ply, and `{}` is engraved {} deep",
                stock.name,
                art.part.name,
                precise("depth", art.depth),
            )
            advice = "Measure the outer ply at an edge and write it as `face-ply` in `stock/`."
            yield note("face-ply-unknown", message, settled.sheet(name).place, advice, subject=name)


def _name(art: Art) -> str:
    return f"{art.part.name}.{art.name}"


def _place(art: Art) -> Place:
    return art.features[0].place
