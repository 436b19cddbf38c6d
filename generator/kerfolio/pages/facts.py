"""A plan in a few lines: what a reader asks before anything else."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from kerfolio.basis.figures import minutes_text
from kerfolio.basis.lengths import INCH, both_text, size_text
from kerfolio.basis.masses import mass_text
from kerfolio.basis.sheet_size import sheet_text
from kerfolio.basis.thickness import sold_range_text
from kerfolio.basis.tolerance import NOISE
from kerfolio.basis.words import counted, day_text, listed
from kerfolio.edition.bed import bed_needs
from kerfolio.edition.cutting import ROUTER, cutting_of
from kerfolio.edition.edition import Edition
from kerfolio.edition.hardware_words import hardware_title

Lines = tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Fact:
    """A head and its lines; of each line the first text is the chief one, the rest is small.

    ``href`` leads to what it rests on, on the plan's own page.
    """

    head: str
    lines: Lines
    href: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetRange:
    """The thinnest and the thickest, in mm, that one sheet of a plan is published for."""

    title: str
    least: float
    most: float


def facts(edition: Edition) -> tuple[Fact, ...]:
    """Return release, sheets, boards, pieces, mass and time; what is empty is left out."""
    plan = edition.plan
    found = (
        Fact(head="Release", lines=((plan.version, day_text(plan.released)),)),
        Fact(head="Sheets", lines=_sheets(edition)),
        Fact(head="Sheet thickness", lines=_thicknesses(edition)),
        Fact(head="Boards", lines=_boards(edition)),
        Fact(head="Pieces", lines=_pieces(edition)),
        *_bed(edition),
        Fact(head="Weight", lines=_mass(edition)),
        Fact(head="Time to cut", lines=_cutting(edition), href="#cutting-time"),
        Fact(head="Time to put together", lines=_time(edition)),
    )
    return tuple(fact for fact in found if fact.lines)


def sheet_ranges(edition: Edition) -> tuple[SheetRange, ...]:
    """Return what every sheet is published for."""
    return tuple(
        SheetRange(title=each.stock.title, least=each.published[0], most=each.published[1])
        for each in edition.settled.sheets
    )


def pieces_count(edition: Edition) -> int:
    """Return how many pieces are cut from sheets."""
    return sum(row.count for row in edition.parts)


def short_line(edition: Edition) -> str:
    """Return the facts of one line in a list of plans."""
    sheets = sum(row.count for row in edition.sheets)
    words = [counted(sheets, "sheet")] if sheets else []
    boards = sum(row.count for row in edition.boards)
    words += [counted(boards, "board")] if boards else []
    words += [counted(pieces_count(edition), "piece")] if edition.parts else []
    spans = [_span(each, edition.first) for each in sheet_ranges(edition)]
    return " · ".join((*words, *spans))


def _span(each: SheetRange, first: str) -> str:
    return sold_range_text(each.least, each.most, first)


def _sheets(edition: Edition) -> Lines:
    first = edition.first
    return tuple(
        (f"{row.count} × {row.title}", sheet_text((row.width, row.height), first))
        for row in edition.sheets
    )


def _thicknesses(edition: Edition) -> Lines:
    first = edition.first
    ranges = sheet_ranges(edition)
    lines: list[tuple[str, ...]] = []
    for each in ranges:
        head = (each.title,) if len(ranges) > 1 else ()
        lines.append((*head, _span(each, first)))
    sets = len(edition.variants)
    if sets > 1 and lines:
        lines[-1] = (*lines[-1], f"in {sets} sets of files")
    return tuple(lines)


def _boards(edition: Edition) -> Lines:
    first = edition.first
    return tuple(
        (f"{row.count} × {row.title}", f"{both_text(row.length, first)} long")
        for row in edition.boards
    )


def _pieces(edition: Edition) -> Lines:
    shapes = counted(len(edition.parts), "shape")
    return ((str(pieces_count(edition)), f"of {shapes}"),) if edition.parts else ()


def _bed(edition: Edition) -> Iterator[Fact]:
    """Yield the largest piece, and the least bed it all can be cut on."""
    found, first = bed_needs(edition), edition.first
    if found is None:
        return
    marks = listed([piece.mark for piece in found.largest.pieces])
    yield Fact(head="Largest piece", lines=((size_text(found.largest.size, first), marks),))
    lines: Lines = (
        (_about(found.alone, first), "for piece after piece"),
        (_about(found.laid, first), "for sheets as they are laid out"),
    )
    if found.off and edition.identity.bed:
        bed = sheet_text(edition.identity.bed, first)
        lines = (*lines, (f"Too large for a bed of {bed}", listed(found.off)))
    yield Fact(head="Smallest bed", lines=lines)


def _about(sides: tuple[float, float], first: str) -> str:
    """Return a size that need not be met exactly, rounded up: whole centimetres, or inches."""
    step = INCH if first == "in" else 10.0
    return sheet_text([math.ceil(each / step - NOISE) * step for each in sides], first)


def _mass(edition: Edition) -> Lines:
    weight = edition.weight
    if not weight.total:
        return ()
    titles = [hardware_title(edition, item) for item in weight.unweighed]
    beside = f"without {listed(titles)}" if titles else "hardware and all"
    return ((f"about {mass_text(weight.total, edition.first)}", beside),)


def _cutting(edition: Edition) -> Lines:
    found = cutting_of(edition)
    if found is None:
        return ()
    sheets = "" if found.whole else f"{found.known}, "
    return ((f"about {minutes_text(found.minutes)}", f"{sheets}on {ROUTER}"),)


def _time(edition: Edition) -> Lines:
    minutes = edition.plan.minutes
    return ((f"about {minutes_text(minutes)}",),) if minutes else ()
