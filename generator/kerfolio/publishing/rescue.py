"""What is to be saved, and how: a piece by mark or name, too tight, too loose or spoiled."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from kerfolio.basis.complaint import quoted
from kerfolio.basis.finding import Finding, error, in_unit, warning
from kerfolio.basis.lengths import INCH
from kerfolio.basis.measures import precise, reading, size
from kerfolio.basis.names import did_you_mean
from kerfolio.basis.place import Place
from kerfolio.basis.said import Text, enumerated, said, stated_name, strung, written
from kerfolio.basis.thickness import read_off
from kerfolio.basis.tolerance import SAME
from kerfolio.layouts.alone import laid_alone, least_sizes
from kerfolio.publishing.asked import AskedError, length_asked, within_asked
from kerfolio.reading.values import split_sides
from kerfolio.settling.reopened import LEAST_REOPEN, MOST_REOPEN, takers
from kerfolio.settling.settled import SettledFeature, SettledPart, SettledPlan, SheetSize
from kerfolio.shop.mates import mates_of
from kerfolio.shop.reopening import reopening
from kerfolio.shop.shims import LEAST_LOOSE

_MOST_LOOSE = 3.0
_STEP, _INCH_STEP = 0.1, INCH / 32
"""mm by which the least size of an offcut is told."""
_SIDES = (20.0, 20_000.0)
_THICK = (1.0, 150.0)
"""mm; the bounds only catch slips of the unit (common practice, no single source)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RescueAsked:
    """What was typed behind ``--only``, and ``--reopen``, ``--loose`` or ``--offcut`` with it."""

    only: str
    reopen: str = ""
    loose: str = ""
    offcut: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Rescue:
    """A part to be saved, or some ``features`` of it; ``name`` is that of either in the plan.

    ``reopen`` is by how much it is too tight, ``loose`` by how much too loose, ``offcut`` the size
    of what it is cut from again, along the grain and across it, with its own ``thickness`` where
    that was stated; all mm.
    """

    name: str
    part: str
    features: tuple[SettledFeature, ...]
    reopen: float | None = None
    loose: float | None = None
    offcut: SheetSize | None = None
    thickness: float | None = None


def rescue_asked(
    asked: RescueAsked, settled: SettledPlan
) -> tuple[Rescue | None, tuple[Finding, ...]]:
    """Return what is to be saved of a plan, with what is to be said of it; None where it cannot be.

    A bare number is in the plan's unit.
    """
    try:
        rescue = _rescue(asked, settled)
    except AskedError as trouble:
        return None, in_unit((trouble.finding,), settled.plan.units)
    return rescue, in_unit(_remarks(rescue, asked, settled), settled.plan.units)


def _rescue(asked: RescueAsked, settled: SettledPlan) -> Rescue:
    unit, place = settled.plan.units, Place(f"--only {asked.only}")
    part, feature = _meant(asked.only, settled, place)
    features = tuple(
        each for each in part.features if feature in ("", each.name, stated_name(each.name))
    )
    name = f"{part.name}.{feature}" if feature else part.name
    if not features and feature:
        known = [stated_name(each.name) for each in takers(part.features)]
        message, advice = f"`{part.name}` has no `{feature}`", did_you_mean(feature, known)
        raise AskedError(error("unknown-feature", message, place, advice))
    sides = _sides(asked.offcut, unit)
    rescue = Rescue(
        name=name,
        part=part.name,
        features=features,
        reopen=_length("--reopen", "reopening", asked.reopen, (LEAST_REOPEN, MOST_REOPEN), unit),
        loose=_length("--loose", "looseness", asked.loose, (LEAST_LOOSE, _MOST_LOOSE), unit),
        offcut=sides and sides[:2],
        thickness=sides[2] if sides else None,
    )
    for fault in _faults(rescue, part, settled, place):
        raise AskedError(fault)
    return rescue


def _meant(only: str, settled: SettledPlan, place: Place) -> tuple[SettledPart, str]:
    """Return the part that a name or a mark means, and the name of a feature behind it."""
    known = _known(settled)
    words = only.strip().split(".")
    for count in range(len(words), 0, -1):  # the longest label first
        part = known.get(".".join(words[:count]))
        if part is not None:
            return part, ".".join(words[count:])
    advice = did_you_mean(only, (part.name for part in settled.parts))
    raise AskedError(error("unknown-piece", f"no piece {quoted(only)}", place, advice))


