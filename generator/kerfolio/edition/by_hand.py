"""Whether a plan can be cut with hand tools, and what stands in the way: worded once."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from enum import StrEnum

from kerfolio.basis.cutting_lengths import fit_in
from kerfolio.basis.figures import in_way_unit, way_unit, whole_figure
from kerfolio.basis.reader import Reader
from kerfolio.basis.said import ByUnit
from kerfolio.basis.words import counted, listed
from kerfolio.edition.edition import Edition
from kerfolio.model.feature_kind import ENGRAVING, HOLE
from kerfolio.settling.points import is_oblique
from kerfolio.settling.settled import SettledFeature, SettledPart, SettledPlan
from kerfolio.settling.titles import part_title, within
from kerfolio.shop.handwork import Handwork, handwork_of


class Verdict(StrEnum):
    """Whether hands can cut it; the words are those shown."""

    YES = "yes"
    CARE = "with care"
    NO = "no"


@dataclass(frozen=True, slots=True, kw_only=True)
class Reason:
    """Something that hands meet in a plan, a sentence or two; ``weighs`` says how hard it is.

    What only has to be known weighs as ``YES``.
    """

    head: str
    text: str
    weighs: Verdict


@dataclass(frozen=True, slots=True, kw_only=True)
class ByHand:
    """What readers are told who have a drill and a jigsaw: the hardest reasons stand first.

    ``words`` tell the verdict, ``effort`` how much ``work`` it is.
    """

    verdict: Verdict
    words: str
    reasons: tuple[Reason, ...]
    effort: str
    work: Handwork


_SAWN = 0.2
"""Play on each side, mm, that a jigsaw along a line and a file come to."""
_DRIVEN = 0.04
"""Less play than this, mm a side, is out of a hand's reach with saw and file."""
_BLADE, _BLADE_TOLD = 3.0, ByUnit("3 mm", "1/8 in")
"""In an opening narrower than this, mm, no saw's blade can be steered."""
_SMALL, _SMALL_TOLD = 50.0, ByUnit("50 mm", "2 in")
"""A piece narrower than this, mm, leaves a jigsaw's foot no rest."""
_LONG = 40.0
"""More metres of sawing than this are days, not an evening.

All of these are common practice, no single source."""

_WORDS = {
    Verdict.YES: "Can be cut by hand: drill, jigsaw and file will do.",
    Verdict.CARE: "Can be cut by hand with care.",
    Verdict.NO: "Not for cutting by hand as it is.",
}


def by_hand(edition: Edition) -> ByHand:
    """Return whether one copy of an edition's plan can be cut by hand, and why not or how.

    Looked at as it is drawn: another thickness changes no more than figures.
    """
    settled, order = edition.settled, list(Verdict)[::-1]
    work = handwork_of(settled)
    found = _reasons(settled, work.saw, edition.reader)
    reasons = sorted(found, key=lambda each: order.index(each.weighs))
    verdict = reasons[0].weighs if reasons else Verdict.YES
    return ByHand(
        verdict=verdict,
        words=_WORDS[verdict],
        reasons=tuple(reasons),
        effort=_effort(work, edition.reader),
        work=work,
    )


def _effort(work: Handwork, reader: Reader) -> str:
    drilled = [
        *([counted(work.holes, "hole")] if work.holes else []),
        *([counted(work.corners, "inside corner")] if work.corners else []),
    ]
    drilling = f", {listed(drilled)} to drill" if drilled else ""
    return f"About {_way(work.saw, reader)} to saw{drilling}."


def _way(metres: float, reader: Reader) -> str:
    return f"{whole_figure(in_way_unit(metres, reader))} {way_unit(reader)}"


def _reasons(settled: SettledPlan, saw: float, reader: Reader) -> Iterator[Reason]:
    yield from _joints(settled, reader)
    yield from _openings(settled, reader)
    yield from _recesses(settled)
    yield from _leaning(settled)
    yield from _small(settled, reader)
    yield from _art(settled)
    if saw > _LONG:
        text = f"{_way(saw, reader)} of sawing want days."
        yield Reason(head="Much to saw", text=text, weighs=Verdict.CARE)
    if any(each.drill_centres for each in settled.parts):
        yield Reason(head="Corners", text=_CORNERS, weighs=Verdict.YES)


