"""The one place that adds thickness and fit: sizes of what receives or passes a sheet."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from kerfolio.basis.measures import clearance, precise, sold
from kerfolio.basis.said import Words, said
from kerfolio.model.purpose import Purpose
from kerfolio.model.statement import Amount, Named
from kerfolio.settling.clearance import AskedOfPart, Clearance, clearance_of, loosest
from kerfolio.settling.scope import Scope, unknown
from kerfolio.settling.settled import SettledSheet, Sized


def taking(thickness: float, fit: float, purpose: Purpose | None = None) -> Sized:
    """Return the width of what takes a sheet: its thickness, and the fit on either side; mm."""
    reason = said("{} sheet + 2 x {}", sold("thickness", thickness), _told(fit, purpose))
    return Sized(thickness + 2 * fit, reason)


def around(tab: float, fit: float, purpose: Purpose | None = None) -> Sized:
    """Return the length of what takes a tab: the tab's width, and the fit at either end; mm."""
    reason = said("{} tab + 2 x {}", precise("tab", tab), _told(fit, purpose))
    return Sized(tab + 2 * fit, reason)


def _told(fit: float, purpose: Purpose | None) -> Words:
    """Return a clearance on one side in words: ``0.1 mm fit``, ``0.15 mm glued fit``."""
    return said("{} {}fit", clearance(fit), f"{purpose} " if purpose else "")


@dataclass(frozen=True, slots=True, kw_only=True)
class Fitting:
    """The scope of a plan together with its sheets at this variant's thicknesses.

    ``asked`` is what joints ask of the features of the part that is made; ``given`` the room of the
    feature that is made, None where the sheet's fit alone counts. ``drawn`` is the scope as the
    plan is drawn, for what is chosen once; None where it has none.
    """

    scope: Scope
    sheets: Mapping[str, SettledSheet]
    asked: AskedOfPart = field(default_factory=dict)
    given: Clearance | None = None
    drawn: Scope | None = None

    def fitted_to(self, feature: str, takes: Named, contact: float, together: int) -> Fitting:
        """Return what makes a feature of that stated name, with the room that joints ask for.

        Its walls are ``contact`` mm long, and so many of it enter ``together``. Raises
        SettlingError.
        """
        fit, asked = self.sheet(takes).fit, self.asked.get(feature, (None,))
        return replace(
            self, given=loosest([clearance_of(fit, each, contact, together) for each in asked])
        )

    def room(self, takes: Named) -> Clearance:
        """Return the room of what takes a sheet. Raises SettlingError."""
        if self.given is not None:
            return self.given
        fit = self.sheet(takes).fit
        return Clearance(width=fit, ends=fit)

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
        room = self.room(takes)
        return taking(self.sheet(takes).thickness, room.width, room.purpose)

    def length(self, stated: Amount, takes: Named | None) -> Sized:
        """Return a length, with the fit at both ends where a sheet is taken."""
        value = self.scope.positive(stated, "length")
        if takes is None:
            return Sized(value, f"stated: {stated.text}")
        return self.around(value, takes)

    def around(self, tab: float, takes: Named) -> Sized:
        """Return the length of what takes a tab of a width, mm. Raises SettlingError."""
        room = self.room(takes)
        return around(tab, room.ends, room.purpose)

    def groove_length(self, size: float, takes: Named | None) -> Sized:
        """Return the length of a groove, with the fit at both ends where a sheet is taken."""
        reason = said("{} from end to end", precise("length", size))
        if takes is None:
            return Sized(size, reason)
        room = self.room(takes)
        words = said("{} + 2 x {}", reason, _told(room.ends, room.purpose))
        return Sized(size + 2 * room.ends, words)

    def notch_depth(self, stated: Amount, takes: Named | None) -> Sized:
        """Return the depth of a notch, with the fit at its bottom where a sheet is taken."""
        value = self.scope.positive(stated, "depth")
        if takes is None:
            return Sized(value, f"stated: {stated.text}")
        return self.deepened(value, takes)

    def deepened(self, depth: float, takes: Named) -> Sized:
        """Return the depth of a notch that takes a sheet, with the fit at its bottom; mm."""
        room = self.room(takes)
        reason = said("{} deep + {}", precise("depth", depth), _told(room.ends, room.purpose))
        return Sized(depth + room.ends, reason)

    def tab_depth(self, stated: Amount | None, takes: Named | None) -> Sized:
        """Return how far a tab stands out: as stated, or flush through the sheet it takes."""
        if stated is not None:
            return Sized(self.scope.positive(stated, "depth"), f"stated: {stated.text}")
        assert takes is not None, "a form lets nothing pass that states neither"
        thickness = self.sheet(takes).thickness
        return Sized(thickness, said("through the {} sheet", sold("thickness", thickness)))

    def finger_gap(self, pitch: float, takes: Named) -> Sized:
        """Return a gap between fingers: half the play lies in each of the two parts."""
        room = self.room(takes)
        reason = said("{} finger + {}", precise("finger", pitch), _told(room.width, room.purpose))
        return Sized(pitch + room.width, reason)
