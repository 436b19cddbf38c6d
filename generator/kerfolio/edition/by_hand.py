"""Whether a plan can be cut with hand tools, and what stands in the way: worded once."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from enum import StrEnum

from kerfolio.basis.cutting_lengths import fit_in
from kerfolio.basis.figures import in_way_unit, way_words, whole_figure
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import listed, say
from kerfolio.edition.edition import Edition
from kerfolio.model.feature_kind import ENGRAVING, HOLE
from kerfolio.settling.points import is_oblique
from kerfolio.settling.settled import SettledFeature, SettledPart, SettledPlan
from kerfolio.settling.titles import part_title, within
from kerfolio.shop.handwork import Handwork, handwork_of


class Verdict(StrEnum):
    """Whether hands can cut it."""

    YES = "yes"
    CARE = "care"
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
_BLADE = 3.0
"""In an opening narrower than this, mm, no saw's blade can be steered; the words tell it, too."""
_SMALL = 50.0
"""A piece narrower than this, mm, leaves a jigsaw's foot no rest; the words tell it, too."""
_LONG = 40.0
"""More metres of sawing than this are days, not an evening.

All of these are common practice, no single source."""


def by_hand(edition: Edition) -> ByHand:
    """Return whether one copy of an edition's plan can be cut by hand, and why not or how.

    Looked at as it is drawn: another thickness changes no more than figures.
    """
    settled, reader, order = edition.settled, edition.reader, list(Verdict)[::-1]
    work = handwork_of(settled)
    found = _reasons(settled, work.saw, reader)
    reasons = sorted(found, key=lambda each: order.index(each.weighs))
    verdict = reasons[0].weighs if reasons else Verdict.YES
    return ByHand(
        verdict=verdict,
        words=say(reader, f"byhand-verdict-{verdict}"),
        reasons=tuple(reasons),
        effort=_effort(work, reader),
        work=work,
    )


def _effort(work: Handwork, reader: Reader) -> str:
    way = _way(work.saw, reader)
    drilled = [
        *([say(reader, "byhand-holes", count=work.holes)] if work.holes else []),
        *([say(reader, "byhand-corners", count=work.corners)] if work.corners else []),
    ]
    if not drilled:
        return say(reader, "byhand-effort", way=way)
    return say(reader, "byhand-effort-drilling", way=way, drilled=listed(reader, drilled))


def _way(metres: float, reader: Reader) -> str:
    return f"{whole_figure(in_way_unit(metres, reader))} {way_words(reader)}"


def _reasons(settled: SettledPlan, saw: float, reader: Reader) -> Iterator[Reason]:
    yield from _joints(settled, reader)
    yield from _openings(settled, reader)
    yield from _recesses(settled, reader)
    yield from _leaning(settled, reader)
    yield from _small(settled, reader)
    yield from _art(settled, reader)
    if saw > _LONG:
        text = say(reader, "byhand-much-text", way=_way(saw, reader))
        yield Reason(head=say(reader, "byhand-much"), text=text, weighs=Verdict.CARE)
    if any(each.drill_centres for each in settled.parts):
        text = say(reader, "byhand-corner-text")
        yield Reason(head=say(reader, "byhand-corner"), text=text, weighs=Verdict.YES)


def _joints(settled: SettledPlan, reader: Reader) -> Iterator[Reason]:
    """Yield how close the closest joint goes; nothing where a jigsaw comes to it."""
    rooms = [each.room.width for part in settled.parts for each in part.features if each.room]
    closest = min(rooms, default=_SAWN)
    play = fit_in(closest, reader)
    if closest < _DRIVEN:
        text = say(reader, "byhand-driven-text", play=play)
        yield Reason(head=say(reader, "byhand-driven"), text=text, weighs=Verdict.NO)
    elif closest < _SAWN:
        text = say(reader, "byhand-close-text", play=play)
        yield Reason(head=say(reader, "byhand-close"), text=text, weighs=Verdict.CARE)


def _openings(settled: SettledPlan, reader: Reader) -> Iterator[Reason]:
    def is_narrow(each: SettledFeature) -> bool:
        sawn = each.kind.opens and each.kind is not HOLE and not each.depth
        return sawn and min(each.width.value, each.length.value) < _BLADE

    if names := _having(settled, is_narrow, reader):
        text = say(reader, "byhand-narrow-text", parts=names, unit=reader.unit)
        yield Reason(head=say(reader, "byhand-narrow"), text=text, weighs=Verdict.NO)


def _recesses(settled: SettledPlan, reader: Reader) -> Iterator[Reason]:
    if names := _having(settled, lambda each: each.kind.recessed, reader):
        text = say(reader, "byhand-recess-text", parts=names)
        yield Reason(head=say(reader, "byhand-recess"), text=text, weighs=Verdict.CARE)
    if names := _having(settled, lambda each: each.kind is HOLE and _is_stepped(each), reader):
        text = say(reader, "byhand-bores-text", parts=names)
        yield Reason(head=say(reader, "byhand-bores"), text=text, weighs=Verdict.YES)


def _is_stepped(hole: SettledFeature) -> bool:
    return hole.depth is not None or hole.counterbore is not None


def _leaning(settled: SettledPlan, reader: Reader) -> Iterator[Reason]:
    if is_oblique(settled):
        text = say(reader, "byhand-tilted-text")
        yield Reason(head=say(reader, "byhand-tilted"), text=text, weighs=Verdict.CARE)


def _small(settled: SettledPlan, reader: Reader) -> Iterator[Reason]:
    if names := _named(settled, lambda each: min(each.size) < _SMALL, reader):
        begun = f"{names[:1].upper()}{names[1:]}"
        text = say(reader, "byhand-small-text", parts=begun, unit=reader.unit)
        yield Reason(head=say(reader, "byhand-small"), text=text, weighs=Verdict.CARE)


def _art(settled: SettledPlan, reader: Reader) -> Iterator[Reason]:
    if names := _having(settled, lambda each: each.kind is ENGRAVING, reader):
        text = say(reader, "byhand-art-text", parts=names)
        yield Reason(head=say(reader, "byhand-art"), text=text, weighs=Verdict.CARE)


def _having(settled: SettledPlan, wanted: Callable[[SettledFeature], bool], reader: Reader) -> str:
    """Return what the parts are called that have such a feature."""
    return _named(settled, lambda part: any(map(wanted, part.features)), reader)


def _named(settled: SettledPlan, wanted: Callable[[SettledPart], bool], reader: Reader) -> str:
    parts = filter(wanted, settled.parts)
    titles = [within(part_title(settled.plan, each.name), reader) for each in parts]
    return listed(reader, titles)