_CORNERS = (
    "A saw turns no square corner: bore the small circles of the templates first. They open the "
    "corners of tabs and slots, so that what is square goes home. Where a bore would be seen, "
    "square the corner with a file or a chisel instead."
)


def _joints(settled: SettledPlan, reader: Reader) -> Iterator[Reason]:
    """Yield how close the closest joint goes; nothing where a jigsaw comes to it."""
    rooms = [each.room.width for part in settled.parts for each in part.features if each.room]
    closest = min(rooms, default=_SAWN)
    play = f"{fit_in(closest, reader)} of play on each side"
    if closest < _DRIVEN:
        text = f"The closest have {play}, less than a hand can saw and file to."
        yield Reason(head="Joints that are driven in", text=text, weighs=Verdict.NO)
    elif closest < _SAWN:
        text = (
            f"The closest have {play}. Saw beside the line, in the waste, and file to it, trying "
            "with an offcut of the sheet, until it goes in with the push of a hand."
        )
        yield Reason(head="Close joints", text=text, weighs=Verdict.CARE)


def _openings(settled: SettledPlan, reader: Reader) -> Iterator[Reason]:
    def is_narrow(each: SettledFeature) -> bool:
        sawn = each.kind.opens and each.kind is not HOLE and not each.depth
        return sawn and min(each.width.value, each.length.value) < _BLADE

    if names := _having(settled, is_narrow):
        text = (
            f"Openings in {names} are under {_BLADE_TOLD.told(reader)} wide: no blade can be "
            "steered there."
        )
        yield Reason(head="Narrow openings", text=text, weighs=Verdict.NO)


def _recesses(settled: SettledPlan) -> Iterator[Reason]:
    if names := _having(settled, lambda each: each.kind.recessed):
        text = (
            f"Recesses in {names} go part of the way through: clear them with a hand router along "
            "a batten, or saw and chisel their walls and pare the floor, measuring its depth often."
        )
        yield Reason(head="Recesses", text=text, weighs=Verdict.CARE)
    if names := _having(settled, lambda each: each.kind is HOLE and _is_stepped(each)):
        text = (
            f"Some holes in {names} end in the wood, or are wider at the face: bore the wide part "
            "first, with a bit that leaves a flat floor and a stop set to its depth."
        )
        yield Reason(head="Bores to a depth", text=text, weighs=Verdict.YES)


def _is_stepped(hole: SettledFeature) -> bool:
    return hole.depth is not None or hole.counterbore is not None


def _leaning(settled: SettledPlan) -> Iterator[Reason]:
    if is_oblique(settled):
        text = (
            "Some pieces stand at a slant. Their joints hold it only if every wall is square to "
            "the face: guide the blade, and set the angle with a bevel when you put it together."
        )
        yield Reason(head="Tilted joints", text=text, weighs=Verdict.CARE)


def _small(settled: SettledPlan, reader: Reader) -> Iterator[Reason]:
    if names := _named(settled, lambda each: min(each.size) < _SMALL):
        text = (
            f"{names[:1].upper()}{names[1:]}: under {_SMALL_TOLD.told(reader)} wide, too small to "
            "hold under a jigsaw. Clamp the sheet and saw them free last, or take a coping saw."
        )
        yield Reason(head="Small pieces", text=text, weighs=Verdict.CARE)


def _art(settled: SettledPlan) -> Iterator[Reason]:
    if names := _having(settled, lambda each: each.kind is ENGRAVING):
        text = (
            f"What is engraved on {names} cannot be cut by hand. Trace it with a pencil, so that "
            "steps which go by it still tell, or leave it out."
        )
        yield Reason(head="Engraving", text=text, weighs=Verdict.CARE)


def _having(settled: SettledPlan, wanted: Callable[[SettledFeature], bool]) -> str:
    """Return what the parts are called that have such a feature."""
    return _named(settled, lambda part: any(map(wanted, part.features)))


def _named(settled: SettledPlan, wanted: Callable[[SettledPart], bool]) -> str:
    parts = filter(wanted, settled.parts)
    return listed([within(part_title(settled.plan, each.name)) for each in parts])
