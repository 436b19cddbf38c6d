"""The largest piece of a plan and the smallest bed that it can be cut on."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.edition.edition import Edition
from kerfolio.layouts.layout import SheetLayout
from kerfolio.layouts.panel_cuts import box_of
from kerfolio.settling.settled import SettledPart
from kerfolio.shop.bed import Sides, bed_for, off_bed, sides_of


@dataclass(frozen=True, slots=True, kw_only=True)
class BedNeeds:
    """``alone`` is the least bed for piece after piece, ``laid`` that for the sheets as laid out.

    Both go round with the cutter, mm. ``off`` are the marks of what the workshop's own bed has no
    room for.
    """

    largest: SettledPart
    alone: Sides
    laid: Sides
    off: tuple[str, ...] = ()


def bed_needs(edition: Edition) -> BedNeeds | None:
    """Return what a plan needs as it is drawn; None for one without parts."""
    settled = edition.settled
    if not settled.parts or not edition.layout.sheets:
        return None
    beds = [bed_for(part, settled.sheet(part.sheet)) for part in settled.parts]
    laid = [_laid(edition, sheet) for sheet in edition.layout.sheets]
    bed = edition.identity.bed
    off = off_bed(settled, bed) if bed else ()
    return BedNeeds(
        largest=max(settled.parts, key=lambda part: sides_of(part.size)),
        alone=_most(beds),
        laid=_most(laid),
        off=tuple(piece.mark for part in off for piece in part.pieces),
    )


def laid_size(edition: Edition, layout: SheetLayout) -> Sides:
    """Return how far the pieces of a sheet reach, along it and across, at every thickness; mm."""
    boxes = [box_of(each, edition.corners or (edition.settled,)) for each in layout.placements]
    wide = max(each[2] for each in boxes) - min(each[0] for each in boxes)
    high = max(each[3] for each in boxes) - min(each[1] for each in boxes)
    return wide, high


def _laid(edition: Edition, layout: SheetLayout) -> Sides:
    round_it = 2 * edition.settled.sheet(layout.sheet).cutter.diameter
    wide, high = laid_size(edition, layout)
    return sides_of((wide + round_it, high + round_it))


def _most(beds: list[Sides]) -> Sides:
    return max(long for long, _ in beds), max(short for _, short in beds)
