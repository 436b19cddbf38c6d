"""The one place that adds thickness and fit: sizes of what receives or passes a sheet."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace

from kerfolio.basis.measures import clearance, precise, sold
from kerfolio.basis.said import Words, phrase
from kerfolio.model.feature_kind import FeatureKind
from kerfolio.model.purpose import Purpose
from kerfolio.model.statement import Amount, Named
from kerfolio.settling.clearance import AskedOfPart, Clearance, clearance_of, loosest
from kerfolio.settling.scope import Scope, unknown
from kerfolio.settling.settled import SettledSheet, Sized
from kerfolio.settling.surroundings import Needs, Surroundings


def taking(thickness: float, room: Clearance) -> Sized:
    """Return the width of what takes a sheet: its thickness, and the room on either side; mm."""
    thick = Words((sold("thickness", thickness),))
    reason = phrase("reasons-taking", thickness=thick, fit=_told(room))
    return Sized(thickness + 2 * room.width, _and_needs(reason, 2, _at_faces(room)))


def around(tab: float, room: Clearance) -> Sized:
    """Return the length of what takes a tab: the tab's width, and the room at either end; mm."""
    size = Words((precise("tab", tab),))
    reason = phrase("reasons-around", tab=size, fit=_told_at_ends(room))
    return Sized(tab + 2 * room.ends, _and_needs(reason, 2, _at_ends(room)))


def stated_as(amount: Amount) -> Words:
    """Return the reason of what a plan states, as it states it: ``stated: 120``."""
    return phrase("reasons-stated", amount=amount.text)


def of_sheet(fit: float) -> Clearance:
    """Return the room where a sheet's fit alone counts, mm a side."""
    return Clearance(width=fit, ends=fit)


def _told(room: Clearance) -> Words:
    """Return the fit at one side in words: ``0.1 mm fit``, ``0.15 mm glued fit``."""
    return _fit_words(room.fit, room.purpose)


def _told_at_ends(room: Clearance) -> Words:
    return _fit_words(room.fit_at_ends, room.purpose)


def _fit_words(fit: float, purpose: Purpose | None) -> Words:
    mm = Words((clearance(fit),))
    if purpose is None:
        return phrase("reasons-fit", fit=mm)
    return phrase(f"reasons-fit-{purpose}", fit=mm)


_More = tuple[float, Words]
"""What is allowed besides the fit on one side, mm, and what for."""


def _at_faces(room: Clearance) -> _More:
    return room.allowed[0], _wants(room.needs, ends=False)


def _at_ends(room: Clearance) -> _More:
    return room.allowed[1], _wants(room.needs, ends=True)


def _wants(needs: Needs, *, ends: bool) -> Words:
    film = needs.ends_film if ends else needs.film
    damp = needs.ends_swelling if ends else needs.swelling
    sanded = 0.0 if ends else needs.sanded
    words = (
        (phrase("reasons-film"), film),
        (phrase("reasons-sanding"), sanded),
        (phrase("reasons-damp"), damp),
    )
    return _listed([word for word, mm in words if mm])


def _listed(words: Sequence[Words]) -> Words:
    if len(words) < 2:
        return words[0] if words else Words(())
    head = words[0]
    for each in words[1:-1]:
        head = phrase("lists-more", head=head, item=each)
    return phrase("lists-and", head=head, item=words[-1])


def _and_needs(reason: Words, sides: int, more: _More) -> Words:
    """Return a reason with what is allowed for film, sanding and damp on so many sides."""
    mm, why = more
    if not mm:
        return reason
    sign, size = ("-" if mm < 0 else "+"), Words((clearance(abs(mm)),))
    return phrase("reasons-needs", reason=reason, sign=sign, sides=sides, size=size, why=why)


