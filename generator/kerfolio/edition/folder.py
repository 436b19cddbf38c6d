"""Which folder of cut files suits a sheet of some thickness, and which sheet a file suits."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.thickness import sold_in
from kerfolio.basis.words import listed
from kerfolio.edition.edition import Edition
from kerfolio.settling.coupon import step_of
from kerfolio.settling.settled import SettledPlan


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """The published thickness to take, mm, for a sheet measured or tried at ``wanted`` mm.

    ``exact`` when it is that thickness, to half a step of the fit coupon; else it is the next
    thicker one, in which every tab still enters. ``thickness`` is None outside what the plan is
    published for: ``thicker`` tells which side.
    """

    wanted: float
    thickness: float | None
    exact: bool = False
    thicker: bool = False


def folder_choice(edition: Edition, sheet: str, wanted: float) -> Choice:
    """Return what to take for a sheet ``wanted`` mm thick.

    Raises KeyError for a sheet that the plan has not.
    """
    known = sorted({dict(each.variant.thickness)[sheet] for each in edition.variants})
    within = step_of(edition.settled.sheet(sheet), edition.plan.units) / 2
    near = [each for each in known if abs(each - wanted) <= within + 1e-9]
    if near:
        best = min(near, key=lambda each: (abs(each - wanted), each))
        return Choice(wanted=wanted, thickness=best, exact=True)
    above = [each for each in known if each > wanted]
    if wanted < known[0] or not above:
        return Choice(wanted=wanted, thickness=None, thicker=wanted > known[-1])
    return Choice(wanted=wanted, thickness=above[0])


def folders_of(edition: Edition, sheet: str, thickness: float) -> tuple[str, ...]:
    """Return the labels of the folders whose ``sheet`` has that thickness, thinnest first."""
    return tuple(
        each.variant.label
        for each in edition.variants
        if dict(each.variant.thickness)[sheet] == thickness
    )


def drawn_for(settled: SettledPlan, first: str) -> str:
    """Return the sheets and thicknesses of a variant: ``17.8 mm ply``."""
    return listed([f"{sold_in(sheet.thickness, first)} {sheet.name}" for sheet in settled.sheets])


def drawn_file(edition: Edition, number: int) -> str:
    """Return the name of a sheet's cut file at the thickness drawn, without its format."""
    return f"cut/{edition.settled.variant.label}/sheet-{number}"


def file_words(edition: Edition, number: int) -> str:
    """Return which sheet the cut file of the thickness drawn is for, and what to cut from others.

    Setup sheet and layout show the thickness drawn alone; who cuts another must not take its file.
    """
    own = f"{drawn_file(edition, number)} is for {drawn_for(edition.settled, edition.first)}"
    if len(edition.variants) == 1:
        return f"{own} and no other thickness."
    return (
        f"{own} only. If your sheet measures otherwise, cut sheet-{number} from the folder of its "
        "thickness."
    )


def sizes_words(edition: Edition) -> str:
    """Return which sheet the sizes that a saw is set to are for, and what to do with others."""
    own = f"These sizes are for {drawn_for(edition.settled, edition.first)}"
    if len(edition.variants) == 1:
        return f"{own} and no other thickness."
    return (
        f"{own} only. If your sheet measures otherwise, compare every piece with its template for "
        "that thickness."
    )
