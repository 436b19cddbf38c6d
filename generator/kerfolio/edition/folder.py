"""Which folder of cut files suits a sheet of some thickness."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.edition.edition import Edition
from kerfolio.settling.coupon import step_of


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
    within = step_of(edition.plan.units) / 2
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
