"""What is told of an engraving that is cut on a finished piece."""

from __future__ import annotations

from dataclasses import dataclass, replace

from kerfolio.basis.cutting_lengths import depth_text, place_text
from kerfolio.basis.figures import minutes_text
from kerfolio.basis.lengths import both_text
from kerfolio.edition.edition import Edition
from kerfolio.edition.setup import RunLines, about_time, by_hand_line, run_lines
from kerfolio.edition.sheet_facts import cut_alone
from kerfolio.settling.settled import Cut, Operation
from kerfolio.settling.titles import feature_title, part_title
from kerfolio.shop.art import Art, arts_of
from kerfolio.shop.cut_time import Placed


@dataclass(frozen=True, slots=True, kw_only=True)
class SetupArt:
    """What is told of one engraving on a finished piece, ``called`` so; lengths in both units."""

    art: Art
    called: str
    runs: tuple[RunLines, ...]
    by_hand: tuple[str, ...]
    time: str
    size: str
    depth: str
    steps: tuple[str, ...]
    pieces: tuple[str, ...]

    @property
    def title(self) -> str:
        """What heads its page: ``Art on A, End``."""
        return f"{feature_title(self.art.name)} on {self.art.part.mark}, {self.called}"


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
    one, other = (place_text(each, reader) for each in art.distances)
    return SetupArt(
        art=art,
        called=part_title(settled.plan, art.part.name),
        runs=tuple(run_lines(found, each, reader, whole=False) for each in here.runs),
        by_hand=tuple(by_hand_line(found, each, reader) for each in here.left),
        time=about_time(minutes_text(here.time.minutes)) if here.time.known else "",
        size=f"{both_text(art.size[0], reader)} wide, {both_text(art.size[1], reader)} high",
        depth=depth_text(art.depth, reader),
        steps=_steps(art, one, other),
        pieces=tuple(piece.mark for piece in art.part.pieces),
    )


def _steps(art: Art, one: str, other: str) -> tuple[str, ...]:
    straight = all(each.straight for each in art.reaches)
    edges = "the red edges, square to them" if straight else "rules laid against its red sides"
    return (
        f"Mark the centre of the art on the piece: {one} and {other} from {edges}.",
        "Fix the piece as drawn, x to the right, the art’s side up. Check both distances again.",
        "Zero x and y over the mark, z on the face.",
        "Run the file of the art alone: its 0,0 is the middle of the art.",
    )
