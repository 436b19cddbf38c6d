"""Checks of wedges: grain, taper, a slot that lets them draw, and wood that bears them."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator

from kerfolio.assembly.building import Build, Fitted
from kerfolio.assembly.wedged import Wedged, wedges_of
from kerfolio.basis.digits import rounded
from kerfolio.basis.finding import Beside, Finding, Measured, Meeting, Severity, error, warning
from kerfolio.basis.measures import length, number, precise
from kerfolio.basis.said import named, said
from kerfolio.basis.tolerance import SAME
from kerfolio.geometry.rigid import Vector
from kerfolio.proving.in_place import over_range
from kerfolio.proving.marks import about, about_spots
from kerfolio.proving.rule import COMMON_PRACTICE, OWN_FIGURES, together
from kerfolio.settling.settled import SettledPlan

SLIGHT, STEEP = 1 / 8, 1 / 6
"""How much a wedge widens for its length: between 1 in 8 and 1 in 6 (common practice)."""

DRAWS = 0.5
"""A slot's inner wall lies inside the bearing face by so much, mm, at least (common practice)."""

OFF = 0.3
"""A wedge may lie this far, mm, off the face that it is to bear on (common practice)."""

LEFT = 10.0
"""Of a driven wedge, what stands out at its head, mm: to hit, and to drive on (common practice)."""

LOOSE = 1.0
"""Play of a wedge across its slot, mm, at most (common practice, no single source)."""

_ALIKE = 0.02
"""Of a taper, what rounding may make of it."""

Look = Callable[[Wedged, SettledPlan], Iterator[Finding]]


def _at_points(build: Build, look: Look) -> Iterator[Finding]:
    def looked(fitted: Fitted, off: Collection[str]) -> Iterator[Finding]:
        for each in wedges_of(fitted.settled, fitted.together.assembled):
            if each.wedge not in off and each.through not in off:
                yield from look(each, fitted.settled)

    return over_range(build, looked)


Line = tuple[Vector, Vector, str]
"""What is measured, from where to where in the frame of a wedge's slot, mm, and a word for it."""


def _of_wedge(each: Wedged, settled: SettledPlan, line: Line | None = None) -> Beside:
    at = each.joint.at or each.slot.at
    return {**about_spots(settled, each.part, (at,)), "meeting": _meeting(each, settled, line)}


def _of_slot(each: Wedged, settled: SettledPlan, line: Line | None = None) -> Beside:
    return {**about(settled, each.slotted, each.slot), "meeting": _meeting(each, settled, line)}


def _meeting(each: Wedged, settled: SettledPlan, line: Line | None) -> Meeting:
    """Return the wedge with what it goes through and what it holds; without a line, the slot."""
    a, b, word = line or ((-each.reach, 0.0, 0.0), (each.reach, 0.0, 0.0), "of slot")
    return Meeting(
        pieces=(each.wedge,),
        others=(each.through, each.holds) if each.holds else (each.through,),
        measured=Measured(a=each.frame.point(a), b=each.frame.point(b), word=word),
        variant=settled.variant.label,
    )


def _outward(a: float, b: float, word: str) -> Line:
    """Return what is measured along the tenon, mm from the middle of the slot."""
    return (a, 0.0, 0.0), (b, 0.0, 0.0), word


