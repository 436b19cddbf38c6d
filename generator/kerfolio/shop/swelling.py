"""How much room sheets want for finish and damp, and how they swell."""

from __future__ import annotations

from kerfolio.basis.cutting_lengths import fit_in
from kerfolio.basis.figures import figure
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.model.feature_kind import SLOT
from kerfolio.settling.settled import SettledPlan, SettledSheet
from kerfolio.settling.surroundings import Needs


def needs_of(settled: SettledPlan, sheet: SettledSheet) -> Needs:
    """Return what a slot needs in which a sheet goes into one like it."""
    if settled.surroundings is None:
        return Needs()
    sizes = sheet.thickness, 0.0
    return settled.surroundings.needs(SLOT, sheet.stock, sheet.stock, sizes)


def room_for(settled: SettledPlan, sheet: SettledSheet) -> float:
    """Return how much more room slots for a sheet have for finish and damp, mm a side."""
    takes = (
        feature
        for part in settled.parts
        for feature in part.features
        if feature.takes == sheet.name and feature.room and feature.room.allowed[0]
    )
    return needs_of(settled, sheet).width if any(takes) else 0.0


def swelling_words(settled: SettledPlan, sheet: SettledSheet, reader: Reader) -> str:
    """Return how a sheet swells where the thing lives, else how it does for each per cent.

    Empty where nothing is known.
    """
    climate, movement = settled.plan.climate, settled.stock.movement(sheet.stock.family)
    found = [sheet.stock.swelling] if sheet.stock.swelling else []
    if movement is not None and climate is None:
        share = figure(movement.thickness, reader=reader)
        found.append(say(reader, "sheetedges-swells", share=share))
    elif movement is not None and climate is not None:
        thicker = fit_in(2 * needs_of(settled, sheet).swelling, reader)
        place = climate.name.split()[0]
        found.append(say(reader, f"sheetedges-thicker-{place}", by=thicker))
    return "; ".join(found)
