"""What setup sheets tell of the sheets of a layout, for paper and pages alike."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from kerfolio.basis.cutting_lengths import depth_text
from kerfolio.basis.exact_figures import exact_text
from kerfolio.basis.figures import minutes_short
from kerfolio.basis.lengths import inch_number, mm_number
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.edition.depth_words import depth_lines, zero_z
from kerfolio.edition.edition import Edition
from kerfolio.edition.path_words import path_lines
from kerfolio.edition.setup_runs import RunLines, by_hand_line, cutting_time, of_part, run_lines
from kerfolio.edition.sheet_facts import Ranged, SheetFacts
from kerfolio.layouts.clamp_spots import ClampSpot, clamp_spots, clear_of_pieces
from kerfolio.layouts.layout import SheetLayout
from kerfolio.settling.bridges import parts_to_hold
from kerfolio.settling.settled import CENTRE, SettledPlan, SettledSheet


def setup_cautions(reader: Reader) -> tuple[str, ...]:
    """Return what to mind beside the machine, a line each."""
    return tuple(say(reader, f"setup-caution-{each}") for each in ("worn", "holding", "alone"))


def setup_defer(reader: Reader) -> str:
    """Return what comes before the maker's settings."""
    return say(reader, "setup-defer")


def no_clamp(reader: Reader) -> str:
    """Return how a sheet is held that no clamp can hold."""
    return say(reader, "setup-no-clamp")


def compare_words(reader: Reader) -> str:
    """Return what stands before what a toolpath program should find."""
    return say(reader, "setup-compare")


@dataclass(frozen=True, slots=True, kw_only=True)
class SetupSheet:
    """What is told of one sheet on the machine; ``time`` is empty where none is known.

    ``below`` is how far cuts that go through enter the spoilboard, ``depth`` what keeps depths
    true, ``compare`` what a toolpath
    program should find on each layer.
    """

    layout: SheetLayout
    sheet: SettledSheet
    runs: tuple[RunLines, ...]
    by_hand: tuple[str, ...]
    time: str
    between: str
    spots: tuple[ClampSpot, ...]
    clear: float
    zero: str
    zero_z: str
    below: str
    depth: tuple[str, ...]
    clamps: tuple[str, ...]
    compare: tuple[str, ...]


def setup_sheets(edition: Edition) -> tuple[SetupSheet, ...]:
    """Return a record for every sheet of the layout, in order, at the thickness that is drawn."""
    settled, sheets = edition.settled, edition.layout.sheets
    times = edition.times or (None,) * len(sheets)
    facts = [SheetFacts.of(settled, *each) for each in zip(sheets, times, strict=True)]
    return tuple(
        setup_sheet(
            Ranged(here=each, ends=(each,)), layout, clamp_spots(settled, layout), edition.reader
        )
        for layout, each in zip(sheets, facts, strict=True)
    )


def setup_sheet(
    found: Ranged, layout: SheetLayout, spots: tuple[ClampSpot, ...], reader: Reader
) -> SetupSheet:
    """Return a sheet in words that hold at its point, and are as long within its whole range."""
    here = found.here
    settled = here.settled
    sheet, known = settled.sheet(layout.sheet), here.time.known
    zero = "centre" if sheet.datum == CENTRE else "corner"

    def short(minutes: float) -> str:
        return minutes_short(minutes, reader)

    return SetupSheet(
        layout=layout,
        sheet=sheet,
        runs=tuple(run_lines(found, each, reader) for each in here.runs),
        by_hand=(
            *(by_hand_line(found, each, reader) for each in here.left),
            *_taped(settled, layout, reader),
        ),
        time=cutting_time(found, reader),
        between=found.most(lambda each: each.between, short, reader) if known else "",
        spots=spots,
        clear=clear_of_pieces(settled, layout.sheet),
        zero=say(reader, f"setup-zero-{zero}"),
        zero_z=zero_z(reader),
        below=_below(found, reader),
        depth=depth_lines(found, layout.sheet, reader),
        clamps=_clamps(spots, reader),
        compare=path_lines(found, reader),
    )


def _taped(settled: SettledPlan, layout: SheetLayout, reader: Reader) -> Iterator[str]:
    """Yield a line for each part that is to have bridges, and on which none can stand."""
    asked, names = parts_to_hold(settled.plan), {each.part for each in layout.placements}
    for part in settled.parts:
        if part.name in names and part.name in asked and not part.is_held:
            yield say(reader, "setup-tape", where=of_part(part, settled, reader))


def _below(found: Ranged, reader: Reader) -> str:
    if not found.here.skim:
        return say(reader, "setup-no-depth")
    return found.told(
        lambda facts: facts.skim,
        lambda deep: depth_text(deep, reader),
        lambda deep: exact_text(deep, reader),
    )


def _clamps(spots: Sequence[ClampSpot], reader: Reader) -> tuple[str, ...]:
    """Return where along x and where along y the spots lie, by their numbers."""
    numbered = list(enumerate(spots, 1))
    ways = (("x", ("bottom", "top")), ("y", ("left", "right")))
    found = []
    for way, on in ways:
        spots_there = ", ".join(
            _stretch(n, each, reader) for n, each in numbered if each.edge in on
        )
        if spots_there:
            found.append(say(reader, f"setup-along-{way}", spots=spots_there, unit=reader.unit))
    return tuple(found)


def _stretch(number: int, spot: ClampSpot, reader: Reader) -> str:
    """Return where a spot begins and ends, to the mm or to half an inch, without the unit."""
    least, most = (
        mm_number(each, 0) if reader.unit == "mm" else inch_number(each, 2) for each in spot.along
    )
    return say(reader, "setup-stretch", number=number, least=least, most=most)
