"""What is told of an engraving that is cut on a finished piece."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from kerfolio.basis.cutting_lengths import depth_text, place_text
from kerfolio.basis.lengths import both_text
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.edition.edition import Edition
from kerfolio.edition.setup_runs import RunLines, by_hand_line, cutting_time, run_lines
from kerfolio.edition.sheet_facts import cut_alone
from kerfolio.settling.settled import Cut, Operation, SettledPlan
from kerfolio.settling.titles import feature_title, part_title
from kerfolio.shop.art import Art, arts_of
from kerfolio.shop.cut_time import Placed
from kerfolio.shop.engraving import UNEVEN, engraved


@dataclass(frozen=True, slots=True, kw_only=True)
class SetupArt:
    """What is told of one engraving on a finished piece; lengths in both units.

    ``title`` heads its page: ``Art on A, End``; the part is ``called`` so.
    """

    art: Art
    title: str
    called: str
    runs: tuple[RunLines, ...]
    by_hand: tuple[str, ...]
    time: str
    size: str
    depth: str
    steps: tuple[str, ...]
    pieces: tuple[str, ...]


def setup_arts(edition: Edition) -> tuple[SetupArt, ...]:
    """Return a record for every engraving of every part."""
    return tuple(_art(edition, each) for each in arts_of(edition.settled))


def _art(edition: Edition, art: Art) -> SetupArt:
    """Work an engraving out as if nothing else were cut."""
    settled, reader = edition.settled, edition.reader
    cut = Cut(operation=Operation.ENGRAVE, depth=art.depth, contours=art.lines, feature=art.name)
    part = replace(art.part, cuts=(cut,))
    found = cut_alone(settled, part.sheet, (part,), (Placed(part=part.name),))
    here = found.here
    called = part_title(settled.plan, art.part.name, reader)
    return SetupArt(
        art=art,
        title=say(
            reader,
            "setupart-title",
            art=feature_title(art.name),
            mark=art.part.mark,
            part=called,
        ),
        called=called,
        runs=tuple(run_lines(found, each, reader, whole=False) for each in here.runs),
        by_hand=tuple(by_hand_line(found, each, reader) for each in here.left),
        time=cutting_time(found, reader),
        size=_size(settled, art, reader),
        depth=depth_text(art.depth, reader),
        steps=tuple(_steps(art, reader)),
        pieces=tuple(piece.mark for piece in art.part.pieces),
    )


def _size(settled: SettledPlan, art: Art, reader: Reader) -> str:
    """Return how large the art is, and how wide its strokes come out, on an uneven sheet, too."""
    wide, high = (both_text(each, reader) for each in art.size)
    size = say(reader, "setupart-size", wide=wide, high=high)
    made = engraved(settled, art.part, art.lines, art.depth)
    if made is None:
        return size
    stroke = depth_text(made.width, reader)
    if not made.follows_depth:
        return say(reader, "setupart-strokes", size=size, stroke=stroke)
    narrow, most, off = (depth_text(each, reader) for each in (made.narrow, made.wide, UNEVEN))
    told = {"size": size, "stroke": stroke, "narrow": narrow, "most": most, "off": off}
    return say(reader, "setupart-strokes-uneven", **told)


def _steps(art: Art, reader: Reader) -> Iterator[str]:
    """Yield what is done, a line each; the first says where the middle of the art is marked."""
    one, other = (place_text(each, reader) for each in art.distances)
    straight = all(each.straight for each in art.reaches)
    edges = "straight" if straight else "curved"
    yield say(reader, f"setupart-mark-{edges}", one=one, other=other)
    yield say(reader, "setupart-fix")
    yield say(reader, "setupart-zero")
    yield say(reader, "setupart-run")