@dataclass(frozen=True, slots=True, kw_only=True)
class Fitting:
    """The scope of a plan together with its sheets at this variant's thicknesses.

    ``asked`` is what joints ask of the features of the part that is made; ``given`` the room of the
    feature that is made, None where the sheet's fit alone counts. ``drawn`` is the scope as the
    plan is drawn, for what is chosen once; None where it has none. ``surroundings`` say what
    finish and damp want, ``into`` is the sheet that the part is cut from.
    """

    scope: Scope
    sheets: Mapping[str, SettledSheet]
    asked: AskedOfPart = field(default_factory=dict)
    given: Clearance | None = None
    drawn: Scope | None = None
    surroundings: Surroundings | None = None
    into: SettledSheet | None = None

    def fitted_to(
        self, feature: tuple[str, FeatureKind], takes: Named, contact: float, together: int
    ) -> Fitting:
        """Return what makes a feature of that stated name and kind, with the room it wants.

        Its walls are ``contact`` mm long, and so many of it enter ``together``. Raises
        SettlingError.
        """
        name, kind = feature
        fit, asked = self.sheet(takes).fit, self.asked.get(name, (None,))
        needs = self._needs(kind, takes, contact)
        return replace(
            self,
            given=loosest([clearance_of(fit, each, contact, together, needs) for each in asked]),
        )

    def _needs(self, kind: FeatureKind, takes: Named, contact: float) -> Needs:
        """Return what finish and damp want of a feature, chosen once, as the plan is drawn."""
        if self.surroundings is None or self.into is None:
            return Needs()
        entering, drawn = self.sheet(takes), self.drawn
        thickness = entering.thickness
        if drawn is not None and takes.name in drawn.thickness:
            thickness = drawn.thickness[takes.name] * drawn.mm_per_unit
        sizes = (thickness, contact)
        return self.surroundings.needs(kind, entering.stock, self.into.stock, sizes)

    def room(self, takes: Named) -> Clearance:
        """Return the room of what takes a sheet. Raises SettlingError."""
        if self.given is not None:
            return self.given
        return of_sheet(self.sheet(takes).fit)

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
            return Sized(self.scope.positive(width, "width"), stated_as(width))
        return taking(self.sheet(takes).thickness, self.room(takes))

    def length(self, stated: Amount, takes: Named | None) -> Sized:
        """Return a length, with the fit at both ends where a sheet is taken."""
        value = self.scope.positive(stated, "length")
        if takes is None:
            return Sized(value, stated_as(stated))
        return self.around(value, takes)

    def around(self, tab: float, takes: Named) -> Sized:
        """Return the length of what takes a tab of a width, mm. Raises SettlingError."""
        return around(tab, self.room(takes))

    def groove_length(self, size: float, takes: Named | None) -> Sized:
        """Return the length of a groove, with the fit at both ends where a sheet is taken."""
        reason = phrase("reasons-end-to-end", size=Words((precise("length", size),)))
        if takes is None:
            return Sized(size, reason)
        room = self.room(takes)
        words = phrase("reasons-both-ends", size=reason, fit=_told_at_ends(room))
        return Sized(size + 2 * room.ends, _and_needs(words, 2, _at_ends(room)))

    def notch_depth(self, stated: Amount, takes: Named | None) -> Sized:
        """Return the depth of a notch, with the fit at its bottom where a sheet is taken."""
        value = self.scope.positive(stated, "depth")
        if takes is None:
            return Sized(value, stated_as(stated))
        return self.deepened(value, takes)

    def deepened(self, depth: float, takes: Named) -> Sized:
        """Return the depth of a notch that takes a sheet, with the fit at its bottom; mm."""
        room = self.room(takes)
        deep = Words((precise("depth", depth),))
        reason = phrase("reasons-deepened", depth=deep, fit=_told_at_ends(room))
        return Sized(depth + room.ends, _and_needs(reason, 1, _at_ends(room)))

    def tab_depth(self, stated: Amount | None, takes: Named | None) -> Sized:
        """Return how far a tab stands out: as stated, or flush through the sheet it takes."""
        if stated is not None:
            return Sized(self.scope.positive(stated, "depth"), stated_as(stated))
        assert takes is not None, "a form lets nothing pass that states neither"
        thickness = self.sheet(takes).thickness
        thick = Words((sold("thickness", thickness),))
        return Sized(thickness, phrase("reasons-through", thickness=thick))

    def finger_gap(self, pitch: float, takes: Named) -> Sized:
        """Return a gap between fingers: half the play lies in each of the two parts."""
        room = self.room(takes)
        finger = Words((precise("finger", pitch),))
        reason = phrase("reasons-finger", finger=finger, fit=_told(room))
        return Sized(pitch + room.width, _and_needs(reason, 1, _at_faces(room)))