def _known(settled: SettledPlan) -> Mapping[str, SettledPart]:
    """Return parts by all that they and their pieces are called; twins of a set by that alone."""
    marks = {each.mark: each for each in settled.parts}
    pieces = {
        name.rpartition("/")[2]: part
        for part in settled.parts
        for piece in part.pieces
        for name in (piece.mark, piece.label)
    }
    return marks | pieces | {each.name: each for each in settled.parts}


def _length(
    option: str, what: str, text: str, ends: tuple[float, float], unit: str
) -> float | None:
    if not text:
        return None
    place = Place(f"{option} {text}")
    return within_asked(length_asked(text, place, unit), ends, what, place)


def _sides(text: str, unit: str) -> tuple[float, float, float | None] | None:
    """Return the size of an offcut, mm, and its thickness where it has three sides."""
    if not text:
        return None
    place, sides = Place(f"--offcut {text}"), split_sides(text)
    if not 2 <= len(sides) <= 3 or not all(sides):
        advice = written("300 x 400", "12 x 16", "Write the side along the grain first: `{}`.")
        raise AskedError(error("wrong-value", f"{quoted(text)} is no size", place, advice))
    along, across, *rest = (length_asked(each, place, unit) for each in sides)
    thick = [read_off(within_asked(each, _THICK, "thickness", place)) for each in rest]
    along, across = (within_asked(each, _SIDES, "side", place) for each in (along, across))
    return along, across, thick[0] if thick else None


def _faults(
    rescue: Rescue, part: SettledPart, settled: SettledPlan, place: Place
) -> Iterator[Finding]:
    sheet = settled.sheet(part.sheet)
    opens = rescue.reopen is not None or rescue.loose is not None
    if opens and not takers(rescue.features):
        message = f"`{rescue.name}` has no opening that a sheet goes into"
        mates = [f"`{each}`" for each in mates_of(part.name, settled)]
        advice: Text = "Only what takes a sheet is made wider, or lined."
        if mates:
            advice = said("It goes into {}: name that with `--only`.", enumerated(mates))
        yield error("nothing-opens", message, place, advice, subject=rescue.name)
    elif rescue.reopen and not reopening(rescue.name, part, sheet, rescue.features, rescue.reopen):
        message = f"`{part.name}` bears on none of its edges: a second cut would not find it"
        advice = f"Cut it again, with more play: `--only {part.name} --fit` and the fit."
        yield error("no-edge-to-lay", message, place, advice, subject=part.name)
    if rescue.offcut and not laid_alone(part, sheet, rescue.offcut):
        step = _INCH_STEP if settled.plan.units == "in" else _STEP
        words = said("`{}` finds no room on an offcut of {}", part.name, size(rescue.offcut))
        least = [said("{}", size(each, "least-")) for each in least_sizes(part, sheet, step)]
        least_words = said(
            "It takes {} at least, along the grain and across it, a margin of {} all round in it.",
            strung(least, " or "),
            precise("margin", sheet.margin),
        )
        yield error("offcut-too-small", words, place, least_words, subject=part.name)


def _remarks(rescue: Rescue, asked: RescueAsked, settled: SettledPlan) -> Iterator[Finding]:
    """Say what an offcut of another thickness does to the joints of what is cut from it."""
    part = settled.part(rescue.part)
    thick, other = rescue.thickness, part.thickness
    mates = mates_of(part.name, settled)
    if thick is None or abs(thick - other) < SAME or not mates:
        return
    off = abs(thick - other)
    message = said(
        "the offcut is {} {} than the {} that the other pieces are cut for",
        reading("off", off),
        "thicker" if thick > other else "thinner",
        reading("thickness", other),
    )
    named = enumerated([f"`--only {each}`" for each in mates])
    if thick < other:
        advice = said("Its joints are so much looser; `--loose` says what to line: {}.", named)
    elif off <= MOST_REOPEN:
        advice = said("Its joints are so much tighter; `--reopen` makes them wider: {}.", named)
    else:
        advice = said("It goes into nothing that is cut: take an offcut about as thick as that.")
    place = Place(f"--offcut {asked.offcut}")
    yield warning("offcut-thickness", message, place, advice, subject=part.name)
