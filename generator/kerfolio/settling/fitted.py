"""The one place that adds thickness and fit: sizes of what receives or passes a sheet."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from kerfolio.basis.measures import clearance, precise, sold
from kerfolio.basis.said import said
from kerfolio.model.statement import Amount, Named
from kerfolio.settling.scope import Scope, unknown
from kerfolio.settling.settled import SettledSheet, Sized


def taking(thickness: float, fit: float) -> Sized:
    """Return the width of what takes a sheet: its thickness, and the fit on either side; mm."""
    reason = said("{} sheet + 2 x {} fit", sold("thickness", thickness), clearance(fit))
    return Sized(thickness + 2 * fit, reason)


def around(tab: float, fit: float) -> Sized:
    """Return the length of what takes a tab: the tab's width, and the fit at either end; mm."""
    reason = said("{} tab + 2 x {} fit", precise("tab", tab), clearance(fit))
    return Sized(tab + 2 * fit, reason)


@dataclass(frozen=True, slots=True, kw_only=True)
class Fitting:
    """The scope of a plan together with its sheets at this variant's thicknesses."""

    scope: Scope
    sheets: Mapping[str, SettledSheet]

    def sheet(self, named: Named) -> SettledSheet:
        """Return a sheet of the plan. Raises SettlingError for an unknown one."""
        found = self.sheets.get(named.name)
        if found is None:
            raise unknown("sheet", named, self.sheets)
        return found

    def width(self, takes: Named | None, width: Amount | None) -> Sized:
        """Return a width: of a sheet taken (thickness + 2 x fit), or as stated."""
        if takes is None:
            assert width is not None, "a form lets nothing pass that states neither"
            return Sized(self.scope.positive(width, "width"), f"stated: {width.text}")
        sheet = self.sheet(takes)
        return taking(sheet.thickness, sheet.fit)

    def length(self, stated: Amount, takes: Named | None) -> Sized:
        """Return a length, with the fit at both ends where a sheet is taken."""
        value = self.scope.positive(stated, "length")
        if takes is None:
            return Sized(value, f"stated: {stated.text}")
        return around(value, self.sheet(takes).fit)

    def groove_length(self, size: float, takes: Named | None) -> Sized:
        """Return the length of a groove, with the fit at both ends where a sheet is taken."""
        reason = said("{} from end to end", precise("length", size))
        if takes is None:
            return Sized(size, reason)
        fit = self.sheet(takes).fit
        return Sized(size + 2 * fit, said("{} + 2 x {} fit", reason, clearance(fit)))

    def notch_depth(self, stated: Amount, takes: Named | None) -> Sized:
        """Return the depth of a notch, with the fit at its bottom where a sheet is taken."""
        value = self.scope.positive(stated, "depth")
        if takes is None:
            return Sized(value, f"stated: {stated.text}")
        return self.deepened(value, takes)

    def deepened(self, depth: float, takes: Named) -> Sized:
        """Return the depth of a notch that takes a sheet, with the fit at its bottom; mm."""
        fit = self.sheet(takes).fit
        reason = said("{} deep + {} fit", precise("depth", depth), clearance(fit))
        return Sized(depth + fit, reason)

    def tab_depth(self, stated: Amount | None, takes: Named | None) -> Sized:
        """Return how far a tab stands out: as stated, or flush through the sheet it takes."""
        if stated is not None:
            return Sized(self.scope.positive(stated, "depth"), f"stated: {stated.text}")
        assert takes is not None, "a form lets nothing pass that states neither"
        thickness = self.sheet(takes).thickness
        return Sized(thickness, said("through the {} sheet", sold("thickness", thickness)))

    def finger_gap(self, pitch: float, takes: Named) -> Sized:
        """Return a gap between fingers: half the play lies in each of the two parts."""
        fit = self.sheet(takes).fit
        reason = said("{} finger + {} fit", precise("finger", pitch), clearance(fit))
        return Sized(pitch + fit, reason)