@together(
    "wedge-grain",
    reason="A wedge with its grain across splits when it is hit.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def grain_runs_along(build: Build) -> Iterator[Finding]:
    """Look for wedges whose grain does not run along them."""

    def look(each: Wedged, settled: SettledPlan) -> Iterator[Finding]:
        if each.part.grain != "along y" and settled.sheet(each.part.sheet).stock.grain:
            message = f"the grain of wedge `{each.part.name}` does not run along it"
            advice = "Write `grain: along y`: a wedge is drawn lengthwise along y."
            yield warning(
                "wedge-grain", message, each.part.place, advice, **_of_wedge(each, settled)
            )

    return _at_points(build, look)


@together(
    "wedge-taper",
    reason="A steep wedge jumps out, a slight one cannot be driven out again.",
    source="1 in 8 to 1 in 6: common practice, no single source",
    severity=Severity.WARNING,
    also=("wedge-turned",),
)
def tapers_hold(build: Build) -> Iterator[Finding]:
    """Look for wedges that are too steep, too slight, or lie with the wrong side to what they hold.

    The side that bears on a face is parallel to it. One that needs the space of what it goes
    through, or holds, for that reason is an error.
    """
    stuck = {pair for fitted in build.fitted for pair in misdrawn(fitted)}

    def look(each: Wedged, settled: SettledPlan) -> Iterator[Finding]:
        what = _of_wedge(each, settled)
        told = error if not stuck.isdisjoint(_pairs(each)) else warning
        if _tapers_wrongly(each):
            name, how = each.part.name, "steep" if each.taper > STEEP else "slight"
            message = said("wedge `{}` does not widen along y", name)
            if each.taper > 0:
                widens = number("one-in", rounded(1 / each.taper, 1))
                message = said("wedge `{}` widens 1 in {}, which is too " + how, name, widens)
            advice = "Draw it 1 in 8 to 1 in 6: over 120 mm it becomes 15 to 20 mm wider."
            yield told("wedge-taper", message, each.part.place, advice, **what)
        elif _is_turned(each):
            words = f"the slanted side of `{each.wedge}` lies against `{each.holds}`"
            turn = "Turn it: state the other `looking`, so that its straight side bears there."
            yield told("wedge-turned", words, each.joint.stated.place, turn, **what)

    return _at_points(build, look)


def misdrawn(fitted: Fitted) -> frozenset[frozenset[str]]:
    """Return the pairs of pieces that need the same space where one is a wedge drawn or turned
    wrongly, which its own rule tells.
    """
    pairs = {frozenset((each.a, each.b)) for each in fitted.clashes}
    wedges = wedges_of(fitted.settled, fitted.together.assembled) if pairs else ()
    ill = (each for each in wedges if _tapers_wrongly(each) or _is_turned(each))
    return frozenset(pair for each in ill for pair in _pairs(each)) & pairs


def _tapers_wrongly(each: Wedged) -> bool:
    return not SLIGHT * (1 - _ALIKE) <= each.taper <= STEEP * (1 + _ALIKE)


def _is_turned(each: Wedged) -> bool:
    return bool(each.holds) and each.slant > each.taper / 2


def _pairs(each: Wedged) -> tuple[frozenset[str], ...]:
    """Return a wedge with each of the pieces that it bears on."""
    return tuple(frozenset((each.wedge, other)) for other in (each.through, each.holds) if other)


@together(
    "wedge-cannot-draw",
    reason="A wedge tightens as long as it meets the face before the end of its slot.",
    source=OWN_FIGURES,
    also=("wedge-off-face",),
)
def wedges_draw(build: Build) -> Iterator[Finding]:
    """Look for slots that begin outside the face a wedge bears on, and wedges that do not bear."""

    def look(each: Wedged, settled: SettledPlan) -> Iterator[Finding]:
        slot = named(f"{each.through}.{each.slot.name}")
        place = each.joint.stated.place
        if each.inside is not None and each.inside < DRAWS - SAME:
            inside = precise("inside", max(0.0, -each.inside))
            message = said("slot {} begins {} outside `{}`", slot, inside, each.holds)
            if each.inside >= 0:
                inside = precise("inside", each.inside)
                message = said("slot {} begins {} inside `{}`", slot, inside, each.holds)
            more = length("more", DRAWS - each.inside)
            advice = said("Move its inner end {} inward, or nothing is drawn tight.", more)
            word = "inside" if each.inside >= 0 else "outside"
            line = _outward(-each.reach, each.inside - each.reach, word)
            what = _of_slot(each, settled, line)
            yield error("wedge-cannot-draw", message, place, advice, **what)
        elif each.gap is not None and each.gap > OFF + SAME:
            gap = precise("gap", each.gap)
            message = said("wedge `{}` lies {} off `{}`", each.wedge, gap, each.holds)
            advice = said("Bring the point `at` that lies in the slot {} nearer to its side.", gap)
            face = (each.inside or 0.0) - each.reach
            what = _of_wedge(each, settled, _outward(face, face + each.gap, "gap"))
            yield error("wedge-off-face", message, place, advice, **what)

    return _at_points(build, look)


@together(
    "wedge-driven-out",
    reason="A wedge that is driven home has a head left to hit, and length to be driven on.",
    source=COMMON_PRACTICE,
)
def wedges_long_enough(build: Build) -> Iterator[Finding]:
    """Look for wedges that are driven out of their length before they bear."""

    def look(each: Wedged, settled: SettledPlan) -> Iterator[Finding]:
        if each.left < LEFT - SAME:
            figures = length("short", LEFT - each.left), length("drive", each.to_drive)
            template = "wedge `{}` is {} too short: it bears when driven on by {}"
            message = said(template, each.wedge, *figures)
            slack = length("slack", max(0.0, each.to_drive * each.taper))
            advice = said("Shorten its slot by {}, or draw it wider or longer.", slack)
            start = each.slotted.thickness / 2
            word = "left at its head" if each.left > 0 else "past its head"
            line: Line = (0.0, 0.0, start), (0.0, 0.0, start + each.left), word
            place, what = each.joint.stated.place, _of_wedge(each, settled, line)
            yield error("wedge-driven-out", message, place, advice, **what)

    return _at_points(build, look)


@together(
    "wedge-short-wood",
    reason="What a wedge presses on shears off where little wood is behind it.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
    also=("wedge-loose",),
)
def wood_bears(build: Build) -> Iterator[Finding]:
    """Look for little wood behind and beside a wedge's slot, and for wedges that wobble in it."""

    def look(each: Wedged, settled: SettledPlan) -> Iterator[Finding]:
        slot = named(f"{each.through}.{each.slot.name}")
        place, wide = each.joint.stated.place, each.across
        least = each.slotted.thickness
        around = {"behind": (each.behind, least), "beside": (each.cheek, least / 2)}
        for where, (wood, wanted) in around.items():
            if wood is not None and wood < wanted - SAME:
                message = said("{} of wood is left " + where + " {}", length("wood", wood), slot)
                thick = "as much as the sheet is thick"
                wants = thick if where == "behind" else f"half {thick}"
                advice = said("Leave {}, " + wants + ".", length("least", wanted))
                line = _outward(each.reach, each.reach + wood, "of wood")
                if where == "beside":
                    line = (0.0, wide, 0.0), (0.0, wide + wood, 0.0), "of wood"
                what = _of_slot(each, settled, line)
                yield warning("wedge-short-wood", message, place, advice, **what)
        if each.play > LOOSE + SAME:
            play = length("play", each.play)
            message = said("wedge `{}` has {} of play in {}", each.wedge, play, slot)
            snug = "Let the slot take the wedge's sheet: `takes: ply`."
            slack: Line = (0.0, wide - each.play / 2, 0.0), (0.0, wide, 0.0), "on each side"
            yield warning("wedge-loose", message, place, snug, **_of_slot(each, settled, slack))

    return _at_points(build, look)
